using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Import.Proposals;

/// <summary>What a mapping makes of the beginning of a file.</summary>
/// <param name="Records">The first records, ten at most.</param>
/// <param name="Rows">How many rows were read.</param>
/// <param name="Rejected">How many rows each reason has met.</param>
/// <param name="Problem">Why it cannot be used at all; empty where it can.</param>
public sealed record MappingPreview(IReadOnlyList<ReceptionRecord> Records, long Rows, IReadOnlyDictionary<string, long> Rejected, string Problem)
{
    private const int Most = 10;
    private const string Network = "preview";

    /// <summary>Imports the beginning of a file into a store in memory.</summary>
    /// <param name="mapping">The text of the mapping, of receptions.</param>
    /// <param name="beginning">The beginning of the file's text, which may break off.</param>
    public static MappingPreview Of(string mapping, string beginning)
    {
        using RejectedRows rejected = new(null);
        using RecordStore store = SqliteRecordStore.Open(":memory:");
        long rows = 0;
        string problem = "";
        try
        {
            RecordImport import = new(store, Network, RecordMapping.Parse(mapping, "mapping"), rejected);
            try
            {
                using MemoryStream stream = new(Encoding.UTF8.GetBytes(beginning));
                import.Run("the beginning", stream, null, CancellationToken.None);
            }
            catch (MappingException fault) when (fault.InnerException is SourceBrokenException)
            {
                // The beginning breaks off inside a value.
            }

            rows = import.Count.Rows;
        }
        catch (MappingException fault)
        {
            problem = fault.Message;
        }

        return new([.. store.ReadAfter(Network, 0, Most).Select(one => one.Record)], rows, rejected.Reasons, problem);
    }
}
