namespace Mastwright.Propagation;

/// <summary>Checks at the door of the formulas.</summary>
internal static class Domain
{
    internal static double Positive(double value, string name) =>
        value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A finite number above zero is needed.");

    internal static double ZeroOrMore(double value, string name) =>
        value >= 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A finite number, zero or more, is needed.");

    internal static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");

    internal static double Within(double value, double low, double high, string name) =>
        value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"A number from {low} to {high} is needed."));

    internal static int ZeroOrMultiple(int value, int of, string name) =>
        value >= 0 && value % of == 0 ? value : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"Zero or a multiple of {of} is needed."));
}
