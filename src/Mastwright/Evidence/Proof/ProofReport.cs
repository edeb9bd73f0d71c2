using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Evidence.Proof;

/// <summary>What is asked of a proof.</summary>
/// <param name="Subject">The station in the plan.</param>
/// <param name="Name">Its name.</param>
/// <param name="NameOf">The name of a station by its place in the list.</param>
public sealed record ProofQuestion(string Subject, string Name, Func<int, string> NameOf);

/// <summary>A proof with its findings and its verdict in three sentences.</summary>
public sealed record ProofReport
{
    /// <summary>What was asked.</summary>
    public required ProofQuestion Question { get; init; }

    /// <summary>What the station hears.</summary>
    public required ProofResult Result { get; init; }

    /// <summary>How others hear the station, each of them as one of <see cref="ProofResult.Stations"/>; null where no records of theirs are given.</summary>
    public ProofResult? HeardElsewhere { get; init; }

    /// <summary>What it was worked out with.</summary>
    public required ProofSettings Settings { get; init; }

    /// <summary>The judgements.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>What was assumed.</summary>
    public required ImmutableArray<Assumption> Assumptions { get; init; }

    /// <summary>Three sentences to pass on.</summary>
    public required ImmutableArray<string> Verdict { get; init; }

    /// <summary>Puts a proof together.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="result">What the station hears.</param>
    /// <param name="heardElsewhere">How others hear it; null where no records of theirs are given.</param>
    /// <param name="settings">What it was worked out with.</param>
    /// <param name="clocksWrong">Whether the store has records of a time that cannot be.</param>
    public static ProofReport Of(ProofQuestion question, ProofResult result, ProofResult? heardElsewhere, ProofSettings settings, bool clocksWrong)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(settings);
        List<Assumption> assumptions =
        [
            new("proof-clearance", $"a station counts as fully heard where a tenth of its packets at most come within {settings.ClearanceDb:0.#} dB of the demodulation limit", "common practice"),
            new("proof-saturation", $"the ratio tells the noise floor below {SignalPower.DefaultSaturationSnrDb:+0.#} dB", "common practice"),
        ];
        if (result.LimitsAssumed)
        {
            assumptions.Add(new("proof-limit", "the demodulation limit is the lowest ratio heard, where records tell no spreading factor", "from the records"));
        }

        return new()
        {
            Question = question,
            Result = result,
            HeardElsewhere = heardElsewhere,
            Settings = settings,
            Findings = [.. ProofFindings.Of(question, result, heardElsewhere, settings, clocksWrong)],
            Assumptions = [.. assumptions],
            Verdict = ProofVerdict.Of(question, result, settings),
        };
    }
}
