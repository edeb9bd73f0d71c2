using System.CommandLine;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>schema: the JSON Schema of the plan file, for editors.</summary>
internal static class SchemaCommand
{
    internal static Command Create()
    {
        Option<bool> parts = new("--parts") { Description = "The schema of an included parts file instead." };
        Command command = new("schema", "Write the JSON Schema of plan files, for your editor.") { parts };
        command.SetAction(parsed =>
        {
            Console.Out.WriteLine(PlanSchema.ToJson(parsed.GetValue(parts)));
            return ExitCode.Fine;
        });
        return command;
    }
}
