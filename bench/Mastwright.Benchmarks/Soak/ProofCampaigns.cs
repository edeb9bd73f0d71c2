using System.Globalization;
using Mastwright.Storage.Demo;

namespace Mastwright.Benchmarks.Soak;

/// <summary>A thousand invented networks of known truth a case: intervals of 95 % must hold it in 92 to 98 of a hundred.</summary>
internal static class ProofCampaigns
{
    private const int Seeds = 1_000;

    internal static IEnumerable<Campaign> All()
    {
        yield return new("proof-coverage", Coverage) { MostSeconds = 600, MostBytes = long.MaxValue };
    }

    private static SoakCase Coverage(Random random)
    {
        ulong first = (ulong)random.Next(1_000_000) * Seeds;
        return SoakCase.OfText("seeds.txt", string.Create(CultureInfo.InvariantCulture, $"{first} to {first + Seeds - 1}\n"), () =>
        {
            int[] held = new int[Seeds];
            bool[] combined = new bool[Seeds];
            bool[] called = new bool[Seeds];
            int stations = 0;
            Parallel.For(0, Seeds, i =>
            {
                SkerrinTrial trial = SkerrinTrial.Run(first + (ulong)i);
                string[] sound = [.. trial.TrueShiftDb.Keys.Where(key => key != SkerrinRecords.FaultyNeighbour)];
                held[i] = sound.Count(key => trial.Of(key).SignalPower?.Interval?.Holds(trial.TrueShiftDb[key]) == true);
                stations = sound.Length;
                combined[i] = trial.HoldsCombined;
                called[i] = SkerrinTrial.Run(first + (ulong)i, isChanged: false).Result.Combined?.Estimate.Interval?.Holds(0) == false;
            });
            double byStation = held.Sum() / (double)(Seeds * stations);
            double together = combined.Count(one => one) / (double)Seeds;
            double falsely = called.Count(one => one) / (double)Seeds;
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"proof-coverage from {first}: stations {byStation:P1}, together {together:P1}, called changed without change {falsely:P1}"));
            SoakFailureException.Require(byStation is >= 0.92 and <= 0.98, string.Create(CultureInfo.InvariantCulture, $"intervals of stations hold the truth in {byStation:P1}"));
            SoakFailureException.Require(together is >= 0.92 and <= 0.98, string.Create(CultureInfo.InvariantCulture, $"intervals over all stations hold the truth in {together:P1}"));
            SoakFailureException.Require(falsely <= 0.07, string.Create(CultureInfo.InvariantCulture, $"{falsely:P1} without change are called changed"));
        });
    }
}
