using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation;

namespace Mastwright.Network.Shadow;

/// <summary>Which cells a station does not reach directly, why, and over how many hops others reach them.</summary>
/// <remarks>
/// Counterfactuals on the same path, with the same antennas: free space; a smooth Earth at sea level (ITU-R P.526, spherical Earth), each antenna as
/// high above the sea as it is; the bare ground (the sweep without cover). The first one that is below the limit is the cause.
/// </remarks>
public sealed class ShadowMap
{
    private readonly ShadowCause[] causes;
    private readonly byte[] hops;

    private ShadowMap(ReachMap map, ShadowCause[] causes, byte[] hops)
    {
        Map = map;
        this.causes = causes;
        this.hops = hops;
    }

    /// <summary>The map of the station itself.</summary>
    public ReachMap Map { get; }

    /// <summary>The causes, cell by cell.</summary>
    public ReadOnlySpan<ShadowCause> Causes => causes;

    /// <summary>Hops over which a cell is reached: 1 directly, 2 over one relay, …; 0 not at all.</summary>
    public ReadOnlySpan<byte> Hops => hops;

    /// <summary>Sorts the cells of a map.</summary>
    /// <param name="map">The map over the ground as it is.</param>
    /// <param name="bare">Losses over the same ground without cover.</param>
    /// <param name="ground">The ground, for the height of each cell above the sea.</param>
    /// <param name="direction">Which way counts.</param>
    /// <exception cref="ArgumentException">The two fields are not cell on cell.</exception>
    public static ShadowMap Of(ReachMap map, ReachField bare, GroundMosaic ground, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(bare);
        ArgumentNullException.ThrowIfNull(ground);
        ReachField field = map.Field;
        if (bare.LossDb.Length != field.LossDb.Length)
        {
            throw new ArgumentException("The fields are not cell on cell.", nameof(bare));
        }

        ShadowCause[] cells = new ShadowCause[field.LossDb.Length];
        byte[] reached = new byte[cells.Length];
        SmoothPaths smooth = new(field.Input, ground);
        Parallel.For(0, field.Frame.Rows, row =>
        {
            for (int column = 0; column < field.Frame.Columns; column++)
            {
                int cell = (row * field.Frame.Columns) + column;
                double margin = map.MarginDb(cell, direction);
                if (double.IsNaN(margin) || (field.Flags[cell] & ReachFlags.Outside) != ReachFlags.None)
                {
                    continue;
                }

                reached[cell] = margin >= 0 ? (byte)1 : (byte)0;
                cells[cell] = margin >= 0
                    ? ShadowCause.Reached
                    : Cause(margin + field.LossDb[cell] - map.Budget.LocationShiftDb, bare.LossDb[cell] - map.Budget.LocationShiftDb, smooth.Losses(ReachGrid.Centre(field.Frame, column, row)));
            }
        });
        return new(map, cells, reached);
    }

    /// <summary>The same with what a relay reaches.</summary>
    /// <param name="relay">Map of the relay, cell on cell with this one where both have cells.</param>
    /// <param name="relayHops">Hops to the relay.</param>
    /// <param name="direction">Which way counts.</param>
    public ShadowMap With(ReachMap relay, int relayHops, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(relay);
        byte[] changed = [.. hops];
        GridFrame inner = relay.Field.Frame;
        GridFrame outer = Map.Field.Frame;
        (int left, int top) = ReachGrid.OffsetOf(inner, outer);
        for (int row = Math.Max(0, -top); row < inner.Rows && row + top < outer.Rows; row++)
        {
            for (int column = Math.Max(0, -left); column < inner.Columns && column + left < outer.Columns; column++)
            {
                ref byte cell = ref changed[((row + top) * outer.Columns) + column + left];
                if (relay.MarginDb((row * inner.Columns) + column, direction) >= 0 && (cell == 0 || cell > relayHops + 1))
                {
                    cell = (byte)(relayHops + 1);
                }
            }
        }

        return new(Map, causes, changed);
    }

    /// <summary>The area of each cause but <see cref="ShadowCause.Unknown"/>, in the order of the causes.</summary>
    /// <param name="hopLimit">Most hops that count.</param>
    public ImmutableArray<ShadowPart> Parts(int hopLimit)
    {
        double area = Map.Field.CellAreaSquareMetres;
        return
        [
            .. Enum.GetValues<ShadowCause>().Where(cause => cause != ShadowCause.Unknown).Select(cause =>
            {
                int[] byHops = new int[Math.Max(0, hopLimit - 1)];
                int cells = 0;
                for (int i = 0; i < causes.Length; i++)
                {
                    if (causes[i] == cause)
                    {
                        cells++;
                        if (hops[i] >= 2 && hops[i] <= hopLimit)
                        {
                            byHops[hops[i] - 2]++;
                        }
                    }
                }

                return new ShadowPart(cause, cells, cells * area, [.. byHops.Select(count => count * area)]);
            }),
        ];
    }

    /// <summary>The cause by the losses at no margin.</summary>
    /// <param name="mostDb">The loss in dB at which the margin is zero.</param>
    /// <param name="bareDb">Loss over the bare ground.</param>
    /// <param name="smooth">Loss in free space and on the smooth Earth.</param>
    internal static ShadowCause Cause(double mostDb, double bareDb, (double FreeDb, double SmoothDb) smooth)
    {
        if (smooth.FreeDb > mostDb)
        {
            return ShadowCause.TooFar;
        }

        if (smooth.SmoothDb > mostDb)
        {
            return ShadowCause.Curve;
        }

        // Without a loss over the bare ground nothing clears the ground of it.
        return bareDb <= mostDb ? ShadowCause.Cover : ShadowCause.Ground;
    }
}
