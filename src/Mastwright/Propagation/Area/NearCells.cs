using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Cells so near that their own straight path is read and given to the one-path method: few, and below the reach of the Recommendation.</summary>
internal static class NearCells
{
    /// <summary>Cells nearer than this, in metres: the range of the Recommendation begins at 0.25 km, and a path on a radial has one point there.</summary>
    internal static double LimitMetres(SweepRaster raster) => Math.Max(ModelRange.ShortestPathMetres, (OwnPoints.Fewest + 1.5) * raster.CellMetres);

    internal static void Fill(SweepRaster raster, in SweepTerms terms, SweepResult result, double[]? exact)
    {
        double limit = LimitMetres(raster);
        int cells = Math.Min((int)Math.Ceiling(limit / raster.CellMetres), raster.Reach);
        for (int north = -cells; north <= cells; north++)
        {
            for (int east = -cells; east <= cells; east++)
            {
                double length = Math.Sqrt(((double)east * east) + ((double)north * north)) * raster.CellMetres;
                if (length >= limit || length > raster.Reach * raster.CellMetres)
                {
                    continue;
                }

                int cell = raster.Layout.At(east, north);
                bool isStation = east == 0 && north == 0;
                SweepProfile? path = isStation ? Path(raster, in terms, 0, 0.5) : Path(raster, in terms, east, north);
                SweepMarks marks = (isStation ? SweepMarks.Station : SweepMarks.None) | (raster.ZoneOf(cell) == Zone.Sea ? SweepMarks.Sea : SweepMarks.None);
                if (path is null)
                {
                    AreaSweep.StoreMissing(result, cell, marks);
                    continue;
                }

                Store(path, in terms, result, cell, marks, exact);
            }
        }
    }

    internal static SweepProfile? Path(SweepRaster raster, in SweepTerms terms, double east, double north)
    {
        double length = Math.Sqrt((east * east) + (north * north)) * raster.CellMetres;
        int steps = Math.Max(2, (int)Math.Ceiling((length / raster.CellMetres) - 1e-9));
        double[] distances = new double[steps + 1];
        double[] heights = new double[steps + 1];
        double[] cover = new double[steps + 1];
        Zone[] zones = new Zone[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            double share = (double)i / steps;
            distances[i] = length * share;
            heights[i] = i == 0 ? terms.StationGround : raster.HeightAt(east * share, -north * share);
            if (double.IsNaN(heights[i]))
            {
                return null;
            }

            int cell = raster.CellAt(east * share, -north * share);
            cover[i] = terms.HasCover && i > 0 && i < steps ? raster.CoverOf(cell) : 0;
            zones[i] = raster.ZoneOf(cell);
        }

        PathProfile profile = PathProfile.FromSamples(distances, heights, cover, zones);
        return new(profile, SweepProfile.PathInput(in terms, profile, east * raster.CellMetres, north * raster.CellMetres));
    }

    private static void Store(SweepProfile path, in SweepTerms terms, SweepResult result, int cell, SweepMarks marks, double[]? exact)
    {
        PathProfile profile = path.Profile;
        double slope = double.NegativeInfinity;
        double d = profile.LengthMetres;
        for (int i = 1; i < profile.Count - 1; i++)
        {
            double x = profile.DistancesMetres[i];
            slope = Math.Max(slope, ((profile.HeightsMetres[i] - terms.StationAntenna) / x) - (terms.MedianFall * x));
        }

        double line = ((profile.HeightsMetres[^1] + terms.Input.ReceiverHeightMetres - terms.StationAntenna) / d) - (terms.MedianFall * d);
        marks |= d < ModelRange.ShortestPathMetres ? SweepMarks.ShortPath : SweepMarks.None;
        marks |= slope <= line ? SweepMarks.LineOfSight : SweepMarks.None;
        SweepProfile directed = path.Directed(terms.Input);
        double loss = PathLoss.Predict(directed.Profile, directed.Input).LossDb;
        AreaSweep.Store(result, cell, loss, 1000 * Math.Atan(Math.Max(slope, line)), marks, exact);
    }
}
