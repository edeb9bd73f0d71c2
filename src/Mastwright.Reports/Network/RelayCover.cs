using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Network;

namespace Mastwright.Reports.Network;

/// <summary>Which cells stations reach, those that are open, and which of them candidates would open.</summary>
internal sealed class RelayCover
{
    private const int SightRays = 360;
    private const int MostBlocksAside = 160;

    private readonly Assessment assessment;
    private readonly RelayArea area;
    private readonly RelayOptions options;
    private readonly ReachReceiver receiver;
    private readonly LongWork work;
    private readonly Action<string> tell;
    private readonly double[]? cellWeights;
    private readonly byte[] state;
    private readonly int[] itemOf;

    private RelayCover(Assessment assessment, RelayArea area, RelayOptions options, ReachReceiver receiver, double[]? cellWeights, LongWork work, Action<string> tell)
    {
        this.assessment = assessment;
        this.area = area;
        this.options = options;
        this.receiver = receiver;
        this.cellWeights = cellWeights;
        this.work = work;
        this.tell = tell;
        state = new byte[area.Frame.Columns * area.Frame.Rows];
        itemOf = new int[state.Length];
    }

    /// <summary>Number of cells that are open.</summary>
    internal int Items { get; private set; }

    /// <summary>Weight of each of them; null where all weigh the same.</summary>
    internal double[]? Weights { get; private set; }

    /// <summary>Weight of a cell where all weigh the same: its area in km².</summary>
    internal double Each => area.Frame.StepX * area.Frame.StepY / 1e6;

    /// <summary>What is reached now, in the goal's unit.</summary>
    internal double Before { get; private set; }

    /// <summary>What is open, in the goal's unit.</summary>
    internal double Open { get; private set; }

    /// <summary>Of each cell: 0 no matter, 1 reached now, 2 open.</summary>
    internal ReadOnlySpan<byte> State => state;

    /// <summary>What the maps of the stations assumed.</summary>
    internal ImmutableArray<Findings.Assumption> Assumptions { get; private set; } = [];

    /// <summary>Works out what the network reaches; null, with the problem told, when there is nothing to be worked out.</summary>
    internal static RelayCover? Of(
        PlanSession session, Assessment assessment, RelayArea area, IEnumerable<LinkStation> network, ReachReceiver receiver, RelayOptions options, LongWork work, Action<string> tell, CancellationToken cancellation)
    {
        double[]? weights = null;
        if (options.Goal == RelayGoal.Weights)
        {
            List<string> problems = [];
            if (ReachRun.Weights(options.WeightsFile!, area.Frame, problems, cancellation) is not { } read)
            {
                problems.ForEach(tell);
                return null;
            }

            weights = read.InCell.ToArray();
        }

        RelayCover cover = new(assessment, area, options, receiver, weights, work, tell);
        LinkStation[] stations = [.. network];
        ulong[]?[] reached = cover.Reached(stations, $"What the network of {area.Home.Name} reaches", cancellation);
        int[] every = [.. Enumerable.Range(0, cover.state.Length)];
        ulong[] now = new ulong[CoverageObjective.Words(every.Length)];
        for (int i = 0; i < stations.Length; i++)
        {
            if (reached[i] is { } cells && cover.Setup(stations[i]) is { Field: { } field })
            {
                ReachedCells.Set(cells, ReachGrid.Of(field, ReachGrid.MostCells), area.Frame, every, now);
            }
        }

        cover.Sort(now);
        return cover;
    }

    /// <summary>What a map of a station is worked out from; null where something is missing.</summary>
    internal ReachSetup? Setup(LinkStation station)
    {
        ReachSetup setup = assessment.Reach(station, receiver, new(options.ReachMetres, options.CellMetres), area.Ground);
        return setup.Field is { } field && setup.Budget is not null
            ? setup with { Field = field with { SharedZone = (area.Frame.UtmZone, area.Frame.IsNorth) } }
            : null;
    }

