namespace Mastwright.Evidence;

/// <summary>The checks at the door of records.</summary>
internal static class EvidenceDoor
{
    internal static long AboveZero(long value)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value);
        return value;
    }

    internal static string NotEmpty(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        return value;
    }

    internal static double? Finite(double? value) =>
        value is null || double.IsFinite(value.Value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The number must be finite.");
}
