namespace Mastwright.Storage.Demo;

/// <summary>Carves the island: rock rises, water runs to the sea by the steepest way and wears its bed down.</summary>
/// <remarks>
/// The stream-power law dz/dt = U − K·√A·slope (A the area that drains through a node), solved implicitly from the shore upwards, so
/// that a step may be long. Its exponent is a half: a square root, which IEEE 754 rounds exactly, and no power.
/// It runs on one thread, in an order fixed by height and index.
/// </remarks>
internal sealed class SkerrinRain
{
    private const int Columns = SkerrinFrame.CoarseColumns;
    private const int Rows = SkerrinFrame.CoarseRows;
    private const int Steps = 44;
    private const double MetresPerUnit = 733;
    private const double CellX = SkerrinFrame.ColumnStep * SkerrinFrame.MetresPerColumn;
    private const double CellY = SkerrinFrame.RowStep * SkerrinFrame.MetresPerRow;

    private static readonly int[] Around = [-Columns - 1, -Columns, -Columns + 1, -1, 1, Columns - 1, Columns, Columns + 1];
    private static readonly double[] AroundMetres = MakeDistances();

    private readonly bool[] land = new bool[Columns * Rows];
    private readonly double[] rise = new double[Columns * Rows];
    private readonly double[] wear = new double[Columns * Rows];
    private readonly int[] order = new int[Columns * Rows];
    private readonly int[] outlet = new int[Columns * Rows];
    private readonly double[] outletMetres = new double[Columns * Rows];
    private readonly double[] filled = new double[Columns * Rows];
    private readonly bool[] reached = new bool[Columns * Rows];
    private readonly RainOrder queue = new(Columns * Rows);
    private int landCount;

    /// <summary>Heights in metres; at sea the height of the nearest kind of shore, so that the land's edge can be drawn between.</summary>
    public double[] Heights { get; } = new double[Columns * Rows];

    /// <summary>About how far inland each node is, in metres; negative at sea.</summary>
    public double[] InlandMetres { get; } = new double[Columns * Rows];

    /// <summary>Number of nodes that drain through each node.</summary>
    public double[] Drained { get; } = new double[Columns * Rows];

    /// <summary>Makes the island.</summary>
    public static SkerrinRain Fall(ParallelOptions threads)
    {
        SkerrinRain rain = new();
        Parallel.For(0, Rows, threads, rain.LayRow);
        for (int step = 0; step < Steps; step++)
        {
            rain.Route();
            rain.Carve();
            rain.Creep();
        }

        rain.Route();
        rain.Scale();
        return rain;
    }

    private static double[] MakeDistances()
    {
        double diagonal = Math.Sqrt((CellX * CellX) + (CellY * CellY));
        return [diagonal, CellY, diagonal, CellX, CellX, diagonal, CellY, diagonal];
    }

    private void LayRow(int row)
    {
        double y = SkerrinFrame.Y(SkerrinFrame.FirstRow + (row * SkerrinFrame.RowStep));
        for (int column = 0; column < Columns; column++)
        {
            double x = SkerrinFrame.X(SkerrinFrame.FirstColumn + (column * SkerrinFrame.ColumnStep));
            int node = (row * Columns) + column;
            double inland = SkerrinOutline.InlandMetres(x, y);
            InlandMetres[node] = inland;
            bool edge = row == 0 || column == 0 || row == Rows - 1 || column == Columns - 1;
            land[node] = inland > 0 && !edge;
            double shore = SkerrinOutline.ShoreHeightMetres(x, y) / MetresPerUnit;
            rise[node] = land[node] ? SkerrinUplift.At(x, y, inland) : 0;
            wear[node] = 0.55 * (1 + (0.45 * SkerrinNoise.Sum(x / 2_600, y / 2_600, 81, 3)));
            Heights[node] = land[node]
                ? shore + (0.000_02 * inland) + (0.03 * (1 + SkerrinNoise.Sum(x / 900, y / 900, 91, 4)))
                : shore;
        }
    }

    /// <summary>Finds for each land node where its water goes, filling hollows on the way, and sums the area that drains through it.</summary>
    private void Route()
    {
        Array.Clear(reached);
        Array.Fill(Drained, 1);
        for (int node = 0; node < land.Length; node++)
        {
            if (!land[node] && TouchesLand(node))
            {
                reached[node] = true;
                filled[node] = Heights[node];
                queue.Add(Heights[node], node);
            }
        }

        int count = 0;
        while (!queue.IsEmpty)
        {
            int node = queue.TakeLowest(out double level);
            if (land[node])
            {
                order[count++] = node;
                ChooseOutlet(node);
            }

            foreach (int way in Around)
            {
                int next = node + way;
                if (next < 0 || next >= land.Length || !land[next] || reached[next])
                {
                    continue;
                }

                reached[next] = true;
                outlet[next] = node;
                filled[next] = Math.Max(Heights[next], level + 1e-7);
                queue.Add(filled[next], next);
            }
        }

        landCount = count;
        for (int i = count - 1; i >= 0; i--)
        {
            Drained[outlet[order[i]]] += Drained[order[i]];
        }
    }

    private void ChooseOutlet(int node)
    {
        double steepest = -1;
        for (int i = 0; i < Around.Length; i++)
        {
            int next = node + Around[i];
            if (!reached[next] || filled[next] >= filled[node])
            {
                continue;
            }

            double slope = (filled[node] - filled[next]) / AroundMetres[i];
            if (slope > steepest)
            {
                steepest = slope;
                outlet[node] = next;
                outletMetres[node] = AroundMetres[i];
            }
        }
    }

    /// <summary>One step of rise and wear, from the shore upwards, so that each node finds its outlet already moved.</summary>
    private void Carve()
    {
        const double stepRise = 0.1093;
        for (int i = 0; i < landCount; i++)
        {
            int node = order[i];
            double cut = wear[node] * Math.Sqrt(Drained[node] + 5) * CellX / outletMetres[node];
            Heights[node] = (Heights[node] + (stepRise * rise[node]) + (cut * Heights[outlet[node]])) / (1 + cut);
        }
    }

    /// <summary>Soil creeps from where the ground is sharp into where it is hollow.</summary>
    private void Creep()
    {
        for (int i = 0; i < landCount; i++)
        {
            int node = order[i];
            filled[node] = (Heights[node - 1] + Heights[node + 1] + Heights[node - Columns] + Heights[node + Columns]) - (4 * Heights[node]);
        }

        for (int i = 0; i < landCount; i++)
        {
            Heights[order[i]] += 0.05 * filled[order[i]];
        }
    }

    /// <summary>Turns the law's own unit into metres. The law is linear, so nothing else changes.</summary>
    private void Scale()
    {
        for (int node = 0; node < Heights.Length; node++)
        {
            Heights[node] *= MetresPerUnit;
        }
    }

    private bool TouchesLand(int node)
    {
        int column = node % Columns;
        int row = node / Columns;
        for (int r = Math.Max(0, row - 1); r <= Math.Min(Rows - 1, row + 1); r++)
        {
            for (int c = Math.Max(0, column - 1); c <= Math.Min(Columns - 1, column + 1); c++)
            {
                if (land[(r * Columns) + c])
                {
                    return true;
                }
            }
        }

        return false;
    }
}
