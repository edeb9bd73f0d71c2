using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class RadioClimateTests
{
    /// <summary>Points of a path every 10 km and what they are: i inland, c coast, s sea.</summary>
    [Theory]
    [InlineData("iiiii", 0, 40, 40)]
    [InlineData("sssss", 1, 0, 0)]
    [InlineData("ccccc", 0, 40, 0)]
    [InlineData("iicss", 0.375, 25, 15)]
    [InlineData("iscii", 0.25, 25, 15)]
    [InlineData("sicis", 0.25, 30, 10)]
    [InlineData("isisi", 0.5, 10, 10)]
    public void Stretches_reach_half_way_to_their_neighbours(string zones, double sea, double landKm, double inlandKm)
    {
        RadioClimate climate = RadioClimate.Of(Path(zones));
        Assert.Equal(sea, climate.SeaFraction, 1e-12);
        Assert.Equal(landKm, climate.LongestLandMetres / 1000, 1e-9);
        Assert.Equal(inlandKm, climate.LongestInlandMetres / 1000, 1e-9);
    }

    /// <summary>β0 printed in the published validation set of Rec. ITU-R P.1812, cases b2iseac, rburg and b2iseac_rural_land_1km.</summary>
    [Theory]
    [InlineData(17.5, 12.5, 53.68658428, 4.26330636)]
    [InlineData(96.2, 96.2, 48.58877214, 1.442216533)]
    [InlineData(1, 1, 53.18551669, 7.244912027)]
    public void Ducting_time_is_as_published(double landKm, double inlandKm, double latitude, double percent)
    {
        RadioClimate climate = new(0, landKm * 1000, inlandKm * 1000);
        Assert.Equal(percent, climate.DuctingPercent(latitude), percent * 1e-8);
        Assert.Equal(percent, climate.DuctingPercent(-latitude), percent * 1e-8);
    }

    [Fact]
    public void Ducting_time_joins_at_70_degrees()
    {
        RadioClimate climate = new(0.5, 60_000, 20_000);
        Assert.Equal(climate.DuctingPercent(70), climate.DuctingPercent(70.0001), 0.005);
        Assert.Equal(climate.DuctingPercent(71), climate.DuctingPercent(89));
    }

    [Theory]
    [InlineData("iiiii", 500, 500)]
    [InlineData("siiii", 0, 35)]
    [InlineData("iisii", 15, 15)]
    [InlineData("iicss", 25, 0)]
    public void Distance_to_the_coast_runs_along_the_path(string zones, double fromTransmitterKm, double fromReceiverKm)
    {
        Assert.Equal(fromTransmitterKm * 1000, RadioClimate.DistanceToCoastMetres(Path(zones), PathEnd.Transmitter));
        Assert.Equal(fromReceiverKm * 1000, RadioClimate.DistanceToCoastMetres(Path(zones), PathEnd.Receiver));
    }

    /// <summary>Path centre printed in the published validation set, cases b2iseac and rburg.</summary>
    [Theory]
    [InlineData(53.18333333, -6.333333333, 54.16666667, -3.183333333, 235.1, 53.68658428)]
    [InlineData(48.99472222, 12.07722222, 48.18694444, 11.62972222, 96.2, 48.58877214)]
    public void Path_centre_is_as_published(double lat1, double lon1, double lat2, double lon2, double kilometres, double latitude) =>
        Assert.Equal(latitude, PathCentre.LatitudeDegrees(new GeoPoint(lat1, lon1), new GeoPoint(lat2, lon2), kilometres * 1000), 2e-8);

    [Fact]
    public void Path_centre_crosses_the_antimeridian() =>
        Assert.Equal(
            PathCentre.LatitudeDegrees(new GeoPoint(10, -1), new GeoPoint(12, 1), 300_000),
            PathCentre.LatitudeDegrees(new GeoPoint(10, 179), new GeoPoint(12, -179), 300_000),
            1e-9);

    private static PathProfile Path(string zones) => PathProfile.FromSamples(
        [.. Enumerable.Range(0, zones.Length).Select(i => i * 10_000.0)],
        new double[zones.Length],
        new double[zones.Length],
        [.. zones.Select(letter => letter switch { 's' => Zone.Sea, 'c' => Zone.Coast, _ => Zone.Inland })]);
}
