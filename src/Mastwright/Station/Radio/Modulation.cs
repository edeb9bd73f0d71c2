namespace Mastwright.Station.Radio;

/// <summary>How the bits get onto the carrier.</summary>
public enum Modulation
{
    /// <summary>Chirp spread spectrum, with a bandwidth, a spreading factor and a coding rate.</summary>
    ChirpSpreadSpectrum,

    /// <summary>Binary frequency-shift keying, with a bit rate and a receiver bandwidth.</summary>
    FrequencyShiftKeying,
}
