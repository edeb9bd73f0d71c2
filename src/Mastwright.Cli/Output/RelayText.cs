using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Plans;

namespace Mastwright.Cli.Output;

/// <summary>A relay search on the terminal, 80 columns wide.</summary>
internal static class RelayText
{
    private const int NameWidth = 22;
    private const int FewNames = 8;

    internal static void Write(RelayReport report, IReadOnlyList<string> written)
    {
        StringBuilder text = new();
        string receiver = report.Receiver is { } who ? $", for {who.Station.Name}" : "";
        text.Wrapped(
            string.Create(CultureInfo.InvariantCulture, $"{report.Plan}: {(report.Asked == 1 ? "one relay" : $"up to {report.Asked} relays")} for {report.Home.Name}, {RelayFindings.GoalWords(report.Goal)}, within {report.HalfSideMetres / 1000:0.##} km to each side{receiver}"), 0);
        text.AppendLine();
        text.Wrapped($"In the network ({report.Settings.Wanted.MarginDb.ToString("0.#", CultureInfo.InvariantCulture)} dB both ways): {Names(report.Network)}. Outside: {Names(report.Outside)}.", 0);
        text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"Candidates: {report.Found}; {report.Linked} can count, {report.Weighed} of them were weighed. Now {RelayFindings.Value(report, report.Before)}; open {RelayFindings.Value(report, report.Open)}."), 0);
        Relays(text, report);
        foreach (Finding finding in report.Findings.Where(one => one.Code is "relay-choice" or "relay-bound"))
        {
            text.AppendLine();
            text.Wrapped(FindingSentences.Text(finding), 0);
        }

        if (!report.Chosen.IsEmpty)
        {
            text.AppendLine();
            text.Wrapped("Go and look before anything is bought: maps know neither whose a place is nor what stands there.", 0);
        }

        Ranking(text, report);
        text.Findings(report.Findings);
        text.Assumed(report.Assumptions);
        text.Wrapped(CheckText.Promise, 0);
        foreach (string file in written)
        {
            text.Line($"Written: {file}");
        }

        Console.Out.Write(text.ToString());
    }

    private static void Relays(StringBuilder text, RelayReport report)
    {
        if (report.Chosen.IsEmpty)
        {
            return;
        }

        text.AppendLine();
        text.Line($"    {"",-NameWidth} {"position",20} {"ground",7} {"mast",6} {"adds",9}");
        for (int i = 0; i < report.Chosen.Length; i++)
        {
            ChosenRelay relay = report.Chosen[i];
            string place = string.Create(CultureInfo.InvariantCulture, $"{relay.Candidate.Place.LatitudeDegrees:0.00000}, {relay.Candidate.Place.LongitudeDegrees:0.00000}");
            string ground = relay.GroundMetres is { } metres ? metres.ToString("0 m", CultureInfo.InvariantCulture) : "?";
            text.Line($"  {i + 1} {LinksText.Fit(relay.Candidate.Name, NameWidth),-NameWidth} {place,20} {ground,7} {relay.Candidate.MastMetres.ToString("0.# m", CultureInfo.InvariantCulture),6} {Amount(report, relay.Gain),9}");
            foreach (LinkReport parent in relay.Parents)
            {
                double works = Math.Min(parent.Out.Odds!.Value.Works, parent.Back.Odds!.Value.Works);
                text.Line($"      to {LinksText.Fit(parent.To.Name, NameWidth),-NameWidth} {parent.Segment.DistanceMetres / 1000,6:0.0} km {Margin(parent.Out),6} there {Margin(parent.Back),6} back, works {LinkOdds.ShortPercent(works)}");
            }
        }

        text.Wrapped($"adds: {report.Unit}, besides those above. there, back: margin in dB at the best guess.", 0);
    }

    private static void Ranking(StringBuilder text, RelayReport report)
    {
        if (report.Ranking.Length < 2)
        {
            return;
        }

        text.AppendLine();
        text.Line($"Each as the only relay, the best first ({report.Unit}; margin in dB to the network)");
        foreach (RankedRelay ranked in report.Ranking)
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"{ranked.Candidate.Place.LatitudeDegrees:0.00000}, {ranked.Candidate.Place.LongitudeDegrees:0.00000}");
            text.Line($"    {LinksText.Fit(ranked.Candidate.Name, NameWidth),-NameWidth} {place,20} {Amount(report, ranked.Alone),9} {ranked.MarginDb?.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) ?? "–",7}");
        }
    }

    private static string Amount(RelayReport report, double value) =>
        value.ToString(report.Goal is RelayGoal.Shadow or RelayGoal.Weights ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Margin(LinkDirection direction) => direction.MarginDb is { } margin ? margin.Median.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) : "?";

    private static string Names(ImmutableArray<string> names) => names.IsEmpty
        ? "none"
        : string.Join(", ", names.Take(FewNames)) + (names.Length > FewNames ? string.Create(CultureInfo.InvariantCulture, $" and {names.Length - FewNames} more") : "");
}
