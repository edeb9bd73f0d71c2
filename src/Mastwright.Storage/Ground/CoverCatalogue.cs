using System.Collections.Immutable;
using System.Text;
using Mastwright.Ground;
using Mastwright.Storage.Catalogue;

namespace Mastwright.Storage.Ground;

/// <summary>Reads the table from cover codes to classes and heights: the rows that ship, and a user's own.</summary>
public static class CoverCatalogue
{
    /// <summary>Most bytes of a file.</summary>
    public const int MaximumBytes = 1024 * 1024;

    private static readonly Lazy<CoverTable> Shipped = new(ReadShipped);

    /// <summary>The table that comes with the program: the codes of ESA WorldCover.</summary>
    public static CoverTable BuiltIn => Shipped.Value;

    /// <summary>Reads a user's own rows and lays them over a table: a row of the same code replaces.</summary>
    /// <param name="path">The file: YAML with a list "cover".</param>
    /// <param name="below">The table to add to.</param>
    /// <param name="table">The table with the added rows; the one below when there is a fault.</param>
    /// <param name="faults">Everything that is wrong with the file; empty when nothing is.</param>
    /// <returns>Whether the file could be used.</returns>
    public static bool TryLoad(string path, CoverTable below, out CoverTable table, out ImmutableArray<CatalogueFault> faults)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(below);
        table = below;
        string text;
        try
        {
            if (new FileInfo(path).Length > MaximumBytes)
            {
                faults = [new(path, 0, "", $"the file is larger than {MaximumBytes / 1024} KiB; a cover table is a short list")];
                return false;
            }

            text = File.ReadAllText(path, Encoding.UTF8);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            faults = [new(path, 0, "", "the file cannot be read: " + problem.Message)];
            return false;
        }

        if (!TryParse(text, path, out ImmutableArray<CoverRow> rows, out faults))
        {
            return false;
        }

        HashSet<byte> replaced = [.. rows.Select(row => row.Code)];
        table = CoverTable.Of([.. below.Rows.Where(row => !replaced.Contains(row.Code)), .. rows]);
        return true;
    }

    /// <summary>Reads rows from text.</summary>
    /// <param name="text">The YAML text.</param>
    /// <param name="name">Name of the file, for the faults.</param>
    /// <param name="rows">The rows; empty when there is a fault.</param>
    /// <param name="faults">Everything that is wrong; empty when nothing is.</param>
    public static bool TryParse(string text, string name, out ImmutableArray<CoverRow> rows, out ImmutableArray<CatalogueFault> faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(name);
        CoverReader reader = new(name);
        rows = reader.Read(text);
        faults = [.. reader.Faults];
        if (!faults.IsEmpty)
        {
            rows = [];
        }

        return faults.IsEmpty;
    }

    private static CoverTable ReadShipped()
    {
        string name = "catalogue/cover.yaml";
        using Stream stream = typeof(CoverCatalogue).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return TryParse(reader.ReadToEnd(), name, out ImmutableArray<CoverRow> rows, out ImmutableArray<CatalogueFault> faults)
            ? CoverTable.Of(rows)
            : throw new InvalidOperationException(string.Join(Environment.NewLine, faults));
    }
}
