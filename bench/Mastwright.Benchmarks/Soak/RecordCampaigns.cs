using System.Diagnostics;
using System.Globalization;
using System.Text;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Imports in a program of their own that is killed at random moments, and damaged files: no record is lost or there twice, and each row is accounted for.</summary>
internal static class RecordCampaigns
{
    private const int MostKills = 6;
    private const int MostRows = 60_000;
    private const string Network = "soak";
    private const string Fields = "receiver: {KEY: Pat}\nlast-sender: {KEY: Pvia}\npacket-number: {KEY: Pid}\nlevel: {KEY: Plevel, unit: dBm}\nsignal-to-noise: {KEY: Psnr, unit: dB}\n";

    private static readonly (string Name, string Mapping, Func<int, string> Row, string Head, string Tail)[] Forms =
    [
        ("delimited", "", row => FormattableString.Invariant($"{1_700_000_000 + (row / 4)},ferry,\"n,{row % 50}\",{row},{-100 - (row % 20)},{-(row % 14) / 2.0},x\n"), "t,at,via,id,level,snr,note\n", ""),
        ("json", "form: json\n", Json, "", ""),
        ("array", "form: json\n", row => (row > 0 ? ",\n" : "") + Json(row).TrimEnd('\n'), "[", "]\n"),
        ("lines", "form: lines\npattern: '^(?<t>[0-9.]+) (?<at>\\S+) via (?<via>\\S+) #(?<id>\\S+) (?<level>\\S+) dBm (?<snr>\\S+) dB'\n",
            row => FormattableString.Invariant($"{1_700_000_000 + (row / 4)} ferry via n{row % 50} #{row} {-100 - (row % 20)} dBm {-(row % 14) / 2.0} dB\n"), "", ""),
    ];

    private static long kills;

    internal static IEnumerable<Campaign> All(string scratch)
    {
        yield return new("killed-imports", random => Killed(scratch, random)) { Counted = ("kills", () => kills), MostSeconds = 100 };
        yield return new("damaged-records", Damaged);
    }

    /// <summary>The child: brings the rows into the store.</summary>
    internal static bool RunImport(string folder, int rows)
    {
        using RecordStore store = SqliteRecordStore.Open(Path.Combine(folder, "s.sqlite"));
        using RejectedRows rejected = new(null);
        using MemoryStream stream = new(Text(Forms[0], rows));
        Import(store, Forms[0], rejected).Run("rows", stream, null, CancellationToken.None);
        return true;
    }

    private static SoakCase Killed(string scratch, Random random)
    {
        string folder = Path.Combine(scratch, "killed-import");
        int rows = random.Next(1, MostRows);
        int[] waits = [.. Enumerable.Range(0, random.Next(1, MostKills)).Select(_ => random.Next(50, 700))];
        string line = FormattableString.Invariant($"{rows} rows, killed after {string.Join(", ", waits)} ms\n");
        return SoakCase.OfText("import.txt", line, () =>
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }

            Directory.CreateDirectory(folder);
            long before = 0;
            foreach (int wait in waits)
            {
                using Process child = Start(folder, rows);
                if (!child.WaitForExit(wait))
                {
                    child.Kill();
                    child.WaitForExit();
                    kills += child.ExitCode == 0 ? 0 : 1;
                }

                long now = Whole(folder);
                SoakFailureException.Require(now >= before, FormattableString.Invariant($"{before} records were there, {now} are left"));
                before = now;
            }

            using Process last = Start(folder, rows);
            last.WaitForExit();
            SoakFailureException.Require(last.ExitCode == 0, FormattableString.Invariant($"the last run ended with {last.ExitCode}"));
            long all = Whole(folder);
            SoakFailureException.Require(all == rows, FormattableString.Invariant($"{all} records of {rows} rows"));
        });
    }

    /// <summary>How many records there are, numbered from 1 without gaps, each of them once.</summary>
    private static long Whole(string folder)
    {
        using RecordStore store = SqliteRecordStore.Open(Path.Combine(folder, "s.sqlite"));
        long last = 0;
        HashSet<string> packets = new(StringComparer.Ordinal);
        while (store.ReadAfter(Network, last, RecordStore.MostInOneBatch) is { Count: > 0 } piece)
        {
            foreach (StoredRecord one in piece)
            {
                SoakFailureException.Require(one.Ingest == ++last, FormattableString.Invariant($"number {one.Ingest} in place of {last}"));
                SoakFailureException.Require(packets.Add(one.Record.PacketId!), $"packet {one.Record.PacketId} is there twice");
            }
        }

        return last;
    }

    private static SoakCase Damaged(Random random)
    {
        (string Name, string Mapping, Func<int, string> Row, string Head, string Tail) form = Forms[random.Next(Forms.Length)];
        byte[] text = Damage.Bytes(random, Text(form, random.Next(1, 40)));
        return new($"{form.Name}.txt", text, () =>
        {
            using RecordStore store = SqliteRecordStore.Open(":memory:");
            using RejectedRows rejected = new(null);
            RecordImport import = Import(store, form, rejected);
            try
            {
                using MemoryStream stream = new(text);
                import.Run("rows", stream, null, CancellationToken.None);
            }
            catch (MappingException)
            {
                // Told; what came before it is kept.
            }

            ImportCount count = import.Count;
            SoakFailureException.Require(
                count.Rows == count.Added + count.AlreadyThere + count.NotHeard + rejected.Count,
                FormattableString.Invariant($"{count.Rows} rows: {count.Added} added, {count.AlreadyThere} there, {count.NotHeard} not heard, {rejected.Count} rejected"));
            SoakFailureException.Require(count.Added == store.Count(Network), "added records are not in the store");
        });
    }

    private static RecordImport Import(RecordStore store, (string Name, string Mapping, Func<int, string> Row, string Head, string Tail) form, RejectedRows rejected)
    {
        (string key, string path) = form.Name switch { "json" or "array" => ("path", "$."), "lines" => ("group", ""), _ => ("column", "") };
        string fields = "time: {KEY: Pt, written: unix-seconds, resolution: 1 s}\n" + Fields;
        string mapping = "records: 1\n" + form.Mapping + fields.Replace("KEY: P", $"{key}: {path}", StringComparison.Ordinal);
        return new(store, Network, RecordMapping.Parse(mapping, form.Name), rejected);
    }

    private static string Json(int row) => FormattableString.Invariant($"{{\"t\":{1_700_000_000 + (row / 4)},\"at\":\"ferry\",\"via\":\"n{row % 50}\",\"id\":{row},\"level\":{-100 - (row % 20)},\"snr\":{-(row % 14) / 2.0},\"x\":[{{}},null]}}\n");

    private static byte[] Text((string Name, string Mapping, Func<int, string> Row, string Head, string Tail) form, int rows)
    {
        StringBuilder text = new(form.Head);
        for (int row = 0; row < rows; row++)
        {
            text.Append(form.Row(row));
        }

        return Encoding.UTF8.GetBytes(text.Append(form.Tail).ToString());
    }

    private static Process Start(string folder, int rows) => Process.Start(Environment.ProcessPath!, ["killed-import", "--folder", folder, "--rows", rows.ToString(CultureInfo.InvariantCulture)]);
}
