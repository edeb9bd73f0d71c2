using System.CommandLine;
using System.Globalization;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;

namespace Mastwright.Cli;

/// <summary>The options of a relay search: how many, where they may stand, what is looked at.</summary>
internal sealed class RelaySearchOptions
{
    private const int MostSwept = 5_000;
    private const double LeastMastMetres = 0.5;
    private const double MostMastMetres = 200;

    private readonly Option<int?> relays = Options.Whole("--relays", "Most relays, 1 to 5 (default 1).");
    private readonly Option<bool> through = new("--through-relays") { Description = "Let a relay count that hangs on another one of the choice; else each needs a link of its own to the network as it is." };
    private readonly Option<Estimate?> area = Options.Quantity("--area", Dimension.Length, "How far to the north, east, south and west of STATION is looked at (default 10 km).");
    private readonly Option<Estimate?> cell = Options.Quantity("--cell", Dimension.Length, "Side of a cell (default 90 m).");
    private readonly Option<Estimate?> reach = Options.Quantity("--reach", Dimension.Length, "How far a station is taken to reach (default twice the area, at most 30 km).");
    private readonly Option<string?> receiver = new("--receiver") { Description = "Who is to be reached: handheld (default), handheld-indoors, mast, or the key of a neighbour or site that it is like." };
    private readonly Option<Estimate?> receiverHeight = Options.Quantity("--receiver-height", Dimension.Length, "Height of the receiver above ground (default 1.5 m, a mast 6 m).");
    private readonly Option<string?> direction = new("--direction") { Description = "heard (default): stations send; hears: they receive; both: the weaker way." };
    private readonly Option<bool> land = new("--land-only") { Description = "Leave out cells whose ground is not above the sea." };
    private readonly Option<string?> weights = new("--weights") { HelpName = "FILE", Description = "Places with weights, or a raster of counts, for --goal weights." };
    private readonly Option<string?> like = new("--like") { HelpName = "STATION", Description = "Station whose radio, feed and antenna a relay has (default STATION)." };
    private readonly Option<Estimate?> mast = Options.Quantity("--mast", Dimension.Length, "Height of a relay's antenna above ground (default 6 m).");
    private readonly Option<string[]> sites = new("--candidate") { HelpName = "SITE/FIT-OUT", Description = "A site of the plan that is a candidate; may be given several times. Then none are looked for on the ground." };
    private readonly Option<string?> places = new("--places") { HelpName = "FILE", Description = "Places that are the candidates (.csv, .geojson, .gpx, .kml; mast, power and access are read). Then none are looked for on the ground." };
    private readonly Option<int?> candidates = Options.Whole("--candidates", "Most candidates that are looked for on the ground (default 500).");
    private readonly Option<Estimate?> spacing = Options.Quantity("--spacing", Dimension.Length, "Least distance between two of them (default 300 m).");
    private readonly Option<Estimate?> prominence = Options.Quantity("--prominence", Dimension.Length, "Least prominence of a summit (default 10 m).");
    private readonly Option<int?> swept = Options.Whole("--swept", "Most candidates that are swept; the others are left out by what is in sight of them (default 120).");
    private readonly Option<Estimate?> step = Options.Quantity("--step", Dimension.Length, "Least step of the sweeps over the ground (default half a cell; 0 m for the ground's own).");
    private readonly Option<string?> exclude = new("--exclude") { HelpName = "FILE", Description = "Areas where no relay may stand (GeoJSON)." };
    private readonly Option<string?> track = new("--track") { HelpName = "FILE", Description = "Tracks that a relay has to stand near (GeoJSON lines)." };
    private readonly Option<Estimate?> trackDistance = Options.Quantity("--track-distance", Dimension.Length, "How near (default 1 km).");

    internal RelaySearchOptions() => direction.AcceptOnlyFromAmong("heard", "hears", "both");

    private IEnumerable<Option> All =>
        [relays, through, area, cell, reach, receiver, receiverHeight, direction, land, weights, like, mast, sites, places, candidates, spacing, prominence, swept, step, exclude, track, trackDistance];

    internal void AddTo(Command command)
    {
        foreach (Option option in All)
        {
            command.Add(option);
        }
    }

    internal RelayOptions Read(ParseResult parsed, string station, RelayGoal goal) => new()
    {
        Home = station,
        Goal = goal,
        Relays = parsed.GetValue(relays) ?? 1,
        ThroughRelays = parsed.GetValue(through),
        HalfSideMetres = parsed.GetValue(area)?.Median ?? RelayOptions.UsualHalfSideMetres,
        CellMetres = parsed.GetValue(cell)?.Median ?? RelayOptions.UsualCellMetres,
        ReachAskedMetres = parsed.GetValue(reach)?.Median,
        Receiver = parsed.GetValue(receiver) ?? ReachReceiver.HandheldKey,
        ReceiverHeightMetres = parsed.GetValue(receiverHeight)?.Median,
        Direction = ReachReport.DirectionOf(parsed.GetValue(direction)),
        LandOnly = parsed.GetValue(land),
        WeightsFile = parsed.GetValue(weights),
        Like = parsed.GetValue(like),
        MastMetres = parsed.GetValue(mast)?.Median,
        Sites = [.. parsed.GetValue(sites) ?? []],
        PlacesFile = parsed.GetValue(places),
        Candidates = parsed.GetValue(candidates) ?? RelayOptions.UsualCandidates,
        SpacingMetres = parsed.GetValue(spacing)?.Median ?? RelayOptions.UsualSpacingMetres,
        ProminenceMetres = parsed.GetValue(prominence)?.Median ?? RelayOptions.UsualProminenceMetres,
        Swept = parsed.GetValue(swept) ?? RelayOptions.UsualSwept,
        StepAskedMetres = parsed.GetValue(step)?.Median,
        ExcludeFile = parsed.GetValue(exclude),
        TrackFile = parsed.GetValue(track),
        TrackMetres = parsed.GetValue(trackDistance)?.Median ?? RelayOptions.UsualTrackMetres,
    };

    /// <summary>What is wrong with what was asked for; null when nothing is.</summary>
    internal static string? Problem(RelayOptions options) => options switch
    {
        { Relays: < 1 or > RelayOptions.MostRelays } => Text($"--relays: {options.Relays} is out of range; 1 to {RelayOptions.MostRelays} are possible"),
        { Candidates: < 1 or > RelayOptions.MostCandidates } => Text($"--candidates: {options.Candidates} is out of range; 1 to {RelayOptions.MostCandidates} are possible"),
        { Swept: < 1 or > MostSwept } => Text($"--swept: {options.Swept} is out of range; 1 to {MostSwept} are possible"),
        { MastMetres: < LeastMastMetres or > MostMastMetres } => Text($"--mast: {options.MastMetres:0.##} m is out of range; {LeastMastMetres:0.#} to {MostMastMetres:0} m are possible"),
        { SpacingMetres: < 0 } => Text($"--spacing: {options.SpacingMetres:0.##} m is less than nothing"),
        { ProminenceMetres: <= 0 } => Text($"--prominence: {options.ProminenceMetres:0.##} m is not above zero"),
        { StepMetres: < 0 } => Text($"--step: {options.StepMetres:0.##} m is less than nothing"),
        { TrackMetres: < 0 } => Text($"--track-distance: {options.TrackMetres:0.##} m is less than nothing"),
        { Goal: RelayGoal.Weights, WeightsFile: null } => "--goal weights needs the weights: --weights FILE",
        { Goal: not RelayGoal.Weights, WeightsFile: not null } => "--weights: they count for --goal weights alone",
        _ => null,
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
