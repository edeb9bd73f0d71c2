using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>Reads heights, cover and zones along a track from a mosaic.</summary>
internal static class ProfileSampler
{
    private const int NoWindow = -1;
    private const int OpenSea = -2;

    internal static ProfileSamples Sample(GroundMosaic mosaic, ProfileTrack track)
    {
        int count = track.Steps + 1;
        double[] heights = new double[count];
        Array.Fill(heights, double.NaN);
        int[] windows = new int[count];
        Array.Fill(windows, NoWindow);
        byte[] codes = new byte[count];

        Dictionary<(int, bool), (double[] X, double[] Y)> projected = [];
        for (int w = 0; w < mosaic.Heights.Length; w++)
        {
            WalkHeights(mosaic, w, track, Project(projected, track, mosaic.Heights[w].Frame), heights, windows);
        }

        foreach (GroundWindow window in mosaic.Covers)
        {
            WalkCover(window, track, Project(projected, track, window.Frame), codes);
        }

        Zone[] zones = new Zone[count];
        FillSeaAndZones(mosaic, track, heights, windows, codes, zones);

        double[] coverHeights = new double[count];
        CoverClass[] classes = new CoverClass[count];
        for (int i = 0; i < count; i++)
        {
            classes[i] = mosaic.CoverTable.ClassOf(codes[i]);
            bool isSurface = windows[i] >= 0 && mosaic.Heights[windows[i]].Kind == HeightKind.Surface;
            coverHeights[i] = isSurface || zones[i] == Zone.Sea ? 0 : mosaic.CoverTable.HeightMetres(codes[i]);
        }

        return new(heights, codes, coverHeights, classes, zones, Gaps(mosaic, track, heights), Sources(mosaic, windows, heights));
    }

    private static (double[] X, double[] Y) Project(
        Dictionary<(int, bool), (double[] X, double[] Y)> projected, ProfileTrack track, GridFrame frame)
    {
        ref (double[] X, double[] Y) nodes = ref CollectionsMarshal.GetValueRefOrAddDefault(projected, (frame.UtmZone, frame.IsNorth), out bool known);
        if (!known)
        {
            double[] x = track.NodeLongitudes.ToArray();
            double[] y = track.NodeLatitudes.ToArray();
            for (int i = 0; i < x.Length && !frame.IsGeographic; i++)
            {
                (x[i], y[i]) = GridFrame.Project(frame.UtmZone, frame.IsNorth, y[i], x[i]);
            }

            nodes = (x, y);
        }

        return nodes;
    }

    /// <summary>Columns and rows of a block of the track in a grid, and whether the block may meet it.</summary>
    private static bool Meets(
        GridFrame frame, (double[] X, double[] Y) nodes, int block, out Quadratic columns, out Quadratic rows)
    {
        int n = 2 * block;
        double turn = frame.IsGeographic ? frame.Turn(nodes.X[n + 1]) : 0;
        double originX = frame.OriginX - turn;
        columns = new((nodes.X[n] - originX) / frame.StepX, (nodes.X[n + 1] - originX) / frame.StepX, (nodes.X[n + 2] - originX) / frame.StepX);
        rows = new((frame.OriginY - nodes.Y[n]) / frame.StepY, (frame.OriginY - nodes.Y[n + 1]) / frame.StepY, (frame.OriginY - nodes.Y[n + 2]) / frame.StepY);
        (double lowColumn, double highColumn) = columns.Range();
        (double lowRow, double highRow) = rows.Range();
        return highColumn >= -0.5 && lowColumn <= frame.Columns - 0.5 && highRow >= -0.5 && lowRow <= frame.Rows - 0.5;
    }

    private static void WalkHeights(
        GroundMosaic mosaic, int index, ProfileTrack track, (double[] X, double[] Y) nodes, double[] heights, int[] windows)
    {
        GridFrame frame = mosaic.Heights[index].Frame;
        double perPoint = 1.0 / track.PointsPerNode;
        for (int block = 0; block < track.Blocks; block++)
        {
            if (!Meets(frame, nodes, block, out Quadratic columns, out Quadratic rows))
            {
                continue;
            }

            (int first, int last) = track.PointsOf(block);
            for (int i = first; i <= last; i++)
            {
                if (!double.IsNaN(heights[i]))
                {
                    continue;
                }

                double t = (i - first) * perPoint;
                double height = mosaic.HeightIn(index, columns.At(t), rows.At(t));
                if (!double.IsNaN(height))
                {
                    heights[i] = height;
                    windows[i] = index;
                }
            }
        }
    }

