using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>What a key may hold: the one description that the binder checks against and the schema is made from.</summary>
internal abstract record ValueShape
{
    /// <summary>What would be right, to follow "wanted": "a length from 0 m to 10 km, such as 5 m".</summary>
    internal abstract string Wanted { get; }
}

/// <summary>Free text on one line.</summary>
/// <param name="Example">An example for the schema.</param>
internal sealed record TextShape(string Example) : ValueShape
{
    internal override string Wanted => $"text, such as {Example}";
}

/// <summary>A file, or a pattern of files, relative to the plan.</summary>
/// <param name="Example">An example.</param>
internal sealed record FileShape(string Example) : ValueShape
{
    internal override string Wanted => $"a file relative to the plan, such as {Example}";
}

/// <summary>A key that the plan chooses, or refers to.</summary>
internal sealed record KeyNameShape(string Example) : ValueShape
{
    /// <summary>The form of every key that a plan chooses.</summary>
    internal const string Pattern = "^[a-z0-9][a-z0-9-]{0,63}$";

    internal override string Wanted => $"a key of small letters, digits and hyphens, such as {Example}";

    /// <summary>Whether a text has the form of a key.</summary>
    internal static bool IsKey(string text)
    {
        if (text.Length is 0 or > PlanLimits.KeyLength || text[0] == '-')
        {
            return false;
        }

        foreach (char c in text)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-')
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>A plain number without a unit.</summary>
internal sealed record NumberShape(double Minimum, double Maximum) : ValueShape
{
    internal override string Wanted => string.Create(CultureInfo.InvariantCulture, $"a plain number from {Minimum} to {Maximum}");
}

/// <summary>A whole number.</summary>
internal sealed record WholeShape(int Minimum, int Maximum) : ValueShape
{
    internal override string Wanted => Minimum == Maximum
        ? string.Create(CultureInfo.InvariantCulture, $"{Minimum}")
        : string.Create(CultureInfo.InvariantCulture, $"a whole number from {Minimum} to {Maximum}");
}

/// <summary>A quantity: number and unit.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Minimum">The least allowed, in the dimension's unit.</param>
/// <param name="Maximum">The most allowed.</param>
/// <param name="Example">An example.</param>
/// <param name="Ranged">Whether a precision or a range may stand here.</param>
internal sealed record QuantityShape(Dimension Dimension, double Minimum, double Maximum, string Example, bool Ranged = false) : ValueShape
{
    internal override string Wanted =>
        $"{UnitText.Of(Dimension)} from {UnitText.Write(Dimension, Minimum)} to {UnitText.Write(Dimension, Maximum)}, such as {Example}";
}

/// <summary>Yes or no.</summary>
internal sealed record YesNoShape : ValueShape
{
    internal override string Wanted => "yes or no";
}

/// <summary>One of a few words.</summary>
internal sealed record ChoiceShape(params ImmutableArray<string> Words) : ValueShape
{
    internal override string Wanted => "one of " + string.Join(", ", Words);
}

/// <summary>A place.</summary>
internal sealed record PositionShape : ValueShape
{
    internal override string Wanted => "a position, such as 46.4012, -18.7421 ± 5 m, a Maidenhead locator, UTM or MGRS";
}

/// <summary>A text with a form of its own.</summary>
/// <param name="Pattern">The form as a regular expression, for the schema.</param>
/// <param name="Right">What would be right.</param>
internal sealed record FormShape(string Pattern, string Right) : ValueShape
{
    internal override string Wanted => Right;
}

/// <summary>One value, or a list of such.</summary>
internal sealed record OneOrManyShape(ValueShape Item) : ValueShape
{
    internal override string Wanted => Item.Wanted + ", or a list of such";
}

/// <summary>A list.</summary>
internal sealed record ListShape(ValueShape Item) : ValueShape
{
    internal override string Wanted => "a list: one item a line, each after '- '";
}

/// <summary>Chosen keys, each with a value of one shape.</summary>
/// <param name="KeyPattern">Form of the keys, as a regular expression.</param>
/// <param name="Item">What each holds.</param>
internal sealed record KeyedShape(string KeyPattern, ValueShape Item) : ValueShape
{
    internal override string Wanted => "keys of your choice, each with its values indented below it";
}

/// <summary>Exactly one of several mappings, told apart by their first key.</summary>
internal sealed record AlternativesShape(ImmutableArray<MappingShape> Choices) : ValueShape
{
    internal override string Wanted => "one of " + string.Join(", ", Choices.Select(choice => choice.Keys[0].Name));
}

/// <summary>A mapping with known keys.</summary>
/// <param name="Name">What it describes.</param>
/// <param name="Keys">Its keys, at most 64.</param>
internal sealed record MappingShape(string Name, params ImmutableArray<KeyShape> Keys) : ValueShape
{
    internal override string Wanted => "keys and values: " + string.Join(", ", Keys.Select(key => key.Name));

    /// <summary>The key of a name; -1 when there is none.</summary>
    internal int IndexOf(string name)
    {
        for (int i = 0; i < Keys.Length; i++)
        {
            if (Keys[i].Name == name)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Whether a required key may be given by a part instead, so that a single mapping cannot tell that it is missing.</summary>
    internal bool MayComeFromPart(KeyShape key) => IndexOf("part") > 0 || (IndexOf("part") == 0 && key.Name != "part");

    /// <summary>The same as a part that others refer to: nothing is required, and it refers to no other part.</summary>
    internal MappingShape AsPart() => new(Name, [.. Keys.Where(key => key.Name != "part").Select(key => key with { Required = false })]);
}

/// <summary>A key of a mapping.</summary>
/// <param name="Name">The key.</param>
/// <param name="Value">What it may hold.</param>
/// <param name="Meaning">What it means, for the schema.</param>
/// <param name="Required">Whether the mapping is incomplete without it.</param>
/// <param name="MayBeEmpty">Whether the key may stand without a value.</param>
internal sealed record KeyShape(string Name, ValueShape Value, string Meaning, bool Required = false, bool MayBeEmpty = false);
