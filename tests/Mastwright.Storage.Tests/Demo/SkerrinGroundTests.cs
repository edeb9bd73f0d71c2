using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Mastwright.Storage.Demo;

namespace Mastwright.Storage.Tests.Demo;

/// <summary>The ground of the demo, as it was written out: pinned to its bytes, so that a stored example, a picture or a bench result means the same everywhere.</summary>
[Collection(SkerrinFolder.Name)]
public sealed class SkerrinGroundTests(SkerrinFolder folder)
{
    private const double MetresPerColumn = 21.37;
    private const double MetresPerRow = 30.88;

    /// <summary>A change of these hashes is a change of the island: raise <see cref="SkerrinGround.Version"/> with it.</summary>
    [Fact]
    public void The_bytes_of_version_1_are_these()
    {
        Assert.Equal(1, SkerrinGround.Version);
        Assert.Equal("cc91ae1f3d6b40c1e67b473e68a40c1615120b5c4026a71ff90e9c59d1dd7e07", HashOf(MemoryMarshal.AsBytes(folder.Heights)));
        Assert.Equal("d23d49cc61117d705cf3a01e19a100db0e184a3e77486b59203b805d29ef54d1", HashOf(folder.Cover));
    }

    /// <summary>Left to the full run: it makes the island once more, on one processor.</summary>
    [Fact, Trait("needs", "system")]
    public void One_thread_makes_the_same_island_as_many()
    {
        SkerrinGround alone = SkerrinGround.Generate(mostThreads: 1);
        Assert.True(alone.Heights.SequenceEqual(folder.Heights));
        Assert.True(alone.Cover.SequenceEqual(folder.Cover));
    }

    /// <summary>The story says about 34 by 22 km and some 720 m; the islet lies apart, in the west.</summary>
    [Fact]
    public void The_island_has_the_size_and_height_of_the_story()
    {
        (int north, int south, int west, int east) = Extent(column => column > 900);
        Assert.InRange((south - north) * MetresPerRow, 32_000, 36_000);
        Assert.InRange((east - west) * MetresPerColumn, 20_000, 24_000);
        short top = 0;
        foreach (short height in folder.Heights)
        {
            Assert.True(height >= 0);
            top = Math.Max(top, height);
        }

        Assert.InRange(top, 700, 740);
        (north, south, west, east) = Extent(column => column <= 900);
        Assert.InRange((south - north) * MetresPerRow, 300, 1_000);
        Assert.InRange((east - west) * MetresPerColumn, 300, 1_000);
    }

    [Fact]
    public void All_around_is_open_sea()
    {
        int side = SkerrinGround.HeightSide;
        for (int i = 0; i < side; i++)
        {
            Assert.Equal(0, folder.Heights[i]);
            Assert.Equal(0, folder.Heights[((side - 1) * side) + i]);
            Assert.Equal(0, folder.Heights[i * side]);
            Assert.Equal(0, folder.Heights[(i * side) + side - 1]);
        }
    }

    /// <summary>A cell with two posts or more in the sea is water, any other is not: heights and cover tell one shore.</summary>
    [Fact]
    public void Water_is_where_the_heights_are_sea()
    {
        int side = SkerrinGround.HeightSide;
        ReadOnlySpan<short> heights = folder.Heights;
        ReadOnlySpan<byte> cover = folder.Cover;
        HashSet<byte> classes = [];
        for (int row = 0; row < SkerrinGround.CoverSide; row++)
        {
            for (int column = 0; column < SkerrinGround.CoverSide; column++)
            {
                int post = (row * side) + column;
                int wet = Sea(heights[post]) + Sea(heights[post + 1]) + Sea(heights[post + side]) + Sea(heights[post + side + 1]);
                byte found = cover[(row * SkerrinGround.CoverSide) + column];
                classes.Add(found);
                if (wet >= 2 != (found == 80))
                {
                    Assert.Fail($"Row {row}, column {column}: {wet} posts in the sea, class {found}.");
                }
            }
        }

        Assert.Equal<byte[]>([10, 20, 30, 40, 50, 60, 80, 90], [.. classes.Order()]);
    }

    private static int Sea(short height) => height == 0 ? 1 : 0;

    private (int North, int South, int West, int East) Extent(Func<int, bool> counts)
    {
        int side = SkerrinGround.HeightSide;
        ReadOnlySpan<short> heights = folder.Heights;
        (int north, int south, int west, int east) = (side, 0, side, 0);
        for (int post = 0; post < heights.Length; post++)
        {
            int column = post % side;
            if (heights[post] > 0 && counts(column))
            {
                north = Math.Min(north, post / side);
                south = Math.Max(south, post / side);
                west = Math.Min(west, column);
                east = Math.Max(east, column);
            }
        }

        return (north, south, west, east);
    }

    private static string HashOf(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));
}
