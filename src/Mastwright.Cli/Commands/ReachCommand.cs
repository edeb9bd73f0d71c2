using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;

namespace Mastwright.Cli.Commands;

/// <summary>reach: where a station is heard, and what it hears.</summary>
internal static class ReachCommand
{
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
                Area = new(parsed.GetValue(radius)?.Median ?? ReachOptions.UsualRadiusMetres, parsed.GetValue(cell)?.Median ?? ReachOptions.UsualCellMetres),
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

        HeadStart.Begin(withTable: !json, withPicture: ReachFiles.HavePicture(options.Files));
        using PlanSession? session = PlanSession.Open(planPath, allowOutside);
        if (session is null)
        {
            return ExitCode.BadInput;
        }

        using Progress progress = Progress.Start("cells");
        ReachReport? report = ReachRun.Make(session, options, out ImmutableArray<string> problems, progress, cancellation);
        progress.Stop();
        foreach (string problem in problems)
        {
            Console.Error.WriteLine(problem);
        }

        return report is null ? ExitCode.BadInput : Answer(report, options, json, failOn);
    }

    private static int Answer(ReachReport report, ReachOptions options, bool json, string[]? failOn)
    {
        foreach (string path in options.Files)
        {
            try
            {
                ReachFiles.Write(path, report, options);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                Console.Error.WriteLine($"{path}: cannot be written: {fault.Message}");
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
