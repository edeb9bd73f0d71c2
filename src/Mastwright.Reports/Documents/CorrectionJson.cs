using System.Text.Json;
using Mastwright.Agreement;
using Mastwright.Quantities;
using Mastwright.Records;
using Mastwright.Reports.Evidence;

namespace Mastwright.Reports.Documents;

/// <summary>A fitted correction as a JSON document of shape "records-fit", version 1.</summary>
internal static class CorrectionJson
{
    /// <summary>The document.</summary>
    /// <param name="answer">The fit.</param>
    /// <param name="adopted">Name under which the plan has adopted it; null where it has not.</param>
    internal static string Write(CorrectionAnswer answer, string? adopted) => JsonDocumentWriter.Write("records-fit", 1, writer =>
    {
        writer.WriteString("from", UtcTime.Text(answer.Period.FromMicroseconds));
        writer.WriteString("to", UtcTime.Text(answer.Period.ToMicroseconds));
        writer.WriteNumber("links", answer.Links);
        writer.WriteNumber("packets", answer.Packets);
        writer.WriteString("adopted", adopted);
        Fit(writer, answer.Fit);
        writer.Findings("findings", answer.Findings);
    });

    private static void Fit(Utf8JsonWriter writer, CorrectionFit? fit)
    {
        if (fit is null)
        {
            writer.WriteNull("fit");
            return;
        }

        writer.WriteStartObject("fit");
        Range(writer, "offset-db", fit.OffsetDb);
        Range(writer, "cover-metres", fit.CoverMetres);
        Range(writer, "station-height-metres", fit.HeightMetres);
        writer.Number("spread-db", fit.SpreadDb);
        writer.Number("spread-within-db", fit.WithinDb);
        writer.Strings("receivers", fit.Receivers);
        writer.Strings("applies-to", fit.AppliesTo);
        writer.WriteStartArray("own-offsets");
        foreach ((string station, StationOffset own) in fit.Own)
        {
            writer.WriteStartObject();
            writer.WriteString("station", station);
            writer.Number("offset-db", own.Db);
            writer.Number("deviation-db", own.DeviationDb);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteBoolean("adoptable", fit.IsAdoptable);
        writer.WriteStartArray("scores");
        Score(writer, fit.ByStation);
        Score(writer, fit.ByBlock);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Score(Utf8JsonWriter writer, CorrectionScore score)
    {
        writer.WriteStartObject();
        writer.WriteString("left-out", score.LeftOut);
        writer.WriteNumber("folds", score.Folds);
        writer.Number("off-db", score.OffDb);
        writer.Number("held-share", score.Held);
        writer.Number("own-off-db", score.OwnOffDb);
        writer.Number("own-held-share", score.OwnHeld);
        writer.WriteStartArray("rivals");
        foreach (RivalScore rival in score.Rivals)
        {
            writer.WriteStartObject();
            writer.WriteString("name", rival.Name);
            writer.Number("off-db", rival.OffDb);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Range(Utf8JsonWriter writer, string name, Estimate? range)
    {
        if (range is not { } given)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.Number("low", given.Low);
        writer.Number("best", given.Median);
        writer.Number("high", given.High);
        writer.WriteEndObject();
    }
}
