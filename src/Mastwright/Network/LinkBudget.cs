using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Network;

/// <summary>The budget of a link in one direction.</summary>
public static class LinkBudget
{
    /// <summary>
    /// Margin = power into the antenna + its gain − path loss + gain of the other antenna − polarisation loss − required level.
    /// </summary>
    /// <param name="from">The sending end.</param>
    /// <param name="to">The receiving end.</param>
    /// <param name="path">Loss of the path in this direction; null when it could not be predicted.</param>
    /// <param name="polarisationLossDb">Loss between different polarisations, in dB: zero or more; exactly zero when they are the same.</param>
    /// <param name="pathMissing">What is missing for the path, when it is null.</param>
    /// <param name="wanted">What is wanted and assumed of the link.</param>
    /// <remarks>
    /// Ranges are carried through: the least margin is that of the least power and gains with the most loss, and the other way
    /// round. Where the verdicts at least, median and most differ, the verdict is unknown.
    /// </remarks>
    public static LinkDirection Direction(
        LinkEnd from,
        LinkEnd to,
        PathLossRange? path,
        Estimate polarisationLossDb,
        ImmutableArray<string> pathMissing,
        LinkWanted wanted)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        ArgumentNullException.ThrowIfNull(wanted);

        if (path is null || from.PowerIntoAntennaDbm is not { } power || from.GainDbi is not { } fromGain
            || to.GainDbi is not { } toGain || to.RequiredDbm is not { } required)
        {
            ImmutableArray<string> missing = [.. from.MissingToSend, .. to.MissingToReceive, .. pathMissing];
            return new() { From = from, To = to, Verdict = Verdict.Unknown, Missing = missing };
        }

        Estimate level = power + fromGain - path.LossDb + toGain - polarisationLossDb;
        Estimate margin = level - required;
        LinkSpread spread = Spread(power, fromGain, path, toGain, required, polarisationLossDb, wanted);

        // The ranges count as uniform, so the odds stand on their middle, which need not be the best guess. The location shift is a
        // choice of percentage, not a better guess of the median, so the odds leave it out.
        LinkOdds odds = LinkOdds.From(((margin.Low + margin.High) / 2) + path.LocationShiftDb, spread.Unknown.Total, spread.Fading.Total);
        Ledger budget = Ledger.SummingTo(
            margin.Median,
            $"{from.Name} → {to.Name}: margin",
            "dB",
            Lines(from, to, path, polarisationLossDb.Median, required.Median));
        return new()
        {
            From = from,
            To = to,
            Budget = budget,
            LevelDbm = level,
            MarginDb = margin,
            Spread = spread,
            Odds = odds,
            Vaguest = Vaguest(power, fromGain, path.LossDb, toGain, required, polarisationLossDb),
            Verdict = Judge(margin, wanted.MarginDb),
        };
    }

    /// <summary>fails below 0 dB, tight below the wanted margin, ok above; unknown where the range's ends disagree.</summary>
    public static Verdict Judge(Estimate marginDb, double wantedDb)
    {
        Verdict low = Judge(marginDb.Low, wantedDb);
        return low == Judge(marginDb.Median, wantedDb) && low == Judge(marginDb.High, wantedDb) ? low : Verdict.Unknown;
    }

    /// <summary>fails below 0 dB, tight below the wanted margin, ok above.</summary>
    public static Verdict Judge(double marginDb, double wantedDb)
    {
        if (marginDb < 0)
        {
            return Verdict.Fails;
        }

        return marginDb < wantedDb ? Verdict.Tight : Verdict.Ok;
    }

    private static ImmutableArray<LedgerLine> Lines(LinkEnd from, LinkEnd to, PathLossRange path, double polarisationLossDb, double requiredDbm)
    {
        ImmutableArray<LedgerLine>.Builder lines = ImmutableArray.CreateBuilder<LedgerLine>();
        lines.AddRange(from.TransmitLines);
        lines.Add(new("gain-from", $"Antenna gain at {from.Name}", from.GainDbi!.Value.Median, from.GainSource, from.GainNote));
        lines.AddRange(path.Lines);
        if (polarisationLossDb != 0)
        {
            lines.Add(new("polarisation", "Polarisations differ", -polarisationLossDb, "common practice"));
        }

        lines.Add(new("gain-to", $"Antenna gain at {to.Name}", to.GainDbi!.Value.Median, to.GainSource, to.GainNote));
        lines.Add(new(
            "required",
            $"Level wanted at {to.Name}",
            -requiredDbm,
            "own ledger",
            string.Create(CultureInfo.InvariantCulture, $"a packet is just received at {requiredDbm:0.0} dBm at the antenna's connector")));
        return lines.ToImmutable();
    }

    private static LinkSpread Spread(Estimate power, Estimate fromGain, PathLossRange path, Estimate toGain, Estimate required, Estimate polarisation, LinkWanted wanted)
    {
        List<SpreadPart> unknown =
        [
            new("model-error", "Error of the prediction itself", wanted.ModelErrorDb, wanted.ModelErrorSource),
            new("location", "Location variability", wanted.LocationDb, wanted.LocationSource),
        ];
        AddRange(unknown, "power-range", "Range of the power", power);
        AddRange(unknown, "gain-range", "Range of the sending antenna's gain", fromGain);
        AddRange(unknown, "place-range", "Range of places and heights", path.LossDb);
        unknown.AddRange(path.Spreads);
        AddRange(unknown, "gain-range-to", "Range of the receiving antenna's gain", toGain);
        AddRange(unknown, "polarisation-range", "Range of the loss between polarisations", polarisation);
        AddRange(unknown, "required-range", "Range of the receiver's needs", required);
        return new(
            LinkSpread.InPower("What is not known about the link", unknown),
            LinkSpread.InPower("What varies from packet to packet", [new("fading", "Fading below and above the median", wanted.FadingDb, wanted.FadingSource)]));
    }

    /// <summary>The widest of the ranges in words; empty when nothing has a range.</summary>
    private static string Vaguest(Estimate power, Estimate fromGain, Estimate loss, Estimate toGain, Estimate required, Estimate polarisation)
    {
        (string Name, double Width) widest = new (string Name, Estimate Range)[]
        {
            ("the places and heights of the ends", loss),
            ("the gain of the sending antenna", fromGain),
            ("the gain of the receiving antenna", toGain),
            ("the power into the antenna", power),
            ("what the receiver needs", required),
            ("the loss between the polarisations", polarisation),
        }.Select(one => (one.Name, one.Range.High - one.Range.Low)).MaxBy(one => one.Item2);
        return widest.Width > 0 ? string.Create(CultureInfo.InvariantCulture, $"{widest.Name} ({widest.Width:0.#} dB wide)") : "";
    }

    /// <summary>A range without a stated shape counts as uniform: its standard deviation is its width over √12.</summary>
    private static void AddRange(List<SpreadPart> parts, string code, string label, Estimate range)
    {
        if (!range.IsExact)
        {
            parts.Add(new(code, label, (range.High - range.Low) / Math.Sqrt(12), "plan; counted as uniform over its range"));
        }
    }
}
