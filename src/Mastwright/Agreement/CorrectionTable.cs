using System.Collections.Immutable;

namespace Mastwright.Agreement;

/// <summary>What is fitted from, and how it is cut.</summary>
internal sealed class CorrectionTable
{
    /// <summary>Receivers below which an own offset of one cannot be told from what all share (common practice).</summary>
    internal const int LeastReceivers = 3;

    private readonly ImmutableArray<MeasuredLink> links;
    private readonly bool hasReceivers;

    internal CorrectionTable(ImmutableArray<CorrectionCandidate> candidates, ImmutableArray<MeasuredLink> links)
    {
        Candidates = candidates;
        this.links = links;
        int receivers = links.Select(link => link.Receiver).Distinct(StringComparer.Ordinal).Count();
        hasReceivers = receivers >= LeastReceivers && links.Length >= 2 * receivers;
    }

    internal ImmutableArray<CorrectionCandidate> Candidates { get; }

    internal ImmutableArray<MeasuredLink> Links => links;

    /// <summary>Whether the receivers are enough to tell their own offsets apart from what all share.</summary>
    internal bool HasReceivers => hasReceivers;

    /// <summary>The station that a link is left out with: its receiver where there are enough of them, else its sender.</summary>
    internal string UnitOf(MeasuredLink link) => hasReceivers ? link.Receiver : link.Sender;

    /// <summary>Sums of some links by their receivers, or all in one where these are too few.</summary>
    internal StationSums[] Sums(IEnumerable<int> places, int candidate)
    {
        SortedDictionary<string, (int Count, double Sum, double Squares)> sums = new(StringComparer.Ordinal);
        foreach (int place in places)
        {
            string key = hasReceivers ? links[place].Receiver : "";
            double off = links[place].OffDb(candidate);
            (int count, double sum, double squares) = sums.GetValueOrDefault(key);
            sums[key] = (count + 1, sum + off, squares + (off * off));
        }

        return [.. sums.Select(one => new StationSums(one.Key, one.Value.Count, one.Value.Sum / one.Value.Count, Math.Max(0, one.Value.Squares - (one.Value.Sum * one.Value.Sum / one.Value.Count))))];
    }

    /// <summary>The candidate with the most likely differences, and these taken apart.</summary>
    internal (int Candidate, StationOffsets Offsets) Best(Func<int, StationSums[]> sums)
    {
        (int Candidate, StationOffsets Offsets)? best = null;
        for (int candidate = 0; candidate < Candidates.Length; candidate++)
        {
            StationOffsets offsets = StationOffsets.Of(sums(candidate));
            if (best is not { } known || offsets.Deviance < known.Offsets.Deviance)
            {
                best = (candidate, offsets);
            }
        }

        return best!.Value;
    }
}
