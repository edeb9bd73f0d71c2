using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>The feed between radio and antenna: losses, gains, noise and mismatch, part by part.</summary>
/// <remarks>
/// The radio's own port is taken as matched: then the loss of a mismatched antenna is the feed's matched loss plus the antenna's
/// mismatch loss, both ways alike. What the connectors themselves reflect is not modelled; it shows in a reading at the radio.
/// </remarks>
public static class FeedChain
{
    /// <summary>Least return loss in dB that an uncertain reading is carried down to; below it the low end of the range says nothing.</summary>
    private const double FloorReturnLossDb = 0.5;

    /// <summary>Finds what a feed does at a frequency.</summary>
    /// <param name="parts">The parts in order from radio to antenna.</param>
    /// <param name="mismatch">A return loss that was measured or stated; null for none, which is then listed as assumed.</param>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    /// <param name="catalogue">Line types and losses of parts.</param>
    /// <param name="fitOutPath">Where in the plan the fit-out stands; its feed is below "feed", its reading at "return-loss".</param>
    public static FeedResult Compute(
        ImmutableArray<FeedPart> parts, MismatchReading? mismatch, double frequencyHz, StationCatalogue catalogue, string fitOutPath)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(fitOutPath);
        if (!(frequencyHz > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(frequencyHz), "A frequency is greater than zero.");
        }

        string planPath = StationDefaults.Join(fitOutPath, "feed");
        string readingPath = StationDefaults.Join(fitOutPath, "return-loss");
        FeedStages stages = new(frequencyHz, catalogue, planPath);
        foreach (FeedPart part in parts)
        {
            stages.Add(part);
        }

        Estimate? passive = PassiveLoss(stages.Stages);
        if (passive is { } loss && parts.Length > 0)
        {
            stages.Findings.Add(FeedFindings.FeedLoss(planPath, loss, [.. stages.Assumptions.Select(assumption => assumption.Code).Distinct(StringComparer.Ordinal)]));
        }

        Estimate? antennaReturnLoss = mismatch is null ? null : AtAntenna(mismatch, passive, stages, readingPath);
        AddMismatch(stages, antennaReturnLoss, mismatch, passive, readingPath);
        return new()
        {
            Stages = stages.Stages.ToImmutable(),
            PassiveLossDb = passive,
            AntennaReturnLossDb = antennaReturnLoss,
            Assumptions = [.. stages.Assumptions],
            Findings = [.. stages.Findings],
        };
    }

    private static Estimate? PassiveLoss(ImmutableArray<FeedStage>.Builder stages)
    {
        Estimate total = Estimate.Exactly(0);
        foreach (FeedStage stage in stages)
        {
            if (stage.AmplifiesTransmission)
            {
                continue;
            }

            if (stage.TransmitGainDb is not { } gain)
            {
                return null;
            }

            total += gain.Map(db => -db);
        }

        return total;
    }

    private static Estimate? AtAntenna(MismatchReading reading, Estimate? passiveLoss, FeedStages stages, string planPath)
    {
        if (reading.AtAntenna)
        {
            return Estimate.Exactly(reading.ReturnLossDb);
        }

        if (stages.Stages.Any(stage => stage.AmplifiesTransmission || stage.AmplifiesReception))
        {
            stages.Findings.Add(FeedFindings.MismatchBehindAmplifier(planPath));
            return null;
        }

        if (passiveLoss is not { } loss)
        {
            return null;
        }

        if (Mismatch.ReturnLossDbAtFarEnd(reading.ReturnLossDb, loss.Median) <= 0)
        {
            stages.Findings.Add(FeedFindings.MismatchImpossible(planPath, reading.ReturnLossDb, loss));
            return null;
        }

        Estimate carried = loss.Map(db => Mismatch.ReturnLossDbAtFarEnd(reading.ReturnLossDb, db));
        double floor = Math.Min(FloorReturnLossDb, carried.Median);
        return Estimate.Of(Math.Max(carried.Low, floor), carried.Median, carried.High);
    }

    private static void AddMismatch(
        FeedStages stages, Estimate? returnLoss, MismatchReading? reading, Estimate? passive, string planPath)
    {
        if (returnLoss is not { } known || reading is null)
        {
            stages.Assumptions.Add(new("antenna-match", "antenna matched to the feed: no mismatch loss counted", "assumed", planPath));
            return;
        }

        stages.Findings.Add(FeedFindings.AntennaMatch(planPath, known, carried: !reading.AtAntenna));
        double reflection = Mismatch.ReflectionFromReturnLossDb(known.Median);
        string inLine = passive is { } loss && loss.Median >= 0
            ? string.Create(CultureInfo.InvariantCulture, $"; {Mismatch.TotalLineLossDb(loss.Median, reflection) - loss.Median:0.00} dB of it as heat in the feed")
            : "";
        stages.Stages.Add(FeedStages.Passive(
            "antenna-mismatch",
            "mismatch at the antenna",
            known.Map(db => Mismatch.LossDb(Mismatch.ReflectionFromReturnLossDb(db))),
            planPath,
            string.Create(CultureInfo.InvariantCulture, $"return loss {known.Median:0.0} dB at the antenna{(reading.AtAntenna ? "" : ", carried from the radio through twice the feed's loss")}{inLine}")));
    }
}
