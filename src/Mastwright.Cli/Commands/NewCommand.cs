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
            try
            {
                using StreamWriter writer = new(new FileStream(path, FileMode.CreateNew, FileAccess.Write));
                writer.Write(StarterPlan.Text(parsed.GetValue(name) ?? Path.GetFileNameWithoutExtension(path)));
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                Console.Error.WriteLine(File.Exists(path) ? $"{path}: is there already; a new plan never overwrites" : $"{path}: cannot be written: {fault.Message}");
                return ExitCode.BadInput;
            }

            Console.Out.WriteLine($"Wrote {path}. Put your sites and height files in, then: mastwright check {path}");
            return ExitCode.Fine;
        });
        return command;
    }
}
