using System.Globalization;
using System.Text;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Benchmarks.Figures;

/// <summary>What it costs to bring a record into a store of SQLite and to read it from there.</summary>
internal static class RecordFigures
{
    private const int Rows = 400_000;
    private const int Repetitions = 5;
    private const string Time = "time: {PLACE: PATHt, written: unix-seconds, resolution: 1 s}\n";

    private static readonly (string Name, string Unit)[] Fields =
    [
        ("receiver", ""), ("originator", ""), ("last-sender", ""), ("packet-number", ""), ("level", ", unit: dBm"), ("signal-to-noise", ", unit: dB"), ("hops-taken", ""),
    ];

    internal static IEnumerable<Figure> Measure()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("mastwright-bench-");
        try
        {
            byte[] delimited = Text("t,receiver,originator,last_sender,packet_number,level,signal_to_noise,hops_taken\n", "{0},ferry,n{1},n{2},{3},{4},{5},{6}\n");
            byte[] json = Text("", """{{"t":{0},"receiver":"ferry","originator":"n{1}","last_sender":"n{2}","packet_number":{3},"level":{4},"signal_to_noise":{5},"hops_taken":{6}}}""" + "\n");
            yield return Import(folder, "import of a record from CSV", 5, delimited, "column", "");
            yield return Import(folder, "import of a record from JSON lines", 15, json, "path", "$.");
            using RecordStore store = SqliteRecordStore.Open(Path.Combine(folder.FullName, "last.sqlite"));
            yield return ARow(Sample.Time("reading a record", "ms", 6 * Rows / 1e3, Repetitions, () => Read(store)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Figure Import(DirectoryInfo folder, string name, double boundMicroseconds, byte[] text, string place, string path)
    {
        StringBuilder mapping = new("records: 1\n" + (place == "path" ? "form: json\n" : "") + Time.Replace("PLACE", place, StringComparison.Ordinal).Replace("PATH", path, StringComparison.Ordinal));
        foreach ((string field, string unit) in Fields)
        {
            mapping.Append(CultureInfo.InvariantCulture, $"{field}: {{{place}: {path}{field.Replace('-', '_')}{unit}}}\n");
        }

        RecordMapping read = RecordMapping.Parse(mapping.ToString(), name);
        string file = Path.Combine(folder.FullName, "last.sqlite");
        return ARow(Sample.Time(name, "ms", boundMicroseconds * Rows / 1e3, Repetitions, () =>
        {
            foreach (string old in Directory.EnumerateFiles(folder.FullName, "last.sqlite*"))
            {
                File.Delete(old);
            }

            using RecordStore store = SqliteRecordStore.Open(file);
            using RejectedRows rejected = new(null);
            RecordImport import = new(store, "bench", read, rejected);
            using MemoryStream stream = new(text);
            import.Run(name, stream, null, CancellationToken.None);
            if (import.Count.Added != Rows)
            {
                throw new InvalidOperationException($"{name}: {import.Count}");
            }
        }));
    }

    private static void Read(RecordStore store)
    {
        long last = 0;
        while (store.ReadAfter("bench", last, RecordStore.MostInOneBatch) is { Count: > 0 } piece)
        {
            last = piece[^1].Ingest;
        }

        if (last != Rows)
        {
            throw new InvalidOperationException($"{last} records were read.");
        }
    }

    /// <summary>The figure of all rows as the one of a row, in microseconds.</summary>
    private static Figure ARow(Figure all)
    {
        const double Scale = 1e3 / Rows;
        return all with { Unit = "µs", Value = all.Value * Scale, Bound = all.Bound * Scale, Least = all.Least * Scale };
    }

    private static byte[] Text(string head, string row)
    {
        CompositeFormat form = CompositeFormat.Parse(row);
        StringBuilder text = new(head);
        for (int one = 0; one < Rows; one++)
        {
            text.AppendFormat(CultureInfo.InvariantCulture, form, 1_700_000_000 + (one / 4), one % 200, one * 7 % 60, one, -100 - (one % 20), -(one % 14) / 2.0, one % 4);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
