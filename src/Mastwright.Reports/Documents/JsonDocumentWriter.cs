using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Reports.Documents;

/// <summary>Writes the program's JSON documents: each names its shape and the version of it. docs/guide/json.md describes them.</summary>
internal static class JsonDocumentWriter
{
    private static readonly JsonWriterOptions Form = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A document of the given shape, as text.</summary>
    internal static string Write(string shape, int version, Action<Utf8JsonWriter> body)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, Form))
        {
            writer.WriteStartObject();
            writer.WriteString("shape", shape);
            writer.WriteNumber("version", version);
            body(writer);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>A number that may be infinite or not a number, which JSON cannot say: then null.</summary>
    internal static void Number(this Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            // Minus zero is zero to every reader.
            writer.WriteNumber(name, number == 0 ? 0 : number);
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    internal static void Strings(this Utf8JsonWriter writer, string name, IEnumerable<string> values)
    {
        writer.WriteStartArray(name);
        foreach (string value in values)
        {
            writer.WriteStringValue(value);
        }

        writer.WriteEndArray();
    }

    internal static void Estimate(this Utf8JsonWriter writer, string name, Estimate? value)
    {
        if (value is not { } estimate)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.Number("low", estimate.Low);
        writer.Number("median", estimate.Median);
        writer.Number("high", estimate.High);
        writer.WriteEndObject();
    }

    internal static void Ledger(this Utf8JsonWriter writer, string name, Ledger? ledger)
    {
        if (ledger is null)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.LedgerBody(ledger);
        writer.WriteEndObject();
    }

    internal static void Ledgers(this Utf8JsonWriter writer, string name, IEnumerable<Ledger> ledgers)
    {
        writer.WriteStartArray(name);
        foreach (Ledger ledger in ledgers)
        {
            writer.WriteStartObject();
            writer.LedgerBody(ledger);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void LedgerBody(this Utf8JsonWriter writer, Ledger ledger)
    {
        writer.WriteString("title", ledger.Title);
        writer.WriteString("unit", ledger.Unit);
        writer.Number("total", ledger.Total);
        writer.WriteStartArray("lines");
        foreach (LedgerLine line in ledger.Lines)
        {
            writer.WriteStartObject();
            writer.WriteString("code", line.Code);
            writer.WriteString("label", line.Label);
            writer.Number("value", line.Value);
            writer.WriteString("source", line.Source);
            writer.WriteString("note", line.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal static void Findings(this Utf8JsonWriter writer, string name, IEnumerable<Finding> findings)
    {
        writer.WriteStartArray(name);
        foreach (Finding finding in findings)
        {
            writer.WriteStartObject();
            writer.WriteString("code", finding.Code);
            writer.WriteString("subject", finding.Subject);
            writer.WriteString("verdict", Word(finding.Verdict));
            writer.WriteString("quantity", finding.Quantity);
            writer.WriteString("unit", finding.Unit);
            writer.Estimate("value", finding.Value);
            writer.Number("limit", finding.Limit);
            writer.Number("margin", finding.Margin);
            writer.Number("confidence", finding.Confidence);
            writer.Strings("assumptions", finding.Assumptions);
            writer.WriteString("source", finding.Source);
            writer.WriteStartObject("details");
            foreach ((string word, string value) in finding.Details)
            {
                writer.WriteString(word, value);
            }

            writer.WriteEndObject();
            writer.WriteString("text", FindingSentences.Text(finding));
            writer.WriteString("advice", FindingSentences.Advice(finding));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal static void Assumptions(this Utf8JsonWriter writer, string name, IEnumerable<Assumption> assumptions)
    {
        writer.WriteStartArray(name);
        foreach (Assumption assumption in assumptions)
        {
            writer.WriteStartObject();
            writer.WriteString("code", assumption.Code);
            writer.WriteString("text", assumption.Text);
            writer.WriteString("source", assumption.Source);
            writer.WriteString("plan-path", assumption.PlanPath);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>The verdict as the documents write it.</summary>
    internal static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Ok => "ok",
        Verdict.Tight => "tight",
        Verdict.Fails => "fails",
        _ => "unknown",
    };
}
