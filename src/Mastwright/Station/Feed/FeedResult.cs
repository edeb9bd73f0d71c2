using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>What a feed does to a signal in each direction.</summary>
public sealed record FeedResult
{
    /// <summary>The parts from radio to antenna; the last is the mismatch at the antenna where one is known.</summary>
    public required ImmutableArray<FeedStage> Stages { get; init; }

    /// <summary>Loss in dB of the parts that only lose, mismatch not counted, transmitting; null when one of them is unknown.</summary>
    public required Estimate? PassiveLossDb { get; init; }

    /// <summary>Return loss in dB at the antenna; null when no usable reading is known.</summary>
    public Estimate? AntennaReturnLossDb { get; init; }

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The judgements.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Net gain in dB from the antenna's terminals to the radio's connector, negative for a loss; null when a part is unknown.</summary>
    public Estimate? ReceiveGainDb => Sum(Stages.Select(stage => stage.ReceiveGainDb));

    /// <summary>Gains in dB from the antenna's terminals to the radio, line by line; null when a part is unknown.</summary>
    public Ledger? ReceiveLedger => ReceiveGainDb is null ? null : new("feed, receiving", "dB",
        [.. Stages.Reverse().Select(stage => new LedgerLine(stage.Code, stage.Label, stage.ReceiveGainDb!.Value.Median, stage.Source, stage.Note))]);

    /// <summary>Power at each step from the radio into the antenna.</summary>
    /// <param name="conductedDbm">Power at the radio's connector in dBm.</param>
    /// <param name="source">Where that power comes from.</param>
    /// <returns>Ledger in dBm of the median, and the power that goes into the antenna; null when a part is unknown.</returns>
    public (Ledger Ledger, Estimate PowerDbm)? Transmit(Estimate conductedDbm, string source)
    {
        if (Stages.Any(stage => stage.TransmitGainDb is null))
        {
            return null;
        }

        ImmutableArray<LedgerLine>.Builder lines = ImmutableArray.CreateBuilder<LedgerLine>();
        lines.Add(new("conducted-power", "power at the radio's connector", conductedDbm.Median, source));
        double low = conductedDbm.Low;
        double median = conductedDbm.Median;
        double high = conductedDbm.High;
        foreach (FeedStage stage in Stages)
        {
            Estimate gain = stage.TransmitGainDb!.Value;
            Estimate most = stage.TransmitMaximumDbm ?? Estimate.Exactly(double.PositiveInfinity);
            double ceiling = most.Median;
            double before = median;
            low = Math.Min(low + gain.Low, most.Low);
            median = Math.Min(median + gain.Median, ceiling);
            high = Math.Min(high + gain.High, most.High);
            bool limited = before + gain.Median > ceiling;
            string note = limited
                ? string.Create(CultureInfo.InvariantCulture, $"{gain.Median:0.##} dB of gain, held to its most of {ceiling:0.##} dBm")
                : stage.Note;
            lines.Add(new(stage.Code, stage.Label, limited ? ceiling - before : gain.Median, stage.Source, note));
        }

        Ledger ledger = Ledger.SummingTo(median, "power into the antenna", "dBm", lines.DrainToImmutable());
        return (ledger, Estimate.Of(low, median, high));
    }

    /// <summary>Noise figure in dB of feed and receiver together, referred to the antenna's terminals; null when a part is unknown.</summary>
    /// <param name="receiverNoiseFigureDb">Noise figure of the receiver at its connector, in dB.</param>
    public Estimate? SystemNoiseFigureDb(Estimate receiverNoiseFigureDb)
    {
        if (Stages.Any(stage => stage.ReceiveGainDb is null || (stage.AmplifiesReception && stage.AmplifierNoiseFigureDb is null)))
        {
            return null;
        }

        // More gain and less loss always lower the figure, so the ends of the ranges give its ends.
        return Estimate.Of(
            Cascade(gain => gain.High, receiverNoiseFigureDb.Low),
            Cascade(gain => gain.Median, receiverNoiseFigureDb.Median),
            Cascade(gain => gain.Low, receiverNoiseFigureDb.High));
    }

    private double Cascade(Func<Estimate, double> pick, double receiverNoiseFigureDb)
    {
        Span<NoiseStage> stages = new NoiseStage[Stages.Length + 1];
        for (int i = 0; i < Stages.Length; i++)
        {
            FeedStage stage = Stages[Stages.Length - 1 - i];
            double gain = pick(stage.ReceiveGainDb!.Value);
            stages[i] = new(gain, stage.AmplifiesReception ? stage.AmplifierNoiseFigureDb!.Value : -gain);
        }

        stages[^1] = new(0, receiverNoiseFigureDb);
        return NoiseCascade.NoiseFigureDb(stages);
    }

    private static Estimate? Sum(IEnumerable<Estimate?> gains)
    {
        Estimate total = Estimate.Exactly(0);
        foreach (Estimate? gain in gains)
        {
            if (gain is not { } known)
            {
                return null;
            }

            total += known;
        }

        return total;
    }
}
