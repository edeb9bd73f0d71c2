using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Wind;

/// <summary>The pressure model of EN 1991-1-4 for a wind that it takes.</summary>
internal static class EurocodeModel
{
    private const string Document = "EN 1991-1-4:2005+A1:2010";

    internal static WindModel Of(BasicWind wind, TerrainRow terrain, string path)
    {
        List<Assumption> assumptions = [];
        double orography = Or(wind.OrographyFactor, 1, WindDefaults.Orography(path));
        double direction = Or(wind.DirectionFactor, 1, WindDefaults.Direction(path));
        double season = Or(wind.SeasonFactor, 1, WindDefaults.Season(path));
        double density = Or(wind.AirDensity, WindDefaults.AirDensity, WindDefaults.Density(path));
        double structural = Or(wind.StructuralFactor, 1, WindDefaults.Structural(path));
        double load = Or(wind.LoadFactor, WindDefaults.EurocodeLoadFactor, WindDefaults.LoadFactor(path));
        double speed = wind.SpeedMetresPerSecond!.Value;
        ImmutableArray<WindStep> fixedSteps = [.. Conversions(wind, path), .. Factors(direction, season, path)];
        WindStep basic = new(
            "basic", "basic wind", 0.5 * density * speed * speed, $"{path}/speed; {Document}, (4.10)",
            FormattableString.Invariant($"½·{density:0.###} kg/m³·({speed:0.##} m/s)²: {WindReading.Words(wind)}"));
        return new(basic, height => [.. fixedSteps, .. AtHeight(terrain, height, orography, path)])
        {
            Form = WindForm.Eurocode,
            AirDensity = density,
            StructuralFactor = structural,
            LoadFactor = load,
            StructuralSource = wind.StructuralFactor is null ? "assumed; " + Document + ", clause 6.2" : path + "/structural-factor",
            LoadFactorSource = wind.LoadFactor is null ? "assumed; EN 1990, Table A1.2(B), from memory" : path + "/load-factor",
            Assumptions = [.. assumptions, WindDefaults.EurocodeWeight()],
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
        if (wind is { Averaging: WindAveraging.ThreeSecondGust, GustFactor: { } gust })
        {
            yield return OnSpeed("gust-to-mean", "3-second gust to 10-minute mean", 1 / gust, path + "/gust-factor", FormattableString.Invariant($"speed ÷ {gust:0.###}"));
        }

        if (wind is { Level: WindLevel.Ultimate, UltimateFactor: { } ultimate })
        {
            yield return OnSpeed("ultimate-to-characteristic", "ultimate to characteristic", 1 / ultimate, path + "/ultimate-factor", FormattableString.Invariant($"speed ÷ {ultimate:0.###}"));
        }

        int from = wind.Level == WindLevel.Ultimate ? EurocodeWind.BasicReturnPeriodYears : wind.ReturnPeriodYears!.Value;
        int to = wind.DesignReturnPeriodYears ?? EurocodeWind.BasicReturnPeriodYears;
        if (from != to)
        {
            double factor = EurocodeWind.ProbabilityFactor(to) / EurocodeWind.ProbabilityFactor(from);
            yield return OnSpeed(
                "return-period", FormattableString.Invariant($"return period {from} to {to} years"), factor, Document + ", (4.2) with K = 0.2, n = 0.5",
                FormattableString.Invariant($"speed × {factor:0.####}"));
        }
    }

    private static IEnumerable<WindStep> Factors(double direction, double season, string path)
    {
        yield return OnSpeed("direction", "directional factor", direction, $"{path}/direction-factor; {Document}, (4.1)", FormattableString.Invariant($"speed × {direction:0.###}"));
        yield return OnSpeed("season", "season factor", season, $"{path}/season-factor; {Document}, (4.1)", FormattableString.Invariant($"speed × {season:0.###}"));
    }

    private static IEnumerable<WindStep> AtHeight(TerrainRow terrain, double height, double orography, string path)
    {
        double roughness = EurocodeWind.RoughnessFactor(terrain, height);
        double intensity = EurocodeWind.TurbulenceIntensity(terrain, height, orography);
        yield return OnSpeed(
            "roughness", $"height over terrain {terrain.Key}", roughness, $"{Document}, (4.3) to (4.5); {terrain.Source}",
            FormattableString.Invariant($"cr = {roughness:0.###} with z0 = {terrain.RoughnessLengthMetres:0.###} m, z at least {terrain.LeastHeightMetres:0.#} m"));
        yield return OnSpeed("orography", "orography factor", orography, $"{path}/orography; {Document}, clause 4.3.3", FormattableString.Invariant($"speed × {orography:0.###}"));
        yield return new(
            "turbulence", "peak over mean: turbulence", 1 + (7 * intensity), $"{Document}, (4.7), (4.8)", FormattableString.Invariant($"1 + 7·Iv with Iv = {intensity:0.####}"));
    }

    private static WindStep OnSpeed(string code, string label, double factor, string source, string note) => new(code, label, factor * factor, source, note);
}
