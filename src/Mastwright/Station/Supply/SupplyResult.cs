using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>What came of a supply.</summary>
public sealed record SupplyResult
{
    /// <summary>The plan does not speak of the supply.</summary>
    public static SupplyResult Nothing { get; } = new();

    /// <summary>Mean power out of the source in watts, or out of the battery that the supply begins with; null when unknown.</summary>
    public double? MeanWatts { get; init; }

    /// <summary>Whether it starts, as far as is known: where it does not, its mean power is only what it would draw.</summary>
    public bool Starts { get; init; } = true;

    /// <summary>Mean power drawn in watts, the total of the mean power's ledger: from the mains with the source's own loss, or out of the battery; null when unknown.</summary>
    public double? DrawnWatts { get; init; }

    /// <summary>What of <see cref="DrawnWatts"/> is lost, in watts: every line of that ledger that is a loss, the source's own among them; null when unknown.</summary>
    public double? LostWatts { get; init; }

    /// <summary>Whether the source's own loss from the mains is among them; false where it is not known, and for a battery, which has none.</summary>
    public bool IsFromMains { get; init; }

    /// <summary>Greatest power out of it in watts; null when unknown, or when it does not start.</summary>
    public double? PeakWatts { get; init; }

    /// <summary>Every part on average, from the source to the loads; empty when unknown.</summary>
    public ImmutableArray<SupplyPoint> Mean { get; init; } = [];

    /// <summary>Every part at its peak; empty when unknown, or when it does not start.</summary>
    public ImmutableArray<SupplyPoint> Peak { get; init; } = [];

    /// <summary>The batteries.</summary>
    public ImmutableArray<SupplyBatteryResult> Batteries { get; init; } = [];

    /// <summary>Where the watts go, what becomes of the volts, how long batteries last.</summary>
    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    /// <summary>The judgements.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The same as an examination of the fit-out.</summary>
    public Examination Examination => new() { Ledgers = Ledgers, Findings = Findings, Assumptions = Assumptions };
}

/// <summary>One part of a supply at work.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Volts">Voltage at its input.</param>
/// <param name="Amperes">Current into it.</param>
/// <param name="Watts">Power into it.</param>
/// <param name="HeatWatts">What it turns into heat where it stands.</param>
public sealed record SupplyPoint(string PlanPath, string Label, double Volts, double Amperes, double Watts, double HeatWatts);

/// <summary>One battery of a supply.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Battery">The battery in its place.</param>
/// <param name="Load">What hangs on it.</param>
/// <param name="HoldUp">How long it lasts.</param>
public sealed record SupplyBatteryResult(string PlanPath, ChargedBattery Battery, BatteryLoad Load, HoldUpResult HoldUp);
