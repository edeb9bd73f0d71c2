using System.Globalization;

namespace Mastwright.Pictures.Paths;

/// <summary>Numbers and sentences of a path picture, in the invariant culture.</summary>
internal static class Wording
{
    /// <summary>Metres with as many decimals as a person cares for.</summary>
    public static string Metres(double metres) => string.Create(CultureInfo.InvariantCulture, $"{Short(metres)} m");

    /// <summary>A distance in metres below a kilometre, else in kilometres.</summary>
    public static string Distance(double metres) => metres < 1000 ? Metres(metres) : string.Create(CultureInfo.InvariantCulture, $"{Short(metres / 1000)} km");

    /// <summary>A frequency in megahertz.</summary>
    public static string Frequency(double frequencyHz) => string.Create(CultureInfo.InvariantCulture, $"{frequencyHz / 1e6:0.###} MHz");

    /// <summary>An effective earth radius factor: 4/3 by name.</summary>
    public static string KFactor(double k) => Math.Abs(k - (4 / 3.0)) < 0.005 ? "4/3" : string.Create(CultureInfo.InvariantCulture, $"{k:0.##}");

    /// <summary>How many times larger heights are drawn.</summary>
    public static string Times(double factor) => factor >= 10
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(factor):0}")
        : string.Create(CultureInfo.InvariantCulture, $"{factor:0.0}");

    /// <summary>How high an antenna stands: above its ground and above the sea, as far as either is known.</summary>
    public static string Antenna(double? aboveGroundMetres, double? aboveSeaMetres) => (aboveGroundMetres, aboveSeaMetres) switch
    {
        ({ } ground, { } sea) => $"{Metres(ground)} above ground, {Metres(sea)} above sea",
        ({ } ground, null) => $"{Metres(ground)} above unknown ground",
        _ => "height unknown",
    };

    /// <summary>How an obstruction stands to the ray, in metres and in Fresnel radii.</summary>
    public static string Clearance(PathObstruction obstruction)
    {
        double off = Math.Abs(obstruction.AboveRayMetres);
        string metres = off < 10_000 ? Metres(off) : Distance(off);
        string radii = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(obstruction.FresnelRadii):0.0#}");
        return obstruction switch
        {
            { AboveRayMetres: > 0 } => $"{metres} above the ray ({radii} Fresnel radii)",
            { FresnelRadii: > -RadioLayer.WantedShare } => $"{metres} below the ray (only {radii} Fresnel radii)",
            _ => $"{metres} below the ray ({radii} Fresnel radii)",
        };
    }

    /// <summary>The name and the place of an obstruction.</summary>
    public static string Place(PathObstruction obstruction) => obstruction.Label.Length == 0
        ? $"at {Distance(obstruction.DistanceMetres)}"
        : $"{obstruction.Label}, {Distance(obstruction.DistanceMetres)}";

    /// <summary>One direction in a line.</summary>
    public static string Direction(PathDirection direction)
    {
        string? range = Drawings.VerdictMark.Range(direction.MarginLowDb, direction.MarginHighDb);
        string margin = direction switch
        {
            { Verdict: Findings.Verdict.Unknown } => range is null ? "" : $"{range} dB, ",
            { MarginDb: double db } => string.Create(CultureInfo.InvariantCulture, $"{db:+0.#;−0.#;0} dB, "),
            _ => "",
        };
        return $"{direction.From} → {direction.To}: {margin}{Drawings.VerdictMark.Word(direction.Verdict)}";
    }

    private static string Short(double value)
    {
        string text = Math.Abs(value) switch
        {
            >= 99.95 => value.ToString("0", CultureInfo.InvariantCulture),
            >= 9.995 => value.ToString("0.#", CultureInfo.InvariantCulture),
            _ => value.ToString("0.##", CultureInfo.InvariantCulture),
        };
        return text.Replace('-', '−');
    }
}
