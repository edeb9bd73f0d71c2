using System.Collections.Concurrent;
using Mastwright.Evidence.Proof;
using Mastwright.Storage.Demo;

namespace Mastwright.Tests.Storage.Evidence;

/// <summary>The truth of the invented records is known: the intervals must hold it as often as they say.</summary>
public sealed class SkerrinProofTests
{
    private const int Seeds = 100;

    [Fact]
    public void The_demo_tells_its_story()
    {
        SkerrinTrial proof = SkerrinTrial.Run(SkerrinRecordFile.DemoSeed);
        Assert.Equal(ShiftKnowledge.LossesCounted, proof.Of("pilot-hut").Knowledge);
        Assert.Equal(ShiftKnowledge.Full, proof.Of("gannet-stack").Knowledge);
        Assert.Equal(0, proof.Of("creamery").Before.Packets);
        Assert.InRange(proof.Of("creamery").Chance!.Value, 0, 1e-10);
        OwnStep fault = proof.Of(SkerrinRecords.FaultyNeighbour).OwnStep!;
        Assert.Equal(-SkerrinRecords.NeighbourFaultDb, fault.StepDb, 0.7);
        Assert.Equal(SkerrinRecords.Change + (4 * 24 * ProofPeriod.Hour), fault.TimeMicroseconds);
        Assert.True(proof.Result.OldWasFailing);
        Assert.Equal((3, 2), (proof.Of("lantern-bay").Before.TypicalHops, proof.Of("lantern-bay").After.TypicalHops));
        Assert.Equal(-3.5, proof.Result.NoiseFloor!.Shift, 0.2);
    }

    /// <summary>
    /// Of 100 seeds an interval of 95 % holds the truth in 89 to 100 (binomial, 99.5 % each side, with a margin for what the intervals are known to be
    /// off: bench/soak proves 92 to 98 over 1,000), and data without change are called changed in at most 13.
    /// </summary>
    [Fact]
    public void Intervals_hold_what_they_say()
    {
        ConcurrentBag<(int Held, int Of)> stations = [];
        ConcurrentBag<bool> combined = [];
        ConcurrentBag<bool> called = [];
        Parallel.For(0, Seeds, seed =>
        {
            SkerrinTrial proof = SkerrinTrial.Run((ulong)seed);
            string[] sound = [.. proof.TrueShiftDb.Keys.Where(key => key != SkerrinRecords.FaultyNeighbour)];
            stations.Add((sound.Count(key => proof.Of(key).SignalPower!.Interval!.Value.Holds(proof.TrueShiftDb[key])), sound.Length));
            combined.Add(proof.HoldsCombined);
            called.Add(SkerrinTrial.Run((ulong)seed, isChanged: false).Result.Combined?.Estimate.Interval?.Holds(0) == false);
        });
        Assert.InRange(stations.Sum(one => one.Held) / (double)stations.Sum(one => one.Of), 0.92, 0.995);
        Assert.InRange(combined.Count(held => held), 89, 100);
        Assert.InRange(called.Count(one => one), 0, 13);
    }
}
