using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>One part of the supply, in the order from the source to the loads.</summary>
/// <param name="PlanPath">Where in the plan it stands, for ledgers and findings.</param>
public abstract record SupplyPart(string PlanPath)
{
    /// <summary>What the plan calls it; may be empty.</summary>
    public string Name { get; init; } = "";

    private protected static double Positive(double value, string what) =>
        value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(what, "The value is finite and greater than zero.");
}

/// <summary>Where the power comes from: a mains adapter, a passive injector, or a power-over-cable source of a class.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Kind">What it is.</param>
public sealed record SupplySource(string PlanPath, SupplySourceKind Kind) : SupplyPart(PlanPath)
{
    /// <summary>Class of a power-over-cable source, such as "class-3"; empty for other kinds.</summary>
    public string ClassKey { get; init; } = "";

    /// <summary>Its voltage; null for the least that the class allows.</summary>
    public double? Volts { get; init => field = value is { } given ? Positive(given, nameof(Volts)) : null; }

    /// <summary>The most it gives, in watts; null when nobody said (the class's figure for a power-over-cable source).</summary>
    public double? RatedWatts { get; init => field = value is { } given ? Positive(given, nameof(RatedWatts)) : null; }

    /// <summary>Efficiency from the mains, above 0 to 1; null for the catalogue's curve of a mains adapter.</summary>
    public double? Efficiency { get; init; }
}

/// <summary>Kinds of source.</summary>
public enum SupplySourceKind
{
    /// <summary>A mains adapter with a direct-voltage output.</summary>
    MainsAdapter,

    /// <summary>A source by IEEE 802.3 that asks before it feeds.</summary>
    PowerOverCable,

    /// <summary>A passive injector: its voltage stands on the pairs whatever is plugged in.</summary>
    Injector,
}

/// <summary>A cable: a data cable over whose pairs the power goes, or a cable with two cores.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="IsData">Whether it is a data cable.</param>
/// <param name="CableType">Catalogue key, such as "cat-5e"; empty when the plan describes its conductors.</param>
/// <param name="LengthMetres">Its length in metres with its precision: zero or more.</param>
public sealed record SupplyCable(string PlanPath, bool IsData, string CableType, Estimate LengthMetres) : SupplyPart(PlanPath)
{
    /// <summary>Its length in metres with its precision: zero or more.</summary>
    public Estimate LengthMetres { get; init; } = LengthMetres.Low >= 0 && double.IsFinite(LengthMetres.High)
        ? LengthMetres
        : throw new ArgumentOutOfRangeException(nameof(LengthMetres), "A length is finite and zero or more.");

    /// <summary>Its conductors, where no type of the catalogue is named.</summary>
    public CableConductor? Conductor { get; init; }

    /// <summary>Its type or its conductors, as on a parts list.</summary>
    public string Make => CableType.Length > 0 ? CableType : Conductor?.ToString() ?? "";

    /// <summary>Pairs that carry the power, 1, 2 or 4, half of their conductors each way; null for what the source uses.</summary>
    public int? Pairs { get; init; }

    /// <summary>Temperature around the cable in its bundle, in °C; null when nobody said.</summary>
    public double? TemperatureCelsius { get; init; }
}

/// <summary>A converter from one direct voltage to another.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="OutputVolts">Its output voltage.</param>
public sealed record SupplyConverter(string PlanPath, double OutputVolts) : SupplyPart(PlanPath)
{
    /// <summary>Its output voltage.</summary>
    public double OutputVolts { get; init; } = Positive(OutputVolts, nameof(OutputVolts));

    /// <summary>Catalogue key of its kind; empty when nobody said.</summary>
    public string Kind { get; init; } = "";

    /// <summary>The most it gives, in watts; null when nobody said.</summary>
    public double? RatedWatts { get; init => field = value is { } given ? Positive(given, nameof(RatedWatts)) : null; }

    /// <summary>Efficiency, above 0 to 1; null for the curve of its kind.</summary>
    public double? Efficiency { get; init; }

    /// <summary>The voltage that it wants at its input, least and most; null when nobody said.</summary>
    public Estimate? InputVolts { get; init; }
}

/// <summary>A fuse.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Amperes">Its rated current.</param>
public sealed record SupplyFuse(string PlanPath, double Amperes) : SupplyPart(PlanPath);

