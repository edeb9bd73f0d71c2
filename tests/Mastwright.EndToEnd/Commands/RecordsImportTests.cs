using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Mastwright.Records.Store;
using Mastwright.Tests.EndToEnd.Shapes;

namespace Mastwright.Tests.EndToEnd.Commands;

public sealed class RecordsImportTests
{
    private const int Kills = 20;
    private const int Rows = 30_000;

    private const string Mapping = "records: 1\nnetwork: skerrin\ntime: {column: t, written: unix-seconds, resolution: 1 s}\nreceiver: {column: at}\n"
        + "last-sender: {text: holm}\npacket-number: {column: id}\nlevel: {column: level, unit: dBm}\nsignal-to-noise: {column: snr, unit: dB}\n";

    [Fact]
    public void What_is_brought_is_counted_and_bringing_it_again_adds_nothing()
    {
        using TemporaryFolder folder = Small("1700000000,ferry,1,-118,-3\n1700000001,ferry,2,NaN,-3\n");
        using JsonDocument first = Imported(folder);
        Assert.Equal((1, 1), (first.RootElement.GetProperty("added").GetInt32(), first.RootElement.GetProperty("rejected").GetInt32()));
        Assert.Contains("\"records.csv\",3,", File.ReadAllText(folder.File("s.sqlite.rejected.csv")), StringComparison.Ordinal);
        using JsonDocument again = Imported(folder);
        Assert.Equal((0, 1), (again.RootElement.GetProperty("added").GetInt32(), again.RootElement.GetProperty("already-there").GetInt32()));
    }

    [Fact]
    public void Bad_input_is_refused_with_its_place()
    {
        using TemporaryFolder folder = Small("1700000000,ferry,1,-118,-3\n");
        folder.Write("other.csv", "a,b\n1,2\n");
        folder.Write("nameless.yaml", Mapping.Replace("network: skerrin\n", "", StringComparison.Ordinal));
        ProgramRun.Of(folder.Path, "records", "import", "other.csv", "--as", "m.yaml", "--store", "s.sqlite").IsRefusedWith("other.csv:1", "'t'", "'a', 'b'");
        ProgramRun.Of(folder.Path, "records", "import", "none.csv", "--as", "m.yaml", "--store", "s.sqlite").IsRefusedWith("none.csv");
        ProgramRun.Of(folder.Path, "records", "import", "records.csv", "--as", "nameless.yaml", "--store", "s.sqlite").IsRefusedWith("nameless.yaml", "--network");
        ProgramRun.Of(folder.Path, "records", "import", "records.csv", "--as", "m.yaml", "--store", "no/s.sqlite").IsRefusedWith("no/s.sqlite", "folder");
        ProgramRun.Of(folder.Path, "records", "import", "records.csv", "--as", "m.yaml", "--store", "m.yaml").IsRefusedWith("m.yaml", "no store");
    }

    [Fact]
    public void A_mapping_is_proposed_shown_and_used()
    {
        using TemporaryFolder folder = Small("1700000000,ferry,1,-118,-3\n");
        string shown = ProgramRun.Of(folder.Path, "records", "map", "records.csv", "--to", "new.yaml").EndsWith(0).Output;
        Assert.Contains("2023-11-14T22:13:20Z", shown, StringComparison.Ordinal);
        ProgramRun.Of(folder.Path, "records", "map", "records.csv", "--to", "new.yaml").IsRefusedWith("new.yaml", "already");
        ProgramRun.Of(folder.Path, "records", "import", "records.csv", "--as", "new.yaml", "--network", "skerrin", "--store", "s.sqlite").EndsWith(0);
        using SqliteRecordStore store = SqliteRecordStore.Open(folder.File("s.sqlite"));
        Assert.Equal(-118, Assert.Single(store.ReadAfter("skerrin", 0, 9)).Record.LevelDbm);
    }

    /// <summary>The real program is really killed at random moments: what a reader has seen is never lost, and nothing comes twice.</summary>
    [Fact]
    public void An_import_that_is_killed_at_any_moment_loses_no_batch_and_doubles_none()
    {
        using TemporaryFolder folder = Small(Many());
        Random random = new(20);
        long before = 0;
        int inTheMiddle = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            // A reader looks on while it writes, from another process.
            using SqliteRecordStore store = SqliteRecordStore.Open(folder.File("s.sqlite"));
            using Process import = Start(folder);
            while (store.ReadAfter("skerrin", before, 1).Count == 0 && !import.WaitForExit(5))
            {
            }

            bool ended = import.WaitForExit(random.Next(0, 80));
            long seen = store.Count("skerrin");
            import.Kill();
            import.WaitForExit();
            long now = store.Count("skerrin");
            Assert.True(now >= seen, $"{seen} records were seen, {now} are left");
            Assert.Equal(now, store.ReadAfter("skerrin", 0, Rows + 1)[^1].Ingest);
            inTheMiddle += !ended && now < Rows ? 1 : 0;
            before = now;
            if (now > Rows / 2)
            {
                // Little is left to write: from the beginning again.
                store.Dispose();
                Directory.EnumerateFiles(folder.Path, "s.sqlite*").ToList().ForEach(File.Delete);
                before = 0;
            }
        }

