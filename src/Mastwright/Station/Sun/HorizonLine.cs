using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>The horizon all round: how high the ground stands above the level in each direction.</summary>
/// <remarks>Evenly spaced from north, clockwise; straight lines between. Immutable and safe from many threads.</remarks>
public sealed class HorizonLine
{
    private readonly ImmutableArray<double> degrees;

    private HorizonLine(ImmutableArray<double> degrees)
    {
        this.degrees = degrees;
        double hidden = 0;
        foreach (double angle in degrees)
        {
            double sin = Math.Sin(double.DegreesToRadians(Math.Max(0, angle)));
            hidden += sin * sin;
        }

        SkyShare = 1 - (hidden / degrees.Length);
    }

    /// <summary>A level horizon.</summary>
    public static HorizonLine Level { get; } = new([0]);

    /// <summary>Share of the light of an even sky that a level surface still gets: one less the mean of sin² of the horizon's elevation.</summary>
    public double SkyShare { get; }

    /// <summary>The highest elevation in degrees.</summary>
    public double HighestDegrees => degrees.Max();

    /// <summary>A horizon.</summary>
    /// <param name="elevationDegrees">Elevations in degrees, -90 to 90, evenly spaced from north, clockwise; one or more.</param>
    /// <exception cref="ArgumentException">There is none, or one is outside its range.</exception>
    public static HorizonLine Of(ImmutableArray<double> elevationDegrees) =>
        !elevationDegrees.IsDefaultOrEmpty && elevationDegrees.All(angle => angle is >= -90 and <= 90)
            ? new(elevationDegrees)
            : throw new ArgumentException("A horizon has elevations from -90 to 90 degrees.", nameof(elevationDegrees));

    /// <summary>Elevation in a direction, in degrees.</summary>
    /// <param name="azimuthDegrees">Direction clockwise from true north.</param>
    public double At(double azimuthDegrees)
    {
        double at = azimuthDegrees / 360 * degrees.Length;
        at -= Math.Floor(at / degrees.Length) * degrees.Length;
        int i = Math.Min((int)at, degrees.Length - 1);
        double share = at - i;
        return degrees[i] + (share * (degrees[(i + 1) % degrees.Length] - degrees[i]));
    }
}
