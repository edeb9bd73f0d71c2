using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Turns the text of one scalar into what its shape says it is; a null means that a problem was added.</summary>
internal static class ScalarBinder
{
    internal const string ValueCode = "plan-value";

    /// <summary>The text of a value that must be one piece of text.</summary>
    internal static string? Text(PlanBinding binding, PlanNode node, string path, ValueShape shape)
    {
        if (node.Kind != PlanNodeKind.Scalar)
        {
            string found = node.Kind == PlanNodeKind.Mapping ? "Keys and values stand" : "A list stands";
            binding.Add(node, path, ValueCode, $"{found} where one value belongs.", shape.Wanted);
            return null;
        }

        if (node.IsEmpty || string.IsNullOrWhiteSpace(node.Text))
        {
            binding.Add(node, path, "plan-missing-value", "The key has no value; give one, or remove the key.", shape.Wanted);
            return null;
        }

        if (!IsText(node.Text))
        {
            binding.Add(node, path, ValueCode, "The value holds a control character or half of a character.", shape.Wanted);
            return null;
        }

        return node.Text;
    }

    /// <summary>Whether a text is whole characters on one line.</summary>
    internal static bool IsText(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            // Half a surrogate pair comes out as the replacement character, which nobody means to write either.
            if (Rune.IsControl(rune) || rune.Value is 0x2028 or 0x2029 or 0xFEFF or 0xFFFD or 0xFFFE or 0xFFFF)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A quantity within its limits.</summary>
    internal static Estimate? Quantity(PlanBinding binding, PlanNode node, string path, QuantityShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        if (!Quantities.Quantity.TryParse(text, shape.Dimension, out Estimate value, out string problem))
        {
            binding.Add(node, path, ValueCode, Sentence(problem), shape.Wanted);
            return null;
        }

        if (!double.IsFinite(value.Low) || !double.IsFinite(value.High) || value.Low < shape.Minimum || value.High > shape.Maximum)
        {
            binding.Add(node, path, "plan-range", "The value is outside what can be meant here.", shape.Wanted);
            return null;
        }

        if (!shape.Ranged && !value.IsExact)
        {
            binding.Add(node, path, ValueCode, "A precision or a range has no use here.", $"one value, such as {shape.Example}");
            return null;
        }

        return value;
    }

    /// <summary>A plain number within its limits.</summary>
    internal static double? Number(PlanBinding binding, PlanNode node, string path, NumberShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        if (!double.TryParse(text, Style, CultureInfo.InvariantCulture, out double value) || !(value >= shape.Minimum && value <= shape.Maximum))
        {
            binding.Add(node, path, ValueCode, "This is not a number that can stand here.", shape.Wanted);
            return null;
        }

        return value;
    }

    /// <summary>A whole number within its limits.</summary>
    internal static int? Whole(PlanBinding binding, PlanNode node, string path, WholeShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        if (!int.TryParse(text, Style, CultureInfo.InvariantCulture, out int value) || value < shape.Minimum || value > shape.Maximum)
        {
            binding.Add(node, path, ValueCode, "This is not a whole number that can stand here.", shape.Wanted);
            return null;
        }

        return value;
    }

    /// <summary>Yes or no.</summary>
    internal static bool? YesNo(PlanBinding binding, PlanNode node, string path, YesNoShape shape)
    {
        switch (Text(binding, node, path, shape))
        {
            case "yes" or "true":
                return true;
            case "no" or "false":
                return false;
            case null:
                return null;
            default:
                binding.Add(node, path, ValueCode, "This is neither yes nor no.", shape.Wanted);
                return null;
        }
    }

    /// <summary>The place of a word among a few; -1 when it is none of them.</summary>
    internal static int Choice(PlanBinding binding, PlanNode node, string path, ChoiceShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return -1;
        }

        int choice = shape.Words.IndexOf(text);
        if (choice < 0)
        {
            string meant = NearestWord.Of(text, shape.Words) is { } near ? $" Did you mean '{near}'?" : "";
            binding.Add(node, path, ValueCode, "This word is not known here." + meant, shape.Wanted);
        }

        return choice;
    }

    /// <summary>A place.</summary>
    internal static LocatedPoint? Position(PlanBinding binding, PlanNode node, string path, PositionShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        if (!PositionText.TryParse(text, out LocatedPoint place, out string problem))
        {
            binding.Add(node, path, ValueCode, Sentence(problem), shape.Wanted);
            return null;
        }

        return place;
    }

    /// <summary>A key that the plan chose.</summary>
    internal static string? Key(PlanBinding binding, PlanNode node, string path, KeyNameShape shape)
    {
        if (Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        if (!KeyNameShape.IsKey(text))
        {
            binding.Add(node, path, "plan-key", "This is not a key.", shape.Wanted);
            return null;
        }

        return text;
    }

    /// <summary>A text as a sentence: it begins with a capital and ends with a full stop.</summary>
    internal static string Sentence(string problem)
    {
        string trimmed = problem.Trim();
        return trimmed.Length == 0 ? "" : char.ToUpperInvariant(trimmed[0]) + trimmed[1..] + (trimmed[^1] is '.' or '?' ? "" : ".");
    }
}
