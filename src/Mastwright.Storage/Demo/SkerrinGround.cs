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
}
