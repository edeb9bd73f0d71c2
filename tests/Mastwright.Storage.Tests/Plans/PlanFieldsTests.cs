using System.Collections.Immutable;
using Mastwright.Storage.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>The values of a fit-out that a page offers to change.</summary>
public sealed class PlanFieldsTests
{
    private static readonly string DemoPath = Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml");

    private static readonly PlanDocument Demo = PlanFileTests.Good(PlanFile.Read(DemoPath));

    [Fact]
    public void A_value_is_offered_with_what_would_be_right_there()
    {
        PlanField length = Of("net-loft", "supply/3/length");
        Assert.Equal("24 m", length.Value);
        Assert.Equal("length", length.Key);
        Assert.StartsWith("a length from 0 m", length.Wanted, StringComparison.Ordinal);
        Assert.Equal(["masonry", "concrete", "timber", "steel", "chimney", "gable", "anchor", "ground"], Of("net-loft", "mast/bracket/fixed-to").Choices);
        Assert.Equal(["yes", "no"], Of("net-loft", "box/drip-loops").Choices);
        Assert.Equal("1 A", Of("net-loft", "supply/6/branches/radio/2/fuse").Value);
    }

    [Fact]
    public void A_part_is_offered_among_the_parts_of_its_kind_with_what_the_fit_out_takes_from_it()
    {
        Assert.Equal(["collinear-8", "short-whip", "small-collinear-5"], Of("net-loft", "antenna/part").Choices);
        Assert.Contains("box-cell", Of("net-loft", "supply/6/branches/radio/1/part").Choices);
        PlanField power = Of("net-loft", "radio/power");
        Assert.Equal(("14 dBm", "small-node"), (power.Value, power.PartName));
        Assert.Equal("", Of("net-loft", "antenna/height").PartName);
    }

    [Theory, InlineData("net-loft"), InlineData("eaves"), InlineData("hill-hut")]
    public void Whatever_is_offered_can_be_written_there_and_the_plan_reads_as_before(string fitOut)
    {
        PlanText text = PlanText.Read(DemoPath).Text!;
        string place = $"sites/ferry-house/fit-outs/{fitOut}";
        ImmutableArray<PlanField> fields = PlanFields.Of(Demo, place);
        Assert.True(fields.Length > 15);
        foreach (PlanField field in fields)
        {
            PlanTextResult same = text.With($"{place}/{field.Path}", field.Value);
            Assert.True(same.Text is not null, $"{field.Path}: {same.Problem}");
            Assert.Equal(field.PartName.Length > 0, same.Text.Text != text.Text);
        }
    }

    [Fact]
    public void A_fit_out_that_is_not_there_offers_nothing() => Assert.Empty(PlanFields.Of(Demo, "sites/ferry-house/fit-outs/attic"));

    private static PlanField Of(string fitOut, string path) => PlanFields.Of(Demo, $"sites/ferry-house/fit-outs/{fitOut}").Single(field => field.Path == path);
}
