using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Network.Air;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Plans;

public class PlanFileTests
{
    [Fact]
    public void A_whole_plan_reaches_every_record()
    {
        using PlanFolderFixture folder = new();
        Plan plan = Good(folder.Read(SamplePlans.Whole)).Plan;

        Assert.Equal("Skerrin", plan.Name);
        Assert.Equal("EU", plan.Region);
        Assert.Equal(["own/lines.yaml"], plan.CatalogueFiles.AsEnumerable());
        Assert.Equal(2, plan.Heights.Length);
        Assert.Equal("ground/*.hgt", plan.Heights[0].Name);
        Assert.Equal(HeightKind.BareEarth, plan.Heights[0].Kind);
        Assert.Equal("EGM96", plan.Heights[0].Datum);
        Assert.Equal("ground/tiles.txt", plan.Heights[0].TileIndex);
        Assert.Equal(["a.tif", "b.tif"], plan.Heights[1].Files.AsEnumerable());
        Assert.Equal(HeightKind.Surface, plan.Heights[1].Kind);
        Assert.Equal("ground/cover/*.tif", Assert.Single(plan.Covers).Files[0]);
        Assert.Equal(new AirPlan { RefractivityGradient = 45, SurfaceRefractivity = 325, LowKFactor = 0.8, ExternalNoiseFigureDb = 3, NoiseEnvironment = NoiseEnvironment.QuietRural, MapFolder = "own/itu" }, plan.Air);
        Assert.Equal(869.525e6, plan.Modem.FrequencyHz);
        Assert.Equal(125e3, plan.Modem.BandwidthHz);
        Assert.Equal((10, 6, 16, 40), (plan.Modem.SpreadingFactor, plan.Modem.CodingRateDenominator, plan.Modem.PreambleLength, plan.Modem.PayloadBytes));
        Assert.False(plan.Modem.ExplicitHeader);
        Assert.False(plan.Modem.Checksum);
        Assert.Equal(new WantedPlan { MarginDb = 12, TimePercent = 10, LocationPercent = 90 }, plan.Wanted);
        Assert.Equal(
            new RelayRules
            {
                HopLimit = 4, Delay = RelayDelay.ByLevel, LeastDelaySeconds = 0.2, MostDelaySeconds = 3, CancelAfterCopies = 2, Probability = 0.8, ListensFirst = true, BackOffSeconds = 0.5,
            },
            plan.Relaying);
        Assert.Equal(new SpreadPlan { ModelErrorDb = 8, LocationDb = 5, FadingDb = 3 }, plan.Spread);
        Assert.Equal(
            [new WantedLink("ferry-house", "creamery", "links/1"), new WantedLink("creamery", "east-quay", "links/2")],
            plan.Links.AsEnumerable());
    }

    [Fact]
    public void A_site_is_bound_with_its_fit_outs()
    {
        using PlanFolderFixture folder = new();
        Site site = Good(folder.Read(SamplePlans.Whole)).Plan.Sites[0];

        Assert.Equal(("ferry-house", "Ferry House", "net-loft"), (site.Key, site.Name, site.InUse));
        Assert.Equal(["old-ferry"], site.Formerly.AsEnumerable());
        Assert.Equal(46.4012, site.Position.Point.LatitudeDegrees, 1e-9);
        Assert.Equal(-18.7421, site.Position.Point.LongitudeDegrees, 1e-9);
        Assert.Equal(5, site.Position.RadiusMetres, 1e-9);
        Assert.Equal(Estimate.PlusMinus(4, 1), site.GroundHeightMetres);
        Assert.Equal(
            new Surroundings { ClutterKind = "suburban", ClutterHeightMetres = Estimate.Exactly(8), StreetWidthMetres = 20, WoodlandDepthMetres = 120, BuildingKind = "traditional" },
            site.Surroundings);
        Assert.Equal(["net-loft", "eaves", "hut"], site.FitOuts.Select(fitOut => fitOut.Key));

        AntennaFit eaves = site.FitOuts[1].Antenna;
        Assert.Equal(Estimate.Between(0, 2), eaves.GainDbi);
        Assert.Equal((HeightAbove.SeaLevel, "EGM96"), (eaves.Height.Above, eaves.Height.Datum));
        Assert.Equal((Polarisation.Horizontal, PatternKind.Yagi, true), (eaves.Polarisation, eaves.Pattern, eaves.Indoors));
        Assert.Equal((40, 60, 240, -2), (eaves.ElevationBeamwidthDegrees, eaves.AzimuthBeamwidthDegrees, eaves.BearingDegrees, eaves.TiltDegrees));
        Assert.Equal([new NearbyTransmitter("tower", 791e6, 65, 300)], site.FitOuts[0].NearbyTransmitters.AsEnumerable());
        Assert.Equal(new MismatchReading(18, AtAntenna: false), site.FitOuts[0].Mismatch);

        // VSWR 1.5 is a reflection of 0.2, which is 13.98 dB down (20 log10 5).
        Assert.Equal(13.979, site.FitOuts[1].Mismatch!.ReturnLossDb, 0.001);
        Assert.True(site.FitOuts[1].Mismatch!.AtAntenna);
    }

