using Mastwright.Workbench.Keeping;

namespace Mastwright.Tests.Workbench.Keeping;

public sealed class LineMergeTests
{
    private const string Before = "a\nb\nc\nd\ne\n";

    [Theory]
    [InlineData("A\nb\nc\nd\ne\n", "a\nb\nc\nd\nE\n", "A\nb\nc\nd\nE\n")]
    [InlineData("x\na\nb\nc\nd\ne\n", "a\nb\nc\nd\ne\ny", "x\na\nb\nc\nd\ne\ny")]
    [InlineData("b\nc\nd\ne\n", "a\nb\nc\nnew\nd\ne\n", "b\nc\nnew\nd\ne\n")]
    [InlineData("a\nb\nC\nd\ne\n", "a\nb\nC\nd\ne\n", "a\nb\nC\nd\ne\n")]
    [InlineData(Before, "other\n", "other\n")]
    [InlineData("a\nB\r\nc\nd\ne\n", "a\nb\nc\nd\ne", "a\nB\r\nc\nd\ne")]
    public void Changes_of_different_lines_come_together(string yours, string theirs, string merged)
    {
        Assert.Equal(merged, LineMerge.Of(Before, yours, theirs));
        Assert.Equal(merged, LineMerge.Of(Before, theirs, yours));
    }

    [Theory]
    [InlineData("a\nB\nc\nd\ne\n", "a\nbb\nc\nd\ne\n")]
    [InlineData("a\nB\nc\nd\ne\n", "a\nb\nC\nd\ne\n")]
    [InlineData("a\nx\nb\nc\nd\ne\n", "a\ny\nb\nc\nd\ne\n")]
    [InlineData("", "a\nb\nC\nd\ne\n")]
    public void Changes_of_the_same_or_neighbouring_lines_do_not(string yours, string theirs)
    {
        Assert.Null(LineMerge.Of(Before, yours, theirs));
        Assert.Null(LineMerge.Of(Before, theirs, yours));
    }

    [Fact]
    public void One_change_alone_gives_that_text() =>
        Gen.Select(Lines, Lines).Sample((before, after) => LineMerge.Of(before, after, before) == after && LineMerge.Of(before, before, after) == after);

    [Fact]
    public void Changes_far_apart_always_come_together() => Gen.Select(Lines, Lines, Lines, Lines).Sample((first, second, one, other) =>
    {
        // Lines between that neither side has elsewhere, so that no line of one end is taken for one of the other.
        const string Between = "=1\n=2\n=3\n=4\n=5\n";
        return LineMerge.Of(first + Between + second, one + Between + second, first + Between + other) == one + Between + other;
    });

    private static Gen<string> Lines => Gen.Int[0, 3].Select(one => ((string[])["a\n", "b\n", "c\n", "\n"])[one]).Array[0, 8].Select(lines => string.Concat(lines));
}
