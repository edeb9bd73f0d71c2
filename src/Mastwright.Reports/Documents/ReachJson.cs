using System.Text.Json;
using Mastwright.Findings;
using Mastwright.Network.Reach;
using Mastwright.Reports.Reach;

namespace Mastwright.Reports.Documents;

/// <summary>A reach map's summary as a JSON document of shape "reach", version 1.</summary>
internal static class ReachJson
{
    internal static string Write(ReachReport report, ReachOptions options) => JsonDocumentWriter.Write("reach", 1, writer =>
    {
        ReachField field = report.Map.Field;
        ReachFlags[] flags = field.Flags.ToArray();
        writer.WriteString("plan", report.Session.Plan.Name);
        writer.WriteString("station", report.Setup.Station.Subject);
        writer.WriteString("station-name", report.Setup.Station.Name);
        writer.Number("station-height-metres", field.Input.StationHeightMetres);
        writer.WriteString("receiver", report.Setup.Receiver.Key);
        writer.WriteString("receiver-name", report.Setup.Receiver.Name);
        writer.Number("receiver-height-metres", field.Input.ReceiverHeightMetres);
        writer.Number("radius-metres", field.Input.RadiusMetres);
        writer.Number("cell-metres", field.Input.CellMetres);
        writer.Number("sweep-step-metres", field.SweepStepMetres);
        writer.WriteNumber("epsg", (field.Frame.IsNorth ? 32600 : 32700) + field.Frame.UtmZone);
        writer.WriteNumber("columns", field.Frame.Columns);
        writer.WriteNumber("rows", field.Frame.Rows);
        writer.Number("west-metres", field.Frame.OriginX - (field.Frame.StepX / 2));
        writer.Number("north-metres", field.Frame.OriginY + (field.Frame.StepY / 2));
        writer.WriteNumber("cells", field.CellCount);
        writer.WriteNumber("cells-by-short-path", flags.Count(flag => (flag & ReachFlags.ShortPath) != ReachFlags.None));
        writer.WriteNumber("cells-without-ground", flags.Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None));
        writer.Number("frequency-hertz", report.Settings.FrequencyHz);
        writer.Number("time-percent", report.Settings.TimePercent);
        writer.Number("location-percent", report.Settings.LocationPercent);
        writer.Number("wanted-margin-db", report.Settings.Wanted.MarginDb);
        writer.Number("refractivity-gradient", report.Setup.Air.RefractivityGradient);
        writer.WriteString("refractivity-gradient-source", report.Setup.Air.RefractivityGradientSource);
        writer.Number("surface-refractivity", report.Setup.Air.SurfaceRefractivity);
        writer.WriteString("surface-refractivity-source", report.Setup.Air.SurfaceRefractivitySource);
        Budget(writer, report.Map);
        Direction(writer, report.Map, ReachDirection.Heard);
        Direction(writer, report.Map, ReachDirection.Hears);
        Direction(writer, report.Map, ReachDirection.Both);
        Comparison(writer, report, options.Direction);
        Gaps(writer, field);
        Files(writer, options);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Setup.Assumptions);
    });

    private static void Budget(Utf8JsonWriter writer, ReachMap map)
    {
        ReachBudget budget = map.Budget;
        writer.WriteStartObject("budget");
        writer.Estimate("station-power-dbm", budget.Station.PowerIntoAntennaDbm);
        writer.Estimate("station-gain-dbi", budget.StationPattern.MainBeamDbi);
        writer.Estimate("station-required-dbm", budget.Station.RequiredDbm);
        writer.Estimate("receiver-power-dbm", budget.Receiver.PowerIntoAntennaDbm);
        writer.Estimate("receiver-gain-dbi", budget.Receiver.GainDbi);
        writer.Estimate("receiver-required-dbm", budget.Receiver.RequiredDbm);
        writer.Ledger("end-losses", Ledger.SummingTo(budget.EndLossDb, "What both ends add to the loss", "dB", budget.EndLosses));
        writer.Number("heard-over-hears-db", budget.HeardOverHearsDb);
        writer.WriteEndObject();
    }

    private static void Direction(Utf8JsonWriter writer, ReachMap map, ReachDirection direction)
    {
        writer.WriteStartObject(ReachReport.Word(direction));
        bool heard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && map.Budget.HeardOverHearsDb <= 0);
        writer.Ledger("unknown-spread", (heard ? map.HeardSpread : map.HearsSpread).Unknown);
        writer.Ledger("packet-spread", (heard ? map.HeardSpread : map.HearsSpread).Fading);
        writer.WriteStartArray("classes");
        foreach (ReachClass one in ReachClasses.Of(map, direction))
        {
            writer.WriteStartObject();
            writer.Number("from-db", one.FromDb);
            writer.Number("to-db", one.ToDb);
            writer.WriteNumber("cells", one.Cells);
            writer.Number("area-square-metres", one.AreaSquareMetres);
            writer.Number("mean-works", one.Cells == 0 ? null : one.MeanWorks);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Comparison(Utf8JsonWriter writer, ReachReport report, ReachDirection direction)
    {
        if (report.Compared is not { } compared)
        {
            writer.WriteNull("comparison");
            return;
        }

        ReachComparison comparison = ReachComparison.Of(report.Map, compared.Map, direction);
        writer.WriteStartObject("comparison");
        writer.WriteString("station", compared.Setup.Station.Subject);
        writer.WriteString("direction", ReachReport.Word(direction));
        writer.WriteNumber("cells", comparison.Cells);
        writer.Number("low-db", comparison.LowDb);
        writer.Number("median-db", comparison.MedianDb);
        writer.Number("high-db", comparison.HighDb);
        writer.Number("gained-square-metres", comparison.GainedSquareMetres);
        writer.Number("lost-square-metres", comparison.LostSquareMetres);
        writer.WriteEndObject();
    }

    private static void Gaps(Utf8JsonWriter writer, ReachField field)
    {
        writer.WriteStartArray("ground-missing");
        foreach (ReachGap gap in field.Gaps)
        {
            writer.WriteStartObject();
            writer.WriteString("tile", gap.Tile);
            writer.WriteBoolean("void", gap.IsVoid);
            writer.WriteNumber("cells", gap.Cells);
            writer.Number("nearest-metres", gap.NearestMetres);
            writer.Number("bearing-degrees", gap.BearingDegrees);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Files(Utf8JsonWriter writer, ReachOptions options)
    {
        writer.WriteString("direction", ReachReport.Word(options.Direction));
        writer.WriteString("layer", options.Layer);
        writer.Strings("files", options.Files);
    }
}
