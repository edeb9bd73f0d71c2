using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>Every value that the assessment of a plan uses when the plan does not give it: one place, each listed where it is used.</summary>
public static class PlanDefaults
{
    /// <summary>Wanted margin in dB.</summary>
    public const double MarginDb = 10;

    /// <summary>Time percentage of the prediction.</summary>
    public const double TimePercent = 50;

    /// <summary>Location percentage of the prediction.</summary>
    public const double LocationPercent = 50;

    /// <summary>Standard deviation of the prediction's own error, in dB. Measured: docs/physics/prediction-error.md.</summary>
    public const double ModelErrorDb = 8;

    /// <summary>Standard deviation of fading from packet to packet, in dB. Measured: docs/physics/prediction-error.md.</summary>
    public const double FadingDb = 3;

    /// <summary>Fall of refractivity in the lowest kilometre, in N-units/km.</summary>
    public const double RefractivityGradient = 45;

    /// <summary>Sea-level surface refractivity, in N-units.</summary>
    public const double SurfaceRefractivity = 325;

    /// <summary>Effective-earth factor of the worst air to plan for.</summary>
    public const double LowKFactor = 2.0 / 3;

    /// <summary>Effective-earth factor of ordinary air, for pictures and clearances.</summary>
    public const double UsualKFactor = 4.0 / 3;

    internal static Assumption Margin => new("wanted-margin", "wanted margin 10 dB", "common practice", "wanted/margin");

    internal static Assumption Time => new("wanted-time", "time percentage 50 %: the median", "ITU-R P.1812", "wanted/time");

    internal static Assumption Location => new("wanted-location", "location percentage 50 %: the median", "ITU-R P.1812", "wanted/location");

    internal static Assumption ModelError => new(
        "model-error",
        "error of the prediction: standard deviation 8 dB",
        "open 868 MHz measurements in a hilly city: 7.7 to 8.8 dB with 10 m of cover assumed along the path, 10.2 to 11.6 dB over bare ground; Stusek et al., IEEE Access 8, 2020",
        "spread/model-error");

    internal static Assumption Fading => new(
        "fading",
        "fading from packet to packet: standard deviation 3 dB",
        "open 868 MHz measurements: 11 receivers of a mast over a summer, 1.2 to 3.8 dB, the four that heard most 2.0 to 3.6 dB; CampusIoT/datasets, SaintEynard, 2023",
        "spread/fading");

    internal static Assumption LocationSpread => new(
        "location-spread", "location variability by the Recommendation's own formula, for each link", "ITU-R P.1812, location variability", "spread/location");

    internal static Assumption Gradient => new(
        "refractivity-gradient", "fall of refractivity 45 N-units/km", "usual default where the maps of ITU-R P.1812 are not at hand", "air/refractivity-gradient");

    internal static Assumption Refractivity => new(
        "surface-refractivity", "surface refractivity 325 N-units", "usual default where the maps of ITU-R P.1812 are not at hand", "air/surface-refractivity");

    internal static Assumption LowK => new("low-k", "effective-earth factor of the worst air 2/3", "common practice", "air/low-k");
}
