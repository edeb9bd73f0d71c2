using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>path: everything about the path between two stations, or about a profile that the user gives.</summary>
internal static class PathCommand
{
    internal static Command Create()
    {
        Argument<string?> plan = new("PLAN") { Description = "The plan file.", Arity = ArgumentArity.ZeroOrOne };
        Argument<string?> from = new("FROM") { Description = "Station: KEY, or SITE/FIT-OUT.", Arity = ArgumentArity.ZeroOrOne };
        Argument<string?> to = new("TO") { Description = "The other station.", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> picture = new("--picture") { HelpName = "FILE", Description = "Draw the path into this file (.svg or .png)." };
        Option<bool> dark = new("--dark") { Description = "Draw it light on dark." };
        Option<bool> json = Options.Json();
        Option<bool> outside = Options.AllowOutside();
        Option<string[]> failOn = Options.FailOn();
        BarePath bare = new();
        Command command = new("path", "Show one path in full: ledger, obstructions, mast heights, picture; of two stations of a plan, or of a profile.")
        {
            plan, from, to, picture, dark, json, outside, failOn,
        };
        bare.AddTo(command);
        command.SetAction((parsed, _) =>
        {
            if (bare.IsAsked(parsed))
            {
                if (parsed.GetValue(plan) is not null || parsed.GetValue(picture) is not null)
                {
                    Console.Error.WriteLine("--profile is a path without a plan: leave out PLAN FROM TO and --picture, or leave out --profile");
                    return Task.FromResult(ExitCode.BadInput);
                }

                return Task.FromResult(bare.Run(parsed, parsed.GetValue(json)));
            }

            if (bare.Given(parsed) is { } stray)
            {
                Console.Error.WriteLine($"{stray} belongs to a bare path, which --profile gives; a plan says it itself");
                return Task.FromResult(ExitCode.BadInput);
            }

            if (parsed.GetValue(plan) is not { } planPath || parsed.GetValue(from) is not { } start || parsed.GetValue(to) is not { } end)
            {
                Console.Error.WriteLine($"path needs PLAN FROM TO, or --profile FILE with the options of a bare path ('{OwnName.Command} path --help')");
                return Task.FromResult(ExitCode.BadInput);
            }

            return Task.FromResult(Run(planPath, start, end, parsed.GetValue(outside), parsed.GetValue(json), parsed.GetValue(failOn), PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark))));
        });
        return command;
    }

    private static int Run(string planPath, string start, string end, bool allowOutside, bool json, string[]? failOn, PictureFile? picture)
    {
        if (picture?.Problem is { } problem)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        using PlanSession? session = PlanSession.Open(planPath, allowOutside);
        if (session is null || StationChoice.Find(session.Plan, start) is not { } from || StationChoice.Find(session.Plan, end) is not { } to)
        {
            return ExitCode.BadInput;
        }

        if (from.Key == to.Key)
        {
            Console.Error.WriteLine($"'{start}' and '{end}' are one station; a path has two ends");
            return ExitCode.BadInput;
        }

        LinkReport link = session.Assessment.Link(from, to);
        if (session.TellDamage())
        {
            return ExitCode.BadInput;
        }

        MastHeights heights = MastHeights.Of(session.Assessment, link);
        if (json)
        {
            Console.Out.WriteLine(PathJson.Write(session.Assessment, link, heights));
        }
        else
        {
            PathText.Write(session.Assessment, link, heights);
        }

        if (picture is not null)
        {
            if (link.Path.Terrain is null)
            {
                Console.Error.WriteLine("There is no picture: there is no path between the two.");
                return ExitCode.BadInput;
            }

            if (!picture.Write(LinkPicture.Draw(session.Assessment, link, picture.IsDark)))
            {
                return ExitCode.BadInput;
            }

            if (!json)
            {
                Console.Out.WriteLine($"Picture: {picture.Path}");
            }
        }

        return Options.Code([link.Finding, .. link.Findings, .. session.Assessment.FindingsBeside(link)], failOn);
    }
}
