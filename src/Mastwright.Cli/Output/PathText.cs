using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Plans;
using Mastwright.Propagation;
using Spectre.Console;

namespace Mastwright.Cli.Output;

/// <summary>One link on the terminal: verdict, both budgets, spreads, obstructions, mast heights, intermediates.</summary>
internal static class PathText
{
    internal static void Write(Assessment assessment, LinkReport link, MastHeights heights)
    {
        IAnsiConsole console = AnsiConsole.Console;
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{link.From.Name} ({link.From.Subject}) ~ {link.To.Name} ({link.To.Subject})"));
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{link.Segment.DistanceMetres / 1000:0.00} km, bearing {link.Segment.InitialBearingDegrees:0.0}°, {assessment.Settings.FrequencyHz / 1e6:0.###} MHz"));
        console.WriteLine();
        console.WriteLine(VerdictText.Word(link.Finding.Verdict), VerdictText.Style(link.Finding.Verdict));
        Wrap(console, FindingSentences.Text(link.Finding));
        Wrap(console, FindingSentences.Advice(link.Finding));
        Direction(console, link.Out);
        Direction(console, link.Back);
        console.WriteLine();
        StringBuilder text = new();
        if (link.Path.Clearance is { } clearance)
        {
            ClearanceText.Append(text, clearance);
        }

        if (link.Path.ClearanceLowK is { } low)
        {
            text.AppendLine();
            ClearanceText.Append(text, low);
        }

        if (link.Path.Profile is not null)
        {
            text.AppendLine();
            Heights(text, assessment, link, heights);
        }

        Ground(text, link);
        Air(text, link.From.Name, link.Path.Air);
        if (link.Path.Out?.P1812Result is { } result)
        {
            text.AppendLine();
            text.Line($"Intermediates from {link.From.Name} to {link.To.Name}, by the symbols of ITU-R P.1812");
            BarePathText.Columns(text, result.Named());
        }

        Console.Out.Write(text.ToString());
        Notes(console, assessment, link);
    }

    private static void Direction(IAnsiConsole console, LinkDirection direction)
    {
        console.WriteLine();
        StringBuilder text = new();
        if (direction.Budget is not { } budget)
        {
            text.Wrapped($"{direction.From.Name} → {direction.To.Name}: unknown, for want of {string.Join("; ", direction.Missing)}", 0);
            Console.Out.Write(text.ToString());
            return;
        }

        BarePathText.Append(text, budget);
        Estimate(text, direction);
        if (direction.From.Radiated is { } radiated)
        {
            text.Wrapped(FormattableString.Invariant($"radiated along the main beam: EIRP {radiated.EirpDbm.Median:0.0} dBm, ERP {radiated.ErpDbm.Median:0.0} dBm; hold it against the rules of the place"), 2);
        }

        if (direction.Spread is { } spread && direction.Odds is { } odds)
        {
            text.Wrapped(FormattableString.Invariant($"not known about the link: ±{spread.Unknown.Total:0.0} dB ({string.Join(", ", spread.Unknown.Lines.Select(Spread))})"), 2);
            text.Line($"  from packet to packet:    ±{spread.Fading.Total:0.0} dB");
            text.Line($"  {odds}");
        }

        Console.Out.Write(text.ToString());
        if (direction.To.RequiredLedger is { } required)
        {
            StringBuilder needs = new();
            BarePathText.Append(needs, required);
            Console.Out.Write(needs.ToString());
        }
    }

    private static string Spread(LedgerLine line) =>
        char.ToLowerInvariant(line.Label[0]) + line.Label[1..] + line.Note.Replace("standard deviation", "", StringComparison.Ordinal).Replace(", added in power", "", StringComparison.Ordinal);

    private static void Estimate(StringBuilder text, LinkDirection direction)
    {
        if (direction.MarginDb is { IsExact: false } margin)
        {
            text.Line($"  over the ranges given: {margin.Low:+0.0;-0.0;0.0} to {margin.High:+0.0;-0.0;0.0} dB");
        }
    }

    private static void Heights(StringBuilder text, Assessment assessment, LinkReport link, MastHeights heights)
    {
        text.AppendLine("Height above ground that one antenna would need, the other staying as it is");
        text.Line($"  {"",-34} {Fit(link.From.Name),16} {Fit(link.To.Name),16}");
        text.Line($"  {"as planned",-34} {Metres(link.Path.FromHeightMetres?.Median),16} {Metres(link.Path.ToHeightMetres?.Median),16}");
        text.Line($"  {$"for a margin of {assessment.Settings.Wanted.MarginDb.ToString("0.#", CultureInfo.InvariantCulture)} dB both ways",-34} {Needed(heights.From.ForMarginMetres, link),16} {Needed(heights.To.ForMarginMetres, link),16}");
        text.Line($"  {"to clear 0.6 Fresnel at k = 4/3",-34} {Over(heights.From.ForClearanceMetres),16} {Over(heights.To.ForClearanceMetres),16}");
        text.Line($"  {$"to clear 0.6 Fresnel at k = {assessment.Settings.LowKFactor.ToString("0.##", CultureInfo.InvariantCulture)}",-34} {Over(heights.From.ForClearanceLowKMetres),16} {Over(heights.To.ForClearanceLowKMetres),16}");
    }

    private static string Needed(double? metres, LinkReport link) => link.Weaker.MarginDb is null ? "unknown" : Over(metres);

    private static string Over(double? metres) => metres is null ? "over 200 m" : Metres(metres);

    private static string Metres(double? metres) => metres is { } value ? value.ToString("0.0 m", CultureInfo.InvariantCulture) : "unknown";

    private static string Fit(string name) => name.Length <= 16 ? name : name[..15] + "…";

    private static void Ground(StringBuilder text, LinkReport link)
    {
        if (link.Path.Terrain is not { } terrain)
        {
            return;
        }

        text.AppendLine();
        string sources = string.Join("; ", terrain.Sources.Select(source =>
            $"{source.Name} ({source.Points} points, {Commands.GroundCommand.Kind(source.Kind)}, {(source.Datum.Length == 0 ? "datum unknown" : source.Datum)})"));
        text.Wrapped(FormattableString.Invariant($"Ground: {terrain.Count} points {terrain.StepMetres:0.0} m apart, from {sources}"), 0);
        Zones(text, terrain);
        foreach (GroundGap gap in terrain.Gaps)
        {
            text.Wrapped($"Missing: {gap}", 0);
        }
    }

    /// <summary>Shares of the zones among the points with a height: nobody knows what lies in a gap.</summary>
    private static void Zones(StringBuilder text, TerrainProfile terrain)
    {
        Zone[] known = [.. Enumerable.Range(0, terrain.Count).Where(i => !double.IsNaN(terrain.HeightsMetres[i])).Select(i => terrain.Zones[i])];
        if (known.Length == 0)
        {
            text.Line($"Zones: unknown, for want of ground");
            return;
        }

        string where = known.Length == terrain.Count ? "" : FormattableString.Invariant($" of the {100.0 * known.Length / terrain.Count:0} % with ground");
        text.Line($"Zones{where}: sea {Share(Zone.Sea):0} %, coastal land {Share(Zone.Coast):0} %, inland {Share(Zone.Inland):0} %");

        double Share(Zone zone) => 100.0 * known.Count(one => one == zone) / known.Length;
    }

    private static void Air(StringBuilder text, string station, PathAir air)
    {
        text.Wrapped(FormattableString.Invariant($"Air at {station}: ΔN {air.RefractivityGradient:0.0} N-units/km ({air.RefractivityGradientSource}), k = {air.KFactor:0.00}; N0 {air.SurfaceRefractivity:0.0} N-units ({air.SurfaceRefractivitySource})"), 0);
    }

    private static void Notes(IAnsiConsole console, Assessment assessment, LinkReport link)
    {
        foreach (Finding finding in link.Findings.Concat(assessment.FindingsBeside(link)).Where(finding => finding.Verdict != Verdict.Ok))
        {
            console.WriteLine();
            console.WriteLine(VerdictText.Word(finding.Verdict) + "  " + finding.Subject, VerdictText.Style(finding.Verdict));
            Wrap(console, FindingSentences.Text(finding));
            Wrap(console, FindingSentences.Advice(finding));
        }

        console.WriteLine();
        foreach (IGrouping<string, Assumption> group in assessment.AssumptionsOf(link).GroupBy(assumption => assumption.Words, StringComparer.Ordinal))
        {
            string[] places = [.. group.Select(assumption => assumption.PlanPath).Where(path => path.Length > 0).Distinct(StringComparer.Ordinal)];
            Wrap(console, $"Assumed: {group.Key}{(places.Length == 0 ? "" : ": " + string.Join(", ", places))}");
        }
    }

    private static void Wrap(IAnsiConsole console, string text)
    {
        if (text.Length > 0)
        {
            console.Write(new Padder(new Text(text), new Padding(2, 0, 0, 0)));
        }
    }
}
