using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using Mastwright.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Agreement;

/// <summary>
/// Fading from packet to packet in open measurements: a node on a cliff-top mast heard by eleven receivers 4 to 6 km away, June to
/// September 2023 (CampusIoT/datasets, SaintEynard, ODbL 1.0), and the device carried by hand of <see cref="HandCarriedLink"/>.
/// </summary>
public sealed class FadingTests
{
    [Fact]
    public void Receivers_of_a_mast_see_the_spread_that_the_default_cites()
    {
        ImmutableArray<MastReceiver> receivers = MastReceivers();
        foreach (MastReceiver receiver in receivers)
        {
            Say($"{receiver.Name}: heard {receiver.HeardShare:P0}, deviation {receiver.DeviationDb:0.00} dB, within days {receiver.WithinDaysDb:0.00} dB, 1 % below {receiver.OnePercentFadeDb:0.0} dB");
        }

        // Standard errors are under 0.05 dB: the least number of receptions is 592.
        Assert.Equal(11, receivers.Length);
        Assert.Equal(1.2, receivers.Min(receiver => receiver.DeviationDb), 0.05);
        Assert.Equal(3.8, receivers.Max(receiver => receiver.DeviationDb), 0.05);

        // A receiver that misses many frames hears the strong ones only, and sees too little fading.
        ImmutableArray<MastReceiver> good = [.. receivers.Where(receiver => receiver.HeardShare > 0.8)];
        Assert.Equal(4, good.Length);
        Assert.Equal(2.0, good.Min(receiver => receiver.DeviationDb), 0.05);
        Assert.Equal(3.6, good.Max(receiver => receiver.DeviationDb), 0.05);
        Assert.InRange(PlanDefaults.FadingDb, good.Average(receiver => receiver.DeviationDb), good.Max(receiver => receiver.DeviationDb));
    }

    [Fact]
    public void Frames_from_one_place_in_a_town_spread_as_much()
    {
        double foundDb = HandCarriedFadingDb();
        Say($"carried by hand, frames from one place to one station: {foundDb:0.00} dB");

        // Standard error 0.07 dB (975 degrees of freedom), more because the tails are not normal.
        Assert.Equal(3.25, foundDb, 0.25);
        Assert.Equal(PlanDefaults.FadingDb, foundDb, 0.5);
    }

    /// <summary>Standard deviation of frames from one place at one station, pooled over all links.</summary>
    internal static double HandCarriedFadingDb()
    {
        double squares = HandCarriedLink.All.Sum(link => link.SignalsDbm.Sum(signal => Math.Pow(signal - link.SignalsDbm.Average(), 2)));
        return Math.Sqrt(squares / HandCarriedLink.All.Sum(link => link.SignalsDbm.Length - 1));
    }

    internal static ImmutableArray<MastReceiver> MastReceivers()
    {
        ImmutableArray<Reception> all = [.. Receptions()];
        int sent = all.Max(reception => reception.Counter) - all.Min(reception => reception.Counter) + 1;
        return [.. all.GroupBy(reception => reception.Receiver, StringComparer.Ordinal).Select(group => MastReceiver.Of(group.Key, [.. group], sent)).OrderBy(receiver => receiver.Name, StringComparer.Ordinal)];
    }

    private static IEnumerable<Reception> Receptions()
    {
        using StreamReader text = new(new GZipStream(
            File.OpenRead(TestPlaces.Reference("measured", "mast-to-city", "eynard_mast_to_grenoble_2023-06_2023-09.csv.gz")), CompressionMode.Decompress));
        text.ReadLine();
        while (text.ReadLine() is string line)
        {
            string[] cells = line.Split(',');
            double signalDbm = ReceivedPower.SignalDbm(double.Parse(cells[9], CultureInfo.InvariantCulture), double.Parse(cells[10], CultureInfo.InvariantCulture));
            yield return new(cells[4], cells[0][..10], int.Parse(cells[1], CultureInfo.InvariantCulture), signalDbm);
        }
    }

    private static void Say(FormattableString text) => TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(text));

    internal sealed record Reception(string Receiver, string Day, int Counter, double SignalDbm);

    internal sealed record MastReceiver(string Name, double HeardShare, double DeviationDb, double WithinDaysDb, double OnePercentFadeDb)
    {
        internal static MastReceiver Of(string name, ImmutableArray<Reception> receptions, int sent)
        {
            ImmutableArray<double> sorted = [.. receptions.Select(reception => reception.SignalDbm).Order()];
            IGrouping<string, double>[] days = [.. receptions.GroupBy(reception => reception.Day, reception => reception.SignalDbm, StringComparer.Ordinal)];
            double squares = days.Sum(day => day.Sum(signal => Math.Pow(signal - day.Average(), 2)));
            return new(
                name,
                receptions.Select(reception => reception.Counter).Distinct().Count() / (double)sent,
                ReceivedPower.Deviation(sorted),
                Math.Sqrt(squares / (sorted.Length - days.Length)),
                sorted[sorted.Length / 2] - sorted[sorted.Length / 100]);
        }
    }
}
