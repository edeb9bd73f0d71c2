using System.CommandLine;
using System.Diagnostics;
using Mastwright.Cli.Output;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Cli.Commands;

/// <summary>records import: brings files of receptions into a store by a mapping.</summary>
internal static class RecordsImportCommand
{
    internal static Command Create()
    {
        Argument<string[]> files = new("FILE") { Description = "Delimited text, JSON or lines of text, plain or gzip.", Arity = ArgumentArity.OneOrMore };
        Option<string> mapping = new("--as") { Description = "The mapping file: where each field is.", HelpName = "MAPPING", Required = true };
        Option<string> store = new("--store") { Description = "The store: a file, made when it is not there, or 'Host=…' for a database.", HelpName = "STORE", Required = true };
        Option<string?> network = new("--network") { Description = "The network the records are of (else the mapping's).", HelpName = "NAME" };
        Option<string?> rejected = new("--rejected") { Description = "Where rows that are no records go (default: STORE.rejected.csv).", HelpName = "FILE" };
        Option<bool> json = Options.Json();
        Command command = new("import", "Bring files of receptions into a store; what is there is not added twice.") { files, mapping, store, network, rejected, json };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            new(parsed.GetRequiredValue(files), parsed.GetRequiredValue(mapping), parsed.GetRequiredValue(store), parsed.GetValue(network), parsed.GetValue(rejected)),
            parsed.GetValue(json),
            cancellation)));
        return command;
    }

    private static int Run(RecordsImportRequest request, bool json, CancellationToken cancellation)
    {
        try
        {
            RecordMapping mapping = RecordMapping.Parse(File.ReadAllText(request.Mapping), request.Mapping);
            if ((request.Network ?? mapping.Network) is not { Length: > 0 } network)
            {
                Console.Error.WriteLine($"{request.Mapping}: names no network; give --network NAME, or add 'network: NAME' to it");
                return ExitCode.BadInput;
            }

            if (request.Files.FirstOrDefault(file => !File.Exists(file)) is { } missing)
            {
                Console.Error.WriteLine($"{missing}: there is no such file");
                return ExitCode.BadInput;
            }

            return Run(request, mapping, network, json, cancellation);
        }
        catch (Exception fault) when (fault is MappingException or RecordStoreException)
        {
            Console.Error.WriteLine(fault.Message);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"A file cannot be read or written: {fault.Message}");
        }

        return ExitCode.BadInput;
    }

    private static int Run(RecordsImportRequest request, RecordMapping mapping, string network, bool json, CancellationToken cancellation)
    {
        long start = Stopwatch.GetTimestamp();
        using RecordStore store = RecordStore.At(request.Store);
        using RejectedRows rejected = new(request.Rejected ?? (PostgresRecordStore.IsPlace(request.Store) ? "rejected.csv" : request.Store + ".rejected.csv"));
        RecordImport import = new(store, network, mapping, rejected);
        try
        {
            using Progress progress = Progress.Start("rows");
            foreach (string file in request.Files)
            {
                using FileStream stream = File.OpenRead(file);
                import.Run(file, stream, progress, cancellation);
            }
        }
        catch (Exception fault) when (fault is MappingException or RecordStoreException or OperationCanceledException && import.Count.Rows > 0)
        {
            Console.Error.WriteLine($"{import.Count.Added} records were added before this and are kept; the same import again goes on from there.");
            throw;
        }

        foreach (string field in import.NeverThere)
        {
            Console.Error.WriteLine($"note: in no row of {field}; the mapping may be wrong there");
        }

        RecordsImportReport report = new(network, store.Place, import.Count, rejected, store.Count(network), Stopwatch.GetElapsedTime(start));
        Console.Out.WriteLine(json ? RecordsImportJson.Write(network, store.Place, import.Count, rejected, report.InStore) : report.Text());
        return ExitCode.Fine;
    }
}

/// <summary>What records import is asked for.</summary>
internal sealed record RecordsImportRequest(string[] Files, string Mapping, string Store, string? Network, string? Rejected);
