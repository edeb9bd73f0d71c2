using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using System.Globalization;
using Mastwright.Cli.Commands;

namespace Mastwright.Cli;

/// <summary>The whole command line: parses, runs one command, turns what went wrong into an exit code.</summary>
internal static class CommandLine
{
    private const int Columns = 80;

    internal static async Task<int> RunAsync(string[] args)
    {
        RootCommand root = new("Choose, calculate, predict, prove and keep small unattended radio stations.")
        {
            CheckCommand.Create(),
            PathCommand.Create(),
            LinksCommand.Create(),
            HopsCommand.Create(),
            AirCommand.Create(),
            ShadowCommand.Create(),
            RelayCommand.Create(),
            ReachCommand.Create(),
            AirtimeCommand.Create(),
            SunCommand.Create(),
            DrawCommand.Create(),
            GroundCommand.Create(),
            NewCommand.Create(),
            SchemaCommand.Create(),
            SitesCommand.Create(),
            RecordsCommand.Create(),
            LogCommand.Create(),
            ProveCommand.Create(),
            ServeCommand.Create(),
            DemoCommand.Create(),
        };

        ParserConfiguration parser = new() { ResponseFileTokenReplacer = null };
        // Without anything, the help says more than an error would.
        ParseResult parsed = root.Parse(args.Length == 0 ? ["--help"] : args, parser);
        try
        {
            if (parsed.Action is HelpAction help)
            {
                return await Help(parsed, help).ConfigureAwait(false);
            }

            if (parsed.Action is ParseErrorAction wrong)
            {
                wrong.ShowHelp = false;
                InvocationConfiguration toError = Quiet();
                toError.Output = Console.Error;
                await parsed.InvokeAsync(toError).ConfigureAwait(false);
                await Console.Error.WriteLineAsync($"Write '{OwnName.Command} {CommandPath(parsed)}--help' for what is possible.").ConfigureAwait(false);
                return ExitCode.BadInput;
            }

            if (NoOption(parsed) is { } stray)
            {
                await Console.Error.WriteLineAsync($"'{stray}' is not an option here. Write '{OwnName.Command} {CommandPath(parsed)}--help' for what is possible.").ConfigureAwait(false);
                return ExitCode.BadInput;
            }

            return await parsed.InvokeAsync(Quiet()).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            await Console.Error.WriteLineAsync("Stopped.").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (IOException fault)
        {
            // A full disk or a closed pipe behind the output: commands answer for the files that they name.
            await Console.Error.WriteLineAsync($"The output cannot be written: {fault.Message}").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (Exception fault)
        {
            await Console.Error.WriteLineAsync($"This is a fault of the program, not of your input: {fault.Message}").ConfigureAwait(false);
            await Console.Error.WriteLineAsync(fault.ToString()).ConfigureAwait(false);
            return ExitCode.InternalError;
        }
    }

    /// <summary>Help in 80 columns and by the name that the program is started by, which its file need not have.</summary>
    private static async Task<int> Help(ParseResult parsed, HelpAction help)
    {
        help.MaxWidth = Columns;
        await using StringWriter text = new(CultureInfo.InvariantCulture);
        InvocationConfiguration toText = Quiet();
        toText.Output = text;
        int code = await parsed.InvokeAsync(toText).ConfigureAwait(false);
        await Console.Out.WriteAsync(text.ToString().Replace(RootCommand.ExecutableName, "mastwright", StringComparison.Ordinal)).ConfigureAwait(false);
        return code;
    }

    /// <summary>A mistyped option that stands where an argument may: it would be taken for a file's name.</summary>
    private static string? NoOption(ParseResult parsed) => parsed.Tokens.Any(token => token.Type == TokenType.DoubleDash)
        ? null
        : parsed.Tokens.FirstOrDefault(token => token.Type == TokenType.Argument && token.Value.StartsWith("--", StringComparison.Ordinal))?.Value;

    private static InvocationConfiguration Quiet() => new() { EnableDefaultExceptionHandler = false };

    private static string CommandPath(ParseResult parsed)
    {
        string path = "";
        for (SymbolResult? at = parsed.CommandResult; at is CommandResult command; at = at.Parent)
        {
            path = command.Command is RootCommand ? path : command.Command.Name + " " + path;
        }

        return path;
    }
}
