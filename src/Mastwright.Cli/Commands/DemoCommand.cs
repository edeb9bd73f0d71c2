using System.CommandLine;
using System.Globalization;
using Mastwright.Plans;
using Mastwright.Storage.Demo;

namespace Mastwright.Cli.Commands;

/// <summary>demo: the main job on the invented island of Skerrin.</summary>
internal static class DemoCommand
{
    private static readonly (string From, string To)[] Shown = [("ferry-house", "gannet-stack"), ("ferry-house", "lantern-bay")];

    internal static Command Create()
    {
        Argument<string?> folder = new("FOLDER") { Description = "Where to write the demo (default: skerrin-demo here).", Arity = ArgumentArity.ZeroOrOne };
        Option<bool> serve = new("--serve") { Description = "Open the island in the browser instead." };
        ServeOptions options = new();
        Command command = new("demo", "Run the main job on Skerrin, an invented island.") { folder, serve };
        options.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            string where = parsed.GetValue(folder) ?? "skerrin-demo";
            if (parsed.GetValue(serve))
            {
                return options.Problem(parsed) is { } problem ? Refused(problem) : Serve(where, plan => options.Of(parsed, plan, allowOutside: false), cancellation);
            }

            return options.Given(parsed) is { } stray ? Refused($"{stray} belongs to --serve") : Task.FromResult(Run(where, cancellation));
        });
        return command;
    }

    private static Task<int> Serve(string folder, Func<string, ServeQuestion> question, CancellationToken cancellation) =>
        Write(folder) is { } files ? ServeCommand.Run(question(files.PlanPath), cancellation) : Task.FromResult(ExitCode.BadInput);

    private static Task<int> Refused(string problem)
    {
        Console.Error.WriteLine(problem);
        return Task.FromResult(ExitCode.BadInput);
    }

    /// <summary>Writes the island; tells what is wrong on the error output and gives null when it cannot be written.</summary>
    private static SkerrinDemoFiles? Write(string folder)
    {
        try
        {
            using Ticker ticker = Ticker.Start("Making the ground");
            return SkerrinDemo.WriteTo(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{folder}: cannot be written: {fault.Message}");
            return null;
        }
    }

    private static int Run(string folder, CancellationToken cancellation)
    {
        Part(1, $"The island: plan, parts, ground and cover into {folder}");
        if (Write(folder) is not { } files)
        {
            return ExitCode.BadInput;
        }

        Console.Out.WriteLine(files.GroundWritten ? "Made the ground; all of it is invented." : "The ground is there already.");
        foreach (string left in files.LeftAlone)
        {
            Console.Out.WriteLine($"{left} was changed by somebody and stays as it is.");
        }

        Part(2, "A verdict on every link");
        Console.Out.WriteLine($"{OwnName.Command} check {files.PlanPath}");
        Console.Out.WriteLine();
        int code = CheckCommand.Run(files.PlanPath, new(null, [], All: false, Compare: false, Json: false, AllowOutside: false, []), cancellation);
        if (code > ExitCode.FindingFails)
        {
            return code;
        }

        Part(3, "One path that is clear and one that is not, as pictures");
        code = Pictures(files.PlanPath, folder);
        if (code != ExitCode.Fine)
        {
            return code;
        }

        Part(4, "The proof: two months of records, invented, held against the change of 1 July");
        code = DemoProof.Run(files.PlanPath, folder, cancellation);
        if (code != ExitCode.Fine)
        {
            return code;
        }

        Part(5, "What to try next");
        Console.Out.WriteLine($"{OwnName.Command} path {files.PlanPath} ferry-house lantern-bay");
        Console.Out.WriteLine($"{OwnName.Command} check {files.PlanPath} --fit-out ferry-house/eaves --site ferry-house");
        Console.Out.WriteLine($"{OwnName.Command} airtime {files.PlanPath}");
        Console.Out.WriteLine($"{OwnName.Command} ground info {files.PlanPath}");
        Console.Out.WriteLine($"Then write your own plan: {OwnName.Command} new my-plan.yaml");
        return ExitCode.Fine;
    }

    private static int Pictures(string planPath, string folder)
    {
        using PlanSession? session = PlanSession.Open(planPath, allowOutside: false);
        if (session is null)
        {
            return ExitCode.BadInput;
        }

        System.Collections.Immutable.ImmutableArray<LinkStation> stations = LinkSelection.Stations(session.Plan, new Dictionary<string, string>(StringComparer.Ordinal));
        foreach ((string from, string to) in Shown)
        {
            if (stations.FirstOrDefault(station => station.Key == from) is { } start && stations.FirstOrDefault(station => station.Key == to) is { } end)
            {
                LinkReport link = session.Assessment.Link(start, end);
                foreach (string ending in (string[])[".svg", ".png"])
                {
                    PictureFile picture = PictureFile.Of(Path.Combine(folder, $"{from}-{to}{ending}"), isDark: false)!;
                    if (!picture.Write(LinkPicture.Draw(session.Assessment, link, isDark: false)))
                    {
                        return ExitCode.BadInput;
                    }

                    Console.Out.WriteLine(picture.Path);
                }
            }
        }

        return ExitCode.Fine;
    }

    private static void Part(int number, string title)
    {
        Console.Out.WriteLine();
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"— {number}. {title}"));
        Console.Out.WriteLine();
    }
}
