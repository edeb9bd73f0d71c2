using System.Collections.Immutable;

namespace Mastwright.Network.Relays;

/// <summary>What is known of how good a choice could be at best.</summary>
public enum RelayBound
{
    /// <summary>All choices were tried: it is the best.</summary>
    Exact,

    /// <summary>By the gains that are left of a submodular objective.</summary>
    Gains,

    /// <summary>By an easier question, of which no answer is worth less.</summary>
    Relaxation,
}

/// <summary>Relays that were chosen.</summary>
/// <param name="Chosen">The candidates, in an order in which each counts once those before it stand.</param>
/// <param name="Gains">What each adds to those before it.</param>
/// <param name="Value">What all of them are worth.</param>
/// <param name="UpperBound">What no choice of as many is worth more than.</param>
/// <param name="Bound">How that is known.</param>
/// <param name="GreedyValue">What the greedy choice was worth before relays were exchanged.</param>
/// <param name="Exchanges">Number of relays that were exchanged for better ones.</param>
public sealed record RelayChoice(
    ImmutableArray<int> Chosen, ImmutableArray<double> Gains, double Value, double UpperBound, RelayBound Bound, double GreedyValue, int Exchanges)
{
    /// <summary>Share of the bound that the choice comes to, 0 to 1; 1 where nothing can be had.</summary>
    public double ShareOfBound => UpperBound <= 0 ? 1 : Math.Min(1, Value / UpperBound);
}
