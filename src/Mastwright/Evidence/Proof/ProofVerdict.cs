using System.Collections.Immutable;

namespace Mastwright.Evidence.Proof;

/// <summary>A proof in three sentences that a keeper can pass on.</summary>
internal static class ProofVerdict
{
    /// <summary>Below this a station that was heard in one period alone is said to be new or lost.</summary>
    internal const double Rare = 0.05;

    internal static ImmutableArray<string> Of(ProofQuestion question, ProofResult result, ProofSettings settings) =>
    [
        Shift(question, result, settings),
        Heard(question, result),
        Reserve(question, result),
    ];

    private static string Shift(ProofQuestion question, ProofResult result, ProofSettings settings)
    {
        if (result.Combined is not { } combined)
        {
            return $"{question.Name}: whether it hears better or worse cannot be said, for no station was heard well enough in both periods.";
        }

        double shift = combined.Estimate.Shift;
        string range = ProofWords.Range(combined.Estimate.Interval, settings.Confidence);
        string on = ProofWords.Text($"{(shift < 0 ? combined.Stations - combined.Better : combined.Better)} of {combined.Stations}");
        return combined.Estimate.Interval switch
        {
            null => $"{question.Name}: {ProofWords.Signed(shift)}, but the periods are too short to say how sure that is.",
            { } one when one.Low > 0 => $"{question.Name} hears better by {ProofWords.Size(shift)} {range}, on {on} stations.",
            { } one when one.High < 0 => $"{question.Name} hears worse by {ProofWords.Size(shift)} {range}, on {on} stations.",
            _ => $"{question.Name}: no change is shown, {ProofWords.Signed(shift)} {range} on {combined.Stations} stations.",
        };
    }

    private static string Heard(ProofQuestion question, ProofResult result)
    {
        List<string> made = [.. result.Stations.Where(one => one.Chance < Rare && one.After.Packets > 0).Select(one => question.NameOf(one.Station))];
        List<string> lost = [.. result.Stations.Where(one => one.Chance < Rare && one.After.Packets == 0).Select(one => question.NameOf(one.Station))];
        List<string> nearer = [.. result.Stations.Where(one => one.After.TypicalHops < one.Before.TypicalHops && one.After.TypicalHops > 0).Select(one => ProofWords.Text($"{question.NameOf(one.Station)} in {one.After.TypicalHops} hops instead of {one.Before.TypicalHops}"))];
        return $"Newly heard directly: {ProofWords.List(made)}; no longer heard: {ProofWords.List(lost)}{(nearer.Count > 0 ? $"; {ProofWords.List(nearer)}" : "")}.";
    }

    private static string Reserve(ProofQuestion question, ProofResult result)
    {
        List<string> parts = [];
        if (result.NoiseFloor is { Interval: { } noise } floor && (noise.Low > 0 || noise.High < 0))
        {
            parts.Add($"the noise floor {(floor.Shift > 0 ? "rose" : "fell")} by {ProofWords.Size(floor.Shift)}, which is beside the signal");
        }

        if (result.OldWasFailing)
        {
            parts.Add("the old fit-out was failing in its last week");
        }

        List<string> apart = [.. result.Stations.Where(one => one.MovedAlone || one.OwnStep is not null).Select(one => question.NameOf(one.Station))];
        if (apart.Count > 0)
        {
            parts.Add($"{ProofWords.List(apart)} changed on {(apart.Count == 1 ? "its" : "their")} own side and {(apart.Count == 1 ? "does" : "do")} not count");
        }

        int least = result.Stations.Count(one => one.Knowledge is ShiftKnowledge.AtLeast or ShiftKnowledge.AtMost or ShiftKnowledge.Open);
        if (least > 0)
        {
            parts.Add(ProofWords.Count(least, "station is", "stations are") + " too near the limit to count");
        }

        string text = parts.Count == 0 ? "nothing in the records speaks against it" : string.Join("; ", parts);
        return ProofWords.Text($"Periods of {result.Before.Period.LengthDays:0.#} and {result.After.Period.LengthDays:0.#} days: {text}.");
    }
}
