using System.CommandLine;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>new: writes a commented plan to start from.</summary>
internal static class NewCommand
{
    internal static Command Create()
    {
        Argument<string> plan = new("PLAN") { Description = "The file to write; it must not be there yet." };
        Option<string?> name = new("--name") { Description = "Name of the plan (default: the file's name)." };
        Command command = new("new", "Write a commented plan to start from.") { plan, name };
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(plan);
            if (StarterPlan.Write(path, parsed.GetValue(name) ?? Path.GetFileNameWithoutExtension(path)) is { } problem)
            {
                Console.Error.WriteLine(problem.ToString());
                return ExitCode.BadInput;
            }

            Console.Out.WriteLine($"Wrote {path}. Put your sites and height files in, then: {OwnName.Command} check {path}");
            return ExitCode.Fine;
        });
        return command;
    }
}
