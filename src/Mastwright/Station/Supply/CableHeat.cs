namespace Mastwright.Station.Supply;

/// <summary>How warm a cable gets by its own loss.</summary>
public static class CableHeat
{
    /// <summary>Rise in kelvin of a single cable in still air above its surroundings.</summary>
    /// <param name="lossWattsPerMetre">What is lost in a metre of it, in watts: zero or more.</param>
    /// <param name="sheathMillimetres">Its diameter over the sheath, greater than zero.</param>
    /// <remarks>
    /// Loss over surface, shed at 10 W/(m²·K) by convection and radiation together (common practice). A bundle is warmer: its own
    /// temperature is what the plan gives as the cable's. The rise inside the cable, from conductor to sheath, is left out.
    /// </remarks>
    public static double RiseKelvin(double lossWattsPerMetre, double sheathMillimetres) => sheathMillimetres > 0
        ? lossWattsPerMetre / (SupplyDefaults.SurfaceWattsPerSquareMetreKelvin * Math.PI * sheathMillimetres / 1000)
        : throw new ArgumentOutOfRangeException(nameof(sheathMillimetres), "A diameter is greater than zero.");
}
