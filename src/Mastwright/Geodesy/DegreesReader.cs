using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>Reads latitude and longitude in degrees: decimal, with minutes, with seconds; with signs or with N, S, E, W.</summary>
internal sealed class DegreesReader(string text)
{
    private enum Sort
    {
        Number,
        Letter,
        Separator,
    }

    /// <summary>One word of the text; a number carries the mark behind it: '°', '\'', '"' or none.</summary>
    private readonly record struct Token(Sort Sort, double Value, char Mark, bool IsSigned, bool HasFraction);

    private readonly List<Token> _tokens = [];

    internal bool TryRead(out GeoPoint point, out string problem)
    {
        point = default;
        problem = CommaSlip();
        if (problem.Length == 0 && !TryTokens())
        {
            problem = NotUnderstood();
        }

        if (problem.Length > 0 || !TrySplit(out List<Token> first, out List<Token> second, out problem)
            || !TryAngle(first, out double one, out char oneLetter, out problem)
            || !TryAngle(second, out double two, out char twoLetter, out problem))
        {
            return false;
        }

        bool isLongitudeFirst = oneLetter is 'E' or 'W';
        if (oneLetter != ' ' && isLongitudeFirst == twoLetter is 'E' or 'W')
        {
            problem = $"'{text}' has '{oneLetter}' and '{twoLetter}'; one of N or S and one of E or W is wanted";
            return false;
        }

        return TryPoint(isLongitudeFirst ? two : one, isLongitudeFirst ? one : two, oneLetter != ' ', out point, out problem);
    }

