using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Propagation;

namespace Mastwright.Plans;

/// <summary>The ordinary air of one station, on its map and on the paths from it: the plan's values, else those of the digital maps at the station, else the defaults.</summary>
public sealed record PathAir
{
    /// <summary>Fall ΔN of refractivity in the lowest kilometre, in N-units/km.</summary>
    public required double RefractivityGradient { get; init; }

    /// <summary>Where ΔN comes from: plan path, map and place, or "assumed".</summary>
    public required string RefractivityGradientSource { get; init; }

    /// <summary>Sea-level surface refractivity N0, in N-units.</summary>
    public required double SurfaceRefractivity { get; init; }

    /// <summary>Where N0 comes from: plan path, map and place, or "assumed".</summary>
    public required string SurfaceRefractivitySource { get; init; }

    /// <summary>The defaults among them.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Effective-earth factor of this air.</summary>
    public double KFactor => EffectiveEarth.FactorFromGradient(RefractivityGradient);

    /// <summary>The air of a station.</summary>
    /// <param name="air">What the plan gives: it wins.</param>
    /// <param name="maps">The digital maps; null when the plan names none.</param>
    /// <param name="station">The station: of a path between two, the one from which it is drawn.</param>
    /// <remarks>
    /// ITU-R P.1812 reads its maps at the middle of each path. Here a station has one air, so that its map and every path from it agree; on a grid of 1.5° the two differ little over the
    /// length of a path (docs/physics/air.md).
    /// </remarks>
    public static PathAir Of(AirPlan air, RefractivityMaps? maps, GeoPoint station)
    {
        ArgumentNullException.ThrowIfNull(air);
        ImmutableArray<Assumption>.Builder assumed = ImmutableArray.CreateBuilder<Assumption>();
        (double gradient, string gradientSource) = Value(
            air.RefractivityGradient, maps?.Gradient, "DN50", station, PlanDefaults.RefractivityGradient, PlanDefaults.Gradient, assumed);
        (double surface, string surfaceSource) = Value(
            air.SurfaceRefractivity, maps?.Surface, "N050", station, PlanDefaults.SurfaceRefractivity, PlanDefaults.Refractivity, assumed);
        return new()
        {
            RefractivityGradient = gradient,
            RefractivityGradientSource = gradientSource,
            SurfaceRefractivity = surface,
            SurfaceRefractivitySource = surfaceSource,
            Assumptions = assumed.ToImmutable(),
        };
    }

    private static (double Value, string Source) Value(
        double? given, RefractivityMap? map, string mapName, GeoPoint station, double otherwise, Assumption assumption, ImmutableArray<Assumption>.Builder assumed)
    {
        if (given is { } value)
        {
            return (value, assumption.PlanPath);
        }

        if (map is not null)
        {
            return (map.At(station), string.Create(
                CultureInfo.InvariantCulture,
                $"map {mapName} of ITU-R P.1812 at the station, {station.LatitudeDegrees:0.00}, {station.LongitudeDegrees:0.00}"));
        }

        assumed.Add(assumption);
        return (otherwise, "assumed");
    }
}
