using System.Text;
using Mastwright.Records.Log;

namespace Mastwright.Tests.Records.Log;

public sealed class LineDifferenceTests
{
    [Theory]
    [InlineData("a\nb\nc\n", "a\nb\nc\n", "")]
    [InlineData("a\nb\nc\n", "a\nx\nc\n", "- b|+ x")]
    [InlineData("a\n", "a\nb\n", "+ b")]
    [InlineData("a\nb\n", "b\n", "- a")]
    [InlineData("a\n", "\uFEFFa\n", "")]
    public void What_went_and_what_came_is_told_line_by_line(string before, string after, string lines) => Assert.Equal(
        lines, string.Join('|', LineDifference.Between(Encoding.UTF8.GetBytes(before), Encoding.UTF8.GetBytes(after))!.Value));

    [Fact]
    public void What_is_no_text_or_too_long_is_not_compared()
    {
        Assert.Null(LineDifference.Between([1, 0], [1]));
        Assert.Null(LineDifference.Between([0xE5], [0xE6]));
        Assert.Null(LineDifference.Between([1], new byte[(1 << 20) + 1]));
        Assert.Empty(LineDifference.Between([1, 0], [1, 0])!.Value);
    }
}
