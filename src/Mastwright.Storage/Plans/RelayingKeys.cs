using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of how stations pass on what they hear.</summary>
internal static class RelayingKeys
{
    internal static readonly KeyShape HopLimit = new("hop-limit", new WholeShape(1, 32), "Most links from a sender to a receiver; without it 3.");
    internal static readonly KeyShape Delay = new("delay", new ChoiceShape("fixed", "random", "by-level"), "How a station waits before passing on: always the most, at random between least and most, or the shorter the weaker it heard; without it random.");
    internal static readonly KeyShape LeastDelay = new("least-delay", new QuantityShape(Dimension.Time, 0, 3600, "0 s"), "Least of that wait; without it 0 s.");
    internal static readonly KeyShape MostDelay = new("most-delay", new QuantityShape(Dimension.Time, 0, 3600, "2 s"), "Most of that wait; without it 2 s.");
    internal static readonly KeyShape CancelAfter = new("cancel-after", new WholeShape(1, 200), "Copies heard while waiting after which a packet is not passed on; without it never.");
    internal static readonly KeyShape Share = new("share", new QuantityShape(Dimension.Percent, 0, 100, "80 %"), "Share of packets that a station passes on, drawn; without it all.");
    internal static readonly KeyShape Listen = new("listen-first", new YesNoShape(), "Whether a station looks for activity on the channel before it sends; without it no.");
    internal static readonly KeyShape BackOff = new("back-off", new QuantityShape(Dimension.Time, 0.001, 3600, "1 s"), "Most of the time until it looks again; without it 1 s.");
    internal static readonly MappingShape Shape = new("relaying", HopLimit, Delay, LeastDelay, MostDelay, CancelAfter, Share, Listen, BackOff);
}
