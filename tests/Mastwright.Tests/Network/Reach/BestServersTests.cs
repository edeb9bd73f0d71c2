using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

/// <summary>Best server and count by hand: a station's margin is 148 dB less the loss where it is heard, 147 dB less it where it hears.</summary>
public sealed class BestServersTests
{
    private static readonly ReachField Shared = ReachSamples.Field(6, 100, (_, _) => 120);

    /// <summary>West to east: 1 alone with 8 dB, 1 with 8 against 3 dB, 2 with 8 against 3 dB, 2 alone, and a column that neither reaches.</summary>
    [Fact]
    public void The_most_margin_serves_and_all_of_0_dB_and_more_are_counted()
    {
        BestServers servers = Taken([1, 2], [Columns(140, 140, 145, 160, 160, 160), Columns(160, 145, 140, 140, 160, 170)]);
        BestServerLayer heard = servers.Layer(ReachDirection.Heard);
        Assert.Equal([1, 1, 2, 2, 0, 0], Enumerable.Range(0, 6).Select(heard.ServerOf));
        Assert.Equal([1, 2, 2, 1, 0, 0], heard.Counts[..6].ToArray().Select(count => (int)count));
        Assert.Equal([8f, 8f, 8f, 8f, -12f, -12f], heard.MarginsDb[..6].ToArray());
        Assert.Equal([7f, 7f, 7f, 7f, -13f, -13f], servers.Layer(ReachDirection.Hears).MarginsDb[..6].ToArray());
        Assert.Equal([new(1, 18, 12, 6), new(2, 18, 12, 6)], heard.ByStation());
        Assert.Equal([12, 12, 12], heard.CellsByCount(servers.Flags));
        Assert.Equal(36, servers.CellCount);
    }

    /// <summary>147.5 dB of loss leave 0.5 dB where the station is heard, −0.5 dB where it hears, and both ways the weaker.</summary>
    [Fact]
    public void Each_direction_has_its_own_count()
    {
        BestServers servers = Taken([1], [Columns(147.5, 147.5, 147.5, 147.5, 147.5, 147.5)]);
        Assert.Equal(36, servers.Layer(ReachDirection.Heard).ByStation()[0].Reached);
        Assert.Equal(0, servers.Layer(ReachDirection.Hears).ByStation()[0].Reached);
        Assert.Equal(0, servers.Layer(ReachDirection.Both).ByStation()[0].Reached);
    }

    [Fact]
    public void Any_order_of_the_stations_gives_the_same_and_a_tie_goes_to_the_lower_number()
    {
        Random random = new(20);
        ReachField[] fields = [.. Enumerable.Range(0, 5).Select(_ => ReachSamples.Field(6, 100, (_, _) => 135 + random.Next(5) * 5))];
        BestServers first = Taken([1, 2, 3, 4, 5], fields);
        int ties = 0;
        foreach (ReachDirection direction in Enum.GetValues<ReachDirection>())
        {
            BestServerLayer layer = first.Layer(direction);
            for (int cell = 0; cell < 36; cell++)
            {
                float[] margins = [.. fields.Select(field => (float)(148 - field.LossDb[cell] - (direction == ReachDirection.Heard ? 0 : 1)))];
                Assert.Equal(margins.Max(), layer.MarginsDb[cell]);
                Assert.Equal(margins.Max() < 0 ? 0 : Array.IndexOf(margins, margins.Max()) + 1, layer.ServerOf(cell));
                ties += margins.Count(margin => margin == margins.Max()) > 1 ? 1 : 0;
            }

            foreach (int[] order in new int[][] { [5, 4, 3, 2, 1], [3, 1, 5, 2, 4] })
            {
                BestServerLayer other = Taken(order, [.. order.Select(number => fields[number - 1])]).Layer(direction);
                Assert.Equal(layer.Servers(), other.Servers());
                Assert.Equal(layer.Counts, other.Counts);
                Assert.Equal(layer.MarginsDb, other.MarginsDb);
                Assert.Equal(layer.ByStation(), other.ByStation());
            }
        }

        Assert.True(ties > 10);
    }