    [Fact]
    public void A_part_gives_what_the_fit_out_leaves_out_and_the_fit_out_wins()
    {
        using PlanFolderFixture folder = new();
        PlanDocument document = Good(folder.Read(SamplePlans.Whole));
        FitOut loft = document.Plan.Sites[0].FitOuts[0];

        Assert.Equal("Collinear", loft.Antenna.Name);
        Assert.Equal(Estimate.Exactly(8), loft.Antenna.GainDbi);
        Assert.Equal((5, 0.8, 20, 1.6, 0.4), (loft.Antenna.Elements, loft.Antenna.SpacingWavelengths, loft.Antenna.NullFillDb, loft.Antenna.LengthMetres, loft.Antenna.SideMountOffsetMetres));
        Assert.Equal(new MountHeight(Estimate.Exactly(5), HeightAbove.Roof, Estimate.Exactly(6)), loft.Antenna.Height);
        Assert.Equal(Estimate.Exactly(10), loft.Radio.ConductedPowerDbm);
        Assert.Equal(Estimate.Exactly(-112), loft.Radio.MeasuredNoiseFloorDbm);
        Assert.Equal(-7.5, loft.Radio.SnrLimitDb[7]);
        Assert.Equal((-30.0, 85.0), (loft.Radio.DriftCelsius!.Value.Low, loft.Radio.DriftCelsius.Value.High));
        Assert.True(document.Plan.Modem.Emission.Hopping!.WithinPacket);
        Assert.Equal((10, 5, -30, 10e6), (loft.Radio.FrequencyErrorPartsPerMillion, loft.Radio.FrequencyDriftPartsPerMillion, loft.Radio.BlockingDbm, loft.Radio.BlockingOffsetHz));

        PlanPlace part = document.Sources.Find("sites/ferry-house/fit-outs/net-loft/antenna/gain")!.Value;
        string line = SamplePlans.Whole.Split('\n')[part.Line - 1];
        Assert.StartsWith("8 dBi", line[(part.Column - 1)..], StringComparison.Ordinal);
    }

    [Fact]
    public void A_feed_keeps_its_order_and_its_paths()
    {
        using PlanFolderFixture folder = new();
        ImmutableArray<FeedPart> feed = Good(folder.Read(SamplePlans.Whole)).Plan.Sites[0].FitOuts[0].Feed;
        const string Path = "sites/ferry-house/fit-outs/net-loft/feed/";

        Assert.Equal(
            [
                new FeedLine(Path + "1", "rg-213", Estimate.Exactly(2), 40),
                new LossyPart(Path + "2", LossyPartKind.Connector, 2, Estimate.Exactly(0.1)),
                new LossyPart(Path + "3", LossyPartKind.Adapter, 1, null),
                new LossyPart(Path + "4", LossyPartKind.SurgeArrester, 1, Estimate.Exactly(0.3), "at the bulkhead"),
                new LossyPart(Path + "5", LossyPartKind.Filter, 1, null),
                new LossyPart(Path + "6", LossyPartKind.Splitter, 1, Estimate.Exactly(3.5)),
                new FeedAmplifier(Path + "7/amplifier", "Mast-head", Estimate.Exactly(15), 1, Estimate.Exactly(10), Estimate.Exactly(27), 0.8),
                new FeedLine(Path + "8", "foam-10mm", Estimate.PlusMinus(12, 1)),
            ],
            feed.AsEnumerable());
    }

