namespace Mastwright.Propagation;

/// <summary>What the first term of spherical-Earth diffraction needs of the frequency and the ground below the path.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 section 4.3.3, equations (28) to (36). Land: εr 22, σ 0.003 S/m; sea: εr 80, σ 5 S/m.</remarks>
internal readonly struct SurfaceWave
{
    private readonly double f;
    private readonly double cubeRootOfFrequency;
    private readonly double seaFraction;
    private readonly double landAdmittance;
    private readonly double seaAdmittance;

    internal SurfaceWave(double frequencyGHz, WavePolarisation polarisation, double seaFraction)
    {
        f = frequencyGHz;
        this.seaFraction = seaFraction;
        cubeRootOfFrequency = Math.Cbrt(frequencyGHz);
        WavelengthMetres = 0.2998 / frequencyGHz;
        landAdmittance = seaFraction < 1 ? Admittance(frequencyGHz, polarisation, 22, 0.003) : 0;
        seaAdmittance = seaFraction > 0 ? Admittance(frequencyGHz, polarisation, 80, 5) : 0;
    }

    internal double WavelengthMetres { get; }

    /// <summary>First-term loss in dB, equation (28): land and sea weighted by their share. May be negative.</summary>
    internal double FirstTermDb(double d, double h1, double h2, double a)
    {
        double loss = 0;
        if (seaFraction > 0)
        {
            loss += seaFraction * OneSurfaceDb(d, h1, h2, a, seaAdmittance);
        }

        if (seaFraction < 1)
        {
            loss += (1 - seaFraction) * OneSurfaceDb(d, h1, h2, a, landAdmittance);
        }

        return loss;
    }

    /// <summary>K without its dependence on the radius, equations (29) and (30): multiply by the radius in km to the power −1/3.</summary>
    internal static double Admittance(double f, WavePolarisation polarisation, double permittivity, double conductivity)
    {
        double loss = 18 * conductivity / f;
        double horizontal = 0.036 / Math.Cbrt(f) / Math.Sqrt(Math.Sqrt(((permittivity - 1) * (permittivity - 1)) + (loss * loss)));
        return polarisation == WavePolarisation.Horizontal
            ? horizontal
            : horizontal * Math.Sqrt((permittivity * permittivity) + (loss * loss));
    }

    private double OneSurfaceDb(double d, double h1, double h2, double a, double admittance)
    {
        double rootA = Math.Cbrt(a);
        double k = admittance / rootA;
        double k2 = k * k;
        double beta = (1 + (1.6 * k2) + (0.67 * k2 * k2)) / (1 + (4.5 * k2) + (1.53 * k2 * k2)); // (31)
        double x = 21.88 * beta * cubeRootOfFrequency / (rootA * rootA) * d; // (32)
        double y = 0.9575 * beta * cubeRootOfFrequency * cubeRootOfFrequency / rootA; // (33), per metre of height
        double distanceTerm = x >= 1.6
            ? 11 + (10 * Math.Log10(x)) - (17.6 * x)
            : (-20 * Math.Log10(x)) - (5.6488 * Math.Pow(x, 1.425)); // (34)
        return -distanceTerm - HeightGain(beta * y * h1, k) - HeightGain(beta * y * h2, k); // (36)
    }

    private static double HeightGain(double b, double k)
    {
        double gain = b > 2
            ? (17.6 * Math.Sqrt(b - 1.1)) - (5 * Math.Log10(b - 1.1)) - 8
            : 20 * Math.Log10(b + (0.1 * b * b * b)); // (35)
        return Math.Max(gain, 2 + (20 * Math.Log10(k)));
    }
}
