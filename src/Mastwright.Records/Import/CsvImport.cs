using System.Globalization;
using System.IO.Compression;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Store;
using nietras.SeparatedValues;

namespace Mastwright.Records.Import;

/// <summary>What an import has done.</summary>
/// <param name="Rows">Rows read, without the header and empty lines.</param>
/// <param name="Added">Records that are new in the store.</param>
/// <param name="AlreadyThere">Records that the store had.</param>
/// <param name="NotHeard">Of rows that hold several receptions: those that are empty.</param>
/// <param name="LongestWrite">The longest time that a write transaction was open.</param>
public readonly record struct ImportCount(long Rows, long Added, long AlreadyThere, long NotHeard, TimeSpan LongestWrite);

/// <summary>Brings delimited text, plain or gzip, into a store by a mapping, batch by batch.</summary>
/// <remarks>
/// Each batch is there whole or not at all; to go on after an interruption, run it again: what is there is not added twice. Memory
/// does not grow with the file.
/// </remarks>
public sealed class CsvImport
{
    private const int FirstBatch = 2048;
    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(40);
    private static readonly TimeSpan Late = TimeSpan.FromMilliseconds(100);

    private readonly RecordStore store;
    private readonly string network;
    private readonly RecordMapping mapping;
    private readonly RejectedRows rejected;
    private readonly Dictionary<string, string> addresses = new(StringComparer.Ordinal);
    private readonly List<KeyedRecord> batch = [];
    private int batchSize = FirstBatch;
    private ImportCount count;

    /// <summary>An import into one network of a store.</summary>
    public CsvImport(RecordStore store, string network, RecordMapping mapping, RejectedRows rejected)
    {
        this.store = store;
        this.network = network;
        this.mapping = mapping;
        this.rejected = rejected;
    }

    /// <summary>What has been done so far, over all files.</summary>
    public ImportCount Count => count;

    /// <summary>Brings in one file.</summary>
    /// <param name="file">The file's name, for messages and for the rows that are rejected.</param>
    /// <param name="stream">Its bytes, from the beginning; may be gzip.</param>
    /// <param name="progress">Told the rows read after each batch; may be null.</param>
    /// <param name="cancellation">Stops between two rows; what was told stays.</param>
    /// <exception cref="MappingException">The file has not the columns of the mapping, or cannot be read as rows.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public void Run(string file, Stream stream, IProgress<int>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            using Stream plain = Unpacked(stream);
            using StreamReader text = new(plain, Encoding.UTF8, detectEncodingFromByteOrderMarks: true, 1 << 16);
            using SepReader reader = Sep.New(mapping.Separator)
                .Reader(options => options with { HasHeader = false, DisableColCountCheck = true, CultureInfo = CultureInfo.InvariantCulture })
                .From(text);
            Rows(file, reader, progress, cancellation);
        }
        catch (Exception fault) when (fault is NotSupportedException or InvalidDataException or EndOfStreamException)
        {
            Acknowledge(progress);
            throw new MappingException($"{file}: after {count.Rows} rows in all it cannot be read on: a line or a quoted cell does not end (16 million characters are allowed), or the packed file is damaged; every record before it is kept", fault);
        }
        finally
        {
            batch.Clear();
            rejected.Flush();
        }
    }

    private void Rows(string file, SepReader reader, IProgress<int>? progress, CancellationToken cancellation)
    {
        string[]? header = null;
        RowDecoder[] decoders = [];
        SameCounter same = new(mapping.AntennasShareAddress);
        foreach (SepReader.Row row in reader)
        {
            cancellation.ThrowIfCancellationRequested();
            if (row.Span.Trim().IsEmpty)
            {
                continue;
            }

            if (header is null)
            {
                header = Header(row);
                decoders = Decoders(header, file);
                continue;
            }

            count = count with { Rows = count.Rows + 1 };
            if (row.ColCount != header.Length)
            {
                rejected.Add(file, row.LineNumberFrom, $"the row has not the {header.Length} cells of the header", row.Span);
                continue;
            }

            foreach (RowDecoder decoder in decoders)
            {
                Take(file, row, decoder, same);
            }

            if (batch.Count + decoders.Length > batchSize)
            {
                Acknowledge(progress);
            }
        }

        if (header is null)
        {
            throw new MappingException($"{file}: there is no row in it; the first names the columns");
        }

        Acknowledge(progress);
    }

    private void Take(string file, SepReader.Row row, RowDecoder decoder, SameCounter same)
    {
        if (mapping.SeveralInARow && !decoder.IsHeard(row))
        {
            count = count with { NotHeard = count.NotHeard + 1 };
        }
        else if (decoder.Decode(row, out string reason) is { } record)
        {
            batch.Add(new(record, same.KeyOf(record)));
        }
        else
        {
            rejected.Add(file, row.LineNumberFrom, reason, row.Span);
        }
    }

    private void Acknowledge(IProgress<int>? progress)
    {
        // What was rejected on the way to this batch is on its side file before the batch counts as taken.
        rejected.Flush();
        if (batch.Count > 0)
        {
            AddedBatch added = store.Add(network, batch);
            count = count with
            {
                Added = count.Added + added.Added,
                AlreadyThere = count.AlreadyThere + added.AlreadyThere,
                LongestWrite = added.WriteTime > count.LongestWrite ? added.WriteTime : count.LongestWrite,
            };
            bool small = added.WriteTime < Soon && batch.Count >= batchSize / 2;
            batchSize = added.WriteTime > Late ? Math.Max(batchSize / 2, 64) : small ? Math.Min(batchSize * 2, RecordStore.MostInOneBatch) : batchSize;
            batch.Clear();
        }

        progress?.Report((int)Math.Min(count.Rows, int.MaxValue));
    }

    private RowDecoder[] Decoders(string[] header, string file)
    {
        bool[] taken = new bool[header.Length];
        foreach (FieldsText row in mapping.Rows)
        {
            foreach ((_, FieldText? field) in row.All())
            {
                if (Array.IndexOf(header, field?.Column) is >= 0 and int column)
                {
                    taken[column] = true;
                }
            }
        }

        return [.. mapping.Rows.Select(row => new RowDecoder(row, header, taken, file, addresses))];
    }

    private static string[] Header(SepReader.Row row)
    {
        string[] header = new string[row.ColCount];
        for (int column = 0; column < header.Length; column++)
        {
            header[column] = FieldReader.Cell(row[column].Span).ToString();
        }

        return header;
    }

    private static Stream Unpacked(Stream stream)
    {
        BufferedStream buffered = new(stream, 1 << 16);
        int first = buffered.ReadByte();
        int second = buffered.ReadByte();
        buffered.Position = 0;
        return first == 0x1F && second == 0x8B ? new GZipStream(buffered, CompressionMode.Decompress) : buffered;
    }
}
