using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Propagation;

/// <summary>The one entry for the loss of a path: ITU-R P.1812 where it applies, free space and a knife edge where the path is too short.</summary>
public static class PathLoss
{
    /// <summary>Name of the method for ordinary paths.</summary>
    public const string Recommendation = "ITU-R P.1812";

    /// <summary>Name of the method for paths under 0.25 km.</summary>
    public const string ShortMethod = "free space and knife edge";

    /// <summary>Predicts the loss. Outside the range of P.1812 the answer says so; it is never refused.</summary>
    /// <param name="profile">The path, transmitter first; used as given.</param>
    /// <param name="input">
    /// Radio and climate. Shares of time and places outside 1–50 % and 1–99 % are taken at the nearest bound, and listed; the other
    /// limits are crossed with the equations as they are, and listed.
    /// </param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static PathLossPrediction Predict(PathProfile profile, P1812Input input)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(input);
        ImmutableArray<RangeProblem> problems = ModelRange.Problems(profile.LengthMetres, input);
        P1812Input within = input with
        {
            TimePercent = Math.Clamp(input.TimePercent, 1, 50),
            LocationPercent = Math.Clamp(input.LocationPercent, 1, 99),
        };
        return profile.LengthMetres < ModelRange.ShortestPathMetres
            ? ShortPath.Predict(profile, within, problems)
            : ByRecommendation(profile, within, problems);
    }

    private static PathLossPrediction ByRecommendation(PathProfile profile, P1812Input input, ImmutableArray<RangeProblem> problems)
    {
        P1812Result result = P1812.Evaluate(profile, input);
        return new()
        {
            LossDb = result.LbDb,
            Method = Recommendation,
            P1812Result = result,
            RangeProblems = problems,
            Lines =
            [
                new("free-space", "Free space", result.LbfsDb, "ITU-R P.1812 (8)"),
                new("diffraction", "Ground and cover in the way", result.LdpDb, "ITU-R P.1812 (41)", FormattableString.Invariant($"not exceeded for {input.TimePercent:0.##} % of the time")),
                new(
                    "atmosphere",
                    "Scatter, ducting and bending",
                    result.LbcDb - result.LbfsDb - result.LdpDb,
                    "ITU-R P.1812 (63)",
                    FormattableString.Invariant($"scatter alone {result.LbsDb:0.0} dB, ducting alone {result.LbaDb:0.0} dB")),
                new(
                    "places",
                    "Places around the receiver",
                    result.LbDb - result.LbcDb,
                    "ITU-R P.1812 (69)",
                    FormattableString.Invariant($"not exceeded at {input.LocationPercent:0.##} % of the places, deviation {input.LocationSigmaDb:0.##} dB")),
            ],
        };
    }
}
