using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>check: a verdict on every link of a plan.</summary>
internal static class CheckCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Option<string?> site = new("--site") { HelpName = "KEY", Description = "Only the links of this site (its key)." };
        Option<string[]> fitOut = new("--fit-out") { HelpName = "SITE/FIT-OUT", Description = "SITE/FIT-OUT that stands in for the one in use; may be given for several sites." };
        Option<bool> all = new("--all") { Description = "Show the findings that are ok as well, and every budget line by line." };
        Option<bool> compare = new("--compare") { Description = "Put the fit-outs of a site (--site), or of every site that has several, side by side." };
        Option<bool> json = Options.Json();
        Option<bool> outside = Options.AllowOutside();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("check", "Give a verdict on every link of a plan.") { plan, site, fitOut, all, compare, json, outside, failOn };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            parsed.GetRequiredValue(plan),
            new(parsed.GetValue(site), parsed.GetValue(fitOut) ?? [], parsed.GetValue(all), parsed.GetValue(compare), parsed.GetValue(json), parsed.GetValue(outside), parsed.GetValue(failOn) ?? []),
            cancellation)));
        return command;
    }

    internal static int Run(string planPath, CheckOptions options, CancellationToken cancellation)
    {
        HeadStart.Begin(withTable: !options.Json);
        using PlanSession? session = PlanSession.Open(planPath, options.AllowOutside);
        if (session is null)
        {
            return ExitCode.BadInput;
        }

        Dictionary<string, string>? chosen = FitOutChoice.Read(session.Plan, options.FitOuts);
        if (chosen is null)
        {
            return ExitCode.BadInput;
        }

        if (options.Site is { } key && session.Plan.Sites.All(site => site.Key != key))
        {
            Console.Error.WriteLine($"'{key}' is not a site of the plan; its sites are {FitOutChoice.Listed(session.Plan.Sites.Select(site => site.Key))}");
            return ExitCode.BadInput;
        }

        if (options.Compare)
        {
            return Compare(session, chosen, options, cancellation);
        }

        using Progress progress = Progress.Start("links");
        PlanReport report = session.Assessment.Run(chosen, options.Site, progress, cancellation);
        progress.Stop();
        if (session.TellDamage())
        {
            return ExitCode.BadInput;
        }

        if (options.Json)
        {
            Console.Out.WriteLine(CheckJson.Write(report));
        }
        else
        {
            CheckText.Write(report, options.All);
        }

        return Options.Code(report.AllFindings, options.FailOn);
    }

    /// <summary>Fit-outs side by side: it judges nothing, so that the exit code says only whether it could be done.</summary>
    private static int Compare(PlanSession session, Dictionary<string, string> chosen, CheckOptions options, CancellationToken cancellation)
    {
        Site[] sites = [.. session.Plan.Sites.Where(site => options.Site is null ? site.FitOuts.Length > 1 : site.Key == options.Site)];
        if (sites.Length == 0 || sites.Any(site => site.FitOuts.Length < 2))
        {
            Console.Error.WriteLine(options.Site is { } key
                ? $"'{key}' has one fit-out or none; give it another under sites/{key}/fit-outs to compare with"
                : "No site of the plan has two fit-outs or more; give one another under its fit-outs to compare with");
            return ExitCode.BadInput;
        }

        using Progress progress = Progress.Start("links");
        ImmutableArray<FitOutComparison> comparisons = [.. sites.Select(site => session.Assessment.Compare(site.Key, chosen, progress, cancellation))];
        progress.Stop();
        if (session.TellDamage())
        {
            return ExitCode.BadInput;
        }

        if (options.Json)
        {
            Console.Out.WriteLine(ComparisonJson.Write(session.Plan, comparisons));
        }
        else
        {
            ComparisonText.Write(comparisons);
        }

        return ExitCode.Fine;
    }
}

/// <summary>What the check command was asked for.</summary>
internal sealed record CheckOptions(string? Site, string[] FitOuts, bool All, bool Compare, bool Json, bool AllowOutside, string[] FailOn);
