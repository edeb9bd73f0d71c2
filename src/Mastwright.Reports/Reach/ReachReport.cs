using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Station.Radio;

namespace Mastwright.Reports.Reach;

/// <summary>A reach map with everything that its text, its document and its files tell.</summary>
internal sealed record ReachReport(PlanSession Session, ReachSetup Setup, ReachMap Map, GroundExtent Ground)
{
    private readonly Lazy<ReachTotals> totals = new(() => ReachTotals.Of(Map));

    /// <summary>All cells, where they are too many to be held at once: then <see cref="Map"/> is a coarser map for pictures and lines.</summary>
    internal WideMap? Wide { get; init; }

    /// <summary>The grid of all cells.</summary>
    internal GridFrame Frame => Wide?.Frame ?? Map.Field.Frame;

    /// <summary>What is counted over all cells.</summary>
    internal ReachTotals Totals => Wide?.Totals ?? totals.Value;

    /// <summary>The map of the fit-out that this one is compared with; null when none was asked for.</summary>
    internal ReachReport? Compared { get; init; }

    /// <summary>Weights on the cells of the map; null when none were asked for.</summary>
    internal ReachWeights? Weights { get; init; }

    /// <summary>How much the map moves over the range of the station's place and height; null when it was not asked for.</summary>
    internal ReachRange? Range { get; init; }

    /// <summary>What was tried for that, in words.</summary>
    internal ImmutableArray<string> Tried { get; init; } = [];

    /// <summary>What was assumed.</summary>
    internal ImmutableArray<Assumption> Assumptions => Range is null ? Setup.Assumptions : [.. Setup.Assumptions.Where(assumption => assumption.Code != "reach-best-guess")];

    internal PathSettings Settings => Session.Assessment.Settings;

    internal ImmutableArray<Finding> Findings { get; } = [.. Setup.Findings, .. ReachFindings.Of(Setup.Station, Map.Field, Ground)];

    /// <summary>The direction that a word means; heard where there is none, or another.</summary>
    internal static ReachDirection DirectionOf(string? word) => word switch { "hears" => ReachDirection.Hears, "both" => ReachDirection.Both, _ => ReachDirection.Heard };

    internal static string Word(ReachDirection direction) => direction switch
    {
        ReachDirection.Hears => "hears",
        ReachDirection.Both => "both",
        _ => "heard",
    };

    /// <summary>Frequency and modem setting in a line.</summary>
    internal string RadioText() => RadioText(Session.Plan.Modem);

    /// <summary>Frequency and modem setting in a line.</summary>
    internal static string RadioText(ModemSetting modem)
    {
        string rate = modem.Modulation == Modulation.ChirpSpreadSpectrum
            ? Text($"{modem.BandwidthHz / 1e3:0.###} kHz, spreading factor {modem.SpreadingFactor}, coding rate 4/{modem.CodingRateDenominator}")
            : Text($"{modem.BandwidthHz / 1e3:0.###} kHz, {modem.BitRate / 1e3:0.###} kbit/s");
        return Text($"{modem.FrequencyHz / 1e6:0.###} MHz, {rate}");
    }

    /// <summary>How the losses were found, in a line.</summary>
    internal string MethodText()
    {
        string how = Map.Field.SweepStepMetres is { } step ? Text($"from one sweep in steps of {step:0.#} m") : "each by its own path";
        return MethodText(Settings, Frame, how) + (Wide is null ? "" : Text($" Drawn in cells of {Map.Field.Frame.StepX:0.##} m."));
    }

    /// <summary>How losses on a grid were found, in a line.</summary>
    internal static string MethodText(PathSettings settings, GridFrame frame, string how) =>
        Text($"ITU-R P.1812, {settings.TimePercent:0.#} % of the time, {settings.LocationPercent:0.#} % of the places; cells of {frame.StepX:0.##} m, {how}; below 0.25 km free space and one knife edge. Grid: UTM {frame.UtmZone} {(frame.IsNorth ? "north" : "south")}, WGS 84.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
