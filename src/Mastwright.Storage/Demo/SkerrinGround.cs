using System.Text;
using Mastwright.Ground;
using Mastwright.Storage.Files;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Demo;

/// <summary>The ground of Skerrin, an invented island in open sea: heights and cover of the tile 46–47° N 18–19° W at one arc-second.</summary>
/// <remarks>
/// The same bytes on every machine and instruction set, whatever the number of threads: see docs/physics/skerrin-ground.md for how.
/// Immutable and safe from many threads.
/// </remarks>
public sealed class SkerrinGround
{
    /// <summary>Version of the generator: changes whenever its bytes do.</summary>
    public const int Version = 1;

    /// <summary>Posts along a side of the tile of heights, both edges included.</summary>
    public const int HeightSide = SkerrinFrame.Side;

    /// <summary>Cells along a side of the cover.</summary>
    public const int CoverSide = SkerrinCover.Side;

    private const string ListName = "written.txt";
    private static readonly string Writer = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Skerrin ground {Version}, invented");
    private static readonly string[] Names = ["N46W019.hgt", "cover/N46W019.tif", "tiles.txt"];

    private readonly short[] heights;
    private readonly byte[] cover;

    private SkerrinGround(short[] heights, byte[] cover)
    {
        this.heights = heights;
        this.cover = cover;
    }

    /// <summary>Heights in metres above the sea, north-west post first, row by row; sea is 0, land 1 or more.</summary>
    public ReadOnlySpan<short> Heights => heights;

    /// <summary>Cover in the class codes of ESA WorldCover, north-west cell first; each cell lies between four posts.</summary>
    public ReadOnlySpan<byte> Cover => cover;

    /// <summary>How the cover lies on the earth.</summary>
    public static GridFrame CoverFrame => GridFrame.Geographic(
        SkerrinFrame.WestDegrees + (0.5 / CoverSide),
        SkerrinFrame.NorthDegrees - (0.5 / CoverSide),
        1.0 / CoverSide,
        1.0 / CoverSide,
        CoverSide,
        CoverSide,
        samplesAreAreas: true);

    /// <summary>Makes the ground: some two seconds on two cores, some 60 MB.</summary>
    /// <param name="mostThreads">Most threads to use, 1 or more; -1 for as many as there are. The bytes are the same.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of threads is zero or below -1.</exception>
    public static SkerrinGround Generate(int mostThreads = -1)
    {
        ParallelOptions threads = new() { MaxDegreeOfParallelism = mostThreads };
        SkerrinRain rain = SkerrinRain.Fall(threads);
        short[] drawn = SkerrinHeights.Draw(rain, threads);
        return new(drawn, SkerrinCover.Draw(rain, drawn, threads));
    }

    /// <summary>Whether the folder <c>ground</c> in a folder holds this version's files, unchanged.</summary>
    public static bool IsCurrent(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        string ground = Path.Combine(folder, "ground");
        WrittenList list = WrittenList.Read(Path.Combine(ground, ListName));
        return list.Writer == Writer && list.Matches(ground, Names);
    }

    /// <summary>
    /// Writes <c>ground/N46W019.hgt</c>, <c>ground/cover/N46W019.tif</c> and <c>ground/tiles.txt</c>, each whole or not at all, unless they
    /// are there already.
    /// </summary>
    /// <param name="folder">Folder to write into; made when it is not there.</param>
    /// <returns>True when it wrote, false when the files were current.</returns>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static bool WriteTo(string folder)
    {
        if (IsCurrent(folder))
        {
            return false;
        }

        SkerrinGround made = Generate();
        string ground = Path.Combine(folder, "ground");
        Directory.CreateDirectory(Path.Combine(ground, "cover"));
        HgtWriter.Write(Path.Combine(ground, Names[0]), made.Heights, HeightSide);
        CoverTiffWriter.Write(Path.Combine(ground, Names[1]), CoverFrame, made.cover);
        WholeFile.Write(Path.Combine(ground, Names[2]), "N46W019\n");
        WrittenList.Of(Writer, ground, Names).Write(Path.Combine(ground, ListName));
        return true;
    }
}
