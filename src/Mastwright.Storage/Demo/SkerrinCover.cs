namespace Mastwright.Storage.Demo;

/// <summary>Draws what grows and stands on Skerrin, in the class codes of ESA WorldCover (v200, 2021).</summary>
internal static class SkerrinCover
{
    /// <summary>Cells along a side of the tile: each cell lies between four posts of the heights.</summary>
    public const int Side = SkerrinFrame.Side - 1;

    private const byte Trees = 10;
    private const byte Shrubs = 20;
    private const byte Grass = 30;
    private const byte Crops = 40;
    private const byte Houses = 50;
    private const byte Bare = 60;
    private const byte Water = 80;
    private const byte Bog = 90;
    private const double GlenNodes = 60;

    /// <summary>The tile's classes, north-west corner first.</summary>
    public static byte[] Draw(SkerrinRain rain, short[] heights, ParallelOptions threads)
    {
        byte[] cover = new byte[Side * Side];
        Array.Fill(cover, Water);
        int rows = SkerrinFrame.CoarseRows * SkerrinFrame.RowStep;
        Parallel.For(0, rows, threads, fromTop => DrawRow(rain, heights, SkerrinFrame.FirstRow + fromTop, cover));
        return cover;
    }

    private static void DrawRow(SkerrinRain rain, short[] heights, int row, byte[] cover)
    {
        int last = SkerrinFrame.FirstColumn + (SkerrinFrame.CoarseColumns * SkerrinFrame.ColumnStep);
        for (int column = SkerrinFrame.FirstColumn; column < last; column++)
        {
            int corner = (row * SkerrinFrame.Side) + column;
            int northWest = heights[corner];
            int northEast = heights[corner + 1];
            int southWest = heights[corner + SkerrinFrame.Side];
            int southEast = heights[corner + SkerrinFrame.Side + 1];
            int wet = (northWest == 0 ? 1 : 0) + (northEast == 0 ? 1 : 0) + (southWest == 0 ? 1 : 0) + (southEast == 0 ? 1 : 0);
            if (wet >= 2)
            {
                continue;
            }

            double east = (northEast + southEast - northWest - southWest) / (2 * SkerrinFrame.MetresPerColumn);
            double north = (northWest + northEast - southWest - southEast) / (2 * SkerrinFrame.MetresPerRow);
            double height = (northWest + northEast + southWest + southEast) / 4.0;
            double slope = Math.Sqrt((east * east) + (north * north));
            cover[(row * Side) + column] = Choose(rain, row, column, height, slope);
        }
    }

    private static byte Choose(SkerrinRain rain, int row, int column, double height, double slope)
    {
        double x = SkerrinFrame.X(column + 0.5);
        double y = SkerrinFrame.Y(row + 0.5);
        double patches = SkerrinNoise.Sum(x / 420, y / 420, 201, 4, 0.6);
        double country = SkerrinNoise.Sum(x / 2_300, y / 2_300, 211, 3);
        if (InVillage(x, y, patches) && slope < 0.5)
        {
            return SkerrinNoise.Sum(x / 90, y / 90, 221, 2) > -0.25 ? Houses : Grass;
        }

        if (slope > 0.85 || height > 520 + (150 * patches))
        {
            return Bare;
        }

        if (x < -13_500)
        {
            return height > 70 && patches > -0.2 ? Grass : Bare;
        }

        if (height > 170 + (110 * patches) && slope < 0.13)
        {
            return Bog;
        }

        bool sheltered = height < 235 + (90 * patches) && height > 6 && slope < 0.7;
        if (sheltered && patches > -0.08 && InGlen(rain, x, y, row, column))
        {
            return Trees;
        }

        if (sheltered && height > 30 && country > 0.34 && patches > -0.05)
        {
            return Trees;
        }

        if (height > 210 + (120 * patches))
        {
            return Shrubs;
        }

        return height < 70 && slope < 0.07 && patches > 0.12 && country < 0.05 ? Crops : Grass;
    }

    private static bool InVillage(double x, double y, double patches)
    {
        foreach ((double latitudeDegrees, double longitudeDegrees, double radiusMetres) in SkerrinPlaces.Villages)
        {
            double dx = x - SkerrinFrame.X((longitudeDegrees - SkerrinFrame.WestDegrees) * 3_600);
            double dy = y - SkerrinFrame.Y((SkerrinFrame.NorthDegrees - latitudeDegrees) * 3_600);
            if ((dx * dx) + (dy * dy) < radiusMetres * radiusMetres * (1 + (0.8 * patches)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a stream that drains half a square kilometre or more runs within about 130 m.</summary>
    private static bool InGlen(SkerrinRain rain, double x, double y, int row, int column)
    {
        // The edge of a wood wanders; without this it would show the coarse grid's squares.
        double wanderColumns = 5 * SkerrinNoise.Sum(x / 170, y / 170, 231, 2, 0.6);
        double wanderRows = 3.5 * SkerrinNoise.Sum(x / 170, y / 170, 235, 2, 0.6);
        int nodeRow = (int)((row - SkerrinFrame.FirstRow + (SkerrinFrame.RowStep / 2.0) + wanderRows) / SkerrinFrame.RowStep);
        int nodeColumn = (int)((column - SkerrinFrame.FirstColumn + (SkerrinFrame.ColumnStep / 2.0) + wanderColumns) / SkerrinFrame.ColumnStep);
        for (int r = nodeRow - 1; r <= nodeRow + 1; r++)
        {
            for (int c = nodeColumn - 1; c <= nodeColumn + 1; c++)
            {
                if (r >= 0 && c >= 0 && r < SkerrinFrame.CoarseRows && c < SkerrinFrame.CoarseColumns
                    && rain.Drained[(r * SkerrinFrame.CoarseColumns) + c] > GlenNodes)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
