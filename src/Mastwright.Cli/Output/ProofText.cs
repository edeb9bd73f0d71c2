using System.Globalization;
using System.Text;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Evidence.Statistics;
using Mastwright.Findings;

namespace Mastwright.Cli.Output;

/// <summary>A proof on the terminal, 80 columns wide: the verdict, the stations, what is to be said.</summary>
internal static class ProofText
{
    internal static void Write(ProofReport report, AgreementSummary? agreement, string? picture)
    {
        StringBuilder text = new();
        foreach (string sentence in report.Verdict)
        {
            text.Wrapped(sentence, 0);
        }

        text.AppendLine();
        text.AppendLine("                        packets a day      delivered        signal power");
        text.AppendLine("station                before   after    before  after      shift, dB");
        foreach (StationProof one in report.Result.Stations)
        {
            string name = report.Question.NameOf(one.Station);
            text.Line($"{(name.Length > 20 ? name[..20] : name),-20} {Rate(one.Before),8}{Rate(one.After),8}  {Delivered(one.Before),8}{Delivered(one.After),7}  {ShiftOf(one)}");
        }

        if (agreement is not null)
        {
            Predicted(text, agreement);
        }

        text.AppendLine();
        foreach (Finding finding in report.Findings)
        {
            text.Wrapped($"{VerdictText.Word(finding.Verdict)}: {FindingSentences.Text(finding)}{(finding.Verdict == Verdict.Ok ? "" : " " + FindingSentences.Advice(finding))}", 2);
        }

        text.AppendLine();
        foreach (Assumption assumption in report.Assumptions)
        {
            text.Wrapped($"Assumed: {assumption.Text} ({assumption.Source})", 2);
        }

        if (picture is not null)
        {
            text.Line($"Written: {picture}");
        }

        Console.Out.Write(text.ToString());
    }

    private static void Predicted(StringBuilder text, AgreementSummary agreement)
    {
        text.AppendLine();
        text.AppendLine("                       predicted      measured     off    works with");
        text.AppendLine("link from              signal, dBm    signal, dBm  dB     confidence");
        foreach (AgreementRow row in agreement.Rows)
        {
            string measured = row.MeasuredDbm is { } heard ? Text($"{heard:0.0;−0.0}{(row.WeakOnesLost ? " at most" : "")}") : "not heard";
            text.Line($"{(row.Name.Length > 20 ? row.Name[..20] : row.Name),-20} {Text($"{row.PredictedDbm:0;−0} ± {row.SpreadDb:0}"),13} {measured,14} {row.OffDb,7:+0.0;−0.0;0.0} {100 * row.Works,12:0} %");
        }
    }

    private static string Rate(HeardSummary heard) => heard.Packets == 0 ? "none" : Text($"{heard.PacketsADay:0.0}");

    private static string Delivered(HeardSummary heard) => heard.DeliveredShare is { } share ? Text($"{100 * share:0} %") : "–";

    private static string ShiftOf(StationProof one) => one.SignalPower is not { } shift
        ? one.Chance is null ? "–" : one.Before.Packets == 0 ? "new" : "lost"
        : Text($"{Knowledge(one.Knowledge)}{shift.Shift,5:+0.0;−0.0;0.0}{Range(shift.Interval)}{Note(one)}");

    private static string Knowledge(ShiftKnowledge knowledge) => knowledge switch
    {
        ShiftKnowledge.AtLeast => "≥",
        ShiftKnowledge.AtMost => "≤",
        ShiftKnowledge.Open => "?",
        _ => " ",
    };

    private static string Range(ConfidenceInterval? interval) => interval is { } one ? Text($" ({one.Low:+0.0;−0.0;0.0} to {one.High:+0.0;−0.0;0.0})") : " (too few days)";

    private static string Note(StationProof one) => one.MovedAlone || one.OwnStep is not null ? " own change" : one.Knowledge == ShiftKnowledge.LossesCounted ? " counted" : "";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