    private static void WalkCover(GroundWindow window, ProfileTrack track, (double[] X, double[] Y) nodes, byte[] codes)
    {
        double perPoint = 1.0 / track.PointsPerNode;
        for (int block = 0; block < track.Blocks; block++)
        {
            if (!Meets(window.Frame, nodes, block, out Quadratic columns, out Quadratic rows))
            {
                continue;
            }

            (int first, int last) = track.PointsOf(block);
            for (int i = first; i <= last; i++)
            {
                double t = (i - first) * perPoint;
                codes[i] = codes[i] != 0 ? codes[i] : window.CoverAt(columns.At(t), rows.At(t));
            }
        }
    }

    private static void FillSeaAndZones(
        GroundMosaic mosaic, ProfileTrack track, double[] heights, int[] windows, byte[] codes, Zone[] zones)
    {
        double perPoint = 1.0 / track.PointsPerNode;
        (int Column, int Row, bool Answer) asked = (int.MinValue, 0, false);
        for (int block = 0; block < track.Blocks; block++)
        {
            int n = 2 * block;
            Quadratic latitudes = new(track.NodeLatitudes[n], track.NodeLatitudes[n + 1], track.NodeLatitudes[n + 2]);
            Quadratic longitudes = new(track.NodeLongitudes[n], track.NodeLongitudes[n + 1], track.NodeLongitudes[n + 2]);
            (int first, int last) = track.PointsOf(block);
            for (int i = first; i <= last; i++)
            {
                double t = (i - first) * perPoint;
                if (double.IsNaN(heights[i]) && !mosaic.SeaTiles.IsEmpty && mosaic.IsLeftToSea(latitudes.At(t), longitudes.At(t)))
                {
                    heights[i] = 0;
                    windows[i] = OpenSea;
                    zones[i] = Zone.Sea;
                }
                else if (mosaic.Sea is { HasSea: true } sea && heights[i] <= SeaMap.CoastalHeightMetres)
                {
                    zones[i] = ProfileZones.Of(sea, heights[i], mosaic.CoverTable.Find(codes[i]), latitudes.At(t), longitudes.At(t), ref asked);
                }
            }
        }
    }

    private static ImmutableArray<GroundGap> Gaps(GroundMosaic mosaic, ProfileTrack track, double[] heights)
    {
        if (Array.FindIndex(heights, double.IsNaN) < 0)
        {
            return [];
        }

        ImmutableArray<GroundGap>.Builder gaps = ImmutableArray.CreateBuilder<GroundGap>();
        double step = track.LengthMetres / track.Steps;
        for (int i = 0; i < heights.Length; i++)
        {
            if (!double.IsNaN(heights[i]))
            {
                continue;
            }

            GeoPoint point = track.PointNear(i);
            (string tile, bool isVoid) = NameOfGap(mosaic, point);
            double distance = i * step;
            if (i > 0 && double.IsNaN(heights[i - 1]) && gaps[^1].Tile == tile && gaps[^1].IsVoid == isVoid)
            {
                gaps[^1] = gaps[^1] with { ToMetres = distance };
            }
            else
            {
                gaps.Add(new(tile, isVoid, distance, distance));
            }
        }

        return gaps.ToImmutable();
    }

    private static (string Tile, bool IsVoid) NameOfGap(GroundMosaic mosaic, GeoPoint point)
    {
        foreach (GroundWindow window in mosaic.Heights)
        {
            (double column, double row) = window.Frame.Locate(point);
            double edge = window.Frame.SamplesAreAreas ? 0.5 : 0;
            if (column >= -edge && row >= -edge && column <= window.Frame.Columns - 1 + edge && row <= window.Frame.Rows - 1 + edge)
            {
                return (window.Name, true);
            }
        }

        return (GroundTile.OneDegree(point).Name, false);
    }

    private static ImmutableArray<ProfileSource> Sources(GroundMosaic mosaic, int[] windows, double[] heights)
    {
        List<ProfileSource> sources = [];
        for (int i = 0; i < windows.Length;)
        {
            int run = i;
            while (run < windows.Length && windows[run] == windows[i])
            {
                run++;
            }

            if (!double.IsNaN(heights[i]))
            {
                Count(sources, windows[i] == OpenSea ? null : mosaic.Heights[windows[i]], run - i);
            }

            i = run;
        }

        return [.. sources];
    }

    private static void Count(List<ProfileSource> sources, GroundWindow? window, int points)
    {
        string name = window is null ? "sea by tile index" : window.SourceName.Length > 0 ? window.SourceName : window.Name;
        int known = sources.FindIndex(source => source.Name == name && source.Kind == (window?.Kind ?? HeightKind.Unknown) && source.Datum == (window?.Datum ?? ""));
        if (known >= 0)
        {
            sources[known] = sources[known] with { Points = sources[known].Points + points };
        }
        else
        {
            sources.Add(new(name, window?.Kind ?? HeightKind.Unknown, window?.Datum ?? "", window?.ResolutionMetres ?? 0, points));
        }
    }
}
