using System.Text.Json;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Evidence.Statistics;

namespace Mastwright.Reports.Documents;

/// <summary>A proof as a JSON document of shape "proof", version 1.</summary>
internal static class ProofJson
{
    /// <summary>The document.</summary>
    /// <param name="report">The proof.</param>
    /// <param name="stations">Keys or addresses of the stations by their place.</param>
    /// <param name="agreement">Prediction against records; null where it was not asked for.</param>
    internal static string Write(ProofReport report, IReadOnlyList<string> stations, AgreementSummary? agreement = null) => JsonDocumentWriter.Write("proof", 1, writer =>
    {
        writer.WriteString("site", report.Question.Subject);
        writer.WriteString("site-name", report.Question.Name);
        writer.Number("confidence", report.Settings.Confidence);
        Period(writer, "before", report.Result.Before);
        Period(writer, "after", report.Result.After);
        writer.Strings("verdict-sentences", report.Verdict);
        Combined(writer, "signal-power-shift", report.Result.Combined);
        Combined(writer, "signal-power-shift-at-others", report.HeardElsewhere?.Combined);
        Shift(writer, "noise-floor-shift", report.Result.NoiseFloor);
        writer.WriteStartArray("stations");
        foreach (StationProof one in report.Result.Stations)
        {
            writer.WriteStartObject();
            writer.WriteString("station", stations[one.Station]);
            writer.WriteString("name", report.Question.NameOf(one.Station));
            Heard(writer, "heard-before", one.Before);
            Heard(writer, "heard-after", one.After);
            writer.Number("chance", one.Chance);
            writer.WriteString("known", Word(one.Knowledge));
            Shift(writer, "signal-power-shift", one.SignalPower);
            Shift(writer, "snr-shift", one.Snr);
            Shift(writer, "last-week-before", one.Drift);
            writer.WriteBoolean("moved-alone", one.MovedAlone);
            writer.Number("own-step-db", one.OwnStep?.StepDb);
            writer.WriteBoolean("compared", one.IsCompared);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        Prediction(writer, agreement);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    private static string Word(ShiftKnowledge knowledge) => knowledge switch
    {
        ShiftKnowledge.Full => "full",
        ShiftKnowledge.LossesCounted => "losses-counted",
        ShiftKnowledge.AtLeast => "at-least",
        ShiftKnowledge.AtMost => "at-most",
        ShiftKnowledge.Open => "near-limit",
        _ => "none",
    };

    private static void Period(Utf8JsonWriter writer, string name, ProofFold fold)
    {
        writer.WriteStartObject(name);
        writer.WriteString("from", Time(fold.Period.FromMicroseconds));
        writer.WriteString("to", Time(fold.Period.ToMicroseconds));
        writer.WriteNumber("packets", fold.Packets);
        writer.WriteNumber("packets-without-sender", fold.WithoutSender);
        writer.WriteEndObject();
    }

    private static string Time(long microseconds) => DateTimeOffset.UnixEpoch.AddTicks(10 * microseconds).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);

    private static void Combined(Utf8JsonWriter writer, string name, CombinedShift? combined)
    {
        if (combined is null)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        Body(writer, combined.Estimate);
        writer.WriteNumber("stations", combined.Stations);
        writer.WriteNumber("stations-up", combined.Better);
        writer.WriteEndObject();
    }

    private static void Shift(Utf8JsonWriter writer, string name, ShiftEstimate? shift)
    {
        if (shift is null)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        Body(writer, shift);
        writer.WriteEndObject();
    }

    private static void Body(Utf8JsonWriter writer, ShiftEstimate shift)
    {
        writer.Number("shift-db", shift.Shift);
        writer.Number("low-db", shift.Interval?.Low);
        writer.Number("high-db", shift.Interval?.High);
        writer.WriteNumber("block-days", shift.BlockDays);
    }

    private static void Heard(Utf8JsonWriter writer, string name, HeardSummary heard)
    {
        writer.WriteStartObject(name);
        writer.WriteNumber("packets", heard.Packets);
        writer.WriteNumber("days-heard", heard.DaysHeard);
        writer.WriteNumber("days", heard.Days);
        Interval(writer, "share-of-days", heard.ShareOfDays);
        writer.Number("packets-lost", heard.Delivery is null ? null : heard.Lost);
        Interval(writer, "delivery", heard.Delivery);
        writer.Number("snr-lowest-tenth-db", heard.LowSnrDb);
        writer.Number("typical-hops", heard.TypicalHops);
        writer.WriteEndObject();
    }

    private static void Prediction(Utf8JsonWriter writer, AgreementSummary? agreement)
    {
        if (agreement is null)
        {
            writer.WriteNull("prediction");
            return;
        }

        writer.WriteStartObject("prediction");
        writer.WriteNumber("links-compared", agreement.Compared);
        writer.Number("bias-db", agreement.BiasDb);
        Interval(writer, "bias-interval-db", agreement.BiasInterval);
        writer.Number("spread-db", agreement.SpreadDb);
        writer.WriteStartArray("links");
        foreach (AgreementRow row in agreement.Rows)
        {
            writer.WriteStartObject();
            writer.WriteString("station", row.Station);
            writer.Number("predicted-dbm", row.PredictedDbm);
            writer.Number("predicted-spread-db", row.SpreadDb);
            writer.Number("works", row.Works);
            writer.Number("measured-dbm", row.MeasuredDbm);
            writer.WriteBoolean("weak-ones-lost", row.WeakOnesLost);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Interval(Utf8JsonWriter writer, string name, ConfidenceInterval? interval)
    {
        if (interval is not { } one)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.Number("low", one.Low);
        writer.Number("high", one.High);
        writer.WriteEndObject();
    }
}
