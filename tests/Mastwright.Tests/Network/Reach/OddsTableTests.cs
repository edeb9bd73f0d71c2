using Mastwright.Network;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

public sealed class OddsTableTests
{
    [Fact]
    public void It_is_within_a_ten_thousandth_of_the_odds_themselves() =>
        Gen.Select(Gen.Double[2, 15], Gen.Double[0, 6]).Sample(
            (unknown, fading) =>
            {
                OddsTable table = new(unknown, fading);
                for (double margin = -40.013; margin < 60; margin += 1.7)
                {
                    LinkOdds exact = LinkOdds.From(margin, unknown, fading);
                    Assert.Equal(exact.Works, table.At(margin).Works, 1e-4);
                    if (exact.Works > 1e-6)
                    {
                        Assert.Equal(exact.DeliversIfItWorks, table.At(margin).DeliversIfItWorks, 1e-4);
                    }
                }
            },
            iter: 6);

    [Fact]
    public void Beyond_its_ends_it_is_sure()
    {
        OddsTable table = new(8, 3);
        Assert.Equal(1, table.At(500).Works, 1e-9);
        Assert.Equal(0, table.At(-500).Works, 1e-9);
    }
}
