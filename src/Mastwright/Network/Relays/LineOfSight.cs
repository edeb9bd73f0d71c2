using Mastwright.Propagation;

namespace Mastwright.Network.Relays;

/// <summary>What of a plane is in sight of a mast: rays over the coarse ground, the Earth with its effective radius.</summary>
/// <remarks>For screening alone: no diffraction, no cover, no Fresnel zone. A place in sight may be out of reach, and one out of sight may be reached.</remarks>
public sealed class LineOfSight
{
    private readonly RelayPlane plane;
    private readonly double earthMetres;

    /// <summary>Prepares.</summary>
    /// <param name="plane">The ground.</param>
    /// <param name="refractivityGradient">Fall of refractivity in N-units/km, below 157.</param>
    public LineOfSight(RelayPlane plane, double refractivityGradient = EffectiveEarth.DefaultGradient)
    {
        ArgumentNullException.ThrowIfNull(plane);
        this.plane = plane;
        earthMetres = EffectiveEarth.FromGradient(refractivityGradient);
    }

    /// <summary>Marks the blocks of cells in sight.</summary>
    /// <param name="column">Column of the mast on the plane.</param>
    /// <param name="row">Its row.</param>
    /// <param name="mastMetres">Height of the antenna above the ground.</param>
    /// <param name="receiverMetres">Height above the ground of what is to be seen.</param>
    /// <param name="reachMetres">How far it looks.</param>
    /// <param name="rays">Number of rays.</param>
    /// <param name="blockCells">Side of a block in cells.</param>
    /// <param name="seen">One bit a block, row by row; set where any point of a ray in it is in sight.</param>
    public void Mark(double column, double row, double mastMetres, double receiverMetres, double reachMetres, int rays, int blockCells, Span<ulong> seen)
    {
        double own = plane.HeightAt(column, row) + mastMetres;
        if (double.IsNaN(own))
        {
            return;
        }

        int across = BlocksAside(plane.Side, blockCells);
        int steps = (int)(reachMetres / plane.Frame.CellMetres);
        for (int ray = 0; ray < rays; ray++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * ray / rays);
            double steepest = double.NegativeInfinity;
            for (int step = 1; step <= steps; step++)
            {
                double x = column + (step * sin);
                double y = row - (step * cos);
                double height = plane.HeightAt(x, y);
                if (double.IsNaN(height))
                {
                    if (x < 0 || y < 0 || x > plane.Side - 1 || y > plane.Side - 1)
                    {
                        break;
                    }

                    continue;
                }

                double metres = step * plane.Frame.CellMetres;
                double lower = own + (metres * metres / (2 * earthMetres));
                if ((height + receiverMetres - lower) / metres >= steepest)
                {
                    int block = ((int)y / blockCells * across) + ((int)x / blockCells);
                    seen[block >> 6] |= 1UL << block;
                }

                steepest = Math.Max(steepest, (height - lower) / metres);
            }
        }
    }

    /// <summary>Mean distance to the farthest point in sight over some rays, in metres; zero where the ground is not known.</summary>
    /// <param name="column">Column of the mast on the plane.</param>
    /// <param name="row">Its row.</param>
    /// <param name="mastMetres">Height of the antenna above the ground.</param>
    /// <param name="reachMetres">How far it looks.</param>
    /// <param name="rays">Number of rays.</param>
    public double MeanHorizonMetres(double column, double row, double mastMetres, double reachMetres, int rays)
    {
        double own = plane.HeightAt(column, row) + mastMetres;
        double sum = 0;
        for (int ray = 0; ray < rays && !double.IsNaN(own); ray++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * ray / rays);
            double steepest = double.NegativeInfinity;
            double farthest = 0;
            for (double cells = 1; cells * plane.Frame.CellMetres <= reachMetres; cells = Math.Max(cells + 1, cells * 1.05))
            {
                double height = plane.HeightAt(column + (cells * sin), row - (cells * cos));
                if (double.IsNaN(height))
                {
                    continue;
                }

                double metres = cells * plane.Frame.CellMetres;
                double slope = (height - own - (metres * metres / (2 * earthMetres))) / metres;
                if (slope >= steepest)
                {
                    (steepest, farthest) = (slope, metres);
                }
            }

            sum += farthest;
        }

        return sum / rays;
    }

    /// <summary>Blocks along one side of so many cells.</summary>
    public static int BlocksAside(int cells, int blockCells) => (cells + blockCells - 1) / blockCells;
}
