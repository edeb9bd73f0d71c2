using Mastwright.Findings;

namespace Mastwright.Tests.Findings;

public sealed class NearestWordTests
{
    [Theory]
    [InlineData("lenght", "length", 1)]
    [InlineData("postion", "position", 1)]
    [InlineData("abc", "abc", 0)]
    [InlineData("", "abc", 3)]
    [InlineData("kitten", "sitting", 3)]
    public void Edits_are_counted_as_for_a_typing_slip(string from, string to, int edits)
    {
        Assert.Equal(edits, NearestWord.Edits(from, to));
        Assert.Equal(edits, NearestWord.Edits(to, from));
    }

    [Theory]
    [InlineData("foam-10", "foam-10mm")]
    [InlineData("RG_213", "rg-213")]
    [InlineData("rg123", "rg-213")]
    [InlineData("waveguide", null)]
    [InlineData("", null)]
    public void The_nearest_word_is_found_when_one_is_near(string found, string? nearest) =>
        Assert.Equal(nearest, NearestWord.Of(found, ["foam-5mm", "foam-10mm", "rg-213", "rg-58"]));

    /// <summary>IEEE 802.3 has classes 0 to 8: for class 9 none of them is the one that was meant.</summary>
    [Theory]
    [InlineData("class-9", null)]
    [InlineData("clas-3", "class-3")]
    [InlineData("class-33", "class-3")]
    public void Of_many_words_that_differ_in_their_number_none_is_guessed(string found, string? nearest) =>
        Assert.Equal(nearest, NearestWord.Of(found, ["passive", "class-0", "class-1", "class-2", "class-3", "class-4", "class-8"]));
}
