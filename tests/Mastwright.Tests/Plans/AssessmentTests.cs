using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;

namespace Mastwright.Tests.Plans;

public sealed partial class AssessmentTests
{
    private static readonly StationCatalogue Catalogue = new(
        [],
        [],
        [
            new()
            {
                Key = "test",
                Modulation = Modulation.ChirpSpreadSpectrum,
                SnrLimitDb = ImmutableSortedDictionary<int, double>.Empty.Add(10, -15),
                FrequencyToleranceFraction = 0.25,
                Source = "test",
            },
        ]);

    private static readonly ModemSetting Modem = new() { FrequencyHz = 868e6, BandwidthHz = 125e3, SpreadingFactor = 10, PayloadBytes = 20 };

    private static Site Site(string key, double longitude, Func<FitOut, FitOut>? change = null, Func<Site, Site>? changeSite = null)
    {
        FitOut fitOut = new()
        {
            Key = "mast",
            Name = "mast",
            Antenna = new() { GainDbi = Estimate.Exactly(2), Height = new(Estimate.Exactly(20), HeightAbove.Ground) },
            Radio = new() { ConductedPowerDbm = Estimate.Exactly(14), NoiseFigureDb = Estimate.Exactly(6) },
        };
        Site site = new()
        {
            Key = key,
            Name = key,
            Position = new(new(46.5, longitude), 0),
            InUse = "mast",
            FitOuts = [change?.Invoke(fitOut) ?? fitOut],
        };
        return changeSite?.Invoke(site) ?? site;
    }

    private static Plan PlanOf(params ImmutableArray<Site> sites) => new() { Name = "test", Modem = Modem, Sites = sites };

    /// <summary>Flat ground at 100 m, with a north-south wall of a height at a longitude.</summary>
    private static GroundMosaic Ground(double wallMetres = 0, double wallLongitude = -18.5, HeightKind kind = HeightKind.BareEarth)
    {
        GridFrame frame = GridFrame.Geographic(-19, 47, 1.0 / 1200, 1.0 / 1200, 1201, 1201, samplesAreAreas: false);
        float[] heights = new float[1201 * 1201];
        Array.Fill(heights, 100);
        int wall = (int)Math.Round((wallLongitude + 19) * 1200);
        for (int row = 0; row < 1201; row++)
        {
            heights[(row * 1201) + wall] += (float)wallMetres;
        }

        return GroundMosaic.Of([GroundWindow.FromHeights(frame, heights, "test", "test", kind, "EGM96")]);
    }

