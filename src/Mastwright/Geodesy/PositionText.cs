using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Geodesy;

/// <summary>Positions as a person writes them, from text to a place and back; the same in every culture.</summary>
/// <remarks>
/// Read are decimal degrees ("46.40, -18.70", "46.40° N, 18.70° W"), degrees with minutes and seconds ("46°24'00"N 18°42'00"W",
/// "N 46° 24.0 W 18° 42.0"), locators ("HM56pj"), UTM with the latitude band or the hemisphere in words
/// ("27T 676804 5141062", "27 north 676804 5141062") and grid references ("27TXM7680441062"), each on WGS 84 and each with
/// how far off it may be where that is known ("± 3 km", "+/- 30 m").
/// </remarks>
public static class PositionText
{
    /// <summary>Longer text is refused unread.</summary>
    public const int LongestText = 100;

    internal const string Forms =
        "write decimal degrees such as '46.40, -18.70', degrees and minutes such as 46°24'00\"N 18°42'00\"W, a locator such as 'HM56pj', "
        + "UTM such as '27T 676804 5141062' or a grid reference such as '27TXM7680441062'";

    /// <summary>Reads a position.</summary>
    /// <param name="text">The text, in one of the forms above.</param>
    /// <param name="position">
    /// The place, and how far off it may be: as given after "±"; else half the diagonal of a locator's or grid reference's square; else 0.
    /// </param>
    /// <param name="problem">What was found and what would be right; empty when the answer is true.</param>
    public static bool TryParse(string text, out LocatedPoint position, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        position = default;
        if (text.Length > LongestText)
        {
            problem = $"the text has {text.Length} characters; a position has at most {LongestText}";
            return false;
        }

        if (text.AsSpan().ContainsAnyInRange('\u0000', '\u001f') || string.IsNullOrWhiteSpace(text))
        {
            problem = $"there is no position; {Forms}";
            return false;
        }

        int mark = text.IndexOf('±', StringComparison.Ordinal);
        int afterMark = mark + 1;
        if (mark < 0)
        {
            mark = text.IndexOf("+/-", StringComparison.Ordinal);
            afterMark = mark + 3;
        }

        string place = (mark < 0 ? text : text[..mark]).Trim();
        if (!TryPlace(place, out position, out problem))
        {
            return false;
        }

        return mark < 0 || TryRadius(place, text[afterMark..].Trim(), ref position, out problem);
    }

    /// <summary>Writes decimal degrees with five to eight decimals, which is to the millimetre: "46.40000, -18.70000".</summary>
    public static string Format(GeoPoint point) => string.Create(
        CultureInfo.InvariantCulture, $"{point.LatitudeDegrees:0.00000###}, {point.LongitudeDegrees:0.00000###}");

    /// <summary>Writes decimal degrees, and how far off the place may be when it may: "46.40000, -18.70000 ± 3000 m".</summary>
    public static string Format(LocatedPoint position) => position.RadiusMetres == 0
        ? Format(position.Point)
        : $"{Format(position.Point)} ± {Quantity.Format(position.RadiusMetres, Dimension.Length)}";

    private static bool TryPlace(string place, out LocatedPoint position, out string problem)
    {
        if (place.Length >= 2 && char.IsAsciiLetter(place[0]) && char.IsAsciiLetter(place[1]) && !place.Contains(' ', StringComparison.Ordinal))
        {
            return Locator.TryParse(place, out position, out problem);
        }

        if (UtmText.LooksLikeGridReference(place))
        {
            return MilitaryGrid.TryParse(place, out position, out problem);
        }

        position = default;
        GeoPoint point;
        bool isRead = UtmText.TryRead(place, out point, out problem, out bool isUtm);
        if (!isUtm)
        {
            isRead = new DegreesReader(place).TryRead(out point, out problem);
        }

        position = new LocatedPoint(point, 0);
        return isRead;
    }

    private static bool TryRadius(string place, string text, ref LocatedPoint position, out string problem)
    {
        double ownMetres = position.RadiusMetres;
        GeoPoint point = position.Point;
        position = default;
        if (!Quantity.TryParse(text, Dimension.Length, out Estimate radius, out problem))
        {
            problem = "how far off the position may be: " + problem;
            return false;
        }

        if (!radius.IsExact || radius.Median < 0 || radius.Median > 2e7)
        {
            problem = $"how far off the position may be: '{text}' is no distance; write one number such as '± 30 m'";
            return false;
        }

        if (radius.Median < ownMetres)
        {
            problem = string.Create(
                CultureInfo.InvariantCulture,
                $"'{place}' names a square that reaches {ownMetres:0.#} m from its middle, more than the '± {text}' given; write a longer reference or decimal degrees");
            return false;
        }

        position = new LocatedPoint(point, radius.Median);
        return true;
    }
}
