namespace Mastwright.Station.HoldUp;

/// <summary>How much of a battery can be used under given circumstances, and of what that is made.</summary>
/// <param name="AgeFactor">Share of the new capacity that is left with age, 0 to 1.</param>
/// <param name="TemperatureFactor">Share of that which the temperature leaves usable.</param>
/// <param name="RateFactor">Share of that which the rate leaves usable, 0 to 1.</param>
/// <param name="LeastCharge">State of charge at which the peak pulls it under its cut-off, 0 to 1; 1 where it does so even when full.</param>
/// <param name="Ohms">Internal resistance in ohms.</param>
/// <param name="HoldsPeak">Whether it holds the peak at all.</param>
public sealed record BatteryUse(double AgeFactor, double TemperatureFactor, double RateFactor, double LeastCharge, double Ohms, bool HoldsPeak)
{
    /// <summary>Share of the aged capacity that comes out of a full battery.</summary>
    public double UsableShare => TemperatureFactor * RateFactor * (1 - LeastCharge);

    /// <summary>Share of the aged capacity that cold and rate withhold, 0 to 1; none where warmth gives more than the nominal.</summary>
    public double Withheld => Math.Clamp(1 - (TemperatureFactor * RateFactor), 0, 1);

    /// <summary>Share of the aged capacity that the cut-off leaves in besides what cold and rate withhold, 0 to 1.</summary>
    public double LeftAtCutOff => Math.Max(0, 1 - UsableShare - Withheld);

    /// <summary>Share of the aged capacity that comes out from a state of charge, 0 to 1: what cold, rate and cut-off withhold stays in.</summary>
    /// <param name="charge">State of charge, 0 to 1.</param>
    public double ShareFrom(double charge) => Math.Max(0, charge - (1 - UsableShare));

    /// <summary>Finds it.</summary>
    /// <param name="pack">The battery.</param>
    /// <param name="ageFactor">Share of the new capacity that is left with age, 0 to 1.</param>
    /// <param name="celsius">Temperature in °C.</param>
    /// <param name="temperatureFactor">Share that the temperature leaves usable; below the least temperature for discharge it is nothing.</param>
    /// <param name="meanWatts">Mean power drawn, zero or more.</param>
    /// <param name="peakWatts">Greatest power drawn, zero or more.</param>
    /// <param name="cutOffVolts">Voltage at which it is switched off, or its loads give up.</param>
    public static BatteryUse Of(
        BatteryPack pack, double ageFactor, double celsius, double temperatureFactor, double meanWatts, double peakWatts, double cutOffVolts)
    {
        ArgumentNullException.ThrowIfNull(pack);
        double ohms = pack.Ohms(celsius, ageFactor);

        // Below its limit a cell is not to be discharged, whatever its table of capacities would still promise.
        temperatureFactor = celsius < pack.Cell.DischargeLeastCelsius ? 0 : temperatureFactor;
        double? least = pack.LeastCharge(peakWatts, cutOffVolts, ohms);
        return new(ageFactor, temperatureFactor, pack.RateFactor(meanWatts / pack.NominalVolts), least ?? 1, ohms, least is not null);
    }
}