    private static LinkReport Link(Plan plan, GroundMosaic ground)
    {
        PlanReport report = new Assessment(plan, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        return Assert.Single(report.Links);
    }

    [Fact]
    public void Over_flat_ground_a_near_link_has_the_margin_of_free_space()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.52), Site("b", -18.50)), Ground());

        // 1.535 km: 92.4 + 20 log 0.868 + 20 log 1.535 = 94.89 dB (ITU-R P.525-4 with the constant of P.1812); 14 + 2 − 94.89 + 2 + 132.03 = 55.1 dB.
        Assert.Equal(1535, link.Segment.DistanceMetres, 1.0);
        Assert.Equal(55.1, link.Out.MarginDb!.Value.Median, 0.1);
        Assert.Equal(Verdict.Ok, link.Finding.Verdict);
        Assert.Equal(link.Out.MarginDb.Value.Median, link.Back.MarginDb!.Value.Median, 1e-6);
    }

    [Fact]
    public void A_wall_between_makes_the_link_fail_and_the_finding_says_where_it_stands()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.7), Site("b", -18.4)), Ground(wallMetres: 1500, wallLongitude: -18.5));
        Assert.Equal(Verdict.Fails, link.Finding.Verdict);
        string text = FindingSentences.Text(link.Finding);
        Assert.Contains("falls", text, StringComparison.Ordinal);
        Assert.Contains("15.4 km from a", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_budget_line_sums_to_the_margin()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.7), Site("b", -18.4)), Ground(300));
        Assert.Equal(link.Out.MarginDb!.Value.Median, link.Out.Budget!.Lines.Sum(line => line.Value), 1e-9);
        Assert.Equal(link.Back.MarginDb!.Value.Median, link.Back.Budget!.Lines.Sum(line => line.Value), 1e-9);
    }

    [Fact]
    public void The_mast_that_reaches_the_wanted_margin_does_reach_it()
    {
        GroundMosaic ground = Ground(40);
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        double wanted = Link(plan, ground).Weaker.MarginDb!.Value.Median + 8;
        Plan wishful = plan with { Wanted = new() { MarginDb = wanted } };
        Assessment assessment = new(wishful, Catalogue, (_, _) => ground);
        double? height = assessment.HeightForMargin(Link(wishful, ground), atStart: true);
        Assert.NotNull(height);
        Assert.True(height > 20);
        LinkReport raised = Link(
            PlanOf(Site("a", -18.7, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(height.Value), HeightAbove.Ground) } }), Site("b", -18.4)), ground);
        Assert.InRange(raised.Weaker.MarginDb!.Value.Median, wanted - 1e-6, wanted + 0.5);
    }

    [Fact]
    public void No_mast_of_200_m_sees_over_a_mountain()
    {
        GroundMosaic ground = Ground(3000);
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        Assert.Null(new Assessment(plan, Catalogue, (_, _) => ground).HeightForMargin(Link(plan, ground), atStart: true));
    }

    [Fact]
    public void A_height_above_sea_level_counts_from_the_ground_under_it()
    {
        Site aboveSea = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(120), HeightAbove.SeaLevel, null, "EGM96") } });
        Assert.Equal(20, Link(PlanOf(aboveSea, Site("b", -18.5)), Ground()).Path.FromHeightMetres!.Value.Median, 1e-3);

        Site onRoof = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(5), HeightAbove.Roof, Estimate.Exactly(7)) } });
        Assert.Equal(12, Link(PlanOf(onRoof, Site("b", -18.5)), Ground()).Path.FromHeightMetres!.Value.Median, 1e-9);
    }

    [Fact]
    public void An_antenna_under_the_ground_is_a_finding()
    {
        Site buried = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(90), HeightAbove.SeaLevel, null, "EGM96") } });
        Assert.Contains(Link(PlanOf(buried, Site("b", -18.5)), Ground()).Findings, finding => finding is { Code: "antenna-under-ground", Verdict: Verdict.Fails });
    }

    [Fact]
    public void Another_datum_for_the_antenna_than_for_the_ground_is_a_finding()
    {
        Site other = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(120), HeightAbove.SeaLevel, null, "WGS 84") } });
        Assert.Contains(Link(PlanOf(other, Site("b", -18.5)), Ground()).Findings, finding => finding.Code == "antenna-datum-differs");
    }

    [Fact]
    public void Walls_around_an_indoor_antenna_cost_and_spread()
    {
        Site indoors = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Indoors = true } }, site => site with { Surroundings = new() { BuildingKind = "traditional" } });
        LinkReport link = Link(PlanOf(indoors, Site("b", -18.5)), Ground());
        Assert.Contains(link.Out.Budget!.Lines, line => line is { Code: "building-entry", Value: < -10 });
        Assert.Contains(link.Out.Spread!.Unknown.Lines, line => line.Code == "building-entry");

        Site unsaid = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Indoors = true } });
        LinkReport unknown = Link(PlanOf(unsaid, Site("b", -18.5)), Ground());
        Assert.Equal(Verdict.Unknown, unknown.Finding.Verdict);
        Assert.Contains("sites/a/surroundings/building", unknown.Out.Missing);
    }

    [Fact]
    public void Clutter_around_a_low_antenna_costs_and_is_refused_over_a_surface_model()
    {
        Site low = Site(
            "a",
            -18.52,
            fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(3), HeightAbove.Ground) } },
            site => site with { Surroundings = new() { ClutterKind = "urban", ClutterHeightMetres = Estimate.Between(12, 18) } });
        LinkReport link = Link(PlanOf(low, Site("b", -18.5)), Ground());
        Assert.Contains(link.Out.Budget!.Lines, line => line is { Code: "terminal-clutter", Value: < -10 });
        LinkReport surface = Link(PlanOf(low, Site("b", -18.5)), Ground(kind: HeightKind.Surface));
        Assert.DoesNotContain(surface.Out.Budget!.Lines, line => line.Code == "terminal-clutter");
        Assert.Contains(surface.Findings, finding => finding is { Code: "terminal-clutter-over-surface", Verdict: Verdict.Unknown });
    }

    [Fact]
    public void A_vague_place_widens_the_margin_and_may_leave_the_verdict_open()
    {
        Site vague = Site("b", -18.5, null, site => site with { Position = new(new(46.5, -18.45), 6000) });
        LinkReport link = Link(PlanOf(Site("a", -18.7), vague), Ground(wallMetres: 900, wallLongitude: -18.45));
        Assert.True(link.Path.Tries >= 17);
        Assert.True(link.Out.MarginDb!.Value.Low < link.Out.MarginDb.Value.High - 10);
        Assert.Equal(Verdict.Unknown, link.Finding.Verdict);
        Assert.Equal("link-range", link.Finding.Code);
    }

    [Fact]
    public void Crossed_polarisations_cost_about_20_dB()
    {
        Site level = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Polarisation = Polarisation.Horizontal } });
        LinkReport link = Link(PlanOf(level, Site("b", -18.5)), Ground());
        Assert.Contains(link.Out.Budget!.Lines, line => line is { Code: "polarisation", Value: -20 });
        Assert.Contains(link.Findings, finding => finding.Code == "polarisation-differs");
    }

    [Fact]
    public void A_path_off_the_ground_is_unknown_and_names_what_is_missing()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.5), Site("b", -17.5)), Ground());
        Assert.Equal(Verdict.Unknown, link.Finding.Verdict);
        Assert.Contains(link.Out.Missing, missing => missing.Contains("N46W018", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_stations_at_one_place_have_no_path()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.5), Site("b", -18.5)), Ground());
        Assert.Equal(Verdict.Unknown, link.Finding.Verdict);
        Assert.Contains("one place", FindingSentences.Text(link.Finding), StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_under_a_quarter_of_a_kilometre_says_that_the_model_does_not_reach_so_near()
    {
        LinkReport link = Link(PlanOf(Site("a", -18.502), Site("b", -18.5)), Ground());
        Assert.Equal("free space and knife edge", link.Path.Out!.Method);
        Assert.Contains(link.Findings, finding => finding.Code == "path-outside-model");
    }

    [Fact]
    public void The_order_of_threads_changes_nothing()
    {
        Plan plan = PlanOf([.. Enumerable.Range(0, 8).Select(i => Site($"s{i}", -18.9 + (0.1 * i)))]);
        GroundMosaic ground = Ground(200);
        PlanReport one = new Assessment(plan, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        PlanReport other = new Assessment(plan, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        Assert.Equal(28, one.Links.Length);
        Assert.Equal(one.Links.Select(link => link.Out.MarginDb), other.Links.Select(link => link.Out.MarginDb));
        Assert.Equal(one.Links.Select(link => link.From.Key + link.To.Key), other.Links.Select(link => link.From.Key + link.To.Key));
    }

    [Fact]
    public void Only_wanted_links_are_judged_and_a_trial_site_counts_only_when_chosen()
    {
        Site trial = Site("c", -18.6, null, site => site with { InUse = "" });
        Plan plan = PlanOf(Site("a", -18.52), Site("b", -18.5), trial) with { Links = [new("a", "c", "links/1"), new("a", "b", "links/2")] };
        GroundMosaic ground = Ground();
        Assessment assessment = new(plan, Catalogue, (_, _) => ground);
        Assert.Equal(["ab"], assessment.Run(ImmutableDictionary<string, string>.Empty).Links.Select(link => link.From.Key + link.To.Key));
        Assert.Equal(["ac", "ab"], assessment.Run(ImmutableDictionary<string, string>.Empty.Add("c", "mast")).Links.Select(link => link.From.Key + link.To.Key));
    }

    [Fact]
    public void Every_default_that_was_used_is_listed_and_none_that_was_not()
    {
        Plan bare = PlanOf(Site("a", -18.52), Site("b", -18.5));
        GroundMosaic ground = Ground();
        string[] assumed = [.. new Assessment(bare, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty).Assumptions.Select(one => one.Code)];
        string[] expected = ["wanted-margin", "wanted-time", "wanted-location", "model-error", "fading", "refractivity-gradient", "surface-refractivity", "low-k", "location-spread"];
        Assert.Subset(new HashSet<string>(assumed, StringComparer.Ordinal), new HashSet<string>(expected, StringComparer.Ordinal));

        Plan full = bare with
        {
            Wanted = new() { MarginDb = 10, TimePercent = 50, LocationPercent = 50 },
            Spread = new() { ModelErrorDb = 8, FadingDb = 3, LocationDb = 4 },
            Air = new() { RefractivityGradient = 45, SurfaceRefractivity = 325, LowKFactor = 0.8 },
        };
        Assert.Empty(new Assessment(full, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty).Assumptions.Select(one => one.Code).Intersect(expected, StringComparer.Ordinal));
    }

    [Fact]
    public void A_low_antenna_on_land_without_known_cover_is_a_finding()
    {
        Site low = Site("a", -18.52, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(3), HeightAbove.Ground) } });
        Assert.Contains(Link(PlanOf(low, Site("b", -18.5)), Ground()).Findings, finding => finding.Code == "path-without-cover");
        Assert.DoesNotContain(Link(PlanOf(low, Site("b", -18.5)), Ground(kind: HeightKind.Surface)).Findings, finding => finding.Code == "path-without-cover");
        Assert.DoesNotContain(Link(PlanOf(Site("a", -18.52), Site("b", -18.5)), Ground()).Findings, finding => finding.Code == "path-without-cover");
    }

    [Fact]
    public void A_range_of_the_ground_height_reaches_the_verdict()
    {
        GroundMosaic ground = Ground(30);
        double Margin(Estimate? metres) => Link(PlanOf(Site("a", -18.7, null, site => site with { GroundHeightMetres = metres }), Site("b", -18.4)), ground).Out.MarginDb!.Value.Median;
        LinkReport ranged = Link(PlanOf(Site("a", -18.7, null, site => site with { GroundHeightMetres = Estimate.Between(80, 118) }), Site("b", -18.4)), ground);
        Assert.Equal(Margin(Estimate.Exactly(80)), ranged.Out.MarginDb!.Value.Low, 1e-6);
        Assert.Equal(Margin(Estimate.Exactly(118)), ranged.Out.MarginDb.Value.High, 1e-6);
        Assert.True(ranged.Out.MarginDb.Value.High > ranged.Out.MarginDb.Value.Low + 1);
    }

    [Fact]
    public void A_range_of_the_clutter_height_reaches_the_verdict()
    {
        Site Low(Estimate clutter) => Site(
            "a",
            -18.52,
            fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(3), HeightAbove.Ground) } },
            site => site with { Surroundings = new() { ClutterKind = "urban", ClutterHeightMetres = clutter } });
        LinkReport ranged = Link(PlanOf(Low(Estimate.Between(5, 25)), Site("b", -18.5)), Ground());
        Assert.Equal(Link(PlanOf(Low(Estimate.Exactly(25)), Site("b", -18.5)), Ground()).Out.MarginDb!.Value.Median, ranged.Out.MarginDb!.Value.Low, 1e-6);
        Assert.Equal(Link(PlanOf(Low(Estimate.Exactly(5)), Site("b", -18.5)), Ground()).Out.MarginDb!.Value.Median, ranged.Out.MarginDb.Value.High, 1e-6);
    }

    [Fact]
    public void Woodland_costs_and_spreads_and_is_refused_over_a_surface_model()
    {
        Site wooded = Site("a", -18.52, null, site => site with { Surroundings = new() { WoodlandDepthMetres = 150 } });
        LinkReport link = Link(PlanOf(wooded, Site("b", -18.5)), Ground());
        Assert.Contains(link.Out.Budget!.Lines, line => line is { Code: "woodland", Value: < -5 });
        Assert.Contains(link.Out.Spread!.Unknown.Lines, line => line.Code == "woodland");
        Assert.Contains(Link(PlanOf(wooded, Site("b", -18.5)), Ground(kind: HeightKind.Surface)).Findings, finding => finding.Code == "woodland-over-surface");
    }

    [Fact]
    public void A_wanted_link_to_a_site_without_a_fit_out_in_use_is_told()
    {
        Site trial = Site("c", -18.6, null, site => site with { InUse = "" });
        Plan plan = PlanOf(Site("a", -18.52), Site("b", -18.5), trial) with { Links = [new("a", "c", "links/1"), new("a", "b", "links/2")] };
        GroundMosaic ground = Ground();
        PlanReport report = new Assessment(plan, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        Assert.Contains(report.Findings, finding => finding is { Code: "link-not-counted", Subject: "links/1", Verdict: Verdict.Unknown });
        Assert.Equal(["c"], report.NotCounted.Select(site => site.Key));
    }

    [Fact]
    public void A_path_longer_than_the_model_reaches_is_unknown()
    {
        GroundMosaic ground = Ground();
        Site far = Site("b", 30);
        LinkReport link = Link(PlanOf(Site("a", -18.52), far), ground);
        Assert.Equal(Verdict.Unknown, link.Finding.Verdict);
        Assert.Contains("3000 km", FindingSentences.Text(link.Finding), StringComparison.Ordinal);
    }

    [Fact]
    public void An_odd_bandwidth_and_both_ends_are_told_beside_a_link()
    {
        Plan plan = PlanOf(Site("a", -18.52), Site("b", -18.5));
        GroundMosaic ground = Ground();
        Assessment assessment = new(plan, Catalogue, (_, _) => ground);
        LinkReport link = assessment.Link(LinkStation.Of(plan.Sites[0], plan.Sites[0].FitOuts[0]), LinkStation.Of(plan.Sites[1], plan.Sites[1].FitOuts[0]));
        string[] subjects = [.. assessment.FindingsBeside(link).Select(finding => finding.Subject)];
        Assert.Contains(subjects, subject => subject.StartsWith("sites/a/", StringComparison.Ordinal));
        Assert.Contains(subjects, subject => subject.StartsWith("sites/b/", StringComparison.Ordinal));
    }
}
