namespace Mastwright.Storage.Demo;

/// <summary>The grids of Skerrin: the tile of arc-second posts, and the coarse grid on which rain carves the valleys.</summary>
internal static class SkerrinFrame
{
    /// <summary>Posts along a side of the tile, both edges included.</summary>
    public const int Side = 3_601;

    /// <summary>North edge of the tile in degrees.</summary>
    public const int NorthDegrees = 47;

    /// <summary>West edge of the tile in degrees.</summary>
    public const int WestDegrees = -19;

    /// <summary>Metres to an arc-second of longitude at 46.4° N, and of latitude: the local plane is true to a few metres over the island.</summary>
    public const double MetresPerColumn = 21.37;

    /// <summary>Metres to an arc-second of latitude.</summary>
    public const double MetresPerRow = 30.88;

    /// <summary>Column of the island's middle, 18.58° W.</summary>
    public const int MiddleColumn = 1_512;

    /// <summary>Row of the island's middle, 46.40° N.</summary>
    public const int MiddleRow = 2_160;

    /// <summary>Posts between coarse nodes, along a row and down a column: cells of 85 m by 93 m.</summary>
    public const int ColumnStep = 4;

    /// <summary>Posts between coarse nodes down a column.</summary>
    public const int RowStep = 3;

    /// <summary>Western edge of the coarse grid: beyond the islet.</summary>
    public const int FirstColumn = MiddleColumn - 860;

    /// <summary>Northern edge of the coarse grid.</summary>
    public const int FirstRow = MiddleRow - 660;

    /// <summary>Nodes in a row of the coarse grid.</summary>
    public const int CoarseColumns = 386;

    /// <summary>Rows of the coarse grid.</summary>
    public const int CoarseRows = 441;

    /// <summary>Metres east of the island's middle.</summary>
    public static double X(double column) => (column - MiddleColumn) * MetresPerColumn;

    /// <summary>Metres north of the island's middle.</summary>
    public static double Y(double row) => (MiddleRow - row) * MetresPerRow;
}
