using System.Runtime.CompilerServices;

namespace Mastwright.Pictures.Drawings;

/// <summary>Light on a slope from the north-west, 45° high, as maps have it.</summary>
public static class SlopeLight
{
    /// <summary>How much lighter than a level place a slope is, from −0.71 (away from the light) to 0.29 (towards it); 0 where a slope is not known.</summary>
    /// <param name="eastward">Rise towards the east, metres a metre.</param>
    /// <param name="northward">Rise towards the north, metres a metre.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Of(double eastward, double northward)
    {
        double light = (1 + ((eastward - northward) / Math.Sqrt(2))) / Math.Sqrt(2 * (1 + (eastward * eastward) + (northward * northward)));
        double shade = light - Math.Sqrt(0.5);
        return double.IsNaN(shade) ? 0 : shade;
    }
}
