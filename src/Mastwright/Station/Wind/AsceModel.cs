using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Wind;

/// <summary>The pressure model of ASCE/SEI 7-16 for a wind that it takes.</summary>
internal static class AsceModel
{
    private const string Document = "ASCE/SEI 7-16, from memory";

    internal static WindModel Of(BasicWind wind, ExposureRow exposure, string path)
    {
        List<Assumption> assumptions = [];
        double topographic = Or(wind.TopographicFactor, 1, WindDefaults.Topographic(path));
        double directionality = Or(wind.DirectionalityFactor, WindDefaults.AsceDirectionality, WindDefaults.Directionality(path));
        double elevation = Or(wind.ElevationFactor, 1, WindDefaults.Elevation(path));
        double gustEffect = Or(wind.StructuralFactor, WindDefaults.AsceGustEffect, WindDefaults.GustEffect(path));
        double load = Or(wind.LoadFactor, 1, WindDefaults.UltimateLoad(path));
        double speed = wind.SpeedMetresPerSecond!.Value;
        ImmutableArray<WindStep> fixedSteps = [.. Conversions(wind, path)];
        WindStep basic = new(
            "basic", "basic wind", AsceWind.PressurePa(1, 1, 1, 1, speed), $"{path}/speed; {Document}, (26.10-1.si)",
            FormattableString.Invariant($"0.613·({speed:0.##} m/s)²: {WindReading.Words(wind)}"));
        return new(basic, height =>
        [
            .. fixedSteps,
            Exposure(exposure, height),
            new("topography", "topographic factor Kzt", topographic, $"{path}/topographic-factor; {Document}, clause 26.8", Times(topographic)),
            new("directionality", "directionality factor Kd", directionality, $"{path}/directionality; {Document}, Table 26.6-1", Times(directionality)),
            new("elevation", "ground elevation factor Ke", elevation, $"{path}/elevation-factor; {Document}, clause 26.9", Times(elevation)),
        ])
        {
            Form = WindForm.Asce,
            AirDensity = 2 * AsceWind.PressureConstant,
            StructuralFactor = gustEffect,
            LoadFactor = load,
            StructuralSource = wind.StructuralFactor is null ? $"assumed; {Document}, clause 26.11" : path + "/structural-factor",
            LoadFactorSource = wind.LoadFactor is null ? $"assumed; {Document}, clause 2.3" : path + "/load-factor",
            Assumptions = [.. assumptions, WindDefaults.AsceWeight()],
        };

        double Or(double? given, double usual, Assumption assumption)
        {
            if (given is null)
            {
                assumptions.Add(assumption);
            }

            return given ?? usual;
        }
    }

    private static IEnumerable<WindStep> Conversions(BasicWind wind, string path)
    {
        if (wind is { Averaging: WindAveraging.TenMinuteMean, GustFactor: { } gust })
        {
            yield return new("mean-to-gust", "10-minute mean to 3-second gust", gust * gust, path + "/gust-factor", FormattableString.Invariant($"speed × {gust:0.###}"));
        }

        if (wind is { Level: WindLevel.Characteristic, UltimateFactor: { } ultimate })
        {
            yield return new("characteristic-to-ultimate", "characteristic to ultimate", ultimate * ultimate, path + "/ultimate-factor", FormattableString.Invariant($"speed × {ultimate:0.###}"));
        }
    }

    private static WindStep Exposure(ExposureRow exposure, double height)
    {
        double coefficient = AsceWind.ExposureCoefficient(exposure, height);
        return new(
            "exposure", $"height over exposure {exposure.Key}", coefficient, $"{Document}, Table 26.10-1; {exposure.Source}",
            FormattableString.Invariant($"Kz = {coefficient:0.####} with α = {exposure.Exponent:0.#}, zg = {exposure.GradientHeightMetres:0.##} m"));
    }

    private static string Times(double factor) => FormattableString.Invariant($"pressure × {factor:0.###}");
}
