namespace Mastwright.Propagation;

/// <summary>The two maps of the air that ITU-R P.1812 reads at the middle of a path.</summary>
/// <param name="Gradient">Median fall ΔN of the refractivity over the lowest kilometre, in N-units/km: the map DN50.</param>
/// <param name="Surface">Median sea-level surface refractivity N0, in N-units: the map N050.</param>
public sealed record RefractivityMaps(RefractivityMap Gradient, RefractivityMap Surface)
{
    /// <summary>Least ΔN that a map may hold, in N-units/km.</summary>
    public const double LeastGradient = 1;

    /// <summary>Most ΔN that a map or a plan may give, in N-units/km: from 157 on rays follow the Earth and the model has no answer.</summary>
    public const double MostGradient = 156;

    /// <summary>Least N0 that a map or a plan may give, in N-units.</summary>
    public const double LeastSurface = 200;

    /// <summary>Most N0 that a map or a plan may give, in N-units.</summary>
    public const double MostSurface = 500;
}
