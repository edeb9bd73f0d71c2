using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Reach;

/// <summary>Lays what a sweep found on a field's cells, a run of a row at a time: a cell takes the loss at its centre, bilinear between the places around it.</summary>
/// <remarks>Eight cells at once. For one thread at a time.</remarks>
internal sealed class SweptRows
{
    private const ulong AllLanes = (1UL << EightLanes.Count) - 1;

    private readonly ReachFieldInput input;
    private readonly GridLattice places;
    private readonly double stepMetres;
    private readonly SweepLayout layout;
    private readonly SweepResult result;
    private readonly ReachPieces? pieces;
    private readonly int piece;
    private readonly double[] easts;
    private readonly double[] norths;
    private readonly List<double> missingMetres = [];

    // First and last place all of whose neighbours are in memory.
    private readonly int lowest;
    private readonly int highest;

    /// <summary>Lays on all cells, or on those that belong to a piece.</summary>
    /// <param name="input">What the field is worked out from.</param>
    /// <param name="places">Where its cells lie.</param>
    /// <param name="columns">Columns of its grid.</param>
    /// <param name="stepMetres">Step of the sweep in metres.</param>
    /// <param name="layout">The places held.</param>
    /// <param name="result">Their losses.</param>
    /// <param name="pieces">The pieces; null where the sweep is one.</param>
    /// <param name="piece">Which of them.</param>
    internal SweptRows(ReachFieldInput input, GridLattice places, int columns, double stepMetres, SweepLayout layout, SweepResult result, ReachPieces? pieces = null, int piece = 0)
    {
        this.input = input;
        this.places = places;
        this.stepMetres = stepMetres;
        this.layout = layout;
        this.result = result;
        this.pieces = pieces;
        this.piece = piece;

        (lowest, highest) = layout.WithNeighbours;

        // Read eight at a time: room for the rest of the last eight.
        easts = new double[columns + EightLanes.Count];
        norths = new double[easts.Length];
    }

    /// <summary>Distances in metres of the cells so far whose nearest place lacks ground.</summary>
    internal IReadOnlyList<double> MissingMetres => missingMetres;

    /// <summary>Fills a run of cells; those that do not belong to the piece stay as they are.</summary>
    /// <param name="row">Row of the field's grid.</param>
    /// <param name="column">First column of the run.</param>
    /// <param name="losses">Receives losses in dB; NaN where there is none.</param>
    /// <param name="elevations">Receives elevations in degrees, as many.</param>
    /// <param name="marks">Receives what is to be said, as many.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Lay(int row, int column, Span<float> losses, Span<float> elevations, Span<ReachFlags> marks)
    {
        places.Row(row).Read(column, easts.AsSpan(0, losses.Length), norths.AsSpan(0, losses.Length));
        for (int i = 0; i < losses.Length; i += EightLanes.Count)
        {
            Vector512<double> east = Vector512.LoadUnsafe(ref easts[i]);
            Vector512<double> north = Vector512.LoadUnsafe(ref norths[i]);
            int count = Math.Min(losses.Length - i, EightLanes.Count);
            ulong own = (1UL << count) - 1;
            if (pieces is not null)
            {
                own &= pieces.AreIn(piece, east / stepMetres, north / stepMetres);
            }

            if (own == 0)
            {
                continue;
            }

            ulong plain = Between(east, north, out Vector256<float> loss, out Vector256<float> elevation);
            if ((own & plain) == AllLanes)
            {
                loss.StoreUnsafe(ref losses[i]);
                elevation.StoreUnsafe(ref elevations[i]);
                marks.Slice(i, EightLanes.Count).Clear();
                continue;
            }

            for (int lane = 0; lane < count; lane++)
            {
                if ((own >> lane & 1) != 0)
                {
                    (losses[i + lane], elevations[i + lane], marks[i + lane]) =
                        (plain >> lane & 1) != 0 ? (loss[lane], elevation[lane], ReachFlags.None) : Cell(easts[i + lane], norths[i + lane]);
                }
            }
        }
    }

