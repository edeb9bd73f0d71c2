using System.Collections.Immutable;
using System.Text;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Drawings;

/// <summary>A finished picture: shapes on a sheet, which every kind of output renders alike.</summary>
/// <remarks>Immutable. Sizes are in pixels at scale 1; a printed page takes them as 1/96 inch.</remarks>
public sealed record Drawing
{
    /// <summary>Pixels across at scale 1.</summary>
    public required int WidthPixels { get; init; }

    /// <summary>Pixels down at scale 1.</summary>
    public required int HeightPixels { get; init; }

    /// <summary>What the picture is, in one line: read aloud by screen readers.</summary>
    public required string Title { get; init; }

    /// <summary>What the picture shows, in sentences, for somebody who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>Colour of the sheet.</summary>
    public required Ink Paper { get; init; }

    /// <summary>The shapes, from the lowest to the topmost.</summary>
    public required ImmutableArray<Shape> Shapes { get; init; }

    /// <summary>
    /// The characters of the drawing's texts that the embedded font cannot show, each once, in order of code point; empty when all
    /// can be shown. An output writes a question mark for them or leaves them to the viewer's fonts, so whoever draws reports them.
    /// </summary>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public ImmutableArray<string> MissingGlyphs()
    {
        SortedSet<int> missing = [];
        foreach (TextShape text in Texts())
        {
            FontFile font = FontShelf.Of(text.Weight);
            foreach (Rune rune in PlainText.Runes(text.Text))
            {
                if (!font.Has(rune))
                {
                    missing.Add(rune.Value);
                }
            }
        }

        return [.. missing.Select(char.ConvertFromUtf32)];
    }

    /// <summary>All texts, in drawing order, out of their groups.</summary>
    public IEnumerable<TextShape> Texts() => Flat(Shapes).OfType<TextShape>();

    /// <summary>The first group of a name, at any depth; null when there is none.</summary>
    public GroupShape? Group(string name) => Flat(Shapes).OfType<GroupShape>().FirstOrDefault(group => group.Name == name);

    private static IEnumerable<Shape> Flat(ImmutableArray<Shape> shapes)
    {
        foreach (Shape shape in shapes)
        {
            yield return shape;
            if (shape is GroupShape group)
            {
                foreach (Shape member in Flat(group.Members))
                {
                    yield return member;
                }
            }
        }
    }
}
