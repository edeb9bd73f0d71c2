using System.Globalization;

namespace Mastwright.Quantities;

/// <summary>Walks over the numbers, units and signs of a quantity's text.</summary>
internal ref struct QuantityScanner(ReadOnlySpan<char> text)
{
    private ReadOnlySpan<char> _rest = text.Trim();

    /// <summary>Whether everything has been read.</summary>
    internal readonly bool IsAtEnd => _rest.IsEmpty;

    /// <summary>Reads a decimal number with an optional sign and exponent; infinite when it is too large for one.</summary>
    internal bool TryNumber(out double number)
    {
        int at = 0;
        bool isNegative = false;
        if (at < _rest.Length && _rest[at] is '+' or '-' or '−')
        {
            isNegative = _rest[at] != '+';
            at++;
        }

        int start = at;
        at = AfterDigits(at);
        bool hasDigits = at > start;

        // A point counts only before a digit, so that the dots of "0...6" stay a range.
        if (at + 1 < _rest.Length && _rest[at] == '.' && char.IsAsciiDigit(_rest[at + 1]))
        {
            at = AfterDigits(at + 1);
            hasDigits = true;
        }

        number = 0;
        if (!hasDigits)
        {
            return false;
        }

        if (at < _rest.Length && _rest[at] is 'e' or 'E')
        {
            int exponent = at + 1 < _rest.Length && _rest[at + 1] is '+' or '-' ? at + 2 : at + 1;
            int after = AfterDigits(exponent);
            at = after > exponent ? after : at;
        }

        double size = double.Parse(_rest[start..at], NumberStyles.Float, CultureInfo.InvariantCulture);
        number = isNegative ? -size : size;
        Skip(at);
        return true;
    }

    /// <summary>Reads a unit: letters, degree, percent and micro signs, and inside a slash, a dot or a square; empty when there is none.</summary>
    internal string Unit()
    {
        int at = 0;
        while (at < _rest.Length && (char.IsLetter(_rest[at]) || _rest[at] is '°' or '%' || (at > 0 && (_rest[at] is '/' or '·' or '²' || IsSquare(at)))))
        {
            at++;
        }

        if (at == 2 && _rest.StartsWith("to", StringComparison.Ordinal))
        {
            return "";
        }

        string unit = new(_rest[..at]);
        Skip(at);
        return unit;
    }

    /// <summary>Reads "±" or "+/-".</summary>
    internal bool TryPlusMinus() => TryWord("±") || TryWord("+/-");

    /// <summary>Reads the mark of a range: "…", "..." or "to".</summary>
    internal bool TryRangeMark() => TryWord("…") || TryWord("...") || TryWord("to");

    /// <summary>Reads exactly this.</summary>
    internal bool TryWord(string word)
    {
        if (!_rest.StartsWith(word, StringComparison.Ordinal))
        {
            return false;
        }

        Skip(word.Length);
        return true;
    }

    /// <summary>The 2 of "m2", which is no digit of a number that follows.</summary>
    private readonly bool IsSquare(int at) => _rest[at] == '2' && _rest[at - 1] == 'm' && (at + 1 == _rest.Length || !char.IsAsciiDigit(_rest[at + 1]));

    private readonly int AfterDigits(int at)
    {
        while (at < _rest.Length && char.IsAsciiDigit(_rest[at]))
        {
            at++;
        }

        return at;
    }

    private void Skip(int characters) => _rest = _rest[characters..].TrimStart();
}
