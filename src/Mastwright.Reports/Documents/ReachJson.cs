using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Reach;

namespace Mastwright.Reports.Documents;

/// <summary>A reach map's summary as a JSON document of shape "reach", version 1.</summary>
internal static class ReachJson
{
    internal static string Write(ReachReport report, ReachOptions options) => JsonDocumentWriter.Write("reach", 1, writer =>
    {
        ReachField field = report.Map.Field;
        writer.WriteString("plan", report.Session.Plan.Name);
        writer.WriteString("station", report.Setup.Station.Subject);
        writer.WriteString("station-name", report.Setup.Station.Name);
        writer.Number("station-height-metres", field.Input.StationHeightMetres);
        writer.WriteString("receiver", report.Setup.Receiver.Key);
        writer.WriteString("receiver-name", report.Setup.Receiver.Name);
        writer.Number("receiver-height-metres", field.Input.ReceiverHeightMetres);
        writer.Number("radius-metres", field.Input.RadiusMetres);
        writer.Number("sweep-step-metres", field.SweepStepMetres);
        Grid(writer, report.Frame);
        writer.WriteNumber("cells", report.Totals.Cells);
        writer.WriteNumber("cells-by-short-path", report.Totals.ShortPathCells);
        writer.WriteNumber("cells-without-ground", report.Totals.MissingCells);
        Settings(writer, report.Settings);
        Air(writer, report.Setup.Air);
        Budget(writer, report.Map);
        Direction(writer, report, ReachDirection.Heard);
        Direction(writer, report, ReachDirection.Hears);
        Direction(writer, report, ReachDirection.Both);
        Comparison(writer, report, options.Direction);
        Weights(writer, report, options);
        Range(writer, report);
        Gaps(writer, field);
        Files(writer, options);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    /// <summary>Where the cells lie.</summary>
    internal static void Grid(Utf8JsonWriter writer, GridFrame frame)
    {
        writer.Number("cell-metres", frame.StepX);
        writer.WriteNumber("epsg", (frame.IsNorth ? 32600 : 32700) + frame.UtmZone);
        writer.WriteNumber("columns", frame.Columns);
        writer.WriteNumber("rows", frame.Rows);
        writer.Number("west-metres", frame.OriginX - (frame.StepX / 2));
        writer.Number("north-metres", frame.OriginY + (frame.StepY / 2));
    }

    /// <summary>What the plan asks for.</summary>
    internal static void Settings(Utf8JsonWriter writer, PathSettings settings)
    {
        writer.Number("frequency-hertz", settings.FrequencyHz);
        writer.Number("time-percent", settings.TimePercent);
        writer.Number("location-percent", settings.LocationPercent);
        writer.Number("wanted-margin-db", settings.Wanted.MarginDb);
    }

    /// <summary>The air of a station.</summary>
    internal static void Air(Utf8JsonWriter writer, PathAir air)
    {
        writer.Number("refractivity-gradient", air.RefractivityGradient);
        writer.WriteString("refractivity-gradient-source", air.RefractivityGradientSource);
        writer.Number("surface-refractivity", air.SurfaceRefractivity);
        writer.WriteString("surface-refractivity-source", air.SurfaceRefractivitySource);
    }

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

    private static void Direction(Utf8JsonWriter writer, ReachReport report, ReachDirection direction)
    {
        ReachMap map = report.Map;
        writer.WriteStartObject(ReachReport.Word(direction));
        bool heard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && map.Budget.HeardOverHearsDb <= 0);
        writer.Ledger("unknown-spread", (heard ? map.HeardSpread : map.HearsSpread).Unknown);
        writer.Ledger("packet-spread", (heard ? map.HeardSpread : map.HearsSpread).Fading);
        writer.WriteStartArray("classes");
        foreach (ReachClass one in report.Totals.ClassesOf(direction))
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

    private static void Weights(Utf8JsonWriter writer, ReachReport report, ReachOptions options)
    {
        ImmutableArray<double> edges = ReachClasses.Edges(report.Settings.Wanted.MarginDb);
        Weights(writer, report.Weights, options, (weights, direction) =>
        {
            ReachWeightShares shares = weights.Shares(report.Map, direction);
            writer.Number("reached", shares.Reached);
            writer.WriteStartArray("classes");
            for (int i = 0; i < shares.InClass.Length; i++)
            {
                writer.WriteStartObject();
                writer.Number("from-db", i == 0 ? null : edges[i - 1]);
                writer.Number("to-db", i == edges.Length ? null : edges[i]);
                writer.Number("weight", shares.InClass[i]);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            return (shares.Outside, shares.WithoutGround);
        });
    }

    /// <summary>Weights, or null: where they come from, what there is of them in each direction, and what lies elsewhere.</summary>
    /// <param name="writer">The document.</param>
    /// <param name="weights">The weights; null for none.</param>
    /// <param name="options">What was asked for.</param>
    /// <param name="direction">Writes what one direction has; answers what lies outside and what is without ground, which is the same in each.</param>
    internal static void Weights(
        Utf8JsonWriter writer, ReachWeights? weights, ReachOptions options, Func<ReachWeights, ReachDirection, (double Outside, double WithoutGround)> direction)
    {
        if (weights is null)
        {
            writer.WriteNull("weights");
            return;
        }

        writer.WriteStartObject("weights");
        writer.WriteString("file", options.WeightsFile);
        writer.WriteNumber("entries", weights.Count);
        writer.Number("total", weights.Total);
        (double outside, double withoutGround) = (0, 0);
        foreach (ReachDirection one in Enum.GetValues<ReachDirection>())
        {
            writer.WriteStartObject(ReachReport.Word(one));
            (outside, withoutGround) = direction(weights, one);
            writer.WriteEndObject();
        }

        writer.Number("outside", outside);
        writer.Number("without-ground", withoutGround);
        writer.WriteEndObject();
    }

    private static void Range(Utf8JsonWriter writer, ReachReport report)
    {
        if (report.Range is not { } range)
        {
            writer.WriteNull("range");
            return;
        }

        (double below, double above) = range.TypicalMove();
        writer.WriteStartObject("range");
        writer.Strings("tried", report.Tried);
        writer.Number("median-below-db", below);
        writer.Number("median-above-db", above);
        foreach (ReachDirection direction in Enum.GetValues<ReachDirection>())
        {
            (double low, double median, double high) = range.AreaSquareMetres(direction);
            writer.WriteStartObject(ReachReport.Word(direction));
            writer.Number("low-square-metres", low);
            writer.Number("median-square-metres", median);
            writer.Number("high-square-metres", high);
            writer.WriteEndObject();
        }

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

    /// <summary>Which way, what and where to the files go.</summary>
    internal static void Files(Utf8JsonWriter writer, ReachOptions options)
    {
        writer.WriteString("direction", ReachReport.Word(options.Direction));
        writer.WriteString("layer", options.Layer);
        writer.Strings("files", options.Files);
    }
}
