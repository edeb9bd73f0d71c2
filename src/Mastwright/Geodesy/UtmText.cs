using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>Reads UTM positions, whose letter is the latitude band and nothing else: "27T 676804 5141062".</summary>
internal static class UtmText
{
    /// <summary>A position may be rounded over the edge of its band by this much.</summary>
    private const double BandSlackDegrees = 0.001;

    /// <summary>Zone digits, a letter, and two letters more: a grid reference, right or wrong.</summary>
    internal static bool LooksLikeGridReference(string text)
    {
        string compact = text.Replace(" ", "", StringComparison.Ordinal);
        int letter = ZoneDigits(compact);
        return letter is 1 or 2 && compact.Length >= letter + 3
            && char.IsAsciiLetter(compact[letter]) && char.IsAsciiLetter(compact[letter + 1]) && char.IsAsciiLetter(compact[letter + 2])
            && !compact.AsSpan(letter + 3).ContainsAnyExceptInRange('0', '9');
    }

    /// <summary>Reads a UTM position; <paramref name="isUtm"/> says whether the text is one, right or wrong.</summary>
    internal static bool TryRead(string text, out GeoPoint point, out string problem, out bool isUtm)
    {
        point = default;
        problem = "";
        int digits = ZoneDigits(text);
        string[] words = text[digits..].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        isUtm = digits is 1 or 2 && words.Length == 3 && words[0].All(char.IsAsciiLetter)
            && (words[0].Length == 1 || IsHemisphere(words[0])) && char.IsAsciiDigit(words[1][0]) && char.IsAsciiDigit(words[2][0]) && (IsLong(words[1]) || IsLong(words[2]));
        if (!isUtm)
        {
            return false;
        }

        int zone = int.Parse(text.AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture);
        string letter = words[0].ToUpperInvariant();
        problem = Slip(text, zone, letter, words[1], words[2], out double easting, out double northing);
        if (problem.Length > 0)
        {
            return false;
        }

        bool north = letter.Length > 1 ? letter == "NORTH" : letter[0] >= 'N';
        point = UniversalTransverseMercator.ToGeo(new UtmPosition(zone, north, easting, northing));
        if (letter.Length > 1)
        {
            return true;
        }

        double bandSouth = -80 + (8 * MilitaryGrid.Bands.IndexOf(letter[0], StringComparison.Ordinal));
        double bandNorth = letter[0] == 'X' ? 84 : bandSouth + 8;
        if (point.LatitudeDegrees >= bandSouth - BandSlackDegrees && point.LatitudeDegrees <= bandNorth + BandSlackDegrees)
        {
            return true;
        }

        string right = point.LatitudeDegrees is >= -80 and <= 84 ? $", which is band {MilitaryGrid.Band(point.LatitudeDegrees)}" : "";
        problem = string.Create(
            CultureInfo.InvariantCulture,
            $"'{text}': the letter after the zone is the latitude band, and {letter} is {bandSouth:0}° to {bandNorth:0}°, but the northing lies at {point.LatitudeDegrees:0.##}°{right}; correct the letter, or write '{zone} north' or '{zone} south'");
        point = default;
        return false;
    }

    private static string Slip(
        string text, int zone, string letter, string eastingText, string northingText, out double easting, out double northing)
    {
        northing = 0;
        if (!TryMetres(eastingText, 'E', out easting) || !TryMetres(northingText, 'N', out northing))
        {
            return $"'{text}' is not understood as UTM; write whole or decimal metres, such as '27T 676804 5141062'";
        }

        if (zone is < 1 or > 60)
        {
            return $"'{text}' has the zone {zone}; zones run from 1 to 60";
        }

        if (letter is "A" or "B" or "Y" or "Z")
        {
            return $"'{text}' lies in the polar grid (UPS), which is not read here; write decimal degrees";
        }

        if (letter.Length == 1 && !MilitaryGrid.Bands.Contains(letter[0], StringComparison.Ordinal))
        {
            return $"'{text}' has the latitude band '{letter}'; bands run from C to X, without I and O";
        }

        return easting is < 100_000 or > 1_000_000 || northing > 10_000_000
            ? $"'{text}' has the easting {eastingText} and the northing {northingText}; an easting is between 100000 m and 1000000 m and comes first, a northing is at most 10000000 m"
            : "";
    }

    private static bool TryMetres(string text, char direction, out double metres)
    {
        string number = text.ToUpperInvariant();
        number = number.EndsWith(direction) ? number[..^1] : number;
        number = number.EndsWith('M') ? number[..^1] : number;
        return double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out metres);
    }

    /// <summary>Four digits or more: no degree has as many, so it is an easting or a northing.</summary>
    private static bool IsLong(string word) => word.Length >= 4 && word.AsSpan(0, 4).ContainsAnyExceptInRange('0', '9') is false;

    private static bool IsHemisphere(string word) =>
        word.Equals("north", StringComparison.OrdinalIgnoreCase) || word.Equals("south", StringComparison.OrdinalIgnoreCase);

    private static int ZoneDigits(string text)
    {
        int digits = 0;
        while (digits < text.Length && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }

        return digits;
    }
}
