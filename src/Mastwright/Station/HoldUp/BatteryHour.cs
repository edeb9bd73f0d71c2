namespace Mastwright.Station.HoldUp;

/// <summary>A battery over a stretch of time: what it serves, what it takes in. For energy balances hour by hour.</summary>
/// <remarks>
/// Its state is the charge in ampere-hours. What cold, rate and cut-off withhold stays in and comes back with warmth. Charge is taken in as far as
/// there is room, the temperature permits, and something is offered beyond the loads. Below the least temperature for discharge nothing is served at all: a charge
/// controller needs its battery to run loads. Pure: the same in, the same out.
/// </remarks>
public static class BatteryHour
{
    /// <summary>The state of a full battery, in ampere-hours.</summary>
    /// <param name="pack">The battery.</param>
    /// <param name="ageFactor">Share of the new capacity that is left with age, 0 to 1.</param>
    public static double Full(BatteryPack pack, double ageFactor)
    {
        ArgumentNullException.ThrowIfNull(pack);
        return pack.AmpereHours * ageFactor;
    }

    /// <summary>Takes a battery through a stretch of time.</summary>
    /// <param name="pack">The battery.</param>
    /// <param name="chargeAmpereHours">Its charge at the beginning, 0 to full.</param>
    /// <param name="time">What happens meanwhile.</param>
    /// <exception cref="ArgumentOutOfRangeException">A power or the time is negative.</exception>
    public static BatteryStep Step(BatteryPack pack, double chargeAmpereHours, BatteryTime time)
    {
        ArgumentNullException.ThrowIfNull(pack);
        if (!(time.LoadWatts >= 0 && time.OfferedWatts >= 0 && time.Hours >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(time), "Powers and the time are zero or more.");
        }

        if (time.Celsius < pack.Cell.DischargeLeastCelsius)
        {
            return new(chargeAmpereHours, 0, time.LoadWatts * time.Hours, 0, time.OfferedWatts * time.Hours);
        }

        double full = Full(pack, time.AgeFactor);
        double volts = pack.NominalVolts;
        double served = Math.Min(time.LoadWatts, time.OfferedWatts) * time.Hours;
        double spare = (time.OfferedWatts * time.Hours) - served;
        double wanted = (time.LoadWatts * time.Hours) - served;
        if (wanted <= 0)
        {
            double room = Math.Max(0, full - chargeAmpereHours);
            double permitted = pack.MostChargeAmperes(time.Celsius) * time.Hours;
            double taken = Math.Min(spare / volts, Math.Min(permitted, room / pack.Cell.ChargeEfficiency));
            return new(Math.Min(full, chargeAmpereHours + (taken * pack.Cell.ChargeEfficiency)), served, 0, taken * volts, spare - (taken * volts));
        }

        double temperature = pack.Cell.CapacityByCelsius.Median.At(time.Celsius);
        double fromBattery = time.LoadWatts - Math.Min(time.LoadWatts, time.OfferedWatts);
        double drawn = wanted / volts;
        if (!Has(pack, time, temperature, fromBattery, full > 0 ? (chargeAmpereHours - drawn) / full : -1))
        {
            BatteryUse use = BatteryUse.Of(pack, time.AgeFactor, time.Celsius, temperature, fromBattery, time.PeakWatts, time.CutOffVolts);
            drawn = Math.Min(drawn, full > 0 ? use.ShareFrom(chargeAmpereHours / full) * full : 0);
        }

        return new(chargeAmpereHours - drawn, served + (drawn * volts), wanted - (drawn * volts), 0, 0);
    }

    /// <summary>
    /// Whether a state of charge is left that what cold, rate and cut-off withhold does not reach. It asks the voltage at one state alone, where the whole answer halves its way
    /// to the cut-off: in nearly every hour of a year that is enough.
    /// </summary>
    private static bool Has(BatteryPack pack, BatteryTime time, double temperatureFactor, double watts, double left)
    {
        // (1 - least) · temperature · rate ≥ 1 - left, so the cut-off must not lie above this.
        double least = 1 - ((1 - left) / (temperatureFactor * pack.RateFactor(watts / pack.NominalVolts)));
        return least >= 0 && pack.TerminalVolts(least, time.PeakWatts, pack.Ohms(time.Celsius, time.AgeFactor)) >= time.CutOffVolts;
    }
}

/// <summary>What a battery meets over a stretch of time.</summary>
/// <param name="LoadWatts">Mean power that its loads want, zero or more.</param>
/// <param name="PeakWatts">Greatest power that they want, zero or more.</param>
/// <param name="OfferedWatts">Mean power that is offered to it and its loads, behind the charger, zero or more.</param>
/// <param name="Celsius">Its temperature.</param>
/// <param name="Hours">How long, zero or more.</param>
/// <param name="CutOffVolts">Voltage at which it is switched off, or its loads give up.</param>
/// <param name="AgeFactor">Share of the new capacity that is left with age, 0 to 1.</param>
public readonly record struct BatteryTime(double LoadWatts, double PeakWatts, double OfferedWatts, double Celsius, double Hours, double CutOffVolts, double AgeFactor);

/// <summary>What came of a stretch of time.</summary>
/// <param name="ChargeAmpereHours">Charge at its end.</param>
/// <param name="ServedWattHours">What the loads got.</param>
/// <param name="UnservedWattHours">What they wanted and did not get.</param>
/// <param name="StoredWattHours">What went into the battery.</param>
/// <param name="SpilledWattHours">What was offered and not taken.</param>
public readonly record struct BatteryStep(double ChargeAmpereHours, double ServedWattHours, double UnservedWattHours, double StoredWattHours, double SpilledWattHours);