/// <summary>A surge arrester in a data cable.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Ohms">Its resistance in the loop, zero or more; null when nobody said: none is counted then, and listed as assumed.</param>
public sealed record SupplyArrester(string PlanPath, double? Ohms) : SupplyPart(PlanPath);

/// <summary>A battery with its charger: everything behind it is held up.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="CellType">Catalogue key of its cells, such as "li-ion".</param>
public sealed record SupplyBattery(string PlanPath, string CellType) : SupplyPart(PlanPath)
{
    /// <summary>Cells in series, 1 or more; null when nobody said: one.</summary>
    public int? Series { get; init; }

    /// <summary>Cells side by side, 1 or more; null when nobody said: one.</summary>
    public int? Parallel { get; init; }

    /// <summary>How many cells it is made of.</summary>
    public int CellCount => (Series ?? 1) * (Parallel ?? 1);

    /// <summary>Capacity of one cell in ampere-hours; null for the catalogue's.</summary>
    public double? AmpereHours { get; init => field = value is { } given ? Positive(given, nameof(AmpereHours)) : null; }

    /// <summary>Age in years, with its range; null when nobody said.</summary>
    public Estimate? AgeYears { get; init; }

    /// <summary>Share of its charge when it takes over, 0 to 1, with its range; null when nobody said.</summary>
    public Estimate? ChargeAtStart { get; init; }

    /// <summary>Voltage of the whole battery at which it is switched off; null when only the cells' own cut-off counts.</summary>
    public double? CutOffVolts { get; init; }

    /// <summary>The current in amperes that the charger gives to battery and loads together; null when nobody said.</summary>
    public double? ChargerAmperes { get; init => field = value is { } given ? Positive(given, nameof(ChargerAmperes)) : null; }

    /// <summary>Efficiency of the charger, above 0 to 1; null for the catalogue's.</summary>
    public double? ChargerEfficiency { get; init; }

    /// <summary>The voltage that the charger wants at its input, least and most; null when nobody said.</summary>
    public Estimate? InputVolts { get; init; }

    /// <summary>Whether the charger stops where the cells are too cold for charging; null when nobody said.</summary>
    public bool? StopsChargeInCold { get; init; }

    /// <summary>Hours that it is wanted to last; null when nobody said.</summary>
    public double? WantedHours { get; init; }

    /// <summary>Temperature of the battery in °C, with its range; null for that of the box.</summary>
    public Estimate? TemperatureCelsius { get; init; }
}

/// <summary>A board or a radio.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="IsRadio">Whether it is a radio.</param>
/// <param name="LoadType">Catalogue key; empty when the plan gives its figures itself.</param>
public sealed record SupplyLoad(string PlanPath, bool IsRadio, string LoadType) : SupplyPart(PlanPath)
{
    /// <summary>Power asleep in watts; null for the catalogue's.</summary>
    public Estimate? SleepWatts { get; init; }

    /// <summary>Power awake in watts, a board idle or a radio receiving; null for the catalogue's.</summary>
    public Estimate? AwakeWatts { get; init; }

    /// <summary>Power at its peak in watts, a board busy or a radio transmitting; null for the catalogue's.</summary>
    public Estimate? PeakWatts { get; init; }

    /// <summary>The most it takes while it starts, in watts; null for the catalogue's, or none beyond its peak.</summary>
    public double? BootWatts { get; init; }

    /// <summary>Share of time asleep, 0 to 1; null for none.</summary>
    public double? SleepShare { get; init; }

    /// <summary>Share of time at its peak, 0 to 1; null when nobody said: a radio's then comes from the station's traffic.</summary>
    public double? PeakShare { get; init; }

    /// <summary>The voltage at its input, least and most; null for the catalogue's.</summary>
    public Estimate? InputVolts { get; init; }
}

/// <summary>Where the supply forks: every branch hangs on the same two terminals.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Branches">The branches, one or more.</param>
public sealed record SupplyBranches(string PlanPath, ImmutableArray<SupplyBranch> Branches) : SupplyPart(PlanPath);

/// <summary>One branch of a fork.</summary>
/// <param name="Key">Its key in the plan.</param>
/// <param name="Parts">Its parts from the fork to the loads.</param>
public sealed record SupplyBranch(string Key, ImmutableArray<SupplyPart> Parts);
