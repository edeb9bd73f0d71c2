using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Import;
using Mastwright.Records.Store;
using Mastwright.Storage.Demo;

namespace Mastwright.Cli.Commands;

/// <summary>The end of the demo: records are made, imported, and prove what the new fit-out brought.</summary>
internal static class DemoProof
{
    private const string Site = SkerrinRecords.Receiver;

    internal static int Run(string planPath, string folder, CancellationToken cancellation) => StoreOptions.Guarded(() =>
    {
        string csv = Path.Combine(folder, "records.csv");
        string mapping = Path.Combine(folder, "records.yaml");
        string place = Path.Combine(folder, "records.sqlite");
        SkerrinRecordFile.Write(csv);
        long entry = Import(csv, mapping, place, cancellation);
        Console.Out.WriteLine($"{OwnName.Command} records import {csv} --as {mapping} --store {place}");
        Console.Out.WriteLine($"{OwnName.Command} prove {planPath} {Site} --store {place} --entry {entry} --prediction --picture {Path.Combine(folder, "proof.svg")}");
        Console.Out.WriteLine();
        int code = ProveCommand.Run(
            new(planPath, place, new(Site, SkerrinRecords.Network, null, null, (int)entry), WithPrediction: true, AllowOutside: false), PictureFile.Of(Path.Combine(folder, "proof.svg"), isDark: false), json: false, []);
        return code == ExitCode.FindingFails ? ExitCode.Fine : code;
    });

    /// <summary>Brings the records in, and the entry of the change; gives the entry's number.</summary>
    private static long Import(string csv, string mapping, string place, CancellationToken cancellation)
    {
        using RecordStore store = RecordStore.At(place);
        using RejectedRows rejected = new(place + ".rejected.csv");
        RecordImport import = new(store, SkerrinRecords.Network, RecordMapping.Parse(File.ReadAllText(mapping), mapping), rejected);
        using (FileStream stream = File.OpenRead(csv))
        {
            import.Run(csv, stream, null, cancellation);
        }

        if (store.ReadLog(SkerrinRecords.Network).Of(Site).FirstOrDefault(one => one.TimeMicroseconds == SkerrinRecords.Change) is { } there)
        {
            return there.Number;
        }

        return store.AddLogEntry(
            SkerrinRecords.Network,
            new() { TimeMicroseconds = SkerrinRecords.Change, Site = Site, Kind = SiteLogKind.FitOut, FitOut = "net-loft", Text = "Collinear on the net loft's gable in place of the whip under the eaves (invented)." },
            []).Number;
    }
}
