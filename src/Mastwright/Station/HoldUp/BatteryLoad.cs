using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>What hangs on a battery, as its terminals see it.</summary>
/// <param name="MeanWatts">Mean power in watts.</param>
/// <param name="PeakWatts">Greatest power once all runs, in watts, at the cut-off voltage.</param>
/// <param name="CutOffVolts">Voltage at which the battery is switched off, or a load gives up.</param>
/// <param name="CutOffFrom">What sets it.</param>
/// <param name="Held">Names of the loads that it feeds.</param>
/// <param name="NotHeld">Names of the station's loads that it does not.</param>
public sealed record BatteryLoad(
    Estimate MeanWatts, double PeakWatts, double CutOffVolts, string CutOffFrom, ImmutableArray<string> Held, ImmutableArray<string> NotHeld);
