using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Storage.Reach;
using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Storage.Tests.Reach;

public sealed class WeightFileTests : IDisposable
{
    /// <summary>10 × 10 cells of 100 m around 46.4° N 18.6° W.</summary>
    private static readonly GridFrame Frame = ReachGrid.Of(new(46.4, -18.6), 500, 100);

    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_table_of_places_is_read_by_its_columns()
    {
        ReachWeights weights = Read("houses.csv", "# made up\nname,weight,Longitude,latitude\nA,2.5,-18.6,46.4\n\nB,4,-18.6005,46.4005\nC,8,-17,46.4\n");
        Assert.Equal((3, 14.5, 8.0), (weights.Count, weights.Total, weights.OffGrid));
        Assert.Equal(6.5, weights.InCell.ToArray().Sum());
    }

    [Fact]
    public void Points_of_a_GeoJSON_file_carry_their_weight()
    {
        const string Text = """
            {"type": "FeatureCollection", "features": [
              {"type": "Feature", "properties": {"weight": 3}, "geometry": {"type": "Point", "coordinates": [-18.6, 46.4, 12]}},
              {"type": "Feature", "properties": {"weight": 0, "name": "empty"}, "geometry": {"type": "Point", "coordinates": [-18.6, 46.4]}}]}
            """;
        ReachWeights weights = Read("houses.geojson", Text);
        Assert.Equal((2, 3.0, 0.0), (weights.Count, weights.Total, weights.OffGrid));
    }

    /// <summary>Six cells of 0.01°, one without data; the one over the grid's middle is wider than the grid, which gets its area's share.</summary>
    [Fact]
    public void A_raster_of_counts_keeps_its_sum()
    {
        ReachWeights weights = Read("people.asc", "ncols 3\nnrows 2\nxllcorner -18.615\nyllcorner 46.385\ncellsize 0.01\nNODATA_value -1\n4 10 -1\n1 2 3\n");
        Assert.Equal((5, 20.0), (weights.Count, weights.Total));
        Assert.Equal(20, weights.InCell.ToArray().Sum() + weights.OffGrid, 1e-12);
        Assert.InRange(weights.InCell.ToArray().Sum(), 8, 20);
    }

    [Fact]
    public void A_raster_that_this_program_wrote_is_read_back()
    {
        float[] counts = [.. Enumerable.Range(0, Frame.Columns * Frame.Rows).Select(cell => cell == 7 ? float.NaN : cell % 5)];
        ReachTiffWriter.Write(folder.At("people.tif"), Frame, counts);
        ReachWeights weights = new(Frame);
        Assert.Equal("", WeightFile.Read(folder.At("people.tif"), weights));
        Assert.Equal(0, weights.OffGrid);
        Assert.Equal(counts.Select(count => float.IsNaN(count) ? 0 : (double)count), weights.InCell.ToArray().Select(weight => Math.Round(weight, 9)));
    }

    [Theory]
    [InlineData("a.csv", "latitude,longitude\n46,-18\n", "a.csv:1: the first line names no column 'weight'")]
    [InlineData("a.csv", "latitude,longitude,weight\n46,-18,1\n46,-18,many\n", "a.csv:3: it has no weight")]
    [InlineData("a.csv", "latitude,longitude,weight\n146,-18,1\n", "a.csv:2: it has no place")]
    [InlineData("a.csv", "latitude,longitude,weight\n46,-18,-1\n", "a.csv:2: it has no weight")]
    [InlineData("a.csv", "", "a.csv: it is empty")]
    [InlineData("a.json", "{\"features\": [{\"geometry\": {\"type\": \"Polygon\"}, \"properties\": {\"weight\": 1}}]}", "feature 1: it has no place")]
    [InlineData("a.json", "{\"features\": [{\"geometry\": {\"type\": \"Point\", \"coordinates\": [1, 2]}}]}", "feature 1: it has no weight")]
    [InlineData("a.json", "[1, 2]", "no list of features")]
    [InlineData("a.json", "{\"features\": [", "not sound JSON (line 1)")]
    [InlineData("a.asc", "ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 -5\n", "column 2, row 1 holds -5")]
    [InlineData("a.asc", "ncols 2\n", "a.asc")]
    [InlineData("a.xls", "", "its name ends in none of .csv")]
    public void What_is_wrong_is_told_with_its_place(string name, string text, string part)
    {
        File.WriteAllText(folder.At(name), text);
        Assert.Contains(part, WeightFile.Read(folder.At(name), new(Frame)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_told() =>
        Assert.EndsWith("none.csv: there is no such file", WeightFile.Read(folder.At("none.csv"), new(Frame)), StringComparison.Ordinal);

    private ReachWeights Read(string name, string text)
    {
        File.WriteAllText(folder.At(name), text);
        ReachWeights weights = new(Frame);
        Assert.Equal("", WeightFile.Read(folder.At(name), weights));
        return weights;
    }
}
