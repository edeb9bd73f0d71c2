namespace Mastwright.Quantities;

/// <summary>One reading of a quantity's text, with the sentences for all that can be wrong with it.</summary>
internal readonly struct QuantityReader(string text, Dimension dimension)
{
    private readonly QuantityKind _kind = QuantityKind.Of(dimension);
    private readonly string _quoted = Quoted(text);

    internal bool TryRead(out Estimate value, out string problem)
    {
        value = default;
        problem = text.Length > Quantity.LongestText
            ? $"the text has {text.Length} characters; {_kind.Name} has at most {Quantity.LongestText}, such as '{_kind.Example}'"
            : Slip();
        if (problem.Length > 0)
        {
            return false;
        }

        QuantityScanner scanner = new(text);
        if (!scanner.TryNumber(out double first))
        {
            problem = NotUnderstood();
            return false;
        }

        string firstUnit = scanner.Unit();
        bool isRead;
        if (scanner.TryPlusMinus())
        {
            isRead = TryPlusMinus(ref scanner, first, firstUnit, out value, out problem);
        }
        else if (scanner.TryRangeMark())
        {
            isRead = TryRange(ref scanner, first, firstUnit, out value, out problem);
        }
        else if (firstUnit.Length == 0 && scanner.TryWord("("))
        {
            isRead = TryMedianAndRange(ref scanner, first, out value, out problem);
        }
        else
        {
            isRead = TryEnd(ref scanner, firstUnit, out QuantityUnit unit, out problem)
                && TryEstimate(unit.ToCanonical(first), unit.ToCanonical(first), unit.ToCanonical(first), out value, out problem);
        }

        return isRead;
    }

    private bool TryPlusMinus(ref QuantityScanner scanner, double middle, string unitText, out Estimate value, out string problem)
    {
        value = default;
        if (!scanner.TryNumber(out double half))
        {
            problem = NotUnderstood();
            return false;
        }

        string halfUnitText = scanner.Unit();
        if (!TryEnd(ref scanner, unitText.Length == 0 ? halfUnitText : unitText, out QuantityUnit unit, out problem))
        {
            return false;
        }

        if (halfUnitText.Length == 0)
        {
            problem = $"'{_quoted}' has no unit after '±'; write {_kind.Name} with its unit at the end, such as '{_kind.Example}'";
            return false;
        }

        // "14 dBm ± 1 dB" and "6 dBi ± 1 dB": the difference of two levels is a ratio, so this is the exact way to say it.
        bool isInDb = halfUnitText == "dB" && dimension is Dimension.Gain or Dimension.Power;
        QuantityUnit? halfUnit = isInDb ? null : QuantityUnit.Find(halfUnitText, dimension);
        if (!isInDb && !TryUnit(halfUnitText, out halfUnit!, out problem))
        {
            return false;
        }

        if (!(half >= 0))
        {
            problem = $"'{_quoted}' has a negative number after '±'; write how far off the value may be either way, such as '± 1'";
            return false;
        }

        if (halfUnit is not null && halfUnit.IsWatts != unit.IsWatts)
        {
            problem = $"'{_quoted}' mixes watts with decibels; write both in one unit, or the '±' part in dB, such as '14 dBm ± 1 dB'";
            return false;
        }

        if (unit.IsWatts && halfUnit is not null)
        {
            double halfInUnit = half * (halfUnit.Factor / halfUnit.Divisor) / (unit.Factor / unit.Divisor);
            return TryEstimate(
                unit.ToCanonical(middle - halfInUnit), unit.ToCanonical(middle), unit.ToCanonical(middle + halfInUnit), out value, out problem);
        }

        double canonical = unit.ToCanonical(middle);
        double difference = halfUnit?.DifferenceToCanonical(half) ?? half;
        return TryEstimate(canonical - difference, canonical, canonical + difference, out value, out problem);
    }

    private bool TryRange(ref QuantityScanner scanner, double low, string lowUnitText, out Estimate value, out string problem)
    {
        value = default;
        if (!scanner.TryNumber(out double high))
        {
            problem = NotUnderstood();
            return false;
        }

        if (!TryEnd(ref scanner, scanner.Unit(), out QuantityUnit unit, out problem))
        {
            return false;
        }

        if (lowUnitText.Length == 0 || lowUnitText == unit.Symbol)
        {
            double middle = (low / 2) + (high / 2);
            double canonicalMiddle = unit.IsWatts ? unit.ToCanonical(middle) : (unit.ToCanonical(low) + unit.ToCanonical(high)) / 2;
            return TryEstimate(unit.ToCanonical(low), canonicalMiddle, unit.ToCanonical(high), out value, out problem);
        }

        if (!TryUnit(lowUnitText, out QuantityUnit lowUnit, out problem))
        {
            return false;
        }

        double from = lowUnit.ToCanonical(low);
        double to = unit.ToCanonical(high);
        return TryEstimate(from, (from + to) / 2, to, out value, out problem);
    }

    private bool TryMedianAndRange(ref QuantityScanner scanner, double median, out Estimate value, out string problem)
    {
        value = default;
        if (!scanner.TryNumber(out double low) || !scanner.TryRangeMark() || !scanner.TryNumber(out double high) || !scanner.TryWord(")"))
        {
            problem = NotUnderstood();
            return false;
        }

        return TryEnd(ref scanner, scanner.Unit(), out QuantityUnit unit, out problem)
            && TryEstimate(unit.ToCanonical(low), unit.ToCanonical(median), unit.ToCanonical(high), out value, out problem);
    }

    private bool TryEstimate(double low, double median, double high, out Estimate value, out string problem)
    {
        value = default;
        if (low > median || median > high)
        {
            problem = $"'{_quoted}' does not rise; write the smaller value first";
            return false;
        }

        if (!(low >= _kind.Least && high <= _kind.Most && double.IsFinite(median)))
        {
            problem = $"'{_quoted}' is out of range; {_kind.Name} is {_kind.Range}";
            return false;
        }

        value = Estimate.Of(low, median, high);
        problem = "";
        return true;
    }

    private bool TryEnd(ref QuantityScanner scanner, string unitText, out QuantityUnit unit, out string problem)
    {
        if (scanner.IsAtEnd)
        {
            return TryUnit(unitText, out unit, out problem);
        }

        unit = QuantityUnit.All[0];
        problem = NotUnderstood();
        return false;
    }

    private bool TryUnit(string unitText, out QuantityUnit unit, out string problem)
    {
        QuantityUnit? found = QuantityUnit.Find(unitText, dimension);
        unit = found ?? QuantityUnit.All[0];
        if (found is not null && found.Dimension == dimension)
        {
            problem = "";
            return true;
        }

        if (unitText.Length == 0)
        {
            problem = $"'{_quoted}' has no unit; write {_kind.Name} in {_kind.Units}, such as '{_kind.Example}'";
        }
        else if (found is null)
        {
            string hint = QuantityUnit.FindLike(unitText, dimension) is { } like
                ? $"did you mean '{like.Symbol}'?"
                : $"write {_kind.Name} in {_kind.Units}, such as '{_kind.Example}'";
            problem = $"'{_quoted}' has the unit '{Quoted(unitText)}', which is not known; {hint}";
        }
        else if (dimension == Dimension.Gain && found.Dimension == Dimension.Ratio)
        {
            problem = $"'{_quoted}' does not say what the gain is over; write dBi (over an isotropic antenna) or dBd (over a dipole, 2.15 dB more)";
        }
        else
        {
            problem = $"'{_quoted}' is {QuantityKind.Of(found.Dimension).Name}; {_kind.Name} is wanted, such as '{_kind.Example}'";
        }

        return false;
    }

    /// <summary>The slips that have an answer of their own, whatever else the text holds; empty when there is none.</summary>
    private string Slip()
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return $"there is no value; write {_kind.Name} such as '{_kind.Example}'";
        }

        for (int i = 1; i + 1 < text.Length; i++)
        {
            if (text[i] == ',' && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]))
            {
                return $"'{_quoted}' has a comma; write a decimal point and no thousands separator, such as '1.5' or '1500'";
            }
        }

        string letters = text.Replace(".", "", StringComparison.Ordinal);
        return letters.Contains("ERP", StringComparison.OrdinalIgnoreCase) || letters.Contains("EIRP", StringComparison.OrdinalIgnoreCase)
            ? $"'{_quoted}' is a radiated power; write {_kind.Name} such as '{_kind.Example}'"
                + (dimension == Dimension.Power ? ", the power at the radio's own connector, and the gain with the antenna" : "")
            : "";
    }

    private string NotUnderstood() =>
        $"'{_quoted}' is not understood; write {_kind.Name} such as '{_kind.Example}', with '±' or as a range with '…' where it is not exact";

    /// <summary>The text without control characters and broken surrogates, fit to stand in a message.</summary>
    private static string Quoted(string text) => string.Create(Math.Min(text.Length, Quantity.LongestText), text, (span, source) =>
    {
        for (int i = 0; i < span.Length; i++)
        {
            span[i] = char.IsControl(source[i]) || char.IsSurrogate(source[i]) ? '?' : source[i];
        }
    });
}
