namespace Mastwright.Station.Wind;

/// <summary>Ice on a round member: mass and outer diameter, by ISO 12494:2001.</summary>
public static class IceCoat
{
    /// <summary>Mass of glaze of even thickness, in kg/m.</summary>
    /// <param name="diameterMetres">Diameter of the bare member in metres.</param>
    /// <param name="thicknessMetres">Thickness of the ice in metres.</param>
    /// <param name="density">Density of the ice in kg/m³.</param>
    public static double MassKilogramsPerMetre(double diameterMetres, double thicknessMetres, double density) =>
        Math.PI * thicknessMetres * (diameterMetres + thicknessMetres) * density;

    /// <summary>Mass in kg/m and outer diameter in metres of a member coated by a class.</summary>
    /// <remarks>
    /// Rime grows as a vane into the wind; it is taken as a round coat of the same mass. The class gives its mass on a rod of 30 mm, which ISO 12494
    /// takes for any slender member.
    /// </remarks>
    /// <param name="ice">The class.</param>
    /// <param name="diameterMetres">Diameter of the bare member in metres.</param>
    /// <param name="density">Density of the ice in kg/m³.</param>
    public static (double MassKilogramsPerMetre, double DiameterMetres) On(IceRow ice, double diameterMetres, double density)
    {
        ArgumentNullException.ThrowIfNull(ice);
        if (ice.ThicknessMetres is { } thickness)
        {
            return (MassKilogramsPerMetre(diameterMetres, thickness, density), diameterMetres + (2 * thickness));
        }

        double mass = ice.MassKilogramsPerMetre ?? 0;
        return (mass, Math.Sqrt((diameterMetres * diameterMetres) + (4 * mass / (Math.PI * density))));
    }
}
