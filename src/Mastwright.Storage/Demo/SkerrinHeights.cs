namespace Mastwright.Storage.Demo;

/// <summary>Draws the arc-second heights from the carved coarse grid: smooth between its nodes, rougher in detail where it is steep.</summary>
internal static class SkerrinHeights
{
    private const int Columns = SkerrinFrame.CoarseColumns;
    private const double BendColumns = 8;
    private const double BendRows = 5.5;
    private const int Margin = 16;
    private const double ShoreBandMetres = 900;

    /// <summary>The tile's heights in whole metres, north-west corner first; sea is 0 and land at least 1.</summary>
    public static short[] Draw(SkerrinRain rain, ParallelOptions threads)
    {
        short[] heights = new short[SkerrinFrame.Side * SkerrinFrame.Side];
        int rows = (SkerrinFrame.CoarseRows * SkerrinFrame.RowStep) - (2 * Margin);
        Parallel.For(0, rows, threads, row => DrawRow(rain, row + Margin, heights));
        return heights;
    }

    private static void DrawRow(SkerrinRain rain, int fromTop, short[] heights)
    {
        int row = SkerrinFrame.FirstRow + fromTop;
        Span<double> down = stackalloc double[4];
        Span<double> along = stackalloc double[4];
        double y = SkerrinFrame.Y(row);
        int columns = (Columns * SkerrinFrame.ColumnStep) - Margin;
        for (int fromLeft = Margin; fromLeft < columns; fromLeft++)
        {
            int column = SkerrinFrame.FirstColumn + fromLeft;
            double x = SkerrinFrame.X(column);
            double inland = rain.InlandMetres[(fromTop / SkerrinFrame.RowStep * Columns) + (fromLeft / SkerrinFrame.ColumnStep)];
            if (inland is > -ShoreBandMetres and < ShoreBandMetres)
            {
                // Only near the shore does the detail decide; elsewhere the node's own figure saves most of the work.
                inland = SkerrinOutline.InlandMetres(x, y);
            }

            if (inland <= 0)
            {
                continue;
            }

            // Read a little off the place, differently everywhere: it bends the straight runs that eight directions of flow leave.
            double acrossNodes = (fromLeft + (BendColumns * SkerrinNoise.Sum(x / 800, y / 800, 121, 2))) / SkerrinFrame.ColumnStep;
            double downNodes = (fromTop + (BendRows * SkerrinNoise.Sum(x / 800, y / 800, 125, 2))) / SkerrinFrame.RowStep;
            int leftNode = (int)acrossNodes;
            int topNode = (int)downNodes;
            Weigh(acrossNodes - leftNode, along);
            Weigh(downNodes - topNode, down);
            int corner = ((topNode - 1) * Columns) + leftNode - 1;
            double height = 0;
            double least = double.MaxValue;
            double most = double.MinValue;
            for (int i = 0; i < 4; i++)
            {
                for (int j = 0; j < 4; j++)
                {
                    double value = rain.Heights[corner + (i * Columns) + j];
                    height += down[i] * along[j] * value;
                    least = Math.Min(least, value);
                    most = Math.Max(most, value);
                }
            }

            // Crags and gullies: a share of the relief of the neighbourhood, which is some 300 m across.
            double relief = most - least;
            height += relief * 0.11 * SkerrinNoise.Sum(x / 330, y / 330, 101, 4, 0.55);
            height += 1.2 * SkerrinNoise.Sum(x / 260, y / 260, 111, 2);

            // The edge: cliffs fall within some 60 m, low shores shelve over more.
            double shelf = height > 15 ? 55 : 120;
            height *= 0.12 + (0.88 * SkerrinNoise.Rise(0, shelf, inland));
            heights[(row * SkerrinFrame.Side) + column] = (short)Math.Floor(Math.Max(1, height) + 0.5);
        }
    }

    /// <summary>Weights of the uniform cubic B-spline for four nodes in a row.</summary>
    private static void Weigh(double t, Span<double> weights)
    {
        double left = 1 - t;
        weights[0] = left * left * left / 6;
        weights[3] = t * t * t / 6;
        weights[1] = ((3 * t * t * t) - (6 * t * t) + 4) / 6;
        weights[2] = ((3 * left * left * left) - (6 * left * left) + 4) / 6;
    }
}
