using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of what can hurt someone at a site, and of the consents to stand there.</summary>
internal static class HazardKeys
{
    private static readonly ImmutableArray<string> Consent = ["granted", "not-needed", "asked", "refused"];

    internal static readonly KeyShape OverheadLine = new("overhead-line-distance", new QuantityShape(Dimension.Length, 0, 10_000, "40 m", Ranged: true), "Level distance from the mast's foot to the nearest overhead line, or how far you looked and saw none.");
    internal static readonly KeyShape LocalClearance = new("local-clearance", new QuantityShape(Dimension.Length, 0, 100, "6 m"), "Clearance to overhead lines that the local rules or the network operator ask for.");
    internal static readonly KeyShape Handling = new("handling-length", new QuantityShape(Dimension.Length, 0, 20, "2 m"), "By how much those who raise the mast, and what they hold, reach further.");
    internal static readonly KeyShape Access = new("access", new ChoiceShape("ground", "tilt-over", "ladder", "roof", "scaffold", "climbing"), "How one gets to the work.");
    internal static readonly KeyShape WorkingHeight = new("working-height", new QuantityShape(Dimension.Length, 0, 300, "7 m"), "Height above the ground at which one works; without it that of the upper bracket.");
    internal static readonly KeyShape FallZone = new("fall-zone", new ChoiceShape("own-ground", "neighbour", "public-way", "people"), "Who or what is under the mast when it falls.");
    internal static readonly KeyShape Owner = new("owner", new ChoiceShape(Consent), "Of the owner of building or ground.");
    internal static readonly KeyShape Planning = new("planning", new ChoiceShape(Consent), "Of the planning authority.");
    internal static readonly KeyShape Airfield = new("airfield", new ChoiceShape(Consent), "Of the airfield or aviation authority.");
    internal static readonly MappingShape ConsentShape = new("consents", Owner, Planning, Airfield);
    internal static readonly KeyShape Consents = new("consents", ConsentShape, "Consents, and how far one has got with each.");

    internal static readonly MappingShape Shape = new("hazards", OverheadLine, LocalClearance, Handling, Access, WorkingHeight, FallZone, Consents);
}
