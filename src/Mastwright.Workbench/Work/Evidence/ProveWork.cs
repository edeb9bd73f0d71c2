using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Evidence.Statistics;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Pictures.Evidence;
using Mastwright.Plans;
using Mastwright.Records.Store;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Evidence;
using Mastwright.Reports.Sessions;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Work.Network;

namespace Mastwright.Workbench.Work.Evidence;

/// <summary>Two periods of a station's records against each other, and against the prediction.</summary>
internal sealed class ProveWork(RecordsDesk records) : IWork
{
    public string Kind => "prove";

    public string Unit => "proofs";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => $"Proof of {Stations.Name(question.View, question["site"])}";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        WorkQuestion question = item.Question;
        ProveRequest request = new(question["site"] ?? "", question["network"], question["before"], question["after"], Numbers.Whole(question["entry"], 1, int.MaxValue));
        if (Made(session, request, tell) is not { } answer)
        {
            return null;
        }

        item.Cancellation.ThrowIfCancellationRequested();
        if (question["prediction"] != "no" && ProofPrediction.Of(session, request.Site, answer.Report, answer.Stations, tell) is { } agreement)
        {
            answer = answer.With(agreement);
        }

        return Answer(answer, LinkSelection.Stations(session.Plan, ImmutableDictionary<string, string>.Empty));
    }

    private ProofAnswer? Made(PlanSession session, ProveRequest request, Action<string> tell)
    {
        if (!records.IsThere)
        {
            tell($"There is no store of records at {records.ShownPlace}. Import some first.");
            return null;
        }

        using RecordStore store = records.Open();
        return ProofRun.Make(session.Plan, session.Rows, store, request, tell);
    }

    private static WorkAnswer Answer(ProofAnswer answer, ImmutableArray<LinkStation> stations)
    {
        ProofReport report = answer.Report;
        MatrixStation[] places = [.. stations.Select(one => one.OnMatrix)];
        return new()
        {
            Json = ProofJson.Write(report, answer.Stations, answer.Agreement),
            Sentences = [.. report.Verdict],
            IsVerdict = true,
            Pictures =
            [
                new("proof", "Levels over time with the change, and the shift of each station", theme => ProofPicture.Draw(report, answer.Agreement, theme)),
                .. answer.Agreement is { } summary && places.Any(one => one.Key == report.Question.Subject)
                    ? [new WorkPicture("agreement", "Where the stations lie, and by how much each link is heard better or worse than predicted", theme => AgreementMap.Draw(summary, places, report.Question.Subject, theme))]
                    : Array.Empty<WorkPicture>(),
            ],
            Tables =
            [
                new(
                    "proof",
                    "Stations before and after: packets a day, share of its packets that were heard where their numbers or a fixed interval tell the losses, and the shift of signal power with its 95 % interval. ≥: at least, ≤: at most, because the weakest packets are lost.",
                    [new("station"), new("a day before", true), new("after", true), new("heard before", true), new("after", true), new("shift, dB", true), new("from", true), new("to", true), new("note")],
                    [.. report.Result.Stations.Select(one => Row(report.Question.NameOf(one.Station), one))]),
                .. answer.Agreement is { } agreed ? [Predicted(agreed)] : Array.Empty<WorkTable>(),
            ],
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static WorkRow Row(string name, StationProof one) => new(
    [
        name, Rate(one.Before), Rate(one.After), Delivered(one.Before), Delivered(one.After),
        one.SignalPower is { } shift ? $"{Knowledge(one.Knowledge)}{Db(shift.Shift)}" : "–",
        one.SignalPower?.Interval is { } low ? Db(low.Low) : "", one.SignalPower?.Interval is { } high ? Db(high.High) : "",
        Note(one),
    ]);

    private static WorkTable Predicted(AgreementSummary agreement) => new(
        "agreement",
        "Prediction against what was heard after the change: signal power at the receiver. Works: confidence that the link works.",
        [new("link from"), new("predicted, dBm", true), new("± dB", true), new("measured, dBm", true), new("off, dB", true), new("works", true)],
        [.. agreement.Rows.Select(row => new WorkRow(
        [
            row.Name, Number(row.PredictedDbm, "0.0"), Number(row.SpreadDb, "0.0"),
            row.MeasuredDbm is { } heard ? (row.WeakOnesLost ? "≤ " : "") + Number(heard, "0.0") : "not heard",
            row.OffDb is { } off ? Db(off) : "", LinkOdds.ShortPercent(row.Works),
        ]))]);

    private static string Note(StationProof one) =>
        one.MovedAlone || one.OwnStep is not null ? "a change of its own"
        : one.Chance is { } chance ? $"{(one.Before.Packets == 0 ? "new" : "lost")}; by chance: {LinkOdds.ShortPercent(chance)}"
        : one.Knowledge == ShiftKnowledge.LossesCounted ? "losses counted"
        : "";

    private static string Rate(HeardSummary heard) => heard.Packets == 0 ? "none" : Number(heard.PacketsADay, "0.0");

    private static string Delivered(HeardSummary heard) => heard.DeliveredShare is { } share ? Number(100 * share, "0") + " %" : "–";

    private static string Knowledge(ShiftKnowledge knowledge) => knowledge switch
    {
        ShiftKnowledge.AtLeast => "≥ ",
        ShiftKnowledge.AtMost => "≤ ",
        ShiftKnowledge.Open => "? ",
        _ => "",
    };

    private static string Db(double value) => Number(value, "+0.0;−0.0;0.0");

    private static string Number(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);
}
