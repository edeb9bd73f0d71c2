using System.Collections.Immutable;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Tests.Fonts;

public sealed class WrapTests
{
    [Fact]
    public void Wrapped_lines_fit_and_lose_no_word_while_lines_are_left() =>
        Gen.Select(Gen.String[Gen.Char['a', 'z'], 1, 9].Array[1, 30], Gen.Double[120, 600]).Sample((words, room) =>
        {
            string text = string.Join(' ', words);
            ImmutableArray<string> lines = TextRuler.Wrap(text, room, 40, 12);
            return string.Join(' ', lines) == text && lines.All(line => TextRuler.WidthPixels(line, 12) <= room);
        });

    [Fact]
    public void The_last_line_allowed_ends_in_an_ellipsis_when_words_are_left()
    {
        ImmutableArray<string> lines = TextRuler.Wrap("The ridge stands in the way of the ray from the harbour to the bay", 120, 2, 12);
        Assert.Equal(2, lines.Length);
        Assert.EndsWith("…", lines[1], StringComparison.Ordinal);
    }
}
