using System.Globalization;
using System.Text;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Makes the key of a station from its name.</summary>
internal static class KeyFromName
{
    private static readonly (string Letters, string Plain)[] Folds =
    [
        ("àáâãäåāăą", "a"), ("çćĉċč", "c"), ("ďđð", "d"), ("èéêëēĕėęě", "e"), ("ĝğġģ", "g"), ("ĥħ", "h"), ("ìíîïĩīĭįı", "i"), ("ĵ", "j"), ("ķ", "k"),
        ("ĺļľł", "l"), ("ñńņň", "n"), ("òóôõöøōŏő", "o"), ("ŕŗř", "r"), ("śŝşšș", "s"), ("ţťŧț", "t"), ("ùúûüũūŭůűų", "u"), ("ŵ", "w"), ("ýÿŷ", "y"),
        ("źżž", "z"), ("ß", "ss"), ("æ", "ae"), ("œ", "oe"), ("þ", "th"),
    ];

    /// <summary>A key of the allowed form: letters folded to plain small ones, everything else a hyphen; "station" when nothing is left.</summary>
    internal static string Of(string name)
    {
        StringBuilder key = new();
        foreach (char c in name.ToLowerInvariant())
        {
            string plain = char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) ? c.ToString(CultureInfo.InvariantCulture) : Folds.FirstOrDefault(fold => fold.Letters.Contains(c, StringComparison.Ordinal)).Plain ?? "-";
            if (plain != "-" || (key.Length > 0 && key[^1] != '-'))
            {
                key.Append(plain);
            }

            if (key.Length >= 48)
            {
                break;
            }
        }

        string made = key.ToString().Trim('-');
        return made.Length > 0 ? made : "station";
    }

    /// <summary>The key, or the key with the first free number behind it; it is taken from then on.</summary>
    internal static string Free(string key, HashSet<string> taken, Dictionary<string, int> next)
    {
        if (taken.Add(key))
        {
            return key;
        }

        int number = next.GetValueOrDefault(key, 2);
        while (true)
        {
            string numbered = string.Create(CultureInfo.InvariantCulture, $"{key}-{number}");
            number++;
            if (taken.Add(numbered))
            {
                next[key] = number;
                return numbered;
            }
        }
    }
}
