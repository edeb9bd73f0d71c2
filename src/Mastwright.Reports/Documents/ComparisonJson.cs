using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>The fit-outs of sites side by side as a JSON document of shape "comparison", version 1.</summary>
internal static class ComparisonJson
{
    internal static string Write(Plan plan, ImmutableArray<FitOutComparison> comparisons) => JsonDocumentWriter.Write("comparison", 1, writer =>
    {
        writer.WriteString("plan", plan.Name);
        writer.WriteStartArray("sites");
        foreach (FitOutComparison comparison in comparisons)
        {
            writer.WriteStartObject();
            Site(writer, comparison);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Assumptions("assumptions", comparisons.SelectMany(one => one.FitOuts).SelectMany(fitOut => fitOut.Report.Assumptions).Distinct());
    });

    private static void Site(Utf8JsonWriter writer, FitOutComparison comparison)
    {
        writer.WriteString("site", comparison.Site.Key);
        writer.WriteString("name", comparison.Site.Name);
        writer.WriteStartArray("fit-outs");
        foreach (ComparedFitOut fitOut in comparison.FitOuts)
        {
            writer.WriteStartObject();
            writer.WriteString("fit-out", fitOut.FitOut.Key);
            writer.WriteString("name", fitOut.FitOut.Name);
            writer.WriteBoolean("in-use", fitOut.IsInUse);
            writer.WriteStartArray("parts");
            foreach (PartNeeded part in fitOut.Parts)
            {
                writer.WriteStartObject();
                writer.WriteString("what", part.What);
                writer.WriteNumber("count", part.Count);
                writer.Estimate("length-metres", part.LengthMetres);
                writer.WriteString("plan-path", part.PlanPath);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("measures");
        foreach ((ComparedMeasure measure, string sentence) in comparison.Measures.Zip(ComparisonSentences.Of(comparison)))
        {
            writer.WriteStartObject();
            Measure(writer, comparison, measure);
            writer.WriteString("text", sentence);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Measure(Utf8JsonWriter writer, FitOutComparison comparison, ComparedMeasure measure)
    {
        writer.WriteString("code", measure.Code);
        writer.WriteString("label", measure.Label);
        writer.WriteString("unit", measure.Unit);
        writer.WriteString("better-when", measure.Better switch { BetterWhen.More => "more", BetterWhen.Less => "less", _ => "neither" });
        writer.Strings("ahead", measure.Ahead.Select(i => comparison.FitOuts[i].FitOut.Key));
        writer.WriteStartArray("values");
        foreach ((ComparedFitOut fitOut, ComparedValue value) in comparison.FitOuts.Zip(measure.Values))
        {
            writer.WriteStartObject();
            writer.WriteString("fit-out", fitOut.FitOut.Key);
            writer.Estimate("value", value.Value);
            writer.Number("limit", value.Limit);
            writer.WriteString("note", value.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