    private bool TryPoint(double latitude, double longitude, bool hasLetters, out GeoPoint point, out string problem)
    {
        point = default;
        if (Math.Abs(latitude) > 90)
        {
            problem = !hasLetters && Math.Abs(longitude) <= 90 && Math.Abs(latitude) <= 180
                ? string.Create(CultureInfo.InvariantCulture, $"'{text}' has the latitude {latitude}°, over 90°; latitude comes first: is '{longitude}, {latitude}' meant?")
                : string.Create(CultureInfo.InvariantCulture, $"'{text}' has the latitude {latitude}°; a latitude is between -90° and 90°");
            return false;
        }

        if (Math.Abs(longitude) > 180)
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"'{text}' has the longitude {longitude}°; a longitude is between -180° and 180°");
            return false;
        }

        point = new GeoPoint(latitude, longitude);
        problem = "";
        return true;
    }

    /// <summary>Splits into two angles: by the letters, else by the separator, else by the degree signs, else in the middle of two.</summary>
    private bool TrySplit(out List<Token> first, out List<Token> second, out string problem)
    {
        (first, second) = ([], []);
        int letters = _tokens.Count(token => token.Sort == Sort.Letter);
        int separators = _tokens.Count(token => token.Sort == Sort.Separator);
        int numbers = _tokens.Count - letters - separators;
        int split = -1;
        if (letters == 2)
        {
            int firstLetter = _tokens.FindIndex(token => token.Sort == Sort.Letter);
            split = firstLetter == 0 ? _tokens.FindIndex(1, token => token.Sort == Sort.Letter) : firstLetter + 1;
        }
        else if (letters == 1)
        {
            problem = $"'{text}' has a letter for one angle and none for the other; write N or S and E or W with both, such as 46°24'00\"N 18°42'00\"W";
            return false;
        }
        else if (letters == 0 && separators == 1)
        {
            split = _tokens.FindIndex(token => token.Sort == Sort.Separator);
        }
        else if (letters == 0 && separators == 0 && numbers == 2)
        {
            split = 1;
        }
        else if (letters == 0 && separators == 0)
        {
            int firstDegree = _tokens.FindIndex(token => token.Mark == '°');
            split = firstDegree < 0 ? -1 : _tokens.FindIndex(firstDegree + 1, token => token.Mark == '°');
        }

        if (split <= 0 || separators > 1)
        {
            problem = letters == 0 && numbers is 4 or 6
                ? $"'{text}' does not say north or south, east or west; write such as 46°24'00\"N 18°42'00\"W"
                : letters == 0 && numbers == 1
                    ? $"'{text}' is one number; a position is a latitude and a longitude, such as '46.40, -18.70'"
                    : NotUnderstood();
            return false;
        }

        first = [.. _tokens.Take(split)];
        second = [.. _tokens.Skip(split)];

        // A separator may stand between the two, and nowhere else.
        _ = first[^1].Sort == Sort.Separator && first.Remove(first[^1]);
        _ = second[0].Sort == Sort.Separator && second.Remove(second[0]);
        problem = "";
        return true;
    }

    private bool TryAngle(List<Token> tokens, out double degrees, out char letter, out string problem)
    {
        degrees = 0;
        letter = ' ';
        problem = NotUnderstood();
        if (tokens.Count > 0 && tokens[0].Sort == Sort.Letter)
        {
            letter = tokens[0].Mark;
            tokens.RemoveAt(0);
        }
        else if (tokens.Count > 0 && tokens[^1].Sort == Sort.Letter)
        {
            letter = tokens[^1].Mark;
            tokens.RemoveAt(tokens.Count - 1);
        }

        if (tokens.Count is 0 or > 3 || tokens.Exists(token => token.Sort != Sort.Number))
        {
            return false;
        }

        ReadOnlySpan<char> marks = ['°', '\'', '"'];
        double scale = 1;
        double size = 0;
        for (int i = 0; i < tokens.Count; i++)
        {
            Token token = tokens[i];
            if ((token.Mark != ' ' && token.Mark != marks[i]) || (i > 0 && token.IsSigned) || (i + 1 < tokens.Count && token.HasFraction))
            {
                return false;
            }

            if (i > 0 && token.Value >= 60)
            {
                problem = string.Create(CultureInfo.InvariantCulture, $"'{text}' has {token.Value} {(i == 1 ? "minutes" : "seconds")}; they are under 60");
                return false;
            }

            size += Math.Abs(token.Value) / scale;
            scale *= 60;
        }

        bool isSigned = tokens[0].IsSigned;
        if (letter != ' ' && isSigned)
        {
            problem = $"'{text}' has a sign and the letter {letter} for one angle; write one or the other";
            return false;
        }

        if (letter == ' ' && tokens.Count > 1 && !isSigned)
        {
            problem = $"'{text}' does not say north or south, east or west; write such as 46°24'00\"N 18°42'00\"W";
            return false;
        }

        bool isNegative = letter is 'S' or 'W' || double.IsNegative(tokens[0].Value);
        degrees = isNegative ? -size : size;
        problem = "";
        return true;
    }

    private bool TryTokens()
    {
        for (int at = 0; at < text.Length; at++)
        {
            char letter = Plain(text[at]);
            if (char.IsWhiteSpace(letter))
            {
                continue;
            }

            if (letter is 'N' or 'S' or 'E' or 'W')
            {
                _tokens.Add(new Token(Sort.Letter, 0, letter, false, false));
            }
            else if (letter is ',' or ';')
            {
                _tokens.Add(new Token(Sort.Separator, 0, ' ', false, false));
            }
            else if (letter is '°' or '\'' or '"')
            {
                // Two single marks are a double one.
                bool isDouble = letter == '\'' && at + 1 < text.Length && Plain(text[at + 1]) == '\'';
                at += isDouble ? 1 : 0;
                if (_tokens.Count == 0 || _tokens[^1] is not { Sort: Sort.Number, Mark: ' ' })
                {
                    return false;
                }

                _tokens[^1] = _tokens[^1] with { Mark = isDouble ? '"' : letter };
            }
            else if (!TryNumber(ref at))
            {
                return false;
            }
        }

        return _tokens.Count is > 0 and < 12;
    }

    private bool TryNumber(ref int at)
    {
        bool isSigned = Plain(text[at]) is '+' or '-';
        bool isNegative = Plain(text[at]) == '-';
        int start = isSigned ? at + 1 : at;
        int end = start;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
        {
            end++;
        }

        ReadOnlySpan<char> digits = text.AsSpan(start, end - start);
        if (digits.IsEmpty || !char.IsAsciiDigit(digits[0]) || digits[^1] == '.'
            || !double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value))
        {
            return false;
        }

        at = end - 1;
        _tokens.Add(new Token(Sort.Number, isNegative ? -value : value, ' ', isSigned, digits.Contains('.')));
        return true;
    }

    /// <summary>A comma right between two digits is a decimal comma unless the text has decimal points and this one comma.</summary>
    private string CommaSlip()
    {
        int commas = text.Count(letter => letter == ',');
        bool hasPoint = text.Contains('.', StringComparison.Ordinal);
        for (int i = 1; i + 1 < text.Length; i++)
        {
            if (text[i] == ',' && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]) && (commas > 1 || !hasPoint))
            {
                return $"'{text}' has a comma between digits; write a decimal point, and a comma and a space between the numbers, such as '46.40, -18.70'";
            }
        }

        return "";
    }

    private string NotUnderstood() => $"'{text}' is not understood; {PositionText.Forms}";

    /// <summary>The many signs that are written for one, and small letters, brought to one.</summary>
    private static char Plain(char letter) => letter switch
    {
        'º' or '˚' => '°',
        '’' or '‘' or '′' or '´' => '\'',
        '”' or '“' or '″' => '"',
        '−' or '–' => '-',
        'n' or 's' or 'e' or 'w' => char.ToUpperInvariant(letter),
        _ => letter,
    };
}
