using System.CommandLine;

namespace Mastwright.Cli.Commands;

/// <summary>records: what stations have heard, kept in a store.</summary>
internal static class RecordsCommand
{
    internal static Command Create() => new("records", "Keep what your stations hear.") { RecordsMapCommand.Create(), RecordsImportCommand.Create(), RecordsExportCommand.Create(), RecordsCompactCommand.Create(), RecordsFitCommand.Create() };
}
