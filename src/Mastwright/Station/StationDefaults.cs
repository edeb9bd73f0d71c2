using Mastwright.Findings;

namespace Mastwright.Station;

/// <summary>Every value that a station's budget uses when nobody gave it: one place, each listed as an <see cref="Assumption"/> where it is used.</summary>
/// <remarks>Losses of parts, line tables and demodulation limits are catalogue rows, not defaults: see <see cref="StationCatalogue"/>.</remarks>
public static class StationDefaults
{
    /// <summary>Noise figure of a receiver at its connector, in dB. Common practice for a sub-GHz chirp modem.</summary>
    public const double NoiseFigureDb = 6;

    /// <summary>Thermal noise density in dBm per hertz, as the sensitivity formula of the modem data sheets rounds it (kT0 at 290 K is -173.975).</summary>
    public const double ThermalNoiseDbmPerHertz = -174;

    /// <summary>Bits of the sync word that a frequency-shift keying packet carries between preamble and length. Common practice: three bytes.</summary>
    public const int SyncWordBits = 24;

    /// <summary>Spacing of a collinear array's elements in wavelengths: half-wave sections end to end. Common practice.</summary>
    public const double CollinearSpacingWavelengths = 0.5;

    /// <summary>Level in dB below the main beam under which a Yagi's pattern is not claimed to fall. Common practice.</summary>
    public const double YagiFloorDb = 15;

    /// <summary>Return loss in dB at the antenna below which its match is called tight: VSWR 2. Common practice.</summary>
    public const double GoodReturnLossDb = 9.54;

    /// <summary>Return loss in dB at the antenna below which its match fails: VSWR 3. Common practice.</summary>
    public const double LeastReturnLossDb = 6.02;

    internal static Assumption NoiseFigure(string planPath) => new(
        "radio-noise-figure", "receiver noise figure 6 dB", "common practice", Join(planPath, "radio/noise-figure"));

    internal static Assumption SyncWord() => new(
        "sync-word", "sync word of 24 bits in each packet", "common practice");

    internal static string Join(string planPath, string child) => planPath.Length == 0 ? child : planPath + "/" + child;
}