        Assert.True(inTheMiddle >= Kills / 4, $"only {inTheMiddle} kills fell into the writing");
        Imported(folder).Dispose();
        using SqliteRecordStore whole = SqliteRecordStore.Open(folder.File("s.sqlite"));
        Assert.Equal(Rows, whole.Count("skerrin"));
        IReadOnlyList<StoredRecord> all = whole.ReadAfter("skerrin", 0, Rows + 1);
        Assert.Equal(Enumerable.Range(1, Rows).Select(number => (long)number), all.Select(one => one.Ingest));
        Assert.Equal(Rows, all.Select(one => one.Record.PacketId).Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>A disk of two megabytes, and a folder that may not be written, made by the system in a namespace of the test's own.</summary>
    [Fact, Trait("needs", "system")]
    public void A_full_disk_and_a_read_only_folder_are_said_and_lose_nothing()
    {
        using TemporaryFolder folder = Small(Many());
        folder.Write("import", $"exec {ProgramRun.ShellCommand} records import records.csv --as m.yaml --store \"$1\"\n");
        folder.Write("script", """
            mkdir small closed && mount -t tmpfs -o size=2m none small || exit 9
            sh import small/s.sqlite 2>full.txt; echo $? >>full.txt
            cp small/s.sqlite* .
            cp s.sqlite closed/ && mount --bind closed closed && mount -o remount,bind,ro closed || exit 9
            sh import closed/s.sqlite 2>closed.txt; echo $? >>closed.txt
            """);
        ProgramRun.Start("unshare", folder.Path, null, "--user", "--map-root-user", "--mount", "sh", "script").EndsWith(0);

        string[] full = File.ReadAllLines(folder.File("full.txt"));
        Assert.Equal("small/s.sqlite: the disk is full; nothing of the last batch was kept. Make room and run the import again", full[^2]);
        Assert.Equal("2", full[^1]);
        long told = long.Parse(full[0].Split(' ')[0], CultureInfo.InvariantCulture);
        using (SqliteRecordStore store = SqliteRecordStore.Open(folder.File("s.sqlite")))
        {
            Assert.Equal(told, store.Count("skerrin"));
            Assert.Equal(told, store.ReadAfter("skerrin", 0, Rows)[^1].Ingest);
            Assert.InRange(told, 1, Rows - 1);
        }

        using JsonDocument rest = Imported(folder);
        Assert.Equal(Rows - told, rest.RootElement.GetProperty("added").GetInt64());
        string[] closed = File.ReadAllLines(folder.File("closed.txt"));
        Assert.Contains("closed/s.sqlite: the store", closed[^2], StringComparison.Ordinal);
        Assert.Contains("may be written", closed[^2], StringComparison.Ordinal);
        Assert.Equal("2", closed[^1]);
    }

    private static TemporaryFolder Small(string rows)
    {
        TemporaryFolder folder = new();
        folder.Write("m.yaml", Mapping);
        folder.Write("records.csv", "t,at,id,level,snr\n" + rows);
        return folder;
    }

    private static string Many()
    {
        StringBuilder text = new();
        for (int row = 0; row < Rows; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{1_700_000_000 + (row / 4)},ferry,{row},{-100 - (row % 20)},-3\n");
        }

        return text.ToString();
    }

    private static JsonDocument Imported(TemporaryFolder folder)
    {
        string output = ProgramRun.Of(folder.Path, "records", "import", "records.csv", "--as", "m.yaml", "--store", "s.sqlite", "--json").EndsWith(0).Output;
        JsonShapesTests.HasShape(output, "records-import-1");
        return JsonDocument.Parse(output);
    }

    private static Process Start(TemporaryFolder folder) => Process.Start(new ProcessStartInfo(
        ProgramRun.Command[0], [.. ProgramRun.Command.Skip(1), "records", "import", "records.csv", "--as", "m.yaml", "--store", "s.sqlite"])
    {
        WorkingDirectory = folder.Path, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
    })!;
}
