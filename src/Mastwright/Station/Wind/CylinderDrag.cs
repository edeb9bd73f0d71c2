namespace Mastwright.Station.Wind;

/// <summary>Force coefficient of a round member by its Reynolds number: EN 1991-1-4:2005, clause 7.9, Figure 7.28.</summary>
/// <remarks>
/// Below a Reynolds number of about 2·10⁵ it is 1.2; above, the larger of the smooth and the rough branch of the figure. Without the end-effect factor, which
/// is at most one, so that the force is never too small on its account. Read from the figure's printed curves as public worked examples give them.
/// </remarks>
public static class CylinderDrag
{
    /// <summary>Kinematic viscosity of air in m²/s, as the standard gives it (clause 7.9.1).</summary>
    public const double Viscosity = 15e-6;

    /// <summary>Surface roughness of galvanised steel in metres (Table 7.13, from memory).</summary>
    public const double GalvanisedRoughnessMetres = 0.2e-3;

    /// <summary>The coefficient below the drag crisis, and of an iced member.</summary>
    public const double Subcritical = 1.2;

    /// <summary>Reynolds number.</summary>
    /// <param name="diameterMetres">Diameter in metres.</param>
    /// <param name="pressurePa">Peak velocity pressure in pascals.</param>
    /// <param name="airDensity">Density of the air in kg/m³.</param>
    public static double Reynolds(double diameterMetres, double pressurePa, double airDensity) =>
        diameterMetres * Math.Sqrt(2 * pressurePa / airDensity) / Viscosity;

    /// <summary>Force coefficient cf,0, from about 0.4 to 1.2.</summary>
    /// <param name="reynolds">Reynolds number, zero or more.</param>
    /// <param name="diameterMetres">Diameter in metres, greater than zero.</param>
    /// <param name="roughnessMetres">Equivalent surface roughness in metres.</param>
    public static double Coefficient(double reynolds, double diameterMetres, double roughnessMetres)
    {
        double millions = reynolds / 1e6;
        if (!(millions > 0))
        {
            return Subcritical;
        }

        double smooth = 0.11 / Math.Pow(millions, 1.4);
        double below = 1 + (0.4 * Math.Log10(millions));

        // Far below the crisis the rough branch's denominator vanishes; the smooth branch is well over 1.2 there.
        double rough = below > 0.1 ? 1.2 + (0.18 * Math.Log10(10 * roughnessMetres / diameterMetres) / below) : 0;
        return Math.Min(Subcritical, Math.Max(smooth, rough));
    }
}
