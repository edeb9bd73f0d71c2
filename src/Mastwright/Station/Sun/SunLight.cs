namespace Mastwright.Station.Sun;

/// <summary>The light of the sun on level ground: under a clear sky, and its parts under any.</summary>
public static class SunLight
{
    /// <summary>Power on a square metre that faces the sun outside the air, at the earth's mean distance, in watts.</summary>
    /// <remarks>Source: ISO 9060 and the WMO's value since 2011, 1361 W/m² (Kopp and Lean 2011, Geophys. Res. Lett. 38, L01706): from memory.</remarks>
    public const double SolarConstant = 1361;

    /// <summary>Power on a level square metre under a clear sky, in watts.</summary>
    /// <param name="up">Sine of the sun's elevation.</param>
    /// <remarks>
    /// Source: B. Haurwitz, "Insolation in relation to cloudiness and cloud density", J. Meteorology 2 (1945), 154-166. Within 1e-6 of published test values (SunLightTests).
    /// A mean of clear skies: clean mountain air lets a tenth more through, haze a tenth less.
    /// </remarks>
    public static double ClearGlobal(double up) => up > 0 ? 1098 * up * Math.Exp(-0.059 / up) : 0;

    /// <summary>How much of the light on level ground comes from the whole sky and not straight from the sun.</summary>
    /// <param name="clearness">Light on level ground over that outside the air, 0 or more.</param>
    /// <remarks>Source: D. G. Erbs, S. A. Klein, J. A. Duffie, Solar Energy 28 (1982), 293-302, hourly correlation; coefficients from memory. Spread about the curve: some 0.1.</remarks>
    public static double DiffuseShare(double clearness) => clearness switch
    {
        <= 0.22 => 1 - (0.09 * clearness),
        <= 0.80 => 0.9511 + (clearness * (-0.1604 + (clearness * (4.388 + (clearness * (-16.638 + (clearness * 12.336))))))),
        _ => 0.165,
    };

    /// <summary>The parts of the light of an hour.</summary>
    /// <param name="global">Power on a level square metre, in watts.</param>
    /// <param name="sun">The sun in the middle of the hour.</param>
    public static HourLight Split(double global, SunPlace sun)
    {
        if (!(global > 0) || !(sun.Up > 0))
        {
            return new(Math.Max(0, global), 0, Math.Max(0, global));
        }

        double outside = SolarConstant / (sun.DistanceAu * sun.DistanceAu) * sun.Up;
        double diffuse = global * DiffuseShare(global / outside);

        // Near the horizon a little direct light would make a beam brighter than outside the air.
        double direct = Math.Min((global - diffuse) / sun.Up, outside / sun.Up);
        return new(global, direct, global - (direct * sun.Up));
    }
}

/// <summary>The light of an hour, as mean powers on a square metre in watts.</summary>
/// <param name="Global">On level ground.</param>
/// <param name="Direct">Straight from the sun, on a surface that faces it.</param>
/// <param name="Diffuse">From the rest of the sky, on level ground.</param>
public readonly record struct HourLight(double Global, double Direct, double Diffuse)
{
    /// <summary>The global part, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Global:0} W/m²");
}
