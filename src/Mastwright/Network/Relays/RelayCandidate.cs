using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Network.Relays;

/// <summary>How a place came to be a candidate.</summary>
public enum RelayOrigin
{
    /// <summary>It was given.</summary>
    Given,

    /// <summary>A summit: nothing higher around it before the ground falls by its prominence.</summary>
    Summit,

    /// <summary>A point of a ridge: the ground falls away to both sides.</summary>
    Ridge,

    /// <summary>A point that looks far around.</summary>
    Horizon,
}

/// <summary>A place where a relay could stand.</summary>
/// <param name="Key">Name that is unique among the candidates, such as "summit-3".</param>
/// <param name="Name">Name to speak of it by.</param>
/// <param name="Place">Where it is.</param>
/// <param name="MastMetres">Height of its antenna above the ground, in metres, above zero.</param>
public sealed record RelayCandidate(string Key, string Name, GeoPoint Place, double MastMetres)
{
    /// <summary>How it came to be one.</summary>
    public RelayOrigin Origin { get; init; }

    /// <summary>Prominence of a summit in metres; null for others.</summary>
    public double? ProminenceMetres { get; init; }

    /// <summary>What is known of its power, in words; empty for unknown.</summary>
    public string Power { get; init; } = "";

    /// <summary>What is known of the way there and of leave to build, in words; empty for unknown.</summary>
    public string Access { get; init; } = "";

    /// <summary>Name, place and mast, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} at {Place}, {MastMetres:0.#} m");
}
