using System.Collections.Immutable;
using Mastwright.Evidence.Statistics;

namespace Mastwright.Agreement;

/// <summary>Scores a correction and its rivals on links that they had not seen.</summary>
internal static class CorrectionFolds
{
    /// <summary>Most groups of blocks that are left out in turn.</summary>
    internal const int MostBlockFolds = 10;

    private const double IntervalConfidence = 0.9;

    /// <summary>Each station left out in turn, with all of its links.</summary>
    internal static CorrectionScore ByStation(CorrectionTable table) => Of(table, "whole stations", Groups(table, table.UnitOf, int.MaxValue));

    /// <summary>Groups of blocks of positions left out in turn.</summary>
    internal static CorrectionScore ByBlock(CorrectionTable table) => Of(table, "blocks of positions", Groups(table, link => link.Block, MostBlockFolds));

    private static int[][] Groups(CorrectionTable table, Func<MeasuredLink, string> unit, int most)
    {
        int[][] units =
        [
            .. Enumerable.Range(0, table.Links.Length).GroupBy(place => unit(table.Links[place]), StringComparer.Ordinal)
                .OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => one.ToArray()),
        ];
        return [.. units.Select((places, order) => (places, order)).GroupBy(one => one.order % Math.Min(most, units.Length)).Select(group => group.SelectMany(one => one.places).ToArray())];
    }

    private static CorrectionScore Of(CorrectionTable table, string leftOut, int[][] groups)
    {
        var rivals = CorrectionRivals.Of(table).Select(one => (one.Name, one.Fit, Errors: new ErrorSum())).ToArray();
        ErrorSum common = new();
        ErrorSum own = new();
        foreach (int[] group in groups)
        {
            int[] seen = [.. Enumerable.Range(0, table.Links.Length).Except(group)];
            (int candidate, StationOffsets offsets) = table.Best(place => table.Sums(seen, place));
            StationSums[] sums = table.Sums(seen, candidate);
            ImmutableSortedDictionary<string, StationOffset> ownOffsets = table.HasReceivers ? offsets.Own(sums) : ImmutableSortedDictionary<string, StationOffset>.Empty;
            double reach = Quantiles.Student((1 + IntervalConfidence) / 2, offsets.Degrees);
            double anyStation = offsets.BetweenDb2 + (offsets.OffsetDeviationDb * offsets.OffsetDeviationDb);
            MeasuredLink[] training = [.. seen.Select(place => table.Links[place])];
            var fitted = rivals.Select(rival => rival.Fit(training)).ToArray();
            foreach (int place in group)
            {
                MeasuredLink link = table.Links[place];
                double error = link.OffDb(candidate) - offsets.OffsetDb;
                common.Add(error, reach * Math.Sqrt(offsets.WithinDb2 + anyStation));
                bool isKnown = ownOffsets.TryGetValue(link.Receiver, out StationOffset known);
                own.Add(error - (isKnown ? known.Db : 0), reach * Math.Sqrt(offsets.WithinDb2 + (isKnown ? known.DeviationDb * known.DeviationDb : anyStation)));
                for (int rival = 0; rival < rivals.Length; rival++)
                {
                    rivals[rival].Errors.Add(link.MeasuredDbm - fitted[rival](link), double.PositiveInfinity);
                }
            }
        }

        return new(
            leftOut, groups.Length, table.Links.Length, common.OffDb, common.Held, table.HasReceivers ? own.OffDb : null, table.HasReceivers ? own.Held : null,
            [.. rivals.Select(rival => new RivalScore(rival.Name, rival.Errors.OffDb))]);
    }

    private sealed class ErrorSum
    {
        private double squares;
        private int held;
        private int count;

        internal double OffDb => Math.Sqrt(squares / count);

        internal double Held => (double)held / count;

        internal void Add(double errorDb, double reachDb)
        {
            squares += errorDb * errorDb;
            held += Math.Abs(errorDb) <= reachDb ? 1 : 0;
            count++;
        }
    }
}
