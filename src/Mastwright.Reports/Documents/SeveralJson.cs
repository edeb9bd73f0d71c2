using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Reach;

namespace Mastwright.Reports.Documents;

/// <summary>Best server and count of several stations as a JSON document of shape "reach-several", version 1.</summary>
internal static class SeveralJson
{
    internal static string Write(SeveralReport report, ReachOptions options) => JsonDocumentWriter.Write("reach-several", 1, writer =>
    {
        GridFrame frame = report.Servers.Frame;
        PathSettings settings = report.Session.Assessment.Settings;
        writer.WriteString("plan", report.Session.Plan.Name);
        writer.WriteString("receiver", report.Receiver.Key);
        writer.WriteString("receiver-name", report.Receiver.Name);
        writer.Number("receiver-height-metres", report.Receiver.HeightMetres);
        writer.Number("radius-metres", report.Area.RadiusMetres);
        ReachJson.Grid(writer, frame);
        writer.WriteNumber("cells", report.Servers.CellCount);
        writer.WriteNumber("cells-some-lack-ground", report.Servers.Flags.ToArray().Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None));
        ReachJson.Settings(writer, settings);
        Stations(writer, report);
        foreach (ReachDirection direction in Enum.GetValues<ReachDirection>())
        {
            Direction(writer, report, report.Servers.Layer(direction));
        }

        Weights(writer, report, options);
        ReachJson.Files(writer, options);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    private static void Stations(Utf8JsonWriter writer, SeveralReport report)
    {
        writer.WriteStartArray("stations");
        for (int i = 0; i < report.Setups.Length; i++)
        {
            ReachSetup setup = report.Setups[i];
            writer.WriteStartObject();
            writer.WriteNumber("number", i + 1);
            writer.WriteString("station", setup.Station.Subject);
            writer.WriteString("station-name", report.Stations[i].Name);
            writer.Number("station-height-metres", setup.Field!.StationHeightMetres);
            writer.Number("heard-over-hears-db", setup.Budget!.HeardOverHearsDb);
            ReachJson.Air(writer, setup.Air);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Weights(Utf8JsonWriter writer, SeveralReport report, ReachOptions options) => ReachJson.Weights(writer, report.Weights, options, (weights, direction) =>
    {
        ServedWeights shares = weights.Shares(report.Servers, direction);
        Numbers(writer, "by-count", shares.ByCount);
        Numbers(writer, "best", shares.Best);
        return (shares.Outside, shares.WithoutGround);
    });

    private static void Numbers(Utf8JsonWriter writer, string name, ImmutableArray<double> values)
    {
        writer.WriteStartArray(name);
        foreach (double value in values)
        {
            writer.WriteNumberValue(value);
        }

        writer.WriteEndArray();
    }

    private static void Direction(Utf8JsonWriter writer, SeveralReport report, BestServerLayer layer)
    {
        double cell = report.Servers.CellAreaSquareMetres;
        ImmutableArray<int> counts = layer.CellsByCount(report.Servers.Flags);
        writer.WriteStartObject(ReachReport.Word(layer.Direction));
        writer.Number("known-square-metres", counts.Sum() * cell);
        writer.Number("unknown-square-metres", (report.Servers.CellCount - counts.Sum()) * cell);
        writer.WriteStartArray("stations");
        foreach (ServedCells one in layer.ByStation())
        {
            writer.WriteStartObject();
            writer.WriteNumber("number", one.Station);
            writer.Number("reached-square-metres", one.Reached * cell);
            writer.Number("best-square-metres", one.Best * cell);
            writer.Number("only-square-metres", one.Only * cell);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("by-count");
        for (int count = 0; count < counts.Length; count++)
        {
            writer.WriteStartObject();
            writer.WriteNumber("stations", count);
            writer.Number("area-square-metres", counts[count] * cell);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