    [Fact]
    public void A_neighbour_is_bound_with_its_ranges()
    {
        using PlanFolderFixture folder = new();
        Neighbour quay = Assert.Single(Good(folder.Read(SamplePlans.Whole)).Plan.Neighbours);

        Assert.True(quay.Own);
        Assert.Equal(50, quay.Position.RadiusMetres, 1e-9);
        Assert.Equal(new MountHeight(Estimate.PlusMinus(6, 2), HeightAbove.Ground), quay.Height);
        Assert.Equal(Estimate.Between(0, 6), quay.GainDbi);
        Assert.Equal(Estimate.Exactly(20), quay.PowerDbm);
        Assert.Equal(Estimate.Exactly(6), quay.NoiseFigureDb);
        Assert.Equal(Polarisation.Horizontal, quay.Polarisation);
    }

    [Fact]
    public void The_guide_page_holds_a_plan_that_reads()
    {
        string page = File.ReadAllText(Path.Combine(TestPlaces.Repository, "docs", "guide", "plan.md"));
        string[] blocks = [.. page.Split("```yaml\n").Skip(1).Select(rest => rest[..rest.IndexOf("```", StringComparison.Ordinal)])];
        using PlanFolderFixture folder = new();
        string parts = Block("\nparts:");
        string fitOut = blocks[0].Replace(InLine("        antenna: {gain"), Block("        antenna: {part"), StringComparison.Ordinal);
        fitOut = fitOut[..fitOut.IndexOf("        feed:\n", StringComparison.Ordinal)] + fitOut[fitOut.IndexOf("neighbours:", StringComparison.Ordinal)..];
        folder.Write("parts.yaml", parts);
        folder.Write("own.yaml", Block("line-types:"));

        Plan[] plans =
        [
            Good(folder.Read(blocks[0] + "\n" + Block("air:") + "include: parts.yaml\ncatalogue: own.yaml\n")).Plan,
            Good(folder.Read(fitOut + "\ninclude: parts.yaml\n")).Plan,
        ];

        StationCatalogue catalogue = PlanCatalogue.Load(folder.Folder, plans[0].CatalogueFiles, false, out ImmutableArray<PlanProblem> problems)!;
        Assert.Empty(problems);
        Assert.NotNull(catalogue.LineType("old-roll"));
        Assert.All(
            plans.SelectMany(plan => plan.Sites).SelectMany(site => site.FitOuts).SelectMany(one => one.Feed).OfType<FeedLine>(),
            line => Assert.NotNull(catalogue.LineType(line.LineType)));
        Assert.Equal("foam-10mm", Assert.Single(plans[1].Sites[0].FitOuts[0].Feed.OfType<FeedLine>()).LineType);

        string Block(string words) => blocks.Single(block => ("\n" + block).Contains(words, StringComparison.Ordinal));
        string InLine(string words) => blocks[0].Split('\n').Single(line => line.StartsWith(words, StringComparison.Ordinal)) + "\n";
    }

    [Fact]
    public void The_plan_of_Skerrin_reads_without_a_note()
    {
        PlanDocument document = Good(PlanFile.Read(Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml")));

        Assert.Equal("Skerrin", document.Plan.Name);
        Assert.Empty(document.Notes);
        Assert.NotNull(document.Sources.Find("sites/ferry-house/fit-outs/net-loft/antenna/gain"));
    }

    [Theory]
    [InlineData("IN06pi", 46.354, -18.708, 3000)]
    [InlineData("\"46°24'00\\\"N 18°42'00\\\"W ± 20 m\"", 46.4, -18.7, 20)]
    [InlineData("46.4, -18.7 ± 3 km", 46.4, -18.7, 3000)]
    public void A_position_may_be_written_in_any_of_its_forms(string position, double latitude, double longitude, double atLeastMetres)
    {
        using PlanFolderFixture folder = new();
        Site site = Good(folder.Read(SamplePlans.Smallest + "sites:\n  a:\n    position: " + position + "\n")).Plan.Sites[0];

        Assert.Equal(latitude, site.Position.Point.LatitudeDegrees, 0.001);
        Assert.Equal(longitude, site.Position.Point.LongitudeDegrees, 0.001);
        Assert.True(site.Position.RadiusMetres >= atLeastMetres);
    }

    internal static PlanDocument Good(PlanReading reading)
    {
        Assert.Equal("", string.Join('\n', reading.Problems));
        return reading.Document!;
    }
}
