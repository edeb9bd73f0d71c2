using System.Globalization;
using System.Text;
using Mastwright.Agreement;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Records;

namespace Mastwright.Cli.Output;

/// <summary>A fitted correction on the terminal, 80 columns wide: what was fitted, what it is worth, what is to be said.</summary>
internal static class CorrectionFitText
{
    internal static void Write(CorrectionAnswer answer)
    {
        StringBuilder text = new();
        text.Line($"{answer.Links} links with {answer.Packets} levels, {UtcTime.Text(answer.Period.FromMicroseconds)[..10]} to {UtcTime.Text(answer.Period.ToMicroseconds)[..10]}");
        if (answer.Fit is { } fit)
        {
            Fitted(text, fit);
        }

        text.AppendLine();
        foreach (Finding finding in answer.Findings)
        {
            text.Wrapped($"{VerdictText.Word(finding.Verdict)}: {FindingSentences.Text(finding)}{(finding.Verdict == Verdict.Ok ? "" : " " + FindingSentences.Advice(finding))}", 2);
        }

        Console.Out.Write(text.ToString());
    }

    private static void Fitted(StringBuilder text, CorrectionFit fit)
    {
        text.AppendLine();
        text.Line($"{"offset on every level",-32} {Range(fit.OffsetDb, "dB")}");
        text.Line($"{"cover along the path",-32} {Range(fit.CoverMetres, "m")}");
        if (fit.HeightMetres is { } height)
        {
            text.Line($"{"stations of unknown height",-32} {Range(height, "m")}");
        }

        text.Line($"{"spread that remains",-32} {fit.SpreadDb,6:0.0} dB, at a station with its own offset {fit.WithinDb:0.0} dB");
        if (!fit.Own.IsEmpty)
        {
            text.AppendLine();
            text.AppendLine("heard at                   own offset, for that station alone");
            foreach ((string station, StationOffset own) in fit.Own)
            {
                text.Line($"{station,-26} {own.Db,6:+0.0;−0.0;0.0} ± {1.96 * own.DeviationDb:0.0} dB");
            }
        }

        text.AppendLine();
        text.AppendLine("error on what was left out, dB                       stations     blocks");
        foreach ((RivalScore station, RivalScore block) in fit.ByStation.Rivals.Zip(fit.ByBlock.Rivals))
        {
            text.Line($"{station.Name,-50} {station.OffDb,10:0.0} {block.OffDb,10:0.0}");
        }

        text.Line($"{"this correction",-50} {fit.ByStation.OffDb,10:0.0} {fit.ByBlock.OffDb,10:0.0}");
        if (fit.ByBlock.OwnOffDb is { } own90)
        {
            text.Line($"{"with the stations' own offsets",-50} {"",10} {own90,10:0.0}");
        }

        text.Line($"{"held by its 90 % interval",-50} {Share(fit.ByStation.Held),10} {Share(fit.ByBlock.Held),10}");
    }

    private static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    private static string Range(Estimate value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value.Median,6:0.0} {unit} ({value.Low:0.0} to {value.High:0.0})");
}
