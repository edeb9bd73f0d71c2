using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Network.Relays;

/// <summary>What candidates are looked for.</summary>
public sealed record RelayWish
{
    /// <summary>Most candidates, 1 or more.</summary>
    public int Most { get; init; } = 500;

    /// <summary>Least distance between two of them in metres.</summary>
    public double SpacingMetres { get; init; } = 300;

    /// <summary>Height of their antennas above the ground in metres.</summary>
    public double MastMetres { get; init; } = 6;

    /// <summary>Least prominence of a summit in metres.</summary>
    public double ProminenceMetres { get; init; } = 10;

    /// <summary>Where they may stand.</summary>
    public RelayLimits Limits { get; init; } = RelayLimits.None;
}

/// <summary>Finds places for relays on the ground: summits by prominence, points of ridges, points that look far around.</summary>
public static class RelayCandidates
{
    private const double LeastFallMetres = 5;
    private const double LookMetres = 30_000;
    private const int LookRays = 36;

    /// <summary>Finds them: up to half are summits; then in turns a point of a ridge and one with a long horizon, as far as there are any.</summary>
    /// <param name="plane">The ground.</param>
    /// <param name="wish">What is looked for.</param>
    /// <param name="cancellation">Stops the search.</param>
    public static ImmutableArray<RelayCandidate> Find(RelayPlane plane, RelayWish wish, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plane);
        ArgumentNullException.ThrowIfNull(wish);
        Taken taken = new(plane, wish);
        foreach (Summit summit in Summits.Of(plane.Heights, plane.Side, wish.ProminenceMetres))
        {
            if (taken.Count >= Math.Max(1, wish.Most / 2))
            {
                break;
            }

            taken.Take(summit.Cell, RelayOrigin.Summit, summit.ProminenceMetres);
        }

        cancellation.ThrowIfCancellationRequested();
        Queue<int> ridges = new(RidgePoints.Of(plane, LeastFallMetres).Select(one => one.Cell));
        Queue<int> far = new(FarSeeing(plane, wish, cancellation));
        while (taken.Count < wish.Most && (ridges.Count > 0 || far.Count > 0))
        {
            TakeNext(taken, ridges, RelayOrigin.Ridge);
            if (taken.Count < wish.Most)
            {
                TakeNext(taken, far, RelayOrigin.Horizon);
            }
        }

        return taken.All;
    }

    private static void TakeNext(Taken taken, Queue<int> from, RelayOrigin origin)
    {
        while (from.TryDequeue(out int cell) && !taken.Take(cell, origin, null))
        {
        }
    }

    /// <summary>Cells one spacing apart, the one with the longest mean horizon first.</summary>
    private static IEnumerable<int> FarSeeing(RelayPlane plane, RelayWish wish, CancellationToken cancellation)
    {
        int stride = Math.Max(1, (int)Math.Ceiling(wish.SpacingMetres / plane.Frame.CellMetres));
        int aside = ((plane.Side - 1) / stride) + 1;
        LineOfSight sight = new(plane);
        double[] horizons = new double[aside * aside];
        Parallel.For(0, aside, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, r =>
        {
            for (int c = 0; c < aside; c++)
            {
                // The sea sees far, too, but bears no mast.
                horizons[(r * aside) + c] = plane.Heights[(r * stride * plane.Side) + (c * stride)] > 0
                    ? sight.MeanHorizonMetres(c * stride, r * stride, wish.MastMetres, LookMetres, LookRays)
                    : 0;
            }
        });
        return Enumerable.Range(0, horizons.Length).Where(one => horizons[one] > 0).OrderByDescending(one => horizons[one]).ThenBy(one => one)
            .Select(one => (one / aside * stride * plane.Side) + (one % aside * stride));
    }

    /// <summary>The candidates so far, none nearer to another than wished.</summary>
    private sealed class Taken(RelayPlane plane, RelayWish wish)
    {
        private readonly RelayLimitsOnPlane limits = wish.Limits.On(plane.Frame);
        private readonly Dictionary<(int, int), List<int>> byBox = [];
        private readonly Dictionary<RelayOrigin, int> counts = [];
        private readonly List<RelayCandidate> all = [];
        private readonly double spacing = Math.Max(wish.SpacingMetres / plane.Frame.CellMetres, 1e-9);

        internal int Count => all.Count;

        internal ImmutableArray<RelayCandidate> All => [.. all];

        internal bool Take(int cell, RelayOrigin origin, double? prominenceMetres)
        {
            (int column, int row) = (cell % plane.Side, cell / plane.Side);
            (int x, int y) = ((int)(column / spacing), (int)(row / spacing));
            if (Near(x, y).Any(other => Math.Pow(column - (other % plane.Side), 2) + Math.Pow(row - (other / plane.Side), 2) < spacing * spacing)
                || !limits.Allow(column - plane.Frame.Reach, plane.Frame.Reach - row))
            {
                return false;
            }

            (byBox.TryGetValue((x, y), out List<int>? box) ? box : byBox[(x, y)] = []).Add(cell);
            int number = counts[origin] = counts.GetValueOrDefault(origin) + 1;
            string word = origin switch { RelayOrigin.Summit => "Summit", RelayOrigin.Ridge => "Ridge", _ => "Outlook" };
            string text = string.Create(CultureInfo.InvariantCulture, $"{word} {number}");
            all.Add(new(text.ToLowerInvariant().Replace(' ', '-'), text, plane.PlaceOf(cell), wish.MastMetres) { Origin = origin, ProminenceMetres = prominenceMetres });
            return true;
        }

        private IEnumerable<int> Near(int x, int y)
        {
            for (int dx = -1; dx <= 1; dx++)
            {
                for (int dy = -1; dy <= 1; dy++)
                {
                    foreach (int cell in byBox.GetValueOrDefault((x + dx, y + dy)) ?? [])
                    {
                        yield return cell;
                    }
                }
            }
        }
    }
}
