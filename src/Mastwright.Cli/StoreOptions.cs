using System.CommandLine;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Cli;

/// <summary>The store and the network that a command is about.</summary>
internal static class StoreOptions
{
    internal static Option<string> Store(string description = "The store: its file, or 'Host=…' for a database.") =>
        new("--store") { Description = description, HelpName = "STORE", Required = true };

    internal static Option<string?> Network() => new("--network") { Description = "The network (default: the only one in the store).", HelpName = "NAME" };

    /// <summary>Opens a store that is there; told, with null, where it is not.</summary>
    internal static RecordStore? There(string place) => StoreDoor.There(place, Console.Error.WriteLine);

    /// <summary>The network that is meant; told, with null, where the store has several or none.</summary>
    internal static string? NetworkOf(RecordStore store, string? asked, string? whereNone = null) => StoreDoor.NetworkOf(store, asked, Console.Error.WriteLine, whereNone);

    /// <summary>Runs a command on a store: what is wrong with it, or with a file, goes to the error output.</summary>
    internal static int Guarded(Func<int> work)
    {
        try
        {
            return work();
        }
        catch (Exception fault) when (fault is RecordStoreException or MappingException)
        {
            Console.Error.WriteLine(fault.Message);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"A file cannot be read or written: {fault.Message}");
        }

        return ExitCode.BadInput;
    }
}