    /// <summary>Loss and elevation at eight places, and which of them need no second look: not beyond the radius, not next to the station, all four places around them known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private ulong Between(Vector512<double> east, Vector512<double> north, out Vector256<float> loss, out Vector256<float> elevation)
    {
        Vector512<double> reach = Vector512.Create((double)layout.Reach);
        Vector512<double> column = (east / stepMetres) + reach;
        Vector512<double> row = reach - (north / stepMetres);
        Vector512<double> west = Vector512.Floor(column);
        Vector512<double> above = Vector512.Floor(row);
        Vector512<double> across = column - west;
        Vector512<double> down = row - above;

        // Cells that are not the piece's own may lie where nothing is held.
        Vector512<long> at = Vector512.ConvertToInt64Native((above * layout.Pitch) + west + Vector512.Create((double)layout.Origin));
        at = Vector512.Min(Vector512.Max(at, Vector512.Create((long)lowest)), Vector512.Create((long)highest));
        ref long place = ref FourCorners.OneByOne(at, stackalloc long[EightLanes.Count]);
        FourCorners losses = FourCorners.Read(ref MemoryMarshal.GetArrayDataReference(result.Losses), layout.Pitch, ref place);
        FourCorners elevations = FourCorners.Read(ref MemoryMarshal.GetArrayDataReference(result.Elevations), layout.Pitch, ref place);
        loss = Single(losses.Between(across, down));
        elevation = Single(elevations.Between(across, down));
        Vector512<double> metres = Vector512.Sqrt((east * east) + (north * north));
        Vector512<double> isUsual = Vector512.LessThanOrEqual(metres, Vector512.Create(input.RadiusMetres)) & Vector512.GreaterThanOrEqual(metres, Vector512.Create(ModelRange.ShortestPathMetres));
        return isUsual.ExtractMostSignificantBits() & ~losses.With(SweepResult.NoLossDb);
    }

    private static Vector256<float> Single(Vector512<double> values) => Vector256.Narrow(values.GetLower(), values.GetUpper());

    /// <summary>One cell, whatever is around it.</summary>
    private (float LossDb, float ElevationDegrees, ReachFlags Flags) Cell(double eastMetres, double northMetres)
    {
        double metres = Math.Sqrt((eastMetres * eastMetres) + (northMetres * northMetres));
        if (metres > input.RadiusMetres)
        {
            return (float.NaN, float.NaN, ReachFlags.Outside);
        }

        ReachFlags nearness = metres < ModelRange.ShortestPathMetres ? ReachFlags.ShortPath : ReachFlags.None;
        double column = (eastMetres / stepMetres) + layout.Reach;
        double row = layout.Reach - (northMetres / stepMetres);
        int c = (int)column;
        int r = (int)row;
        double fc = column - c;
        double fr = row - r;
        int north = layout.Index(c, r);
        int south = layout.Index(c, r + 1);
        Span<int> around = [north, north + 1, south, south + 1];
        Span<double> weights = [(1 - fc) * (1 - fr), fc * (1 - fr), (1 - fc) * fr, fc * fr];
        double loss = 0;
        double elevation = 0;
        double known = 0;
        int nearest = 0;
        for (int i = 0; i < around.Length; i++)
        {
            nearest = weights[i] > weights[nearest] ? i : nearest;
            if (result.Losses[around[i]] != SweepResult.NoLossDb)
            {
                known += weights[i];
                loss += weights[i] * result.Losses[around[i]];
                elevation += weights[i] * result.Elevations[around[i]];
            }
        }

        if (result.Losses[around[nearest]] != SweepResult.NoLossDb)
        {
            return ((float)(loss / known), (float)(elevation / known), nearness);
        }

        missingMetres.Add(metres);
        return (float.NaN, float.NaN, nearness | ReachFlags.GroundMissing);
    }
}
