using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;

namespace Mastwright.Cli.Commands;

/// <summary>reach: where a station is heard, and what it hears.</summary>
internal static class ReachCommand
{
    private const double UsualRadiusMetres = 10_000;
    private const double UsualCellMetres = 90;

    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> site = new("SITE") { Description = "Station: KEY, or SITE/FIT-OUT." };
        Option<string?> fitOut = new("--fit-out") { Description = "Key of the site's fit-out, in place of the one in use." };
        Option<string?> compare = new("--compare-fit-out") { Description = "Key of another fit-out of the site, to tell how much better or worse it is." };
        Option<Estimate?> radius = Options.Quantity("--radius", Dimension.Length, "How far from the station (default 10 km).");
        Option<Estimate?> cell = Options.Quantity("--cell", Dimension.Length, "Side of a cell (default 90 m).");
        Option<string?> receiver = new("--receiver") { Description = "Who hears: handheld (default), handheld-indoors, mast, or the key of a neighbour that it is like." };
        Option<Estimate?> height = Options.Quantity("--receiver-height", Dimension.Length, "Height of the receiver above ground (default 1.5 m, a mast 6 m).");
        Option<string?> direction = new("--direction") { Description = "heard (default): the station sends; hears: it receives; both: the weaker way." };
        direction.AcceptOnlyFromAmong("heard", "hears", "both");
        Option<string?> layer = new("--layer") { Description = "What a .tif holds: margin (default), level, loss, confidence, delivery or difference." };
        layer.AcceptOnlyFromAmong([.. ReachLayers.Names]);
        Option<bool> ownPaths = new("--own-paths") { Description = "Give each cell a path of its own in place of one sweep: slow, for comparison." };
        Option<string[]> output = new("--out") { Description = "File to write, by its ending: " + ReachFiles.Endings + "; may be given several times." };
        Option<bool> json = Options.Json();
        Option<bool> outside = Options.AllowOutside();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("reach", "Show where a station is heard and what it hears: areas by margin, map picture, raster.")
        {
            plan, site, fitOut, compare, radius, cell, receiver, height, direction, layer, ownPaths, output, json, outside, failOn,
        };
        command.SetAction((parsed, cancellation) =>
        {
            ReachOptions options = new()
            {
                Station = parsed.GetRequiredValue(site),
                FitOut = parsed.GetValue(fitOut),
                CompareFitOut = parsed.GetValue(compare),
                Area = new(parsed.GetValue(radius)?.Median ?? UsualRadiusMetres, parsed.GetValue(cell)?.Median ?? UsualCellMetres),
                Receiver = parsed.GetValue(receiver) ?? ReachReceiver.HandheldKey,
                ReceiverHeightMetres = parsed.GetValue(height)?.Median,
                Direction = parsed.GetValue(direction) switch { "hears" => ReachDirection.Hears, "both" => ReachDirection.Both, _ => ReachDirection.Heard },
                Layer = parsed.GetValue(layer) ?? ReachLayers.Margin,
                OwnPaths = parsed.GetValue(ownPaths),
                Files = parsed.GetValue(output) ?? [],
            };
            return Task.FromResult(Run(parsed.GetRequiredValue(plan), options, parsed.GetValue(json), parsed.GetValue(outside), parsed.GetValue(failOn), cancellation));
        });
        return command;
    }

    private static int Run(string planPath, ReachOptions options, bool json, bool allowOutside, string[]? failOn, CancellationToken cancellation)
    {
        if (ReachFiles.Problem(options.Files) is { } unwritable)
        {
            Console.Error.WriteLine(unwritable);
            return ExitCode.BadInput;
        }

        using PlanSession? session = PlanSession.Open(planPath, allowOutside);
        if (session is null || StationChoice.Find(session.Plan, options.StationName) is not { } station)
        {
            return ExitCode.BadInput;
        }

        LinkStation? compared = null;
        if ((options.CompareFitOut is not null && (compared = StationChoice.Find(session.Plan, options.ComparedName)) is null) || !IsComparable(options))
        {
            return ExitCode.BadInput;
        }

        if (ReachGrid.Problem(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, options.OwnPaths ? ReachGrid.MostDirectCells : ReachGrid.MostCells) is { Length: > 0 } problem)
        {
            Console.Error.WriteLine($"reach: {problem}");
            return ExitCode.BadInput;
        }

        if (ReachReceiver.Find(session.Plan, options.Receiver, options.ReceiverHeightMetres, out string wrong) is not { } receiver)
        {
            Console.Error.WriteLine($"--receiver: {wrong}");
            return ExitCode.BadInput;
        }

        if (Make(session, station, receiver, options, null, cancellation) is not { } report)
        {
            return ExitCode.BadInput;
        }

        if (compared is not null)
        {
            report = report with { Compared = Make(session, compared, receiver, options, report, cancellation) };
        }

        return compared is null || report.Compared is not null ? Answer(report, options, json, failOn) : ExitCode.BadInput;
    }

    private static bool IsComparable(ReachOptions options)
    {
        if (options.Layer != ReachLayers.Difference || options.CompareFitOut is not null)
        {
            return true;
        }

        Console.Error.WriteLine("--layer difference needs --compare-fit-out KEY: the fit-out that this one is compared with");
        return false;
    }

    private static ReachReport? Make(PlanSession session, LinkStation station, ReachReceiver receiver, ReachOptions options, ReachReport? before, CancellationToken cancellation)
    {
        GroundMosaic ground = before?.Ground ?? session.Ground.MosaicFor(GeoBounds.Of(station.Position.Point).Expanded(options.Area.RadiusMetres * (1 + ReachFiles.RimShare) * Math.Sqrt(2)));
        ReachSetup setup = session.Assessment.Reach(station, receiver, options.Area, ground);
        if (session.TellDamage())
        {
            return null;
        }

        if (setup.Field is not { } input || setup.Budget is not { } budget)
        {
            Console.Error.WriteLine($"There is no map of {station.Subject}, for want of {string.Join("; ", setup.Missing)}");
            return null;
        }

        bool ownPaths = options.OwnPaths || !SweptArea.Fits(input, ground);
        if (ownPaths && ReachGrid.Problem(input.Station, input.RadiusMetres, input.CellMetres) is { Length: > 0 } problem)
        {
            Console.Error.WriteLine($"reach: over this ground each cell needs a path of its own: {problem}");
            return null;
        }

        // Two fit-outs that differ in what is bolted on, not in height or polarisation, share their losses.
        ReachField field = before is not null && before.Map.Field.Input == input ? before.Map.Field : Evaluate(input, ground, ownPaths, cancellation);
        if (field.Flags.ToArray().All(flag => (flag & (ReachFlags.Outside | ReachFlags.GroundMissing)) != ReachFlags.None))
        {
            Console.Error.WriteLine($"There is no ground for any cell around {station.Subject}: {string.Join("; ", field.Gaps)}");
            return null;
        }

        return new(session, setup, ReachMap.Of(field, budget), ground);
    }

    private static ReachField Evaluate(ReachFieldInput input, GroundMosaic ground, bool ownPaths, CancellationToken cancellation)
    {
        using Progress progress = Progress.Start("cells");
        ReachField field = ownPaths
            ? DirectArea.Evaluate(input, ground, progress, cancellation: cancellation)
            : SweptArea.Evaluate(input, ground, progress, cancellation: cancellation);
        progress.Stop();
        return field;
    }

    private static int Answer(ReachReport report, ReachOptions options, bool json, string[]? failOn)
    {
        foreach (string path in options.Files)
        {
            if (!ReachFiles.Write(path, report, options))
            {
                return ExitCode.BadInput;
            }
        }

        if (json)
        {
            Console.Out.WriteLine(ReachJson.Write(report, options));
        }
        else
        {
            ReachText.Write(report, options);
        }

        return Options.Code(report.Findings, failOn);
    }
}
