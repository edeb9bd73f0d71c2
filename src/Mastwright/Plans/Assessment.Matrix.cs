using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <content>Every pair of stations, kept small.</content>
public sealed partial class Assessment
{
    /// <summary>Works out every pair of the plan's stations, both directions.</summary>
    /// <param name="stations">The stations, from <see cref="LinkSelection.Stations"/>.</param>
    /// <param name="memory">Paths that were worked out before; what is new is added.</param>
    /// <param name="timePercent">Time percentage in place of the plan's, 1 to 50; null for the plan's.</param>
    /// <param name="progress">Told the number of pairs done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <remarks>Each pair is what <see cref="Link(LinkStation, LinkStation)"/> gives for it, less what a table does not show.</remarks>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public MatrixReport Matrix(
        ImmutableArray<LinkStation> stations,
        PathMemory memory,
        double? timePercent = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(memory);
        PathSettings used = timePercent is { } time ? settings with { TimePercent = time } : settings;
        StationChainResult[] chains = [.. stations.Select(station => StationChains.Of(station, plan, catalogue))];
        PathAir[] airs = [.. stations.Select(station => PathAir.Of(plan.Air, maps, station.Position.Point))];
        int count = stations.Length;
        LinkPair[] pairs = new LinkPair[LinkMatrix.PairCount(count)];
        int done = 0;
        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, pairs.Length, options, index =>
        {
            (int from, int to) = LinkMatrix.StationsOf(index, count);
            pairs[index] = Pair(stations, chains, from, to, used, airs[from], memory);
            progress?.Report(Interlocked.Increment(ref done));
        });

        LinkMatrix matrix = new([.. stations.Select(station => station.OnMatrix)], pairs);
        return new()
        {
            Plan = plan,
            Settings = used,
            Matrix = matrix,
            Findings = [.. OfPlan(stations), .. NotCounted(stations), .. chains.SelectMany(chain => chain.Findings), .. MatrixFindings.Of(matrix)],
            Assumptions =
            [
                .. assumed
                    .Where(one => timePercent is null || one != PlanDefaults.Time)
                    .Concat(chains.SelectMany(chain => chain.Assumptions))
                    .Concat(airs.SelectMany(air => air.Assumptions))
                    .Concat(settings.LocationDb is null ? [PlanDefaults.LocationSpread] : [])
                    .Concat(CorrectionUse.Assumptions(CorrectionUse.Of(plan), !plan.Covers.IsEmpty, stations))
                    .Distinct(),
            ],
        };
    }

    private LinkPair Pair(ImmutableArray<LinkStation> stations, StationChainResult[] chains, int from, int to, PathSettings used, PathAir air, PathMemory memory)
    {
        GeodesicSegment segment = Geodesic.Inverse(stations[from].Position.Point, stations[to].Position.Point);
        PathFacts facts = Facts(stations[from], stations[to], segment.DistanceMetres, used, air, memory);
        LinkEnd fromEnd = End(stations[from], chains[from], facts.FromElevationDegrees, segment.InitialBearingDegrees);
        LinkEnd toEnd = End(stations[to], chains[to], facts.ToElevationDegrees, (segment.FinalBearingDegrees + 180) % 360);
        Estimate polarisation = PolarisationMismatch.LossDb(stations[from].Polarisation, stations[to].Polarisation);
        AdoptedCorrection? correction = CorrectionUse.For(plan, stations[from], stations[to]);
        LinkWanted wanted = used.LocationDb is null ? used.Wanted with { LocationDb = facts.LocationDb } : used.Wanted;
        LinkOneWay Way(LinkEnd sender, LinkEnd receiver, string key, Estimate? lossDb, double shiftDb) => LinkOneWay.Of(
            LinkBudget.Direction(
                sender, receiver, CorrectionUse.Corrected(correction, Range(facts, lossDb, shiftDb), key), polarisation, facts.Missing, CorrectionUse.Corrected(correction, wanted, key)),
            shiftDb);

        return new(
            from,
            to,
            segment.DistanceMetres,
            segment.InitialBearingDegrees,
            Way(fromEnd, toEnd, stations[to].Key, facts.OutLossDb, facts.OutShiftDb),
            Way(toEnd, fromEnd, stations[from].Key, facts.BackLossDb, facts.BackShiftDb));
    }

    private static PathLossRange? Range(PathFacts facts, Estimate? lossDb, double shiftDb) => lossDb is not { } loss ? null : new(
        loss,
        [new("path", "Loss of the path with what the ends add", -loss.Median, "ITU-R P.1812")],
        shiftDb)
    {
        Spreads = [.. facts.EndDeviationsDb.Select(deviation => new SpreadPart("end", "What an end adds", deviation, "plan"))],
    };

    private PathFacts Facts(LinkStation from, LinkStation to, double distanceMetres, PathSettings used, PathAir air, PathMemory memory)
    {
        AdoptedCorrection? correction = CorrectionUse.For(plan, from, to);
        GroundMosaic Ground(GeoPoint start, GeoPoint end) => CorrectionUse.Covered(correction, ground(start, end));
        LinkPathSolver solver = new(used, air, Ground);
        if (distanceMetres is < LinkPathSolver.OnePlaceMetres or > ModelRange.LongestPathMetres)
        {
            return FactsOf(solver.Solve(from, to));
        }

        GroundMosaic mosaic = Ground(from.Position.Point, to.Position.Point);
        TerrainProfile terrain = TerrainProfile.Extract(mosaic, from.Position.Point, to.Position.Point);
        string key = PathKey.Of(from, to, used, air, terrain, () => GroundExtent.Of(mosaic).ContentHash.Value);
        if (memory.Find(key) is { } known)
        {
            return known;
        }

        PathFacts facts = FactsOf(solver.Solve(from, to, mosaic, terrain));
        memory.Keep(key, facts);
        return facts;
    }

    private static PathFacts FactsOf(LinkPath path) => new()
    {
        OutLossDb = path.OutLoss?.LossDb,
        BackLossDb = path.BackLoss?.LossDb,
        OutShiftDb = path.OutLoss?.LocationShiftDb ?? 0,
        BackShiftDb = path.BackLoss?.LocationShiftDb ?? 0,
        FromElevationDegrees = path.Clearance?.TransmitterElevationDegrees,
        ToElevationDegrees = path.Clearance?.ReceiverElevationDegrees,
        LocationDb = path.LocationDb,
        EndDeviationsDb = [.. (path.OutLoss?.Spreads ?? []).Select(part => part.DeviationDb)],
        Missing = path.Missing,
    };
}
