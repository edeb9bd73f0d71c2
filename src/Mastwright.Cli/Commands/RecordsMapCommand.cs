using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Records.Import;
using Mastwright.Records.Import.Proposals;
using Mastwright.Storage.Files;

namespace Mastwright.Cli.Commands;

/// <summary>records map: looks at a file and proposes a mapping for it.</summary>
internal static class RecordsMapCommand
{
    internal static Command Create()
    {
        Argument<string> file = new("FILE") { Description = "Delimited text, JSON or lines of text, plain or gzip." };
        Option<string?> to = new("--to") { Description = "Write the mapping into this new file, and the rows decoded by it to the output.", HelpName = "FILE" };
        Command command = new("map", "Look at a file and propose a mapping for it, with ten rows decoded.") { file, to };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.GetValue(to)));
        return command;
    }

    private static int Run(string file, string? to)
    {
        if (!File.Exists(file))
        {
            Console.Error.WriteLine($"{file}: there is no such file");
            return ExitCode.BadInput;
        }

        if (to is not null && File.Exists(to))
        {
            Console.Error.WriteLine($"{to}: is there already; name a new file");
            return ExitCode.BadInput;
        }

        return StoreOptions.Guarded(() =>
        {
            using FileStream stream = File.OpenRead(file);
            (string mapping, string beginning) = MappingProposal.Of(file, stream);
            string rows = PreviewText.Of(MappingPreview.Of(mapping, beginning));
            if (to is null)
            {
                // The output as a whole is a mapping file: what was decoded stands in its remarks.
                Console.Out.WriteLine(mapping + "#\n" + string.Join('\n', rows.Split('\n').Select(line => "# " + line)));
            }
            else
            {
                WholeFile.Write(to, mapping);
                Console.Out.WriteLine(rows);
            }

            return ExitCode.Fine;
        });
    }
}
