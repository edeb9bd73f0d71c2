using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Shadow;
using Mastwright.Plans;

namespace Mastwright.Cli.Output;

/// <summary>A shadow on the terminal, 80 columns wide.</summary>
internal static class ShadowText
{
    internal static void Write(string plan, ShadowReport report, IReadOnlyList<string> written)
    {
        StringBuilder text = new();
        double all = report.Areas.Total;
        text.Wrapped(
            string.Create(CultureInfo.InvariantCulture, $"{plan}: {report.Setup.Station.Name} within {report.Shadow.Map.Field.Input.RadiusMetres / 1000:0.##} km, cells of {report.Shadow.Map.Field.Input.CellMetres:0.##} m, for {report.Setup.Receiver.Station.Name}"), 0);
        text.AppendLine();
        text.Line($"  {"",-36} {"km²",9} {"share",6}{string.Concat(Enumerable.Range(2, Math.Min(3, report.HopLimit - 1)).Select(hops => $"{$"{hops} hops",9}"))}");
        foreach (ShadowPart part in report.Parts)
        {
            string opened = part.Cause == ShadowCause.Reached
                ? ""
                : string.Concat(part.ByHops.Take(3).Select(area => (area / 1e6).ToString("0.0", CultureInfo.InvariantCulture).PadLeft(9)));
            text.Line($"  {ShadowExamination.Words(part.Cause),-36} {part.AreaSquareMetres / 1e6,9:0.0} {LinkOdds.ShortPercent(all == 0 ? null : part.AreaSquareMetres / 1e6 / all),6}{opened}");
        }

        text.Line($"  {"in all",-36} {all,9:0.0}");
        text.AppendLine();
        text.Wrapped(report.Relays.IsEmpty
            ? "No station of the plan passes on for it within the hop limit."
            : $"2 hops, 3 hops: km² of it that relays reach: {string.Join(", ", report.Relays.Select(relay => relay.Station.Name))}.", 0);
        if (report.Ridge.Length > 0)
        {
            RidgePoint nearest = report.Ridge.MinBy(point => point.DistanceMetres)!;
            RidgePoint highest = report.Ridge.MaxBy(point => point.GroundMetres)!;
            text.Wrapped(
                string.Create(CultureInfo.InvariantCulture, $"Ridges throw the shadow at {report.Ridge.Length} of 180 bearings; the nearest at {nearest.DistanceMetres / 1000:0.0} km, bearing {nearest.BearingDegrees:0}°; the highest of {highest.GroundMetres:0} m at {highest.DistanceMetres / 1000:0.0} km, bearing {highest.BearingDegrees:0}°."), 0);
        }

        foreach (Finding finding in report.Findings.Where(finding => finding.Code == "shadow-cause"))
        {
            text.Wrapped($"{FindingSentences.Text(finding)} {FindingSentences.Advice(finding)}", 0);
        }

        text.Findings(report.Findings);
        text.Assumed(report.Assumptions);
        text.Wrapped(CheckText.Promise, 0);
        foreach (string file in written)
        {
            text.Line($"Written: {file}");
        }

        Console.Out.Write(text.ToString());
    }
}
