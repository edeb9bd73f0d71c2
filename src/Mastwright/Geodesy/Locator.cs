namespace Mastwright.Geodesy;

/// <summary>The Maidenhead locator: pairs of letters and digits that name ever smaller squares, "JN58td25".</summary>
/// <remarks>
/// Source: the locator system drawn up at Maidenhead in 1980 and adopted by the IARU, in use on WGS 84: fields of 20° × 10°, squares of
/// 2° × 1°, sub-squares of 5′ × 2.5′, extended squares of 30″ × 15″. The fifth pair (letters, 1.25″ × 0.625″) is common practice.
/// </remarks>
public static class Locator
{
    private static readonly int[] Steps = [18, 10, 24, 10, 24];

    /// <summary>The square that holds a place.</summary>
    /// <param name="point">Any place.</param>
    /// <param name="length">Characters: 2, 4, 6, 8 or 10.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is another.</exception>
    public static string Format(GeoPoint point, int length = 8)
    {
        if (length is not (2 or 4 or 6 or 8 or 10))
        {
            throw new ArgumentOutOfRangeException(nameof(length), length, "A locator has 2, 4, 6, 8 or 10 characters.");
        }

        int cells = CellsAround(length);
        int east = Math.Min(cells - 1, (int)Math.Floor((point.LongitudeDegrees + 180) * cells / 360));
        int north = Math.Min(cells - 1, (int)Math.Floor((point.LatitudeDegrees + 90) * cells / 180));
        Span<char> text = stackalloc char[length];
        for (int pair = (length / 2) - 1; pair >= 0; pair--)
        {
            char first = Steps[pair] switch { 10 => '0', 18 => 'A', _ => 'a' };
            text[2 * pair] = (char)(first + (east % Steps[pair]));
            text[(2 * pair) + 1] = (char)(first + (north % Steps[pair]));
            east /= Steps[pair];
            north /= Steps[pair];
        }

        return new string(text);
    }

    /// <summary>Reads a locator of 2, 4, 6, 8 or 10 characters, in capitals or small letters.</summary>
    /// <param name="text">The locator.</param>
    /// <param name="position">The middle of its square, and the distance from there to the farthest corner.</param>
    /// <param name="problem">What is wrong and what would be right; empty when the answer is true.</param>
    public static bool TryParse(string text, out LocatedPoint position, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        position = default;
        if (text.Length is not (2 or 4 or 6 or 8 or 10))
        {
            problem = $"'{text}' has {text.Length} characters; a locator has 2, 4, 6, 8 or 10, such as 'HM56pj'";
            return false;
        }

        int east = 0;
        int north = 0;
        for (int i = 0; i < text.Length; i++)
        {
            int steps = Steps[i / 2];
            int value = steps == 10 ? text[i] - '0' : char.ToUpperInvariant(text[i]) - 'A';
            if (value < 0 || value >= steps)
            {
                string right = steps == 10 ? "a digit" : $"a letter from A to {(char)('A' + steps - 1)}";
                problem = $"'{text}' has '{text[i]}' as character {i + 1}; a locator has {right} there, such as 'HM56pj'";
                return false;
            }

            if (i % 2 == 0)
            {
                east = (east * steps) + value;
            }
            else
            {
                north = (north * steps) + value;
            }
        }

        int cells = CellsAround(text.Length);
        GeoPoint middle = new(((north + 0.5) * 180 / cells) - 90, ((east + 0.5) * 360 / cells) - 180);
        GeoPoint southCorner = new((north * 180.0 / cells) - 90, (east * 360.0 / cells) - 180);
        GeoPoint northCorner = new(((north + 1) * 180.0 / cells) - 90, (east * 360.0 / cells) - 180);
        position = new LocatedPoint(middle, Math.Max(
            Geodesic.Inverse(middle, southCorner).DistanceMetres, Geodesic.Inverse(middle, northCorner).DistanceMetres));
        problem = "";
        return true;
    }

    /// <summary>How many squares of this length lie side by side around the earth, and from pole to pole.</summary>
    private static int CellsAround(int length)
    {
        int cells = 1;
        for (int pair = 0; pair < length / 2; pair++)
        {
            cells *= Steps[pair];
        }

        return cells;
    }
}
