namespace Mastwright.Network.Relays;

/// <summary>Number of stations that relays join to the network, those among them that hang on others included.</summary>
/// <remarks>Where each relay needs a link of its own to the network as it is, it is the cover of sets: of the groups of stations that a relay has a link with.</remarks>
public sealed class JoinObjective : RelayObjective
{
    private readonly int before;

    /// <summary>An objective over a net.</summary>
    public JoinObjective(RelayNet net)
        : base(net) => before = Net.IsJoined.Count(one => one);

    /// <inheritdoc/>
    public override bool IsSubmodular => !Net.ThroughRelays;

    internal override double Work => 20.0 * (Net.Stations + Net.Candidates);

    /// <inheritdoc/>
    public override double Value(ReadOnlySpan<int> chosen) => Net.Joined(chosen).AsSpan(0, Net.Stations).Count(true) - before;
}
