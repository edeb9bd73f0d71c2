namespace Mastwright.Station.Antenna;

/// <summary>A uniform upright array of half-wave dipoles, one above the other.</summary>
/// <remarks>
/// <para>Power pattern U(ε) = [cos(½π·sin ε)/cos ε]² · [(1−f)·A(ε) + f], with A = [sin(Nψ/2)/(N·sin(ψ/2))]²,
/// ψ = 2π·(d/λ)·(sin ε − sin τ): the half-wave dipole times the array factor of N equal elements, phased for a tilt τ. Any antenna textbook.</para>
/// <para>Null fill: f = 10^(−fill/10), a floor under the array factor in power. That is our stated form; makers shape the fill in
/// their own ways. Without a fill the formula's nulls are complete; a real array's are some 20 to 30 dB deep.</para>
/// <para>Taken as without loss and fed equally, so its directivity is an upper bound of its gain.</para>
/// </remarks>
public sealed class CollinearArray
{
    private const double SearchStepDegrees = 0.05;

    private readonly int _elements;
    private readonly double _spacingRadians;
    private readonly double _sineTilt;
    private readonly double _fill;
    private readonly double _peak;

    /// <summary>Makes an array.</summary>
    /// <param name="elements">Number of elements, 1 to 64.</param>
    /// <param name="spacingWavelengths">Distance between their centres in wavelengths, 0.1 to 4.</param>
    /// <param name="nullFillDb">Floor of the array factor in dB below its main beam, zero or more; null for none.</param>
    /// <param name="tiltDegrees">Elevation of the main beam in degrees, -90 to 90.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public CollinearArray(int elements, double spacingWavelengths, double? nullFillDb = null, double tiltDegrees = 0)
    {
        if (!IsValid(elements, spacingWavelengths, nullFillDb, tiltDegrees))
        {
            throw new ArgumentOutOfRangeException(nameof(elements), "1 to 64 elements, spaced 0.1 to 4 wavelengths, filled by 0 dB or more, tilted up to 90°.");
        }

        _elements = elements;
        _spacingRadians = 2 * Math.PI * spacingWavelengths;
        _sineTilt = Math.Sin(double.DegreesToRadians(tiltDegrees));
        _fill = nullFillDb is { } fill ? Math.Pow(10, -fill / 10) : 0;
        (_peak, DirectivityDbi) = Survey();
    }

    /// <summary>Directivity of the main beam in dBi.</summary>
    public double DirectivityDbi { get; }

    /// <summary>Whether the numbers can make an array.</summary>
    public static bool IsValid(int elements, double spacingWavelengths, double? nullFillDb, double tiltDegrees) =>
        elements is >= 1 and <= 64 && spacingWavelengths is >= 0.1 and <= 4
        && !(nullFillDb < 0) && !(nullFillDb is { } fill && double.IsNaN(fill)) && tiltDegrees is >= -90 and <= 90;

    /// <summary>Level in dB relative to the main beam at an elevation in degrees, -90 to 90: zero or less; minus infinity in a null.</summary>
    public double RelativeDb(double elevationDegrees) => Math.Min(0, 10 * Math.Log10(Power(elevationDegrees) / _peak));

    private double Power(double elevationDegrees)
    {
        double elevation = double.DegreesToRadians(elevationDegrees);
        double cosine = Math.Cos(elevation);
        if (Math.Abs(cosine) < 1e-9)
        {
            return 0;
        }

        double sine = Math.Sin(elevation);
        double dipole = Math.Cos(Math.PI / 2 * sine) / cosine;
        double half = _spacingRadians * (sine - _sineTilt) / 2;
        double below = _elements * Math.Sin(half);
        double factor = Math.Abs(below) < 1e-9 ? 1 : Math.Sin(_elements * half) / below;
        return dipole * dipole * (((1 - _fill) * factor * factor) + _fill);
    }

    /// <summary>Finds the main beam and integrates the pattern over the sphere: D = 2·Umax / ∫U·cos ε dε (midpoint rule).</summary>
    private (double Peak, double DirectivityDbi) Survey()
    {
        double peak = 0;
        double integral = 0;
        double step = double.DegreesToRadians(SearchStepDegrees);
        int steps = (int)Math.Round(180 / SearchStepDegrees);
        for (int i = 0; i < steps; i++)
        {
            double degrees = -90 + ((i + 0.5) * SearchStepDegrees);
            double power = Power(degrees);
            peak = Math.Max(peak, Math.Max(power, Power(-90 + (i * SearchStepDegrees))));
            integral += power * Math.Cos(double.DegreesToRadians(degrees)) * step;
        }

        return (peak, 10 * Math.Log10(2 * peak / integral));
    }
}
