using Mastwright.Pictures.Drawings;
using Mastwright.Workbench.Tiles;

namespace Mastwright.Tests.Workbench.Tiles;

/// <summary>The light on slopes: from the north-west, and the same on both sides of a tile's edge.</summary>
public sealed class ReliefPictureTests
{
    private const int Side = 64;

    [Theory]
    [InlineData(0, 0, 0)]
    // A slope of 45° towards the light, which is 45° high, is lit in full: 1 − sin 45°. One that turns its back to it gets nothing.
    [InlineData(0.7071068, -0.7071068, 0.2928932)]
    [InlineData(-0.7071068, 0.7071068, -0.7071068)]
    [InlineData(double.NaN, 0, 0)]
    public void Light_comes_from_the_north_west(double eastward, double northward, double expected) =>
        Assert.Equal(expected, SlopeLight.Of(eastward, northward), 1e-6);

    [Fact]
    public void Tiles_meet_without_a_seam()
    {
        byte[] west = Drawn(0);
        byte[] east = Drawn(Side / 2);
        int shaded = 0;
        for (int row = 0; row < Side; row++)
        {
            // The western picture's last column lies inside the eastern one. The surface is a parabola across, which three heights at the edge tell exactly.
            ReadOnlySpan<byte> edge = west.AsSpan(4 * ((row * Side) + Side - 1), 4);
            ReadOnlySpan<byte> inside = east.AsSpan(4 * ((row * Side) + (Side / 2) - 1), 4);
            Assert.InRange(edge[3] - inside[3], -1, 1);
            shaded += edge[3] > 20 ? 1 : 0;
        }

        Assert.Equal(Side, shaded);
    }

    private static byte[] Drawn(int shift)
    {
        float[] heights = new float[Side * Side];
        for (int i = 0; i < heights.Length; i++)
        {
            double x = (i % Side) + shift;
            heights[i] = (float)((0.05 * x * x) + (i / Side));
        }

        byte[] pixels = new byte[4 * heights.Length];
        ReliefPicture.Draw(heights, Side, 30, Theme.Light, pixels);
        return pixels;
    }
}
