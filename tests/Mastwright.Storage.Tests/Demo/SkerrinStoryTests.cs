using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Storage.Tests.Demo;

/// <summary>What the guide says of Skerrin, checked on the ground that the demo writes, read back through the same doors as anyone's plan.</summary>
[Collection(SkerrinFolder.Name)]
public sealed class SkerrinStoryTests(SkerrinFolder folder)
{
    private const double FrequencyHz = 869.525e6;
    private const double EffectiveEarthMetres = 8_500_000;

    [Fact]
    public void The_plan_reads_without_a_problem_and_its_ground_is_whole()
    {
        Assert.Equal("", string.Join('\n', folder.Reading.Problems));
        Assert.Empty(folder.Library.Problems);
        Assert.Equal(7, folder.Plan.Sites.Length);
        Assert.Equal(4, folder.Plan.Neighbours.Length);
        Assert.Equal(["comb-cairn", "peat-top", "north-tooth"], folder.Plan.Sites.Where(site => site.InUse.Length == 0).Select(site => site.Key));
        Assert.True(folder.Plan.Neighbours.Single(neighbour => neighbour.Key == "pilot-hut").Position.RadiusMetres > 2_000);
    }

    [Fact]
    public void Ferry_House_and_Gannet_Stack_see_each_other_across_nine_kilometres_of_sea()
    {
        Sight sight = Look("ferry-house/net-loft", "gannet-stack/solar");
        Assert.InRange(sight.LengthMetres, 8_500, 9_500);
        Assert.True(sight.SeaShare > 0.85, $"{sight}");
        Assert.True(sight.ClearanceInFresnelRadii > 0.6, $"{sight}");
        Assert.InRange(sight.ExcessDb, -1, 3);
    }

    /// <summary>Tens of dB over free space, and what stands in the way is the ridge: hundreds of metres, in the middle of the island.</summary>
    [Theory]
    [InlineData("lantern-bay")]
    [InlineData("east-quay")]
    public void The_Combs_hide_the_east_from_every_station_of_the_west(string east)
    {
        foreach (string west in (string[])["ferry-house/net-loft", "ferry-house/eaves", "creamery/flue", "upper-school/bell-cote", "gannet-stack/solar", "wind-shed"])
        {
            Sight sight = Look(west, east);
            Assert.True(sight.ExcessDb > 40, $"{west}: {sight}");
            Assert.True(sight.ClearanceMetres < -250, $"{west}: {sight}");
            Assert.InRange(sight.WorstLongitudeDegrees, -18.60, -18.53);
        }
    }

    [Theory]
    [InlineData("ferry-house/net-loft", 3)]
    [InlineData("gannet-stack/solar", 3)]
    [InlineData("upper-school/bell-cote", 10)]
    [InlineData("lantern-bay", 10)]
    [InlineData("east-quay", 32)] // houses stand in front of East Quay's antenna
    public void Comb_Cairn_sees_both_sides(string station, double mostExcessDb)
    {
        Sight sight = Look("comb-cairn/trial", station);
        Assert.True(sight.ClearanceInFresnelRadii > 0.6, $"{sight}");
        Assert.True(sight.ExcessDb < mostExcessDb, $"{sight}");
    }

    [Fact]
    public void The_other_tops_each_miss_one_side()
    {
        Assert.True(Look("peat-top/trial", "ferry-house/net-loft").ClearanceInFresnelRadii < -1);
        Assert.True(Look("peat-top/trial", "lantern-bay").ClearanceInFresnelRadii < -1);
        Assert.True(Look("north-tooth/trial", "ferry-house/net-loft").ExcessDb < 3);
        Assert.True(Look("north-tooth/trial", "lantern-bay").ExcessDb > 25);
        Assert.True(Look("north-tooth/trial", "east-quay").ExcessDb > 25);
    }

    /// <summary>The same house: the gable looks over the roofs that stand around the eaves.</summary>
    [Theory]
    [InlineData("creamery/flue")]
    [InlineData("upper-school/bell-cote")]
    [InlineData("wind-shed")]
    [InlineData("comb-cairn/trial")]
    public void The_eaves_lose_ten_decibels_to_the_net_loft_before_any_cable(string station)
    {
        double eaves = Look("ferry-house/eaves", station).ExcessDb;
        double netLoft = Look("ferry-house/net-loft", station).ExcessDb;
        Assert.True(eaves > netLoft + 10, $"eaves {eaves:0.0} dB, net loft {netLoft:0.0} dB over free space");
    }

    private Sight Look(string from, string to)
    {
        (GeoPoint here, double hereMetres) = folder.End(from);
        (GeoPoint there, double thereMetres) = folder.End(to);
        TerrainProfile ground = TerrainProfile.Extract(folder.Library.MosaicFor(here, there), here, there);
        Assert.True(ground.IsComplete);
        double[] distances = [.. Enumerable.Range(0, ground.Count).Select(ground.DistanceMetres)];
        PathProfile profile = PathProfile.FromSamples(distances, ground.HeightsMetres, ground.CoverHeightsMetres, ground.Zones);
        P1812Result loss = P1812.Evaluate(profile, new()
        {
            FrequencyHz = FrequencyHz,
            TransmitterHeightMetres = hereMetres,
            ReceiverHeightMetres = thereMetres,
            PathCentreLatitudeDegrees = 46.4,
        });

        // Clearance over the bare ground, by hand: straight ray, earth of 4/3 radius.
        double length = ground.LengthMetres;
        double start = ground.HeightsMetres[0] + hereMetres;
        double end = ground.HeightsMetres[^1] + thereMetres;
        (double metres, double radii, int worst) = (double.MaxValue, double.MaxValue, 0);
        for (int i = 1; i < ground.Count - 1; i++)
        {
            double before = distances[i];
            double after = length - before;
            double ray = start + ((end - start) * before / length);
            double clearance = ray - ground.HeightsMetres[i] - (before * after / (2 * EffectiveEarthMetres));
            double radius = Math.Sqrt(P1812.WavelengthMetres(FrequencyHz) * before * after / length);
            radii = Math.Min(radii, clearance / radius);
            if (clearance < metres)
            {
                (metres, worst) = (clearance, i);
            }
        }

        int sea = 0;
        foreach (Zone zone in ground.Zones)
        {
            sea += zone == Zone.Sea ? 1 : 0;
        }

        return new(length, metres, radii, ground.PointAt(worst).LongitudeDegrees, (double)sea / ground.Count, loss.LbDb - loss.LbfsDb);
    }

    private readonly record struct Sight(
        double LengthMetres, double ClearanceMetres, double ClearanceInFresnelRadii, double WorstLongitudeDegrees, double SeaShare, double ExcessDb);
}
