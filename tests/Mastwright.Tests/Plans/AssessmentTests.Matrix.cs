using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Plans;

/// <content>Every pair of stations against the links that are worked out one by one.</content>
public sealed partial class AssessmentTests
{
    /// <summary>Exact, vague in place and height, in clutter, indoors in an unknown building, of unknown height.</summary>
    private static readonly Plan Mixed = PlanOf(
        Site("a", -18.7),
        Site("b", -18.4, fitOut => fitOut with { Radio = fitOut.Radio with { ConductedPowerDbm = Estimate.Exactly(22) } }),
        Site("c", -18.55, fitOut => fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.PlusMinus(8, 3), HeightAbove.Ground) } }, site => site with { Position = new(site.Position.Point, 500) }),
        Site("d", -18.45, changeSite: site => site with { Surroundings = new() { ClutterKind = "suburban", ClutterHeightMetres = Estimate.Exactly(9), WoodlandDepthMetres = 30 } }),
        Site("e", -18.35, fitOut => fitOut with { Antenna = fitOut.Antenna with { Indoors = true } }))
        with
        {
            Neighbours = [new() { Key = "f", Name = "f", Position = new(new(46.5, -18.65), 0) }],
        };

    private static MatrixReport Matrix(Plan plan, GroundMosaic ground, PathMemory memory) =>
        new Assessment(plan, Catalogue, (_, _) => ground).Matrix(LinkSelection.Stations(plan, ImmutableDictionary<string, string>.Empty), memory);

    [Fact]
    public void Every_pair_is_the_link_that_is_worked_out_by_itself()
    {
        GroundMosaic ground = Ground(60);
        Plan plan = Mixed with { Wanted = new() { LocationPercent = 80 } };
        LinkMatrix matrix = Matrix(plan, ground, new()).Matrix;
        PlanReport report = new Assessment(plan, Catalogue, (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        Assert.Equal(15, report.Links.Length);
        Assert.Equal(15, matrix.Pairs.Length);
        foreach (LinkReport link in report.Links)
        {
            int from = matrix.Stations.IndexOf(matrix.Stations.Single(one => one.Subject == link.From.Subject));
            int to = matrix.Stations.IndexOf(matrix.Stations.Single(one => one.Subject == link.To.Subject));
            Same(link.Out, matrix.Way(from, to));
            Same(link.Back, matrix.Way(to, from));
        }
    }

    [Fact]
    public void Only_what_a_change_touches_is_worked_out_again()
    {
        GroundMosaic ground = Ground(60);
        PathMemory memory = new();
        LinkMatrix first = Matrix(Mixed, ground, memory).Matrix;
        Assert.Equal((0, 15), (memory.Found, memory.Added));

        // Kept on the disk and read again: nothing is worked out, and nothing differs.
        memory = PathMemory.FromBytes(memory.ToBytes());
        LinkMatrix again = Matrix(Mixed, ground, memory).Matrix;
        Assert.Equal((15, 0), (memory.Found, memory.Added));
        Assert.All(first.Pairs.ToArray().Zip(again.Pairs.ToArray()), pair => Assert.Equal(pair.First.LeastMarginDb, pair.Second.LeastMarginDb));

        // More power is no other path, a higher mast is: five pairs.
        Site a = Mixed.Sites[0];
        FitOut mast = a.FitOuts[0] with { Antenna = a.FitOuts[0].Antenna with { Height = new(Estimate.Exactly(25), HeightAbove.Ground) } };
        FitOut loud = a.FitOuts[0] with { Radio = a.FitOuts[0].Radio with { ConductedPowerDbm = Estimate.Exactly(20) } };
        memory = PathMemory.FromBytes(memory.ToBytes());
        LinkMatrix louder = Matrix(Mixed with { Sites = Mixed.Sites.SetItem(0, a with { FitOuts = [loud] }) }, ground, memory).Matrix;
        Assert.Equal((15, 0), (memory.Found, memory.Added));
        Assert.Equal(first.Way(0, 1).MarginDb!.Value.Median + 6, louder.Way(0, 1).MarginDb!.Value.Median, 1e-9);
        Matrix(Mixed with { Sites = Mixed.Sites.SetItem(0, a with { FitOuts = [mast] }) }, ground, memory);
        Assert.Equal((25, 5), (memory.Found, memory.Added));

        // A wall between a and b is on the way of some pairs only; where a place is vague, all ground counts.
        memory = PathMemory.FromBytes(memory.ToBytes());
        Matrix(Mixed, Ground(60, -18.38), memory);
        Assert.InRange(memory.Added, 5, 14);
        Assert.Equal(15, memory.Found + memory.Added);
    }

    [Fact]
    public void Who_hears_nobody_and_who_is_heard_one_way_only_is_told()
    {
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.69, fitOut => fitOut with { Radio = fitOut.Radio with { ConductedPowerDbm = Estimate.Exactly(-60) } }), Site("c", -18.3));
        MatrixReport report = Matrix(plan, Ground(1500), new());
        Finding oneWay = Assert.Single(report.Findings, finding => finding.Code == "link-one-way");
        Assert.Equal(Verdict.Tight, oneWay.Verdict);
        Assert.Contains("a is heard at b", FindingSentences.Text(oneWay), StringComparison.Ordinal);
        Assert.Equal(["a/mast", "b/mast", "c/mast"], report.Findings.Where(finding => finding.Code == "station-alone").Select(finding => finding.Subject));
        Assert.Contains(Matrix(Mixed, Ground(), new()).Findings, finding => finding.Code == "links-unknown");
    }

    private static void Same(LinkDirection direction, LinkOneWay way)
    {
        Assert.Equal(direction.Verdict, way.Verdict);
        Assert.Equal(direction.Missing, way.Missing);
        Assert.Equal(direction.MarginDb is null, way.MarginDb is null);
        Assert.Equal(direction.MarginDb?.Low ?? 0, way.MarginDb?.Low ?? 0, 1e-9);
        Assert.Equal(direction.MarginDb?.Median ?? 0, way.MarginDb?.Median ?? 0, 1e-9);
        Assert.Equal(direction.MarginDb?.High ?? 0, way.MarginDb?.High ?? 0, 1e-9);
        Assert.Equal(direction.Odds?.Works ?? 0, way.Odds?.Works ?? 0, 1e-9);
        Assert.Equal(direction.Odds?.DeliversIfItWorks ?? 0, way.Odds?.DeliversIfItWorks ?? 0, 1e-9);
        Assert.Equal(way.Odds?.Works ?? 0, way.Odds is null ? 0 : LinkOdds.From(way.CentreDb, way.UnknownDb, way.FadingDb).Works, 1e-9);
    }
}