    /// <summary>The open cells that each station would open, one bit each; none for a station whose map lacks something.</summary>
    internal ulong[][] Opened(ImmutableArray<LinkStation> stations, string name, CancellationToken cancellation)
    {
        ulong[]?[] reached = Reached(stations, name, cancellation);
        ulong[][] opened = new ulong[stations.Length][];
        Parallel.For(0, stations.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            opened[i] = new ulong[CoverageObjective.Words(Items)];
            if (reached[i] is { } cells && Setup(stations[i]) is { Field: { } field })
            {
                ReachedCells.Set(cells, ReachGrid.Of(field, ReachGrid.MostCells), area.Frame, itemOf, opened[i]);
                reached[i] = null;
            }
        });
        return opened;
    }

    /// <summary>Marks the cells that a station opens and that nobody opened before it; tells their number, weight and mean confidence.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mark">What to write into such cells.</param>
    /// <param name="cells">The state of each cell, which is changed.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal (int Cells, double? Works) Mark(LinkStation station, byte mark, byte[] cells, CancellationToken cancellation)
    {
        if (Setup(station) is not { Field: { } input, Budget: { } budget })
        {
            return (0, null);
        }

        ReachField field = RelayReachJob.Field(input, area.Ground, options.StepMetres, 0, cancellation);
        ReachMap map = ReachMap.Of(field, budget);
        (int left, int top) = ReachGrid.OffsetOf(field.Frame, area.Frame);
        int count = 0;
        double works = 0;
        for (int row = Math.Max(0, -top); row < field.Frame.Rows && row + top < area.Frame.Rows; row++)
        {
            for (int column = Math.Max(0, -left); column < field.Frame.Columns && column + left < area.Frame.Columns; column++)
            {
                int own = (row * field.Frame.Columns) + column;
                int cell = ((row + top) * area.Frame.Columns) + column + left;
                if (cells[cell] == 2 && map.MarginDb(own, options.Direction) >= 0)
                {
                    cells[cell] = mark;
                    count++;
                    works += map.Odds(own, options.Direction)!.Value.Works;
                }
            }
        }

        return (count, count == 0 ? null : works / count);
    }

    /// <summary>The candidates worth a sweep, by the open cells in sight of them.</summary>
    internal ImmutableArray<int> Screen(ImmutableArray<RelayCandidate> candidates, CancellationToken cancellation)
    {
        if (candidates.Length <= options.Swept)
        {
            return [.. Enumerable.Range(0, candidates.Length)];
        }

        int blockCells = Math.Max(1, (area.Plane.Side + MostBlocksAside - 1) / MostBlocksAside);
        int aside = LineOfSight.BlocksAside(area.Plane.Side, blockCells);
        double[] blocks = Blocks(blockCells, aside);
        LineOfSight sight = new(area.Plane);
        ulong[][] seen = new ulong[candidates.Length][];
        Parallel.For(0, candidates.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            seen[i] = new ulong[CoverageObjective.Words(aside * aside)];
            (double column, double row) = area.OnPlane(candidates[i].Place);
            sight.Mark(column, row, candidates[i].MastMetres, receiver.HeightMetres, options.ReachMetres, SightRays, blockCells, seen[i]);
        });
        return RelayScreen.Pick(seen, blocks, options.Swept, cancellation);
    }

    private double[] Blocks(int blockCells, int aside)
    {
        double[] blocks = new double[aside * aside];
        (float Column, float Row)[] places = area.Plane.PlacesOf(area.Frame);
        for (int cell = 0; cell < state.Length; cell++)
        {
            if (state[cell] == 2)
            {
                (int c, int r) = ((int)places[cell].Column / blockCells, (int)places[cell].Row / blockCells);
                if (c >= 0 && r >= 0 && c < aside && r < aside)
                {
                    blocks[(r * aside) + c] += cellWeights?[cell] ?? 1;
                }
            }
        }

        return blocks;
    }

    private void Sort(ulong[] now)
    {
        List<double> weights = [];
        (float Column, float Row)[] places = area.Plane.PlacesOf(area.Frame);
        for (int cell = 0; cell < state.Length; cell++)
        {
            itemOf[cell] = -1;
            double weight = cellWeights?[cell] ?? Each;
            double height = area.Plane.HeightAt(places[cell].Column, places[cell].Row);
            if (weight <= 0 || (cellWeights is null && (double.IsNaN(height) || (options.LandOnly && height <= 0))))
            {
                continue;
            }

            bool isReached = (now[cell >> 6] >> cell & 1) != 0;
            state[cell] = isReached ? (byte)1 : (byte)2;
            (Before, Open) = isReached ? (Before + weight, Open) : (Before, Open + weight);
            if (!isReached)
            {
                itemOf[cell] = Items++;
                weights.Add(weight);
            }
        }

        Weights = cellWeights is null ? null : [.. weights];
    }

    private ulong[]?[] Reached(IReadOnlyList<LinkStation> stations, string name, CancellationToken cancellation)
    {
        ulong[]?[] all = new ulong[stations.Count][];
        List<int> places = [];
        List<Chunk> chunks = [];
        for (int i = 0; i < stations.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (Setup(stations[i]) is not { Field: { } field, Budget: { } budget } setup)
            {
                tell($"{stations[i].Subject} opens nothing here: something that a map of it needs is missing ('reach' says what)");
                continue;
            }

            Assumptions = [.. Assumptions.Concat(setup.Assumptions).Distinct()];
            places.Add(i);
            chunks.Add(RelayReachJob.ChunkOf(field, budget, options.Direction, area.Ground, area.Hash.Value, options.StepMetres));
        }

        double step = Math.Max(options.StepMetres, area.Ground.Heights.Min(window => window.ResolutionMetres));
        Job job = new() { Name = name, Priority = JobPriority.Search, Chunks = [.. chunks] };
        double sweep = Math.PI * Math.Pow(options.ReachMetres / step, 2);
        double bits = Math.Pow(2 * options.ReachMetres / options.CellMetres, 2);
        using JobResult result = work.Run(job, chunks.Count * sweep, chunks.Count * bits / 8, cancellation);
        for (int i = 0; i < places.Count; i++)
        {
            all[places[i]] = RelayReachJob.Bits(result.Read(i, cancellation));
        }

        return all;
    }
}
