using Mastwright.Evidence.Statistics;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Evidence.Proof;

/// <summary>The judgements of a proof, and what the records cannot show.</summary>
internal static class ProofFindings
{
    private const double ShortDays = 14;
    private const double StrangeShare = 0.1;

    internal static IEnumerable<Finding> Of(ProofQuestion question, ProofResult result, ProofResult? elsewhere, ProofSettings settings, bool clocksWrong)
    {
        yield return Shift("proof-shift", question, result.Combined, settings);
        yield return Noise(question, result, settings);
        yield return elsewhere is null
            ? Finding.Unknown("proof-heard-unknown", question.Subject, "shift of signal power at others", ("name", question.Name))
            : Shift("proof-heard", question, elsewhere.Combined, settings);
        foreach (Finding finding in result.Stations.SelectMany(station => Station(question, station, settings)))
        {
            yield return finding;
        }

        foreach (Finding finding in Doubts(question, result, clocksWrong))
        {
            yield return finding;
        }
    }

    private static Finding Shift(string code, ProofQuestion question, CombinedShift? combined, ProofSettings settings)
    {
        if (combined?.Estimate is not { Interval: { } interval } estimate)
        {
            return code == "proof-shift"
                ? Finding.Unknown("proof-shift-unknown", question.Subject, "shift of signal power", ("name", question.Name))
                : Finding.Unknown("proof-heard-few", question.Subject, "shift of signal power at others", ("name", question.Name));
        }

        string word = interval.Low > 0 ? "better" : interval.High < 0 ? "worse" : "neither better nor worse";
        return new()
        {
            Code = code,
            Subject = question.Subject,
            Quantity = "shift of signal power",
            Unit = "dB",
            Value = Estimate.Of(interval.Low, estimate.Shift, interval.High),
            Limit = 0,
            Margin = estimate.Shift,
            Confidence = settings.Confidence,
            Verdict = interval.Low > 0 ? Verdict.Ok : interval.High < 0 ? Verdict.Fails : Verdict.Unknown,
            Source = "docs/physics/proof.md",
            Details = FindingDetails.Of(
                ("name", question.Name), ("word", word), ("shift", ProofWords.Signed(estimate.Shift)), ("range", ProofWords.Range(interval, settings.Confidence)),
                ("better", ProofWords.Text($"{combined.Better} of {combined.Stations}")), ("block", ProofWords.Count(estimate.BlockDays, "day", "days"))),
        };
    }

    private static Finding Noise(ProofQuestion question, ProofResult result, ProofSettings settings)
    {
        if (result.NoiseFloor is not { Interval: { } interval } floor)
        {
            return Finding.Unknown("proof-noise-unknown", question.Subject, "shift of the noise floor", ("name", question.Name));
        }

        return new()
        {
            Code = "proof-noise",
            Subject = question.Subject,
            Quantity = "shift of the noise floor",
            Unit = "dB",
            Value = Estimate.Of(interval.Low, floor.Shift, interval.High),
            Limit = 0,
            Margin = -floor.Shift,
            Confidence = settings.Confidence,
            Verdict = interval.Low > 0 ? Verdict.Tight : Verdict.Ok,
            Source = "docs/physics/proof.md",
            Details = FindingDetails.Of(
                ("shift", ProofWords.Signed(floor.Shift)),
                ("range", ProofWords.Range(interval, settings.Confidence)),
                ("says", interval.Low > 0 ? "the receiver hears more noise than before" : interval.High < 0 ? "the receiver is quieter than before" : "no change of the noise is shown")),
        };
    }

