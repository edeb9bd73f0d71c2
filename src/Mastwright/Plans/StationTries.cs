using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>The places and heights at which a station is tried whose range the plan gives: one thing at a time, the others at their best guess.</summary>
public static class StationTries
{
    /// <summary>The tries besides the best guess; empty where nothing is to be varied.</summary>
    /// <param name="station">The station.</param>
    /// <param name="groundStepMetres">Step of the ground data in metres: a place known to within one step is not varied, as for a link.</param>
    public static ImmutableArray<StationTry> Of(LinkStation station, double groundStepMetres)
    {
        ArgumentNullException.ThrowIfNull(station);
        ImmutableArray<StationTry>.Builder tries = ImmutableArray.CreateBuilder<StationTry>();
        if (station.Height is { } height)
        {
            Add(tries, "antenna", height.Metres, metres => station with { Height = height with { Metres = metres } });
            Add(tries, "roof", height.RoofMetres, metres => station with { Height = height with { RoofMetres = metres } });
        }

        Add(tries, "ground", station.GroundHeightMetres, metres => station with { GroundHeightMetres = metres });
        foreach (GeoPoint place in PlaceSamples.Around(station.Position, groundStepMetres).Skip(1))
        {
            GeodesicSegment aside = Geodesic.Inverse(station.Position.Point, place);
            tries.Add(new(
                string.Create(CultureInfo.InvariantCulture, $"{aside.DistanceMetres:0} m aside, bearing {aside.InitialBearingDegrees:0}°"),
                station with { Position = new(place, 0) }));
        }

        return tries.ToImmutable();
    }

    private static void Add(ImmutableArray<StationTry>.Builder tries, string what, Estimate? range, Func<Estimate, LinkStation> with)
    {
        if (range is { IsExact: false } given)
        {
            foreach (double metres in (double[])[given.Low, given.High])
            {
                tries.Add(new(string.Create(CultureInfo.InvariantCulture, $"{what} at {metres:0.##} m"), with(Estimate.Exactly(metres))));
            }
        }
    }
}

/// <summary>One try.</summary>
/// <param name="Text">What is varied, and to what.</param>
/// <param name="Station">The station with it.</param>
public sealed record StationTry(string Text, LinkStation Station);
