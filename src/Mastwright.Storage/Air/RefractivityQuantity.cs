using System.Globalization;
using Mastwright.Propagation;

namespace Mastwright.Storage.Air;

/// <summary>What a map holds: its file, the quantity in words, and what a value of it can be.</summary>
internal sealed record RefractivityQuantity(string FileName, string Name, double Least, double Most, string Unit)
{
    /// <summary>ΔN, the fall of refractivity.</summary>
    internal static RefractivityQuantity Gradient { get; } =
        new("DN50.TXT", "a fall of refractivity ΔN", RefractivityMaps.LeastGradient, RefractivityMaps.MostGradient, "N-units/km");

    /// <summary>N0, the refractivity at sea level.</summary>
    internal static RefractivityQuantity Surface { get; } =
        new("N050.TXT", "a sea-level refractivity N0", RefractivityMaps.LeastSurface, RefractivityMaps.MostSurface, "N-units");

    /// <summary>What would be right.</summary>
    internal string Wanted => string.Create(CultureInfo.InvariantCulture, $"a value from {Least} to {Most} {Unit}");
}
