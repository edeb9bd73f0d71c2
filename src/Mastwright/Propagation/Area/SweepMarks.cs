namespace Mastwright.Propagation.Area;

/// <summary>What is to be said about one cell of a sweep.</summary>
[Flags]
public enum SweepMarks
{
    /// <summary>An ordinary path: blocked, by the Recommendation.</summary>
    None = 0,

    /// <summary>The cell lies beyond the radius and was not computed.</summary>
    Beyond = 1,

    /// <summary>Ground is missing at the cell or on the way to it; there is no loss.</summary>
    GroundMissing = 2,

    /// <summary>The path is under 0.25 km: free space and one knife edge, not the Recommendation.</summary>
    ShortPath = 4,

    /// <summary>The bare ground leaves the line between the antennas clear.</summary>
    LineOfSight = 8,

    /// <summary>The station's own cell: the loss is that of a place half a cell away.</summary>
    Station = 16,

    /// <summary>The cell is sea.</summary>
    Sea = 32,
}