    [Fact]
    public void Cells_without_ground_are_marked_and_those_outside_every_radius_left_out()
    {
        ReachField disc = ReachSamples.Field(6, 100, (east, north) => Math.Abs(east) > 200 ? double.NaN : 140);
        ReachFlags[] flags = disc.Flags.ToArray();
        float[] loss = disc.LossDb.ToArray();
        float[] elevation = disc.StationElevationDegrees.ToArray();
        (flags[1], loss[1], elevation[1]) = (ReachFlags.GroundMissing, float.NaN, float.NaN);
        BestServers servers = Taken([1], [ReachField.FromCells(disc.Input, disc.Frame, loss, elevation, flags, [])]);
        Assert.Equal(24, servers.CellCount);
        Assert.Equal(ReachFlags.Outside, servers.Flags[0]);
        Assert.Equal(ReachFlags.GroundMissing, servers.Flags[1]);
        Assert.Equal([0, 23], servers.Layer(ReachDirection.Heard).CellsByCount(servers.Flags));
    }

    [Fact]
    public void A_station_is_taken_once_and_from_a_grid_that_fits()
    {
        BestServers servers = Taken([1], [Shared]);
        Assert.Throws<ArgumentException>(() => servers.Take(1, Map(Shared)));
        Assert.Throws<ArgumentOutOfRangeException>(() => servers.Take(2, Map(Shared)));
        Assert.Throws<ArgumentException>(() => BestServers.Before(Shared.Frame, 1).Take(1, Map(ReachSamples.Field(8, 100, (_, _) => 120))));
        Assert.Throws<ArgumentException>(() => BestServers.Before(Shared.Frame, 1).Take(1, Map(ReachSamples.Field(4, 110, (_, _) => 120))));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestServers.Before(Shared.Frame, 0));
    }

    /// <summary>18.2° W and 17.8° W lie on both sides of the edge of two UTM zones.</summary>
    [Fact]
    public void Stations_of_two_zones_share_one_grid_that_holds_each_of_theirs()
    {
        GeoPoint west = new(46.5, -18.2);
        GeoPoint east = new(46.6, -17.8);
        GridFrame shared = ReachGrid.Shared([west, east], 12_000, 90, out string problem)!;
        Assert.Equal("", problem);
        Assert.Equal(shared, ReachGrid.Shared([east, west], 12_000, 90, out _));
        foreach (GeoPoint station in (GeoPoint[])[west, east])
        {
            GridFrame own = ReachGrid.Of(ReachSamples.Input(12_000, 90) with { Station = station, SharedZone = (shared.UtmZone, shared.IsNorth) });
            (int column, int row) = ReachGrid.PlaceOf(own, shared);
            Assert.Equal(ReachGrid.Centre(own, 3, 5), ReachGrid.Centre(shared, column + 3, row + 5));

            // Every place of the radius lies in its grid.
            for (int bearing = 0; bearing < 360; bearing += 15)
            {
                (double c, double r) = own.Locate(Geodesic.Direct(station, bearing, 12_000));
                Assert.True(c > -0.5 && r > -0.5 && c < own.Columns - 0.5 && r < own.Rows - 0.5, $"bearing {bearing}");
            }
        }
    }

    [Theory]
    [InlineData(49.5, -10, 100, "one grid over all stations in cells of 100 m")]
    [InlineData(46.5, 40, 500, "59° of longitude apart")]
    [InlineData(46.5, -1, 1000, "from the middle meridian")]
    [InlineData(85, -18, 90, "outside the UTM grid")]
    public void Stations_that_no_grid_holds_are_told_why(double latitude, double longitude, double cellMetres, string part)
    {
        Assert.Null(ReachGrid.Shared([ReachSamples.Station, new(latitude, longitude)], 20_000, cellMetres, out string problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    private static ReachField Columns(params double[] losses) => ReachSamples.Field(6, 100, (east, _) => losses[(int)Math.Round((east / 100) + 2.5)]);

    private static ReachMap Map(ReachField field) => ReachMap.Of(field, ReachSamples.Budget());

    private static BestServers Taken(int[] numbers, ReachField[] fields)
    {
        BestServers servers = BestServers.Before(Shared.Frame, numbers.Max());
        for (int i = 0; i < numbers.Length; i++)
        {
            servers.Take(numbers[i], Map(fields[i]));
        }

        return servers;
    }
}
