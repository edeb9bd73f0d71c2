using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Agreement;
using Mastwright.Network;
using Mastwright.Quantities;
using Mastwright.Records.Store;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Evidence;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Work.Network;

namespace Mastwright.Workbench.Work.Evidence;

/// <summary>A correction of the prediction fitted to what the stations heard.</summary>
internal sealed class FitWork(RecordsDesk records) : IWork
{
    public string Kind => "fit";

    public string Unit => "fits";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => "Correction of the prediction";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        if (!records.IsThere)
        {
            tell($"There is no store of records at {records.ShownPlace}. Import some first.");
            return null;
        }

        using RecordStore store = records.Open();
        return CorrectionRun.Make(session, store, item.Question["network"], item.Question["period"], CorrectionRun.UsualPackets, tell) is { } answer ? Answer(answer) : null;
    }

    private static WorkAnswer Answer(CorrectionAnswer answer) => new()
    {
        Json = CorrectionJson.Write(answer, null),
        Source = answer,
        Sentences = [string.Create(CultureInfo.InvariantCulture, $"{answer.Links} links with {answer.Packets} levels.")],
        Tables = answer.Fit is { } fit ? [Fitted(fit), Scores(fit), .. fit.Own.IsEmpty ? [] : new[] { Own(fit) }] : [],
        Findings = answer.Findings,
    };

    private static WorkTable Fitted(CorrectionFit fit) => new(
        "fit",
        "What was fitted, with its 95 % interval",
        [new("quantity"), new("value", true), new("from", true), new("to", true)],
        [
            Row("offset on every level, dB", fit.OffsetDb),
            Row("cover along the path, m", fit.CoverMetres),
            .. fit.HeightMetres is { } height ? [Row("stations of unknown height, m", height)] : Array.Empty<WorkRow>(),
            new(["spread that remains, dB", Number(fit.SpreadDb), "", ""]),
            new(["the same at a station with its own offset, dB", Number(fit.WithinDb), "", ""]),
        ]);

    private static WorkTable Scores(CorrectionFit fit) => new(
        "fit-scores",
        string.Create(CultureInfo.InvariantCulture, $"Error in dB on links that the fit had not seen: {fit.ByStation.Folds} times whole stations were left out, {fit.ByBlock.Folds} times blocks of positions. A correction is adopted only where it beats every other."),
        [new("predicted with"), new("stations left out", true), new("blocks left out", true)],
        [
            .. fit.ByStation.Rivals.Zip(fit.ByBlock.Rivals).Select(pair => new WorkRow([pair.First.Name, Number(pair.First.OffDb), Number(pair.Second.OffDb)])),
            new(["this correction", Number(fit.ByStation.OffDb), Number(fit.ByBlock.OffDb)]),
            new(["held by its 90 % interval", LinkOdds.ShortPercent(fit.ByStation.Held), LinkOdds.ShortPercent(fit.ByBlock.Held)]),
        ]);

    private static WorkTable Own(CorrectionFit fit) => new(
        "fit-own",
        "A station's own offset, which holds for that station alone",
        [new("heard at"), new("own offset, dB", true), new("±, dB", true)],
        [.. fit.Own.Select(one => new WorkRow([one.Key, one.Value.Db.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture), Number(1.96 * one.Value.DeviationDb)]))]);

    private static WorkRow Row(string name, Estimate value) => new([name, Number(value.Median), Number(value.Low), Number(value.High)]);

    private static string Number(double value) => value.ToString("0.0;−0.0;0.0", CultureInfo.InvariantCulture);
}
