using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Ends the reading of a file of places; never leaves <see cref="PlaceFile"/>.</summary>
[SuppressMessage("Design", "CA1032:Implement standard exception constructors", Justification = "Thrown and caught inside this folder only, always with its fault.")]
[SuppressMessage("Design", "CA1064:Exceptions should be public", Justification = "It never leaves this folder.")]
internal sealed class PlaceFaultException(int line, string message, string found = "", string wanted = "") : Exception(message)
{
    internal int Line { get; } = line;

    internal string Found { get; } = PlanProblemList.Clip(found);

    internal string Wanted { get; } = wanted;
}

/// <summary>Numbers of a file of places.</summary>
internal static class PlaceNumbers
{
    /// <summary>A point from the text of its latitude and longitude.</summary>
    internal static GeoPoint Point(int line, string latitude, string longitude)
    {
        if (!Try(latitude, out double north) || !(north is >= -90 and <= 90))
        {
            throw new PlaceFaultException(line, "This is not a latitude.", latitude, "decimal degrees from -90 to 90");
        }

        if (!Try(longitude, out double east) || !(east is >= -180 and <= 180))
        {
            throw new PlaceFaultException(line, "This is not a longitude.", longitude, "decimal degrees from -180 to 180");
        }

        return new(north, east);
    }

    /// <summary>A number of metres that may be absent.</summary>
    internal static double? Metres(int line, string? text, double minimum)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        return Try(text, out double value) && value >= minimum && value <= 1e7
            ? value
            : throw new PlaceFaultException(line, "This is not a number of metres.", text, "a plain number of metres");
    }

    /// <summary>A number with all its digits, without an exponent.</summary>
    internal static string Write(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    /// <summary>A number to ten decimals, as a decimal fraction.</summary>
    internal static decimal Exact(double value) => decimal.Parse(Write(value), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static bool Try(string text, out double value) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
