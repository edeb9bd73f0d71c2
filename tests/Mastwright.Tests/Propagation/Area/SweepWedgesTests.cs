using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

public sealed class SweepWedgesTests
{
    [Theory]
    [InlineData(8, 40)]
    [InlineData(64, 70)]
    [InlineData(1000, 300)]
    [InlineData(2096, 333)]
    [InlineData(10472, 833)]
    public void Each_cell_of_the_disc_belongs_to_one_radial_and_that_is_the_nearest(int radials, int reach)
    {
        SweepWedges wedges = new(radials, reach, reach);
        int side = (2 * reach) + 1;
        byte[] owners = new byte[side * side];
        (int East, int North)[] cells = new (int, int)[wedges.MostCells];
        for (int radial = 0; radial < radials; radial++)
        {
            int count = wedges.Cells(radial, cells);
            (double alongEast, double alongNorth) = wedges.Direction(radial);
            double before = 0;
            foreach ((int east, int north) in cells.AsSpan(0, count))
            {
                owners[((north + reach) * side) + east + reach]++;
                double length = Math.Sqrt(((double)east * east) + ((double)north * north));
                Assert.True(length >= before, "nearest first");
                before = length;
                double across = Math.Abs((east * alongNorth) - (north * alongEast)) / length;
                double along = ((east * alongEast) + (north * alongNorth)) / length;
                Assert.True(along > 0 && Math.Asin(Math.Min(1, across)) <= (Math.PI / radials) + 1e-12, $"{east}, {north} is not beside radial {radial}");
            }
        }

        for (int i = 0; i < owners.Length; i++)
        {
            int x = (i % side) - reach;
            int y = (i / side) - reach;
            bool isWanted = (x != 0 || y != 0) && (x * x) + (y * y) <= reach * reach;
            Assert.True(owners[i] == (isWanted ? 1 : 0), $"{x}, {y} has {owners[i]} radials");
        }
    }
}
