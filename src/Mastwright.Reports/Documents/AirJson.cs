using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>A day on the channel as a JSON document of shape "air", version 1.</summary>
internal static class AirJson
{
    internal static string Write(AirReport report) => JsonDocumentWriter.Write("air", 1, writer =>
    {
        LinkMatrix matrix = report.Links.Matrix;
        AirResult result = report.Result;
        AirSettings settings = report.Settings;
        int count = matrix.Stations.Length;
        writer.WriteString("plan", report.Links.Plan.Name);
        writer.WriteStartObject("settings");
        writer.Number("airtime-seconds", settings.AirtimeSeconds);
        writer.Number("duration-seconds", settings.DurationSeconds);
        writer.WriteNumber("hop-limit", settings.HopLimit);
        writer.WriteString("delay", settings.Delay switch { RelayDelay.Fixed => "fixed", RelayDelay.Random => "random", _ => "by-level" });
        writer.Number("least-delay-seconds", settings.LeastDelaySeconds);
        writer.Number("most-delay-seconds", settings.MostDelaySeconds);
        writer.WriteNumber("cancel-after-copies", settings.CancelAfterCopies);
        writer.Number("relay-share", settings.RelayProbability);
        writer.WriteBoolean("listens-first", settings.ListensFirst);
        writer.Number("duty-percent", 100 * settings.DutyShare);
        writer.Number("capture-db", settings.CaptureDb);
        writer.Number("fading-db", settings.FadingDb);
        writer.WriteNumber("seed", settings.Seed);
        writer.WriteEndObject();
        writer.Number("delivered-share", result.DeliveredShare);
        writer.WriteNumber("made", result.Made);
        writer.WriteNumber("sent", result.Sent);
        writer.WriteStartArray("hops");
        for (int hop = 0; hop < result.Hops.Length; hop++)
        {
            writer.WriteStartObject();
            writer.WriteNumber("hops", hop + 1);
            writer.WriteNumber("delivered", result.Hops[hop].Count);
            writer.Number("mean-seconds", result.Hops[hop].MeanSeconds);
            writer.Number("most-seconds", result.Hops[hop].MostSeconds);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("stations");
        for (int station = 0; station < count; station++)
        {
            AirStation one = result.Stations[station];
            writer.WriteStartObject();
            writer.WriteString("subject", matrix.Stations[station].Subject);
            writer.WriteString("name", matrix.Stations[station].Name);
            writer.WriteNumber("made", one.Made);
            writer.WriteNumber("sent", one.Sent);
            writer.Number("air-seconds", one.AirSeconds);
            writer.Number("busy-seconds", one.BusySeconds);
            writer.WriteNumber("deferred", one.Deferred);
            writer.WriteNumber("stalled", one.Stalled);
            writer.Number("stalled-seconds", one.StalledSeconds);
            writer.WriteNumber("dropped", one.Dropped);
            writer.WriteNumber("cancelled", one.Cancelled);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("pairs");
        for (int pair = 0; pair < count * count; pair++)
        {
            int made = result.Stations[pair / count].Made;
            if (result.Delivered[pair] > 0)
            {
                writer.WriteStartObject();
                writer.WriteString("from", matrix.Stations[pair / count].Subject);
                writer.WriteString("to", matrix.Stations[pair % count].Subject);
                writer.Number("delivered-share", made == 0 ? null : (double)result.Delivered[pair] / made);
                writer.Number("mean-seconds", result.DelaySeconds[pair] / result.Delivered[pair]);
                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
        writer.WriteStartArray("growth");
        foreach (AirGrowth growth in report.Growth)
        {
            writer.WriteStartObject();
            writer.Number("factor", growth.Factor);
            writer.Number("delivered-share", growth.DeliveredShare);
            writer.Number("most-busy-share", growth.MostBusyShare);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("remedies");
        foreach (AirRemedy remedy in report.Remedies)
        {
            writer.WriteStartObject();
            writer.WriteString("code", remedy.Code);
            writer.WriteString("text", remedy.Text);
            writer.Number("delivered-share", remedy.DeliveredShare);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Ledgers("ledgers", report.Ledgers);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });
}
