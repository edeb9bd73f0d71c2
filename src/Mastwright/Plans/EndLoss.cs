using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Propagation;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>What an end of a link adds to the loss of the path: clutter around it, a building, woodland.</summary>
/// <param name="Lines">Lines as losses, positive, in dB.</param>
/// <param name="Spreads">What is not known about them.</param>
/// <param name="RangeDb">The sum of the lines at the least, the best guess and the most of what the plan gives with a range.</param>
/// <param name="CoverTakenOutMetres">Distance from this end within which the cover of the profile must be taken out, because a line stands for it; 0 for none.</param>
/// <param name="Findings">What is to be said of them.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Missing">Plan paths of inputs without which the loss of this end is unknown.</param>
internal sealed record EndLoss(
    ImmutableArray<LedgerLine> Lines,
    ImmutableArray<SpreadPart> Spreads,
    Estimate RangeDb,
    double CoverTakenOutMetres,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Assumption> Assumptions,
    ImmutableArray<string> Missing)
{
    /// <summary>Standard deviation in dB of woodland's loss about the formula, from memory of ITU-R P.833.</summary>
    private const double WoodlandDeviationDb = 9;

    /// <summary>The losses of one end.</summary>
    /// <param name="station">The station at the end.</param>
    /// <param name="frequencyHz">Frequency in Hz.</param>
    /// <param name="antennaMetres">Height of its antenna above the ground, in metres.</param>
    /// <param name="elevationDegrees">Elevation of the path at this end.</param>
    /// <param name="isSurface">Whether the ground is a surface model, which holds the clutter already.</param>
    internal static EndLoss Of(LinkStation station, double frequencyHz, double antennaMetres, double elevationDegrees, bool isSurface)
    {
        Collector collector = new();
        Clutter(station, frequencyHz, antennaMetres, isSurface, collector);
        Building(station, frequencyHz, elevationDegrees, collector);
        Trees(station, frequencyHz, isSurface, collector);
        return new(
            collector.Lines.ToImmutable(),
            collector.Spreads.ToImmutable(),
            collector.RangeDb,
            collector.CoverTakenOutMetres,
            collector.Findings.ToImmutable(),
            collector.Assumptions.ToImmutable(),
            collector.Missing.ToImmutable());
    }

    private static void Clutter(LinkStation station, double frequencyHz, double antennaMetres, bool isSurface, Collector to)
    {
        Surroundings around = station.Surroundings;
        if (around.ClutterHeightMetres is null && around.ClutterKind.Length == 0)
        {
            return;
        }

        string subject = station.PlanPath + "/surroundings";
        if (isSurface)
        {
            to.Findings.Add(Refused("terminal-clutter-over-surface", subject, "the ground is a surface model, which holds the clutter already"));
            return;
        }

        if (frequencyHz is < TerminalClutter.LowestFrequencyHz or > TerminalClutter.HighestFrequencyHz)
        {
            to.Findings.Add(Refused("terminal-clutter-range", subject, "ITU-R P.2108 clause 3.1 is given for 30 MHz to 3 GHz"));
            return;
        }

        TerminalSurroundings kind = around.ClutterKind switch
        {
            "water" => TerminalSurroundings.Water,
            "open" => TerminalSurroundings.Open,
            "urban" => TerminalSurroundings.Urban,
            "woodland" => TerminalSurroundings.Woodland,
            "dense-urban" => TerminalSurroundings.DenseUrban,
            _ => TerminalSurroundings.Suburban,
        };
        if (around.ClutterKind.Length == 0)
        {
            to.Assumptions.Add(new("clutter-kind", $"clutter around {station.Name}: suburban", "common practice", subject + "/clutter"));
        }

        Estimate heights = around.ClutterHeightMetres ?? Estimate.Exactly(TerminalClutter.CoverHeightMetres(kind));
        double height = heights.Median;
        if (around.ClutterHeightMetres is null)
        {
            to.Assumptions.Add(new("clutter-height", Text($"height of the clutter around {station.Name}: {height:0.#} m"), "ITU-R P.2108 clause 3.1", subject + "/clutter-height"));
        }

        to.TakeOutCover(TerminalClutter.DefaultExtentMetres);
        if (heights.High <= 0)
        {
            return;
        }

        double street = around.StreetWidthMetres ?? TerminalClutter.DefaultStreetWidthMetres;
        double Loss(double metres) => metres <= 0 ? 0 : TerminalClutter.LossDb(frequencyHz, antennaMetres, kind, metres, street);
        double loss = Loss(height);
        to.Add(new(
            "terminal-clutter",
            $"Clutter around {station.Name}",
            loss,
            "ITU-R P.2108 clause 3.1",
            Text($"{height:0.#} m high; takes the place of the cover within {TerminalClutter.DefaultExtentMetres:0} m")),
            heights.Map(Loss));
    }

    private static void Building(LinkStation station, double frequencyHz, double elevationDegrees, Collector to)
    {
        if (!station.Indoors)
        {
            return;
        }

        string subject = station.PlanPath + "/surroundings/building";
        if (station.Surroundings.BuildingKind.Length == 0)
        {
            to.Missing.Add(subject);
            return;
        }

        BuildingKind kind = station.Surroundings.BuildingKind == "thermally-efficient" ? BuildingKind.ThermallyEfficient : BuildingKind.Traditional;
        double loss = BuildingEntry.LossDb(frequencyHz, kind, 50, elevationDegrees);
        double deviation = (BuildingEntry.LossDb(frequencyHz, kind, 84.134, elevationDegrees) - BuildingEntry.LossDb(frequencyHz, kind, 15.866, elevationDegrees)) / 2;
        to.Add(new("building-entry", $"Walls around {station.Name}", loss, "ITU-R P.2109", "median over buildings and places in them"), Estimate.Exactly(loss));
        to.Spreads.Add(new("building-entry", $"Walls around {station.Name}", deviation, "ITU-R P.2109, half of its range from 15.9 to 84.1 %"));
    }

    private static void Trees(LinkStation station, double frequencyHz, bool isSurface, Collector to)
    {
        if (station.Surroundings.WoodlandDepthMetres is not { } depth)
        {
            return;
        }

        const WoodlandKind Kind = WoodlandKind.MixedNorthern;
        string subject = station.PlanPath + "/surroundings/woodland-depth";
        if (isSurface)
        {
            to.Findings.Add(Refused("woodland-over-surface", subject, "the ground is a surface model, which holds the trees already"));
            return;
        }

        if (!Woodland.Covers(frequencyHz, Kind))
        {
            to.Findings.Add(Refused("woodland-range", subject, "its largest loss was measured for 105.9 to 2117.5 MHz"));
            return;
        }

        double loss = Woodland.LossDb(depth, frequencyHz, Kind);
        to.TakeOutCover(depth);
        to.Assumptions.Add(new("woodland-kind", $"woodland at {station.Name}: mixed coniferous and deciduous", "ITU-R P.833 (coefficients from memory)", ""));
        to.Add(
            new("woodland", $"Woodland at {station.Name}", loss, "ITU-R P.833 section 2.1 (coefficients from memory)", Text($"{depth:0} m inside it; takes the place of the cover there")),
            Estimate.Exactly(loss));
        to.Spreads.Add(new("woodland", $"Woodland at {station.Name}", WoodlandDeviationDb, "ITU-R P.833 (from memory)"));
    }

    private static Finding Refused(string code, string subject, string why) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = Verdict.Unknown,
        Source = "ITU-R P.1812 and the Recommendation asked for",
        Details = ImmutableSortedDictionary<string, string>.Empty.Add("why", why),
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed class Collector
    {
        public Estimate RangeDb { get; private set; }

        public double CoverTakenOutMetres { get; private set; }

        public void TakeOutCover(double metres) => CoverTakenOutMetres = Math.Max(CoverTakenOutMetres, metres);

        public void Add(LedgerLine line, Estimate rangeDb)
        {
            Lines.Add(line);
            RangeDb += rangeDb;
        }

        public ImmutableArray<LedgerLine>.Builder Lines { get; } = ImmutableArray.CreateBuilder<LedgerLine>();

        public ImmutableArray<SpreadPart>.Builder Spreads { get; } = ImmutableArray.CreateBuilder<SpreadPart>();

        public ImmutableArray<Finding>.Builder Findings { get; } = ImmutableArray.CreateBuilder<Finding>();

        public ImmutableArray<Assumption>.Builder Assumptions { get; } = ImmutableArray.CreateBuilder<Assumption>();

        public ImmutableArray<string>.Builder Missing { get; } = ImmutableArray.CreateBuilder<string>();
    }
}
