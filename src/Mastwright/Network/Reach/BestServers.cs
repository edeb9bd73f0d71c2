using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Which of several stations serves each cell of one grid best, and how many reach it: a state that takes one station's map after another.</summary>
/// <remarks>
/// <para>
/// Only the state and the map at hand are in memory, whatever the number of stations. The order in which stations are taken makes no difference: best is the station with the
/// most margin, and of those with the very same margin the one with the lowest number.
/// </para>
/// <para>A cell is reached by a station whose margin there is 0 dB or more. One thread at a time.</para>
/// </remarks>
public sealed class BestServers
{
    /// <summary>Most stations of one grid.</summary>
    public const int MostStations = 10_000;

    private readonly BestServerLayer[] layers;
    private readonly ReachFlags[] flags;
    private readonly bool[] taken;

    private BestServers(GridFrame frame, int stations)
    {
        int cells = frame.Columns * frame.Rows;
        Frame = frame;
        flags = new ReachFlags[cells];
        Array.Fill(flags, ReachFlags.Outside);
        taken = new bool[stations];
        layers = [.. Enum.GetValues<ReachDirection>().Select(direction => new BestServerLayer(direction, cells, stations))];
    }

    /// <summary>The grid, which holds the grid of each station cell on cell.</summary>
    public GridFrame Frame { get; }

    /// <summary>
    /// What is to be said of each cell: <see cref="ReachFlags.Outside"/> where it is in no station's radius, <see cref="ReachFlags.GroundMissing"/> where the way from at least one
    /// of those in whose radius it is has no ground, so that its count is a least count.
    /// </summary>
    public ReadOnlySpan<ReachFlags> Flags => flags;

    /// <summary>Number of stations, taken or still to come.</summary>
    public int StationCount => taken.Length;

    /// <summary>Area of one cell in square metres, by the grid's own lengths.</summary>
    public double CellAreaSquareMetres => Frame.StepX * Frame.StepY;

    /// <summary>Number of cells within the radius of at least one station taken so far.</summary>
    public int CellCount => flags.Count(flag => (flag & ReachFlags.Outside) == ReachFlags.None);

    /// <summary>The state before the first station.</summary>
    /// <param name="frame">The grid: <see cref="ReachGrid.Shared"/>.</param>
    /// <param name="stations">Number of stations to come, 1 to <see cref="MostStations"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many stations.</exception>
    public static BestServers Before(GridFrame frame, int stations)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentOutOfRangeException.ThrowIfLessThan(stations, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(stations, MostStations);
        return new(frame, stations);
    }

    /// <summary>Best server and count of one direction.</summary>
    public BestServerLayer Layer(ReachDirection direction) => layers[(int)direction];

    /// <summary>Takes the map of one station.</summary>
    /// <param name="station">Its number, from 1.</param>
    /// <param name="map">Its map: its grid lies inside the shared one, cell on cell.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such number.</exception>
    /// <exception cref="ArgumentException">The station was taken before, or its grid does not lie in the shared one cell on cell.</exception>
    public void Take(int station, ReachMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentOutOfRangeException.ThrowIfLessThan(station, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(station, taken.Length);
        (int column, int row) = ReachGrid.PlaceOf(map.Field.Frame, Frame);
        if (taken[station - 1])
        {
            throw new ArgumentException($"Station {station} was taken before.", nameof(station));
        }

        taken[station - 1] = true;
        int columns = map.Field.Frame.Columns;
        ReadOnlySpan<ReachFlags> own = map.Field.Flags;
        for (int cell = 0; cell < own.Length; cell++)
        {
            if ((own[cell] & ReachFlags.Outside) != ReachFlags.None)
            {
                continue;
            }

            int at = ((row + (cell / columns)) * Frame.Columns) + column + (cell % columns);
            flags[at] = (flags[at] & ~ReachFlags.Outside) | (own[cell] & ReachFlags.GroundMissing);
            foreach (BestServerLayer layer in layers)
            {
                layer.Take(at, station, (float)map.MarginDb(cell, layer.Direction));
            }
        }
    }
}