    private static IEnumerable<Finding> Station(ProofQuestion question, StationProof station, ProofSettings settings)
    {
        string name = question.NameOf(station.Station);
        string subject = $"{name} → {question.Subject}";
        if (station.Chance is { } chance)
        {
            bool isNew = station.Before.Packets == 0;
            HeardSummary there = isNew ? station.After : station.Before;
            yield return new()
            {
                Code = isNew ? "proof-new" : "proof-lost",
                Subject = subject,
                Quantity = "probability that it is chance",
                Value = Estimate.Exactly(chance),
                Limit = ProofVerdict.Rare,
                Margin = ProofVerdict.Rare - chance,
                Verdict = chance >= ProofVerdict.Rare ? Verdict.Unknown : isNew ? Verdict.Ok : Verdict.Fails,
                Source = "docs/physics/proof.md",
                Details = FindingDetails.Of(
                    ("name", name), ("packets", ProofWords.Count(there.Packets, "packet", "packets")),
                    ("days", ProofWords.Text($"{there.DaysHeard} of {there.Days} days")), ("share", ProofWords.Share(there.ShareOfDays)),
                    ("other", ProofWords.Count(isNew ? station.Before.Days : station.After.Days, "day", "days")),
                    ("otherShare", ProofWords.Share(isNew ? station.Before.ShareOfDays : station.After.ShareOfDays)), ("chance", chance < 0.0001 ? "below 0.0001" : ProofWords.Text($"{chance:0.####}"))),
            };
        }

        if (station is { SignalPower: { } shift, Knowledge: ShiftKnowledge.AtLeast or ShiftKnowledge.AtMost or ShiftKnowledge.Open })
        {
            ConfidenceInterval? interval = shift.Interval;
            bool isLeast = station.Knowledge == ShiftKnowledge.AtLeast;
            bool isMost = station.Knowledge == ShiftKnowledge.AtMost;
            yield return new()
            {
                Code = isLeast ? "proof-at-least" : isMost ? "proof-at-most" : "proof-near-limit",
                Subject = subject,
                Quantity = "shift of signal power",
                Unit = "dB",
                Verdict = isLeast && interval?.Low > 0 ? Verdict.Ok : Verdict.Unknown,
                Source = "docs/physics/proof.md",
                Details = FindingDetails.Of(
                    ("name", name), ("shift", ProofWords.Signed(shift.Shift)), ("range", ProofWords.Range(interval, settings.Confidence)), ("clearance", ProofWords.Db(settings.ClearanceDb))),
            };
        }

        if (station.SendsMoreOften)
        {
            yield return Finding.Unknown("proof-interval", subject, "packets lost", ("name", name));
        }

        if (station.MovedAlone)
        {
            yield return Tight("proof-moved-alone", subject, ("name", name), ("shift", ProofWords.Signed(station.SignalPower!.Shift)));
        }

        if (station.OwnStep is { } step)
        {
            yield return Tight("proof-own-step", subject, ("name", name), ("step", ProofWords.Signed(step.StepDb)), ("day", ProofWords.Day(step.TimeMicroseconds)));
        }

        if (station is { Before.TypicalHops: { } then, After.TypicalHops: { } now } && then != now)
        {
            yield return new()
            {
                Code = "proof-hops",
                Subject = subject,
                Quantity = "hops taken",
                Value = Estimate.Exactly(now),
                Limit = then,
                Margin = then - now,
                Verdict = now < then ? Verdict.Ok : Verdict.Tight,
                Source = "docs/physics/proof.md",
                Details = FindingDetails.Of(("name", name), ("now", ProofWords.Count(now, "hop", "hops")), ("then", ProofWords.Text($"{then}"))),
            };
        }
    }

    private static IEnumerable<Finding> Doubts(ProofQuestion question, ProofResult result, bool clocksWrong)
    {
        double shorter = Math.Min(result.Before.Period.LengthDays, result.After.Period.LengthDays);
        if (shorter < ShortDays)
        {
            yield return Finding.Unknown("proof-short", question.Subject, "length of the shorter period", ("days", ProofWords.Text($"{shorter:0.#} days")), ("wanted", ProofWords.Text($"{ShortDays:0} days")));
        }

        if (result.OldWasFailing)
        {
            double[] falls = [.. result.Stations.Where(one => one.IsCompared && one.Drift is not null).Select(one => one.Drift!.Shift).Order()];
            yield return Tight("proof-old-failing", question.Subject, ("fall", ProofWords.Size(falls.Length == 0 ? 0 : falls[falls.Length / 2])));
        }

        if (Strange(result.StrangeBefore.Strong, result.StrangeBefore.Days, result.StrangeAfter.Strong, result.StrangeAfter.Days) is { } strong)
        {
            yield return Tight("proof-ducting", question.Subject, ("days", strong));
        }

        if (Strange(result.StrangeBefore.Weak, result.StrangeBefore.Days, result.StrangeAfter.Weak, result.StrangeAfter.Days) is { } weak)
        {
            yield return Tight("proof-wet", question.Subject, ("days", weak));
        }

        long unknown = result.Before.WithoutSender + result.After.WithoutSender;
        if (unknown > 0)
        {
            yield return Finding.Unknown("proof-sender-unknown", question.Subject, "signal power", ("packets", ProofWords.Count(unknown, "packet names", "packets name")));
        }

        if (clocksWrong)
        {
            yield return Finding.Unknown("proof-clock", question.Subject, "time of reception");
        }
    }

    private static string? Strange(int before, int daysBefore, int after, int daysAfter) =>
        daysBefore == 0 || daysAfter == 0 || Math.Abs(((double)before / daysBefore) - ((double)after / daysAfter)) <= StrangeShare
            ? null
            : ProofWords.Text($"{before} of {daysBefore} days before, {after} of {daysAfter} after");

    private static Finding Tight(string code, string subject, params ReadOnlySpan<(string Name, string Value)> details) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = Verdict.Tight,
        Source = "docs/physics/proof.md",
        Details = FindingDetails.Of(details),
    };
}
