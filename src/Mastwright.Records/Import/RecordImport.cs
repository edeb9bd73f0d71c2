using System.Globalization;
using Mastwright.Records.Store;

namespace Mastwright.Records.Import;

/// <summary>What an import has done.</summary>
/// <param name="Rows">Rows read, without the header and empty lines.</param>
/// <param name="Added">Records that are new in the store.</param>
/// <param name="AlreadyThere">Records that the store had.</param>
/// <param name="NotHeard">Of rows that hold several receptions: those that are empty.</param>
/// <param name="LongestWrite">The longest time that a write transaction was open.</param>
public readonly record struct ImportCount(long Rows, long Added, long AlreadyThere, long NotHeard, TimeSpan LongestWrite);

/// <summary>Brings files of delimited text, JSON or lines, plain or gzip, into a store by a mapping, batch by batch.</summary>
/// <remarks>
/// Each batch is there whole or not at all; to go on after an interruption, run it again: what is there is not added twice. Memory
/// does not grow with the file, nor with a line that never ends.
/// </remarks>
public sealed class RecordImport
{
    private readonly RecordMapping mapping;
    private readonly RowTaking taking;

    /// <summary>An import into one network of a store.</summary>
    /// <param name="store">The store.</param>
    /// <param name="network">The network that the records are of.</param>
    /// <param name="mapping">Where each field is.</param>
    /// <param name="rejected">Where rows go that are no records.</param>
    /// <param name="time">The clock that tells times in the future; the system's where it is null.</param>
    public RecordImport(RecordStore store, string network, RecordMapping mapping, RejectedRows rejected, TimeProvider? time = null)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        this.mapping = mapping;
        taking = new(store, network, mapping, rejected, SourceClock.Of(time ?? TimeProvider.System));
    }

    /// <summary>What has been done so far, over all files.</summary>
    public ImportCount Count => taking.Count;

    /// <summary>The fields of the mapping that were in no row of a file, each with the file: they are unknown there, or the mapping is wrong.</summary>
    public IReadOnlyList<string> NeverThere => taking.NeverThere;

    /// <summary>Brings in one file.</summary>
    /// <param name="file">The file's name, for messages and for the rows that are rejected.</param>
    /// <param name="stream">Its bytes, from the beginning; may be gzip.</param>
    /// <param name="progress">Told the rows read after each batch; may be null.</param>
    /// <param name="cancellation">Stops between two rows; what was told stays.</param>
    /// <exception cref="MappingException">The file has not the places of the mapping, or cannot be read as rows.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public void Run(string file, Stream stream, IProgress<int>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        taking.Progress = progress;
        try
        {
            using Stream plain = SourceStream.Unpacked(stream);
            using StreamReader text = new(plain, KeptBytes.Utf8, detectEncodingFromByteOrderMarks: true, 1 << 16);
            switch (mapping.Form)
            {
                case SourceForm.Json: JsonSource.Read(file, text, mapping, taking, cancellation); break;
                case SourceForm.Lines: PatternSource.Read(file, text, mapping, taking, cancellation); break;
                default: DelimitedSource.Read(file, text, mapping, taking, cancellation); break;
            }

            taking.Acknowledge();
        }
        catch (Exception fault) when (fault is NotSupportedException or InvalidDataException or EndOfStreamException)
        {
            taking.Acknowledge();
            string cause = fault is SourceBrokenException ? fault.Message : "a line or a quoted cell does not end (16 million characters are allowed), or the packed file is damaged";
            throw new MappingException(string.Create(CultureInfo.InvariantCulture, $"{file}: after {taking.Count.Rows} rows in all it cannot be read on: {cause}; every record before it is kept"), fault);
        }
        finally
        {
            taking.Drop();
        }
    }
}
