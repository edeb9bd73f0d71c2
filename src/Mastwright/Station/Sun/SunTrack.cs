using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>Where the sun stands in every hour of an ordinary year, seen from a place: worked out once, for it costs more than all else in a solar year.</summary>
public sealed class SunTrack
{
    private SunTrack(ImmutableArray<SunPlace> places) => Places = places;

    /// <summary>The sun's places, hour by hour from midnight on 1 January of the clock: <see cref="WeatherYear.HourCount"/> of them.</summary>
    public ImmutableArray<SunPlace> Places { get; }

    /// <summary>The track of a year.</summary>
    /// <param name="year">The year that the sun is taken from.</param>
    /// <param name="hoursFromUniversal">Hours by which the clock is ahead of universal time.</param>
    /// <param name="place">Where one stands.</param>
    /// <param name="moment">The moment of each hour that the sun is taken at, as a share of it from its beginning: 0.5 is its middle.</param>
    public static SunTrack Of(int year, double hoursFromUniversal, SunSite place, double moment = WeatherYear.MiddleOfHour)
    {
        ImmutableArray<SunPlace>.Builder places = ImmutableArray.CreateBuilder<SunPlace>(WeatherYear.HourCount);
        for (int hour = 0; hour < WeatherYear.HourCount; hour++)
        {
            places.Add(WeatherYear.SunAt(year, hoursFromUniversal, hour, place, moment));
        }

        return new(places.MoveToImmutable());
    }
}
