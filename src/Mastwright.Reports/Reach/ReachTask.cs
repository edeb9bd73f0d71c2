using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;

namespace Mastwright.Reports.Reach;

/// <summary>A map that is still to be worked out.</summary>
/// <param name="Setup">All that it needs from the plan; nothing is missing.</param>
/// <param name="Input">What its losses are worked out from.</param>
/// <param name="Area">The area of its ground, with the rim that a picture shows.</param>
/// <param name="Ground">That ground.</param>
/// <param name="Pieces">The pieces that it is cut into; null where it is worked out at once.</param>
/// <param name="IsByOwnPaths">Whether each cell takes a path of its own.</param>
internal sealed record ReachTask(ReachSetup Setup, ReachFieldInput Input, GeoBounds Area, GroundExtent Ground, ReachPieces? Pieces, bool IsByOwnPaths);
