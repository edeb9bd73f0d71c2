using System.Globalization;
using System.Security.Cryptography;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>What is known about one ground file after reading all of it.</summary>
public sealed record GroundFileInfo
{
    /// <summary>Name of the source it belongs to.</summary>
    public required string SourceName { get; init; }

    /// <summary>Full path.</summary>
    public required string FilePath { get; init; }

    /// <summary>Format, for a person.</summary>
    public required string Format { get; init; }

    /// <summary>Grid of the samples.</summary>
    public required GridFrame Frame { get; init; }

    /// <summary>Rectangle in degrees that holds the grid.</summary>
    public required GeoBounds Bounds { get; init; }

    /// <summary>Whether the samples are cover codes; else they are heights.</summary>
    public bool IsCover { get; init; }

    /// <summary>What the heights are of.</summary>
    public HeightKind Kind { get; init; }

    /// <summary>Vertical datum by the plan, or by the file itself where the plan does not say; empty when nobody does.</summary>
    public string Datum { get; init; } = "";

    /// <summary>Lowest height in metres, or lowest cover code; null when there is none or the file is damaged.</summary>
    public double? Lowest { get; init; }

    /// <summary>Highest height in metres, or highest cover code; null when there is none or the file is damaged.</summary>
    public double? Highest { get; init; }

    /// <summary>Share of samples without a value, in percent; null when the file is damaged.</summary>
    public double? VoidPercent { get; init; }

    /// <summary>SHA-256 of the file in lower-case hexadecimal; empty when it cannot be read.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>File and grid.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{FilePath}: {Format}, {Frame}, {Lowest:0}…{Highest:0}");

    /// <summary>Reads a whole file piece by piece; a damaged one keeps what its header says.</summary>
    internal static GroundFileInfo Of(LibraryFile file, out GroundProblem? problem, CancellationToken cancellation)
    {
        problem = null;
        GroundFileInfo info = new()
        {
            SourceName = file.SourceName,
            FilePath = file.File.FilePath,
            Format = file.File.Format,
            Frame = file.File.Frame,
            Bounds = file.Bounds,
            IsCover = file.IsCover,
            Kind = file.Kind,
            Datum = file.Datum,
        };
        try
        {
            Range range = Read(file, cancellation);
            using FileStream stream = new(file.File.FilePath, FileMode.Open, FileAccess.Read, FileShare.Read);
            return info with
            {
                Lowest = range.Known > 0 ? range.Lowest : null,
                Highest = range.Known > 0 ? range.Highest : null,
                VoidPercent = 100.0 * (range.All - range.Known) / range.All,
                Sha256 = Convert.ToHexStringLower(SHA256.HashData(stream)),
            };
        }
        catch (GroundFileException fault)
        {
            problem = new(file.SourceName, fault.FilePath, fault.Found, fault.Right);
            return info;
        }
        catch (IOException fault)
        {
            problem = new(file.SourceName, file.File.FilePath, $"it cannot be read ({fault.Message})", "check the path and the rights on the file");
            return info;
        }
    }

    private static Range Read(LibraryFile file, CancellationToken cancellation)
    {
        Range range = new(double.PositiveInfinity, double.NegativeInfinity, 0, 0);
        for (int row = 0; row < file.PiecesDown; row++)
        {
            for (int column = 0; column < file.PiecesAcross; column++)
            {
                cancellation.ThrowIfCancellationRequested();
                GroundWindow window = file.ReadPiece(column, row);
                foreach (float height in window.Heights)
                {
                    range = float.IsNaN(height) ? range with { All = range.All + 1 } : range.With(height);
                }

                foreach (byte code in window.Cover)
                {
                    range = code == 0 ? range with { All = range.All + 1 } : range.With(code);
                }
            }
        }

        return range;
    }

    private readonly record struct Range(double Lowest, double Highest, long Known, long All)
    {
        internal Range With(double value) => new(Math.Min(Lowest, value), Math.Max(Highest, value), Known + 1, All + 1);
    }
}
