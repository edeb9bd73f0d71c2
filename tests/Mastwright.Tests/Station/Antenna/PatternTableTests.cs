using System.Collections.Immutable;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Station.Antenna;

public sealed class PatternTableTests
{
    [Fact]
    public void Rows_are_read_with_heading_and_comments_in_any_order()
    {
        const string Text = "angle,dB\n# measured on the bench\n10,-3\r\n\n0,0\n-10 ; -2.5\n350.5\t-1\n";

        Assert.True(PatternTable.TryParse(Text, out ImmutableArray<PatternPoint> points, out string problem), problem);
        Assert.Equal([new(-10, -2.5), new(-9.5, -1), new(0, 0), new(10, -3)], points);
    }

    [Theory]
    [InlineData(5, -1.5)]
    [InlineData(-5, -1.25)]
    [InlineData(0, 0)]
    [InlineData(60, -3)]
    [InlineData(-60, -2.5)]
    public void Level_runs_straight_between_rows_and_holds_beyond(double elevation, double db) =>
        Assert.Equal(db, PatternTable.RelativeDb([new(-10, -2.5), new(0, 0), new(10, -3)], elevation), 1e-12);

    [Fact]
    public void A_table_of_the_upper_half_counts_for_both() =>
        Assert.Equal(-1.5, PatternTable.RelativeDb([new(0, 0), new(10, -3)], -5), 1e-12);

    [Theory]
    [InlineData("0,0\n10", "line 2", "1 fields")]
    [InlineData("0,0\n10,-1,5", "line 2", "decimal point")]
    [InlineData("0,0\nten,-3", "line 2", "not two numbers")]
    [InlineData("angle,dB\nlevel,too\n0,0", "line 2", "not two numbers")]
    [InlineData("0,0\n120,-3", "line 2", "outside -90 to 90")]
    [InlineData("0,0\n10,8", "line 2", "relative to the main beam")]
    [InlineData("0,0\n0,-3", "line 2", "stands twice")]
    [InlineData("0,0\n10,NaN", "line 2", "not between")]
    [InlineData("0,0", "", "two rows or more")]
    [InlineData("", "", "two rows or more")]
    [InlineData("0,-20\n10,-25", "", "highest level is -20")]
    public void A_wrong_row_says_where_and_what(string text, string where, string what)
    {
        Assert.False(PatternTable.TryParse(text, out ImmutableArray<PatternPoint> points, out string problem));
        Assert.Contains(where, problem, StringComparison.Ordinal);
        Assert.Contains(what, problem, StringComparison.Ordinal);
        Assert.Empty(points);
    }

    [Fact]
    public void Any_text_is_read_or_refused_and_never_crashes() =>
        Gen.String.Sample(text => PatternTable.TryParse(text, out ImmutableArray<PatternPoint> points, out string problem)
            ? points.Length >= 2 && problem.Length == 0
            : points.IsEmpty && problem.Length > 0);
}
