using System.Collections.Immutable;

namespace Mastwright.Station.Mast;

/// <summary>One level of guys as a spring that holds the mast across.</summary>
/// <remarks>
/// The one guy into the wind bears all of it, the lee guys are slack, none sags: taut wires. The stiffness of the rope is E·A·cos²α/L with E = 100 GPa on a
/// metallic area of 0.55 of its circle (from memory, for a stranded steel rope). The mast's own downthrust by the guys is counted, its buckling is not. Half of the wind, of the weight and of the ice on
/// the ropes hangs on the mast, the other half on the anchors.
/// </remarks>
public static class GuyPull
{
    private const double RopeModulusPa = 100e9;
    private const double MetallicShare = 0.55;
    private const double SteelKilogramsPerCubicMetre = 7850;

    /// <summary>Mass of the rope in kg/m: its metallic area in steel.</summary>
    public static double KilogramsPerMetre(GuyLevel guys)
    {
        ArgumentNullException.ThrowIfNull(guys);
        return SteelKilogramsPerCubicMetre * MetallicShare * Math.PI / 4 * guys.DiameterMetres * guys.DiameterMetres;
    }

    /// <summary>Stiffness across in N/m.</summary>
    public static double StiffnessNewtonsPerMetre(GuyLevel guys)
    {
        ArgumentNullException.ThrowIfNull(guys);
        double cos = Math.Cos(double.DegreesToRadians(guys.AngleDegrees));
        return RopeModulusPa * MetallicShare * Math.PI / 4 * guys.DiameterMetres * guys.DiameterMetres * cos * cos / guys.LengthMetres;
    }

    /// <summary>Pull in newtons across the mast at the guys' level that keeps mast and rope together.</summary>
    /// <param name="tubes">Length in metres and stiffness in N·m² of each tube.</param>
    /// <param name="loads">The forces without the guys.</param>
    /// <param name="heightMetres">Height of the level above the bracket in metres: more than 0, at most the free length.</param>
    /// <param name="stiffnessNewtonsPerMetre">Stiffness across in N/m; infinite for a rigid prop.</param>
    public static double AcrossNewtons(
        ImmutableArray<(double LengthMetres, double Stiffness)> tubes, ImmutableArray<MastLoad> loads, double heightMetres, double stiffnessNewtonsPerMetre)
    {
        double free = new Cantilever(tubes, loads).DeflectionMetres(heightMetres);
        double unit = new Cantilever(tubes, [new("unit", "", 1, heightMetres, heightMetres)]).DeflectionMetres(heightMetres);
        return free / (unit + (1 / stiffnessNewtonsPerMetre));
    }

    /// <summary>Tension in newtons in the one guy into the wind.</summary>
    public static double TensionNewtons(double acrossNewtons, double angleDegrees) => acrossNewtons / Math.Cos(double.DegreesToRadians(angleDegrees));

    /// <summary>Downthrust in newtons on the mast.</summary>
    public static double DownNewtons(double acrossNewtons, double angleDegrees) => acrossNewtons * Math.Tan(double.DegreesToRadians(angleDegrees));
}
