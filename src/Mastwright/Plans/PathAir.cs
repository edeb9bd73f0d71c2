using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Propagation;

namespace Mastwright.Plans;

/// <summary>The ordinary air of one path: the plan's values, else those of the digital maps at the path's centre, else the defaults.</summary>
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

    /// <summary>The air of the path between two places.</summary>
    /// <param name="air">What the plan gives: it wins.</param>
    /// <param name="maps">The digital maps; null when the plan names none.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    public static PathAir Of(AirPlan air, RefractivityMaps? maps, GeoPoint from, GeoPoint to)
    {
        ArgumentNullException.ThrowIfNull(air);
        GeoPoint centre = maps is null ? from : Centre(from, to);
        ImmutableArray<Assumption>.Builder assumed = ImmutableArray.CreateBuilder<Assumption>();
        (double gradient, string gradientSource) = Value(
            air.RefractivityGradient, maps?.Gradient, "DN50", centre, PlanDefaults.RefractivityGradient, PlanDefaults.Gradient, assumed);
        (double surface, string surfaceSource) = Value(
            air.SurfaceRefractivity, maps?.Surface, "N050", centre, PlanDefaults.SurfaceRefractivity, PlanDefaults.Refractivity, assumed);
        return new()
        {
            RefractivityGradient = gradient,
            RefractivityGradientSource = gradientSource,
            SurfaceRefractivity = surface,
            SurfaceRefractivitySource = surfaceSource,
            Assumptions = assumed.ToImmutable(),
        };
    }

    private static GeoPoint Centre(GeoPoint from, GeoPoint to)
    {
        (GeodesicLine line, double lengthMetres) = GeodesicLine.Between(from, to);
        return line.At(lengthMetres / 2);
    }

    private static (double Value, string Source) Value(
        double? given, RefractivityMap? map, string mapName, GeoPoint centre, double otherwise, Assumption assumption, ImmutableArray<Assumption>.Builder assumed)
    {
        if (given is { } value)
        {
            return (value, assumption.PlanPath);
        }

        if (map is not null)
        {
            return (map.At(centre), string.Create(
                CultureInfo.InvariantCulture,
                $"map {mapName} of ITU-R P.1812 at the path's centre, {centre.LatitudeDegrees:0.00}, {centre.LongitudeDegrees:0.00}"));
        }

        assumed.Add(assumption);
        return (otherwise, "assumed");
    }
}
