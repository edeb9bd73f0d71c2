using System.Text.Json;
using Mastwright.Network;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>A plan's report as a JSON document of shape "check", version 1.</summary>
internal static class CheckJson
{
    internal static string Write(PlanReport report) => JsonDocumentWriter.Write("check", 1, writer =>
    {
        writer.WriteString("plan", report.Plan.Name);
        writer.WriteStartObject("settings");
        writer.Number("frequency-hertz", report.Settings.FrequencyHz);
        writer.Number("time-percent", report.Settings.TimePercent);
        writer.Number("location-percent", report.Settings.LocationPercent);
        writer.Number("low-k", report.Settings.LowKFactor);
        writer.Number("wanted-margin-db", report.Settings.Wanted.MarginDb);
        writer.WriteEndObject();
        writer.WriteStartArray("links");
        foreach (LinkReport link in report.Links)
        {
            writer.WriteStartObject();
            Link(writer, link);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("fit-outs");
        foreach (FitOutReport fitOut in report.FitOuts)
        {
            writer.WriteStartObject();
            writer.WriteString("subject", fitOut.Station.Subject);
            writer.WriteString("name", fitOut.Station.Name);
            writer.Ledgers("ledgers", fitOut.Examination.Ledgers);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Strings("not-counted", report.NotCounted.Select(site => site.Key));
        writer.Findings("findings", report.AllFindings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    /// <summary>The properties of one link, into an object that is open.</summary>
    internal static void Link(Utf8JsonWriter writer, LinkReport link)
    {
        writer.WriteString("from", link.From.Subject);
        writer.WriteString("to", link.To.Subject);
        writer.WriteString("from-name", link.From.Name);
        writer.WriteString("to-name", link.To.Name);
        writer.Number("distance-metres", link.Segment.DistanceMetres);
        writer.Number("bearing-degrees", link.Segment.InitialBearingDegrees);
        writer.WriteString("verdict", JsonDocumentWriter.Word(link.Finding.Verdict));
        writer.WriteString("method", link.Path.Out?.Method ?? "");
        writer.Number("refractivity-gradient", link.Path.Air.RefractivityGradient);
        writer.WriteString("refractivity-gradient-source", link.Path.Air.RefractivityGradientSource);
        writer.Number("surface-refractivity", link.Path.Air.SurfaceRefractivity);
        writer.WriteString("surface-refractivity-source", link.Path.Air.SurfaceRefractivitySource);
        Direction(writer, "out", link.Out, link.Path.OutLoss);
        Direction(writer, "back", link.Back, link.Path.BackLoss);
    }

    private static void Direction(Utf8JsonWriter writer, string name, LinkDirection direction, PathLossRange? loss)
    {
        writer.WriteStartObject(name);
        writer.WriteString("from", direction.From.Subject);
        writer.WriteString("to", direction.To.Subject);
        writer.WriteString("verdict", JsonDocumentWriter.Word(direction.Verdict));
        writer.Estimate("margin-db", direction.MarginDb);
        writer.Estimate("level-dbm", direction.LevelDbm);
        writer.Estimate("path-loss-db", loss?.LossDb);
        writer.Number("works", direction.Odds?.Works);
        writer.Number("delivers-if-it-works", direction.Odds?.DeliversIfItWorks);
        writer.Ledger("budget", direction.Budget);
        writer.Estimate("eirp-dbm", direction.From.Radiated?.EirpDbm);
        writer.Estimate("erp-dbm", direction.From.Radiated?.ErpDbm);
        writer.Ledger("required", direction.To.RequiredLedger);
        writer.Ledger("unknown-spread", direction.Spread?.Unknown);
        writer.Ledger("packet-spread", direction.Spread?.Fading);
        writer.Strings("missing", direction.Missing);
        writer.WriteEndObject();
    }
}
