namespace Mastwright.Station.Earthing;

/// <summary>Resistance of upright earth rods in even soil.</summary>
public static class EarthRod
{
    /// <summary>λ of 2 to 10 rods in line, evenly spaced (BS 7430, from memory).</summary>
    private static readonly double[] InLine = [1.00, 1.66, 2.15, 2.54, 2.87, 3.15, 3.39, 3.61, 3.81];

    /// <summary>Most rods in a line that λ is known for.</summary>
    public const int MostRods = 10;

    /// <summary>Resistance in ohms of one rod: ρ/(2πL)·(ln(8L/d) − 1).</summary>
    /// <param name="ohmMetres">Resistivity of the soil in Ω·m, greater than zero.</param>
    /// <param name="lengthMetres">Driven length in metres, greater than zero.</param>
    /// <param name="diameterMetres">Diameter in metres: greater than zero, less than the length.</param>
    public static double Ohms(double ohmMetres, double lengthMetres, double diameterMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ohmMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lengthMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameterMetres);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(diameterMetres, lengthMetres);
        return ohmMetres / (2 * Math.PI * lengthMetres) * (Math.Log(8 * lengthMetres / diameterMetres) - 1);
    }

    /// <summary>Resistance in ohms of several like rods in a line: R·(1 + λ·α)/n with α = ρ/(2π·R·s) (BS 7430 form).</summary>
    /// <param name="oneOhms">Resistance of one rod in ohms.</param>
    /// <param name="count">Number of rods, 1 to 10.</param>
    /// <param name="spacingMetres">Distance between neighbours in metres: at least about the length of a rod, for the form to hold.</param>
    /// <param name="ohmMetres">Resistivity of the soil in Ω·m.</param>
    public static double InParallelOhms(double oneOhms, int count, double spacingMetres, double ohmMetres)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostRods);
        if (count == 1)
        {
            return oneOhms;
        }

        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spacingMetres);
        double alpha = ohmMetres / (2 * Math.PI * oneOhms * spacingMetres);
        return oneOhms * (1 + (InLine[count - 2] * alpha)) / count;
    }
}
