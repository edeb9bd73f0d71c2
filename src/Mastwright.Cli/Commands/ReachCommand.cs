using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Findings;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Reports.Reach;

namespace Mastwright.Cli.Commands;

/// <summary>reach: where a station is heard, and what it hears.</summary>
internal static class ReachCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string[]> sites = new("SITE") { Description = "Station: KEY, or SITE/FIT-OUT; with several: best server and how many.", Arity = ArgumentArity.ZeroOrMore };
        Option<bool> allSites = new("--all-sites") { Description = "All sites with a fit-out in use, with those named: best server and how many." };
        Option<string?> fitOut = new("--fit-out") { Description = "Key of the site's fit-out, in place of the one in use." };
        Option<string?> compare = new("--compare-fit-out") { Description = "Key of another fit-out of the site, to tell how much better or worse it is." };
        Option<Estimate?> radius = Options.Quantity("--radius", Dimension.Length, "How far from the station (default 10 km).");
        Option<Estimate?> cell = Options.Quantity("--cell", Dimension.Length, "Side of a cell (default 90 m).");
        Option<string?> receiver = new("--receiver") { Description = "Who hears: handheld (default), handheld-indoors, mast, or the key of a neighbour or site that it is like." };
        Option<Estimate?> height = Options.Quantity("--receiver-height", Dimension.Length, "Height of the receiver above ground (default 1.5 m, a mast 6 m).");
        Option<string?> direction = new("--direction") { Description = "heard (default): the station sends; hears: it receives; both: the weaker way." };
        direction.AcceptOnlyFromAmong("heard", "hears", "both");
        Option<string?> layer = new("--layer") { Description = "What a .tif holds: margin (default), level, loss, confidence, delivery, difference, margin-low or margin-high; of several stations best-server (default), station-count or margin." };
        layer.AcceptOnlyFromAmong([.. ReachLayers.OfOne.Union(ReachLayers.OfSeveral)]);
        Option<bool> dark = new("--dark") { Description = "Draw pictures light on dark." };
        Option<string?> weights = new("--weights") { Description = "Places with weights (.csv, .geojson) or counts a cell (.tif, .asc), such as people, to be summed inside." };
        Option<bool> ranges = new("--ranges") { Description = "Work the map out over the range of the station's place and height as well: a map for each end of it." };
        Option<bool> ownPaths = new("--own-paths") { Description = "Give each cell a path of its own in place of one sweep: slow, for comparison." };
        Option<Estimate?> step = Options.Quantity("--step", Dimension.Length, "Step of the sweep (default and least: that of the ground).");
        CacheOptions cache = new();
        Option<string[]> output = new("--out") { Description = "File to write, by its ending: " + ReachFiles.Endings + "; may be given several times." };
        Option<bool> json = Options.Json();
        Option<bool> outside = Options.AllowOutside();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("reach", "Show where a station is heard and what it hears: areas by margin, map picture, raster.")
        {
            plan, sites, allSites, fitOut, compare, radius, cell, receiver, height, direction, layer, weights, ranges, ownPaths, step, dark, output, json, outside, failOn,
        };
        cache.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            using JobLine line = new();
            using LongWork? work = cache.Open(parsed, line.Say, line);
            if (work is null)
            {
                return Task.FromResult(ExitCode.BadInput);
            }

            ReachOptions options = new()
            {
                Stations = parsed.GetValue(sites) ?? [],
                AllSites = parsed.GetValue(allSites),
                FitOut = parsed.GetValue(fitOut),
                CompareFitOut = parsed.GetValue(compare),
                Area = new(parsed.GetValue(radius)?.Median ?? ReachOptions.UsualRadiusMetres, parsed.GetValue(cell)?.Median ?? ReachOptions.UsualCellMetres),
                Receiver = parsed.GetValue(receiver) ?? ReachReceiver.HandheldKey,
                ReceiverHeightMetres = parsed.GetValue(height)?.Median,
                Direction = ReachReport.DirectionOf(parsed.GetValue(direction)),
                LayerAsked = parsed.GetValue(layer),
                WeightsFile = parsed.GetValue(weights),
                WithRanges = parsed.GetValue(ranges),
                IsDark = parsed.GetValue(dark),
                OwnPaths = parsed.GetValue(ownPaths),
                LeastStepMetres = parsed.GetValue(step)?.Median ?? 0,
                Files = parsed.GetValue(output) ?? [],
            };
            return Task.FromResult(Run(parsed.GetRequiredValue(plan), options, work, parsed.GetValue(json), parsed.GetValue(outside), parsed.GetValue(failOn), cancellation));
        });
        return command;
    }

    /// <summary>Sectors ask for the ground of their own part: to keep more of it between them saves little time.</summary>
    private const long GroundBytes = 40L << 20;

    private static int Run(string planPath, ReachOptions options, LongWork work, bool json, bool allowOutside, string[]? failOn, CancellationToken cancellation)
    {
        if ((ReachLayers.Problem(options) ?? ReachFiles.Problem(options)) is { } wrongly)
        {
            Console.Error.WriteLine(wrongly);
            return ExitCode.BadInput;
        }

        HeadStart.Begin(withTable: !json, withPicture: ReachFiles.HavePicture(options.Files));
        using PlanSession? session = PlanSession.Open(planPath, allowOutside, GroundBytes);
        if (session is null)
        {
            return ExitCode.BadInput;
        }

        return options.IsOfSeveral
            ? RunSeveral(session, options, work, json, failOn, cancellation)
            : RunOne(session, options, work, json, failOn, cancellation);
    }

    private static int RunSeveral(PlanSession session, ReachOptions options, LongWork work, bool json, string[]? failOn, CancellationToken cancellation)
    {
        using Progress progress = Progress.Start("cells");
        SeveralReport? report = SeveralReach.Make(session, options, out ImmutableArray<string> problems, progress, work, cancellation);
        progress.Stop();
        Tell(problems);
        return report is null ? ExitCode.BadInput : Answer(
            options,
            report.Findings,
            failOn,
            path => SeveralFiles.Write(path, report, options),
            json ? () => Console.Out.WriteLine(SeveralJson.Write(report, options)) : () => SeveralText.Write(report, options));
    }

    private static int RunOne(PlanSession session, ReachOptions options, LongWork work, bool json, string[]? failOn, CancellationToken cancellation)
    {
        using Progress progress = Progress.Start("cells");
        ReachReport? report = ReachRun.Make(session, options, out ImmutableArray<string> problems, progress, work, cancellation);
        progress.Stop();
        Tell(problems);
        return report is null ? ExitCode.BadInput : Answer(
            options,
            report.Findings,
            failOn,
            path => ReachFiles.Write(path, report, options),
            json ? () => Console.Out.WriteLine(ReachJson.Write(report, options)) : () => ReachText.Write(report, options));
    }

    private static int Answer(ReachOptions options, ImmutableArray<Finding> findings, string[]? failOn, Action<string> write, Action say)
    {
        if (!AllWritten(options.Files, write))
        {
            return ExitCode.BadInput;
        }

        say();
        return Options.Code(findings, failOn);
    }

    private static void Tell(ImmutableArray<string> problems)
    {
        foreach (string problem in problems)
        {
            Console.Error.WriteLine(problem);
        }
    }

    private static bool AllWritten(string[] paths, Action<string> write)
    {
        foreach (string path in paths)
        {
            try
            {
                write(path);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                Console.Error.WriteLine($"{path}: cannot be written: {fault.Message}");
                return false;
            }
        }

        return true;
    }
}
