using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>One part of a supply with its numbers found.</summary>
internal abstract record SupplyNode(string PlanPath, string Label, string Source);

/// <summary>A resistance on the way: a cable, or an arrester.</summary>
internal sealed record SeriesNode(string PlanPath, string Label, string Source, double Ohms, CableRun? Cable, SupplyNode Next) : SupplyNode(PlanPath, Label, Source);

/// <summary>A fuse: no resistance is counted.</summary>
internal sealed record FuseNode(string PlanPath, string Label, string Source, double Amperes, SupplyNode Next) : SupplyNode(PlanPath, Label, Source);

/// <summary>A converter.</summary>
internal sealed record ConverterNode(
    string PlanPath, string Label, string Source, double OutputVolts, LinearCurve Efficiency, double? RatedWatts, VoltageLimits Input, SupplyNode Next) : SupplyNode(PlanPath, Label, Source)
{
    /// <summary>The row of its kind; null when the catalogue has none.</summary>
    internal ConverterRow? Row { get; init; }
}

/// <summary>A battery with its charger.</summary>
internal sealed record BatteryNode(string PlanPath, string Label, string Source, ChargedBattery Battery, VoltageLimits Input, SupplyNode Next) : SupplyNode(PlanPath, Label, Source);

/// <summary>A fork.</summary>
internal sealed record ForkNode(string PlanPath, string Label, string Source, ImmutableArray<SupplyNode> Branches) : SupplyNode(PlanPath, Label, Source);

/// <summary>A load.</summary>
internal sealed record LoadNode(string PlanPath, string Label, string Source, LoadProfile Profile) : SupplyNode(PlanPath, Label, Source);

/// <summary>A cable as it is laid.</summary>
/// <param name="Row">Its type.</param>
/// <param name="LengthMetres">Its length in metres.</param>
/// <param name="ConductorsEachWay">Conductors side by side each way.</param>
/// <param name="Celsius">Temperature around it.</param>
internal sealed record CableRun(CableRow Row, double LengthMetres, int ConductorsEachWay, double Celsius);

/// <summary>The voltage that something wants at its input.</summary>
/// <param name="Least">The least; null when unknown.</param>
/// <param name="Most">The most; null when unknown.</param>
/// <param name="From">Where they come from.</param>
internal sealed record VoltageLimits(double? Least, double? Most, string From)
{
    internal static VoltageLimits Unknown { get; } = new(null, null, "");
}

/// <summary>Where the power comes from, with its numbers found.</summary>
internal sealed record SupplyFeed(
    SupplySource Part, string Label, string Source, double Volts, double MostVolts, double? RatedWatts, PowerClassRow? Class, LinearCurve? MainsEfficiency);
