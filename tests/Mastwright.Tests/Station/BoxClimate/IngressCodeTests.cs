using Mastwright.Station.BoxClimate;

namespace Mastwright.Tests.Station.BoxClimate;

/// <summary>Numerals of IEC 60529: up to 6 each holds for the lower ones, under water (7, 8) does not stand for jets (5, 6).</summary>
public sealed class IngressCodeTests
{
    [Theory]
    [InlineData("IP66", "IP65", true)]
    [InlineData("IP65", "IP66", false)]
    [InlineData("IP54", "IP65", false)]
    [InlineData("IP67", "IP65", false)]
    [InlineData("IP67", "IP54", true)]
    [InlineData("IP66/IP67", "IP65", true)]
    [InlineData("IP66/IP67", "IP67", true)]
    [InlineData("IP66", "IP67", false)]
    [InlineData("IP68", "IP67", true)]
    [InlineData("IP69", "IP67", false)]
    [InlineData("IP69", "IP65", false)]
    [InlineData("ip66", "IP20", true)]
    [InlineData("IPX6", "IP54", false)]
    [InlineData("IP6X", "IP20", true)]
    public void A_code_covers_what_it_was_tested_for(string has, string wanted, bool covers)
    {
        Assert.True(IngressCode.TryParse(has, out IngressCode? one));
        Assert.True(IngressCode.TryParse(wanted, out IngressCode? other));
        Assert.Equal(covers, one!.Covers(other!));
    }

    [Theory]
    [InlineData("")]
    [InlineData("IP")]
    [InlineData("IP6")]
    [InlineData("IP76")]
    [InlineData("IP666")]
    [InlineData("weatherproof")]
    [InlineData("IP66/")]
    public void What_is_no_code_is_refused(string text) => Assert.False(IngressCode.TryParse(text, out _));
}
