using System.CommandLine;
using System.CommandLine.Invocation;
using Mastwright.Cli.Commands;

namespace Mastwright.Cli;

/// <summary>The whole command line: parses, runs one command, turns what went wrong into an exit code.</summary>
internal static class CommandLine
{
    internal static async Task<int> RunAsync(string[] args)
    {
        RootCommand root = new("Choose, calculate, predict, prove and keep small unattended radio stations.")
        {
            CheckCommand.Create(),
            PathCommand.Create(),
            AirtimeCommand.Create(),
            GroundCommand.Create(),
            NewCommand.Create(),
            SchemaCommand.Create(),
            SitesCommand.Create(),
            DemoCommand.Create(),
        };

        ParserConfiguration parser = new() { ResponseFileTokenReplacer = null };
        ParseResult parsed = root.Parse(args, parser);
        try
        {
            if (parsed.Action is ParseErrorAction wrong)
            {
                wrong.ShowHelp = false;
                await parsed.InvokeAsync(Quiet()).ConfigureAwait(false);
                await Console.Error.WriteLineAsync($"Write 'mastwright {CommandPath(parsed)}--help' for what is possible.").ConfigureAwait(false);
                return ExitCode.BadInput;
            }

            return await parsed.InvokeAsync(Quiet()).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            await Console.Error.WriteLineAsync("Stopped.").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (Exception fault)
        {
            await Console.Error.WriteLineAsync($"This is a fault of the program, not of your input: {fault.Message}").ConfigureAwait(false);
            await Console.Error.WriteLineAsync(fault.ToString()).ConfigureAwait(false);
            return ExitCode.InternalError;
        }
    }

    private static InvocationConfiguration Quiet() => new() { EnableDefaultExceptionHandler = false };

    private static string CommandPath(ParseResult parsed)
    {
        string path = "";
        for (System.CommandLine.Parsing.SymbolResult? at = parsed.CommandResult; at is System.CommandLine.Parsing.CommandResult command; at = at.Parent)
        {
            path = command.Command is RootCommand ? path : command.Command.Name + " " + path;
        }

        return path;
    }
}
