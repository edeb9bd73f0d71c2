namespace Mastwright.Station.Earthing;

/// <summary>The zone beside an upright air termination by the rolling sphere of IEC 62305-3:2010, clause 5.2 and annex A.</summary>
/// <remarks>A ball of the class's radius rolls over the ground and against the rod: what it cannot touch lies in the zone. Some strikes go past it all the same.</remarks>
public static class RollingSphere
{
    /// <summary>Distance in metres from the foot of a rod at which the ball touches the ground: √(2·R·h − h²); R for a rod taller than R.</summary>
    /// <param name="radiusMetres">Radius of the ball in metres, greater than zero.</param>
    /// <param name="rodMetres">Height of the rod above the ground in metres, zero or more.</param>
    public static double GroundReachMetres(double radiusMetres, double rodMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(rodMetres);
        double height = Math.Min(rodMetres, radiusMetres);
        return Math.Sqrt((2 * radiusMetres * height) - (height * height));
    }

    /// <summary>Height in metres up to which the zone goes at a distance from the rod; 0 outside it.</summary>
    /// <param name="radiusMetres">Radius of the ball in metres, greater than zero.</param>
    /// <param name="rodMetres">Height of the rod above the ground in metres, zero or more. What a rod has above the ball's radius counts for nothing.</param>
    /// <param name="distanceMetres">Level distance from the rod in metres, zero or more.</param>
    public static double ZoneHeightMetres(double radiusMetres, double rodMetres, double distanceMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(distanceMetres);
        double left = GroundReachMetres(radiusMetres, rodMetres) - distanceMetres;
        return left <= 0 ? 0 : radiusMetres - Math.Sqrt((radiusMetres * radiusMetres) - (left * left));
    }

    /// <summary>Protection angle in degrees from the upright, derived from the ball: the cone whose cross-section has the area under the arc.</summary>
    /// <remarks>The standard only draws this curve (Figure 1). The angle is shown beside the ball's zone; nothing is judged by it.</remarks>
    /// <param name="radiusMetres">Radius of the ball in metres, greater than zero.</param>
    /// <param name="rodMetres">Height of the rod in metres: more than zero, at most the radius.</param>
    public static double ProtectionAngleDegrees(double radiusMetres, double rodMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rodMetres);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rodMetres, radiusMetres);
        double reach = GroundReachMetres(radiusMetres, rodMetres);
        double under = (radiusMetres * reach)
            - (reach / 2 * Math.Sqrt((radiusMetres * radiusMetres) - (reach * reach)))
            - (radiusMetres * radiusMetres / 2 * Math.Asin(reach / radiusMetres));
        return double.RadiansToDegrees(Math.Atan(2 * under / (rodMetres * rodMetres)));
    }

    /// <summary>Separation distance s in metres: ki·(kc/km)·l (IEC 62305-3:2010, (4)).</summary>
    /// <param name="classFactor">ki of the class.</param>
    /// <param name="currentShare">kc: 1 with one down-conductor, 0.66 with two, 0.44 with three or more (simplified, from memory).</param>
    /// <param name="insulationFactor">km: 1 for air, 0.5 for brick and concrete.</param>
    /// <param name="lengthMetres">Length in metres along the conductor to the nearest bond, zero or more.</param>
    public static double SeparationMetres(double classFactor, double currentShare, double insulationFactor, double lengthMetres) =>
        classFactor * currentShare / insulationFactor * lengthMetres;
}
