using Mastwright.Evidence.Statistics;
using Mastwright.Quantities;

namespace Mastwright.Evidence.Proof;

/// <summary>One shift out of those of several stations.</summary>
internal static class CombinedShifts
{
    private const double AloneErrors = 3.5;

    /// <summary>Marks stations whose shift stands apart from the median by more than a limit and by more than their own errors allow.</summary>
    internal static List<StationProof> SetAside(List<StationProof> stations, double aloneDb)
    {
        List<StationProof> compared = [.. stations.Where(one => one.IsCompared)];
        if (compared.Count < 3)
        {
            return stations;
        }

        double median = Median.Of(compared.Select(one => one.SignalPower!.Shift));
        double spread = 1.4826 * Median.Of(compared.Select(one => Math.Abs(one.SignalPower!.Shift - median)));
        return [.. stations.Select(one => one.IsCompared && Math.Abs(one.SignalPower!.Shift - median) is double off
            && off > aloneDb && off > AloneErrors * Math.Sqrt((one.SignalPower.StandardError * one.SignalPower.StandardError) + (spread * spread))
                ? one with { MovedAlone = true }
                : one)];
    }

    /// <summary>The mean shift, stations weighted by how well each is known; null without any.</summary>
    /// <remarks>
    /// Weights 1/(e² + τ²): e is a station's standard error, τ² the variance between stations (DerSimonian and Laird, Control. Clin. Trials 7,
    /// 1986). The days of all stations are drawn together, so that weather that they share is counted once.
    /// </remarks>
    internal static CombinedShift? Of(List<StationProof> stations, double memory, ProofSettings settings)
    {
        List<StationProof> compared = [.. stations.Where(one => one.IsCompared && one.Scores is not null)];
        if (compared.Count == 0)
        {
            return null;
        }

        double[] errors = [.. compared.Select(one => Math.Max(one.SignalPower!.StandardError, 0.05))];
        double[] fixedWeights = [.. errors.Select(error => 1 / (error * error))];
        double total = fixedWeights.Sum();
        double mean = compared.Select((one, i) => fixedWeights[i] * one.SignalPower!.Shift).Sum() / total;
        double q = compared.Select((one, i) => fixedWeights[i] * (one.SignalPower!.Shift - mean) * (one.SignalPower.Shift - mean)).Sum();
        double c = total - (fixedWeights.Sum(weight => weight * weight) / total);
        double between = compared.Count < 2 || c <= 0 ? 0 : Math.Max(0, (q - (compared.Count - 1)) / c);
        double[] weights = [.. errors.Select(error => 1 / ((error * error) + between))];
        double all = weights.Sum();
        DayScores joined = new(
            compared.Select((one, i) => weights[i] / all * one.SignalPower!.Shift).Sum(),
            Joined(compared, weights, all, scores => scores.BeforeScores),
            Joined(compared, weights, all, scores => scores.AfterScores),
            compared.Max(one => one.Scores!.BeforeDays),
            compared.Max(one => one.Scores!.AfterDays));
        return new(
            ShiftEstimate.Of(joined, memory, settings.Confidence, KeyedDraws.SeedOf("combined") ^ settings.Seed),
            compared.Count,
            compared.Count(one => one.SignalPower!.Shift > 0),
            compared.Select((one, i) => (one.Station, Weight: weights[i] / all)).ToDictionary(pair => pair.Station, pair => pair.Weight));
    }

    private static double[] Joined(List<StationProof> compared, double[] weights, double all, Func<DayScores, double[]> side)
    {
        double[] joined = new double[compared.Max(one => side(one.Scores!).Length)];
        for (int i = 0; i < compared.Count; i++)
        {
            double[] scores = side(compared[i].Scores!);
            for (int day = 0; day < scores.Length; day++)
            {
                joined[day] += weights[i] / all * scores[day];
            }
        }

        return joined;
    }
}
