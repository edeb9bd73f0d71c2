using Mastwright.Records.Store;

namespace Mastwright.Records.Export;

/// <summary>The forms that records can be written in.</summary>
public enum ExportForm
{
    /// <summary>Delimited text of RFC 4180 with a row of names.</summary>
    Csv,

    /// <summary>A FeatureCollection of RFC 7946: a feature for each record.</summary>
    GeoJson,

    /// <summary>Apache Parquet, for programs that compute with columns.</summary>
    Parquet,
}

/// <summary>Which records are written.</summary>
/// <param name="Network">The network.</param>
/// <param name="FromMicroseconds">The first microsecond of the period, since 1970 UTC.</param>
/// <param name="ToMicroseconds">The first after it.</param>
public sealed record ExportChoice(string Network, long FromMicroseconds = long.MinValue, long ToMicroseconds = long.MaxValue);

/// <summary>Writes the records of a store, all that they hold, in the order in which they came.</summary>
public static class RecordExport
{
    private const int Piece = 16_384;

    /// <summary>The form that a file's ending names; null where it names none.</summary>
    public static ExportForm? ByEnding(string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".CSV" => ExportForm.Csv,
        ".GEOJSON" or ".JSON" => ExportForm.GeoJson,
        ".PARQUET" => ExportForm.Parquet,
        _ => null,
    };

    /// <summary>Writes the records; tells how many.</summary>
    /// <param name="store">The store.</param>
    /// <param name="choice">Which records.</param>
    /// <param name="form">The form.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="places">For GeoJSON: where the station of an address was at a time (microseconds since 1970 UTC); null where that is unknown.</param>
    /// <param name="progress">Told the records read; may be null.</param>
    /// <param name="cancellation">Stops between two pieces.</param>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    /// <exception cref="OperationCanceledException">It was stopped; what is written then is not whole.</exception>
    public static long Write(
        RecordStore store, ExportChoice choice, ExportForm form, Stream stream, Func<string, long, StationPlace?> places, IProgress<int>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(choice);
        using ExportWriter writer = form switch
        {
            ExportForm.Csv => new CsvWriter(stream),
            ExportForm.GeoJson => new GeoJsonWriter(stream, places),
            _ => new ParquetColumns(stream),
        };
        long last = 0;
        long written = 0;
        long read = 0;
        while (store.ReadAfter(choice.Network, last, Piece) is { Count: > 0 } piece)
        {
            cancellation.ThrowIfCancellationRequested();
            last = piece[^1].Ingest;
            read += piece.Count;
            StoredRecord[] chosen = [.. piece.Where(one => one.Record.TimeMicroseconds >= choice.FromMicroseconds && one.Record.TimeMicroseconds < choice.ToMicroseconds)];
            writer.Write(chosen);
            written += chosen.Length;
            progress?.Report((int)Math.Min(read, int.MaxValue));
        }

        writer.End();
        return written;
    }
}

/// <summary>Where a station is.</summary>
/// <param name="LongitudeDegrees">East of Greenwich, WGS 84.</param>
/// <param name="LatitudeDegrees">North of the equator, WGS 84.</param>
public readonly record struct StationPlace(double LongitudeDegrees, double LatitudeDegrees);
