using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;
using Mastwright.Station.Mast;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Tests.Plans;

/// <summary>What has to be bought and cut for a fit-out.</summary>
public sealed class PartsNeededTests
{
    private static readonly FitOut FitOut = new()
    {
        Key = "f",
        Name = "f",
        Antenna = new() { Height = new(Estimate.Exactly(8), HeightAbove.Ground), TotalLengthMetres = 1.8 },
        Solar = new() { PlanPath = "f/solar", PanelWatts = 20, TiltDegrees = 60, AzimuthDegrees = 180 },
        Mast = new()
        {
            Tubes = [new("f/mast/tubes/1", "steel-60.3x3.2", null, null, "s235", 2.4), new("f/mast/tubes/2", "", 0.0483, 0.0032, "s235", 1.8)],
            BracketSpacingMetres = 0.8,
            Clamp = "stainless-steel",
            Cable = new(0.007, 3, null),
            Guys = new(3, 45, 0.004, 4.5, null, null, 4),
        },
        Earthing = new()
        {
            AirTermination = AirTermination.Rod,
            RodHeightMetres = 14,
            ConductorSquareMillimetres = 16,
            ConductorMaterial = "copper",
            Rods = 2,
            RodLengthMetres = 1.5,
            DataCable = DataCableSurge.Arrester,
        },
    };

    [Theory]
    [InlineData("solar panel 20 W", 1, null)]
    [InlineData("solar charge controller", 1, null)]
    [InlineData("tube steel-60.3x3.2 s235, cut length with the part between the brackets", 1, 3.2)] // 2.4 m above the upper bracket, 0.8 m below it.
    [InlineData("tube 48.3 × 3.2 mm s235, free length", 1, 1.8)]
    [InlineData("antenna clamp (stainless-steel)", 1, null)]
    [InlineData("cable up the mast, 7 mm thick", 1, 3.0)]
    [InlineData("guy, rope of 4 mm", 4, 4.5)]
    [InlineData("data cable surge arrester", 2, null)]
    [InlineData("earth conductor copper 16 mm², from the mast to earth", 1, null)]
    [InlineData("earth rod", 2, 1.5)]
    [InlineData("air-termination rod, its tip 14 m above the ground", 1, null)]
    public void Everything_that_a_fit_out_speaks_of_is_listed(string what, int count, double? length)
    {
        PartNeeded part = Assert.Single(PartsNeeded.Of(FitOut, "f"), part => part.What == what);

        Assert.Equal(count, part.Count);
        Assert.Equal(length, part.LengthMetres?.Median);
    }

    [Fact]
    public void What_is_listed_once_is_not_listed_again()
    {
        SupplyArrester near = new("f/supply/2", 0.5);
        SupplyArrester far = new("f/supply/4", 0.5);
        FitOut chained = FitOut with
        {
            Feed = [new FeedLine("f/feed/1", "rg-213", Estimate.Exactly(2))],
            Supply = [new SupplySource("f/supply/1", SupplySourceKind.PowerOverCable) { ClassKey = "class-3" }, near, new SupplyCable("f/supply/3", true, "cat-5e", Estimate.Exactly(24)), far, new SupplyLoad("f/supply/5", true, "node")],
        };
        ImmutableArray<PartNeeded> parts = PartsNeeded.Of(chained, "f");

        Assert.Equal(2, parts.Where(part => part.What == "data cable surge arrester").Sum(part => part.Count));
        Assert.Single(parts, part => part.What == "cable up the mast, 7 mm thick, a part of those above");
        Assert.Equal(2.4, Assert.Single(PartsNeeded.Of(FitOut with { Mast = FitOut.Mast! with { BracketSpacingMetres = null } }, "f"), part => part.What == "tube steel-60.3x3.2 s235, free length").LengthMetres!.Value.Median);
    }
}
