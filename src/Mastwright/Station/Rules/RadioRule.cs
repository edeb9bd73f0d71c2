namespace Mastwright.Station.Rules;

/// <summary>One row of law: a band, and what a licence-exempt station may do in it.</summary>
/// <remarks>Engineering aid, not legal advice. A null is "the row sets no such limit".</remarks>
public sealed record RadioRule
{
    /// <summary>Key of the row.</summary>
    public required string Key { get; init; }

    /// <summary>Key of the region it belongs to.</summary>
    public required string Region { get; init; }

    /// <summary>What the row is called in a sentence, such as "band O".</summary>
    public required string Name { get; init; }

    /// <summary>Lower edge of the band in hertz.</summary>
    public required double LowHz { get; init; }

    /// <summary>Upper edge of the band in hertz, above the lower.</summary>
    public required double HighHz { get; init; }

    /// <summary>How it lets a station onto the air.</summary>
    public RuleAccess Access { get; init; }

    /// <summary>The most power, in dBm against <see cref="Reference"/>.</summary>
    public double? PowerDbm { get; init; }

    /// <summary>What the power is measured against.</summary>
    public PowerReference Reference { get; init; }

    /// <summary>Antenna gain in dBi above which a conducted limit falls decibel for decibel; null when it does not.</summary>
    public double? GainFreeDbi { get; init; }

    /// <summary>The most power in <see cref="DensityBandwidthHz"/>, in dBm against <see cref="Reference"/>.</summary>
    public double? DensityDbm { get; init; }

    /// <summary>Bandwidth in hertz that the density is counted in.</summary>
    public double? DensityBandwidthHz { get; init; }

    /// <summary>The least occupied bandwidth in hertz for which the row is.</summary>
    public double? LeastOccupiedHz { get; init; }

    /// <summary>The most occupied bandwidth in hertz.</summary>
    public double? MostOccupiedHz { get; init; }

    /// <summary>The least bandwidth at 6 dB below the peak, in hertz.</summary>
    public double? LeastSixDecibelHz { get; init; }

    /// <summary>The most time on the air, in percent of any hour.</summary>
    public double? DutyCyclePercent { get; init; }

    /// <summary>Whether listening before talking may take the place of the duty cycle.</summary>
    public bool PoliteAllowed { get; init; }

    /// <summary>Whether listening before talking is asked for whatever the duty cycle.</summary>
    public bool PoliteRequired { get; init; }

    /// <summary>The least number of hopping frequencies.</summary>
    public int? LeastChannels { get; init; }

    /// <summary>The least spacing of hopping frequencies in hertz: this or the signal's width, whichever is greater.</summary>
    public double? LeastSpacingHz { get; init; }

    /// <summary>The most time in seconds on one frequency within <see cref="DwellPeriodSeconds"/>.</summary>
    public double? MostDwellSeconds { get; init; }

    /// <summary>Period in seconds for the dwell; null when it is the number of frequencies times the dwell.</summary>
    public double? DwellPeriodSeconds { get; init; }

    /// <summary>A further condition, to follow "asks for", that no plan can tell of; may be empty.</summary>
    public string Asks { get; init; } = "";

    /// <summary>Whether it is several rows of law taken together as one band.</summary>
    public bool IsJoined { get; init; }

    /// <summary>What the band is kept for, where it is kept from stations of this kind.</summary>
    public string KeptFor { get; init; } = "";

    /// <summary>Document, edition, clause, and how it was read.</summary>
    public required RuleSource Source { get; init; }

    /// <summary>The key.</summary>
    public override string ToString() => Key;
}
