using System.Collections.Immutable;

namespace Mastwright.Station.Feed;

/// <summary>One published point of a line's attenuation.</summary>
/// <param name="FrequencyHz">Frequency in hertz, greater than zero.</param>
/// <param name="DbPer100Metres">Attenuation in dB per 100 m, greater than zero.</param>
public readonly record struct AttenuationPoint(double FrequencyHz, double DbPer100Metres);

/// <summary>A line's attenuation as k1·√f + k2·f, with f in megahertz.</summary>
/// <remarks>
/// <para>The first term is the loss in the conductors (skin effect), the second the loss in the dielectric.</para>
/// <para>Fitted by least squares to the published points; a negative k2, which no dielectric has, is set to zero and k1 fitted again.
/// When a point is then missed by more than 5 %, the same is done with relative residuals, and the better of the two is kept.</para>
/// <para>Error: <see cref="WorstResidual"/> at the points; a row should keep it to 5 %.</para>
/// </remarks>
public sealed record AttenuationFit
{
    /// <summary>The part of a published value by which a fit may miss it.</summary>
    public const double AllowedResidual = 0.05;

    private AttenuationFit(double k1, double k2, double worstResidual, bool relative, double lowestHz, double highestHz)
    {
        K1 = k1;
        K2 = k2;
        WorstResidual = worstResidual;
        IsRelative = relative;
        LowestHz = lowestHz;
        HighestHz = highestHz;
    }

    /// <summary>Conductor part, in dB per 100 m at 1 MHz.</summary>
    public double K1 { get; }

    /// <summary>Dielectric part, in dB per 100 m at 1 MHz: zero or more.</summary>
    public double K2 { get; }

    /// <summary>The worst miss of a published point, as a fraction of it.</summary>
    public double WorstResidual { get; }

    /// <summary>Whether relative residuals were made least, because absolute ones missed a point by more than 5 %.</summary>
    public bool IsRelative { get; }

    /// <summary>Lowest published frequency in hertz.</summary>
    public double LowestHz { get; }

    /// <summary>Highest published frequency in hertz.</summary>
    public double HighestHz { get; }

    /// <summary>Fits the published points of a line.</summary>
    /// <param name="points">Two or more points, at two or more frequencies.</param>
    /// <exception cref="ArgumentException">There are too few points, or a value is not greater than zero.</exception>
    public static AttenuationFit Fit(ImmutableArray<AttenuationPoint> points)
    {
        if (points.Length < 2 || points.All(point => point.FrequencyHz == points[0].FrequencyHz))
        {
            throw new ArgumentException("A fit needs points at two or more frequencies.", nameof(points));
        }

        if (!points.All(point => point.FrequencyHz > 0 && point.DbPer100Metres > 0
            && double.IsFinite(point.FrequencyHz) && double.IsFinite(point.DbPer100Metres)))
        {
            throw new ArgumentException("Frequencies and attenuations are greater than zero.", nameof(points));
        }

        AttenuationFit absolute = Solve(points, relative: false);
        if (absolute.WorstResidual <= AllowedResidual)
        {
            return absolute;
        }

        AttenuationFit relative = Solve(points, relative: true);
        return relative.WorstResidual < absolute.WorstResidual ? relative : absolute;
    }

    /// <summary>Attenuation in dB per 100 m at a frequency, with the conductors a number of kelvins warmer than the reference.</summary>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    /// <param name="kelvinsWarmer">Temperature above that of the table, in kelvins; negative when colder.</param>
    /// <remarks>Copper's resistivity rises 0.393 % per kelvin, so the skin part rises as √(1 + 0.00393·ΔT): IEC 60028 for annealed copper at 20 °C.</remarks>
    public double DbPer100Metres(double frequencyHz, double kelvinsWarmer = 0)
    {
        double megahertz = frequencyHz / 1e6;
        double skin = Math.Sqrt(1 + (0.00393 * kelvinsWarmer));
        return (K1 * skin * Math.Sqrt(megahertz)) + (K2 * megahertz);
    }

    private static AttenuationFit Solve(ImmutableArray<AttenuationPoint> points, bool relative)
    {
        double aa = 0;
        double ab = 0;
        double bb = 0;
        double ay = 0;
        double by = 0;
        double lowest = double.PositiveInfinity;
        double highest = 0;
        foreach (AttenuationPoint point in points)
        {
            double weight = relative ? 1 / (point.DbPer100Metres * point.DbPer100Metres) : 1;
            double b = point.FrequencyHz / 1e6;
            double a = Math.Sqrt(b);
            aa += weight * a * a;
            ab += weight * a * b;
            bb += weight * b * b;
            ay += weight * a * point.DbPer100Metres;
            by += weight * b * point.DbPer100Metres;
            lowest = Math.Min(lowest, point.FrequencyHz);
            highest = Math.Max(highest, point.FrequencyHz);
        }

        double determinant = (aa * bb) - (ab * ab);
        double k1 = ((ay * bb) - (by * ab)) / determinant;
        double k2 = ((by * aa) - (ay * ab)) / determinant;
        if (k2 < 0)
        {
            (k1, k2) = (ay / aa, 0);
        }
        else if (k1 < 0)
        {
            (k1, k2) = (0, by / bb);
        }

        double worst = points.Max(point =>
        {
            double megahertz = point.FrequencyHz / 1e6;
            return Math.Abs((((k1 * Math.Sqrt(megahertz)) + (k2 * megahertz)) / point.DbPer100Metres) - 1);
        });
        return new(k1, k2, worst, relative, lowest, highest);
    }
}
