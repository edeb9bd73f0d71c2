using System.Collections.Immutable;
using Mastwright.Station.Supply;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>What a supply says that the rows it names make impossible.</summary>
public sealed class SupplyAgainstRowsTests
{
    private static string Text(string supply, string radio = "power: 20 dBm") =>
        "mastwright: 1\nname: One\n" + SamplePlans.Modem
        + "sites:\n  one:\n    position: \"46.4, -18.7\"\n    fit-outs:\n      a:\n        antenna: {height: 10 m}\n        radio: {" + radio + "}\n        supply: [" + supply + "]\n"
        + "parts:\n  supply:\n    cell: {battery: li-ion, series: 2, cut-off: 8.5 V}\n";

    /// <summary>A lithium cell is full at 4.2 V: 5 V and 4.2 V never run, two in series are full at 8.4 V. 30 dBm are 1 W.</summary>
    [Theory]
    [InlineData("{mains-adapter: 5 V}, {battery: li-ion, cut-off: 5 V}, {radio: chirp-node}", "power: 20 dBm", "sites/one/fit-outs/a/supply/2/cut-off", "4.2 V of 1 full")]
    [InlineData("{mains-adapter: 5 V}, {battery: li-ion, cut-off: 4.2 V}, {radio: chirp-node}", "power: 20 dBm", "sites/one/fit-outs/a/supply/2/cut-off", "4.2 V of 1 full")]
    [InlineData("{mains-adapter: 5 V}, {branches: {b: [{part: cell}, {radio: chirp-node}]}}", "power: 20 dBm", "sites/one/fit-outs/a/supply/2/branches/b/1/cut-off", "8.4 V of 2 full")]
    [InlineData("{mains-adapter: 5 V}, {radio: chirp-node, transmit: 0.5 W}", "power: 30 dBm", "sites/one/fit-outs/a/supply/2/transmit", "sends 1 W (30 dBm)")]
    [InlineData("{mains-adapter: 5 V}, {board: small-board, busy: 0.5 W}", "power: 20 dBm", "sites/one/fit-outs/a/supply/2/busy", "than 'idle' (1.2 W)")]
    [InlineData("{mains-adapter: 5 V}, {board: small-board, idle: 5 W}", "power: 20 dBm", "sites/one/fit-outs/a/supply/2/idle", "'busy' (2.6 W)")]
    public void What_the_rows_make_impossible_is_refused_with_its_place(string supply, string radio, string path, string words)
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(Check(folder, supply, radio));

        Assert.Equal(("plan-contradiction", path), (problem.Code, problem.Path));
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
        Assert.True(problem is { Line: > 0, Column: > 0, File.Length: > 0, Wanted.Length: > 0 });
    }

    [Theory]
    [InlineData("{mains-adapter: 5 V}, {battery: li-ion, cut-off: 3.2 V}, {radio: chirp-node, transmit: 1.1 W}", "power: 30 dBm")]
    [InlineData("{mains-adapter: 9 V}, {battery: li-ion, series: 2, cut-off: 6.4 V}, {radio: chirp-node}", "power: 20 dBm")]
    [InlineData("{mains-adapter: 5 V}, {board: small-board, idle: 0.5 W, busy: 0.5 W}", "power: 20 dBm")]
    public void What_can_be_passes(string supply, string radio)
    {
        using PlanFolderFixture folder = new();
        Assert.Empty(Check(folder, supply, radio));
    }

    [Fact]
    public void Power_on_more_pairs_than_the_cable_has_is_refused()
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(Check(folder, "{injector: 24 V}, {data-cable: , length: 3 m, gauge: 24, cable-pairs: 2, pairs: 4}, {board: small-board}", "power: 20 dBm"));

        Assert.Equal("sites/one/fit-outs/a/supply/2/pairs", problem.Path);
        Assert.True(problem is { Line: > 0, Column: > 0, Wanted.Length: > 0 });
        Assert.Empty(Check(folder, "{injector: 24 V}, {data-cable: , length: 3 m, gauge: 24, pairs: 4}, {board: small-board}", "power: 20 dBm"));
        Assert.Empty(Check(folder, "{injector: 24 V}, {data-cable: , length: 3 m, gauge: 24, cable-pairs: 2, pairs: 2}, {board: small-board}", "power: 20 dBm"));
    }

    [Theory]
    [InlineData("idle: 3 W, busy: 2 W", "busy")]
    [InlineData("sleep: 3 W, idle: 2 W, busy: 4 W", "idle")]
    public void A_board_that_draws_less_the_more_it_does_is_refused_as_it_is_read(string figures, string key)
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(Text("{mains-adapter: 5 V}, {board: small-board, " + figures + "}")).Problems);
        Assert.Equal("sites/one/fit-outs/a/supply/2/" + key, problem.Path);
        Assert.Contains("It draws less", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dc-cable: , length: 3 m", "dc-cable", "nothing tells its conductors")]
    [InlineData("dc-cable: , length: 3 m, gauge: 18, section: 1 mm2", "section", "a gauge and a section")]
    [InlineData("dc-cable: flexible-1, length: 3 m, metal: copper", "metal", "and its 'metal' too")]
    [InlineData("data-cable: , length: 3 m, gauge: 24, cable-pairs: 3", "cable-pairs", "two pairs or four")]
    [InlineData("data-cable: , length: 3 m, gauge: 41", "gauge", "41")]
    [InlineData("dc-cable: , length: 3 m, section: 500 mm2", "section", "500 mm")]
    public void Conductors_that_say_too_little_or_too_much_are_refused(string cable, string key, string words)
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(Text("{mains-adapter: 24 V}, {" + cable + "}, {board: small-board}")).Problems);
        Assert.Equal("sites/one/fit-outs/a/supply/2/" + key, problem.Path);
        Assert.Contains(words, problem.Message + problem.Found, StringComparison.Ordinal);
        Assert.True(problem.Line > 0 && problem.Wanted.Length > 0);
    }

    [Fact]
    public void Conductors_arrive_as_they_are_written()
    {
        using PlanFolderFixture folder = new();
        ImmutableArray<SupplyPart> parts = PlanFileTests.Good(folder.Read(Text(
            "{mains-adapter: 24 V}, {dc-cable: , length: 3 m, section: 1.5 mm2, metal: aluminium, strands: stranded, carries: 9 A}, {data-cable: , length: 3 m, gauge: 24, metal: copper-clad-aluminium, strands: solid, cable-pairs: 2}, {board: small-board}")))
            .Plan.Sites[0].FitOuts[0].Supply;
        CableConductor cores = ((SupplyCable)parts[1]).Conductor!;
        CableConductor pairs = ((SupplyCable)parts[2]).Conductor!;

        Assert.Equal((1.5, ConductorMetal.Aluminium, ConductorStrands.Stranded, 9), (Math.Round(cores.SquareMillimetres!.Value, 9), cores.Metal, cores.Strands, cores.MostAmperes));
        Assert.Equal((24, ConductorMetal.CopperCladAluminium, ConductorStrands.Solid, 2), (pairs.Gauge, pairs.Metal, pairs.Strands, pairs.CablePairs));
    }

    [Fact]
    public void A_row_of_a_radio_that_sends_more_than_it_draws_is_a_fault()
    {
        using PlanFolderFixture folder = new();
        folder.Write("own.yaml", "format: 1\nloads:\n  - {key: r, name: r, kind: radio, sleep-watt: 0, awake-watt: 0.1, transmit-watt: {20: 0.3, 30: 0.5}, boot-watt: 1, volt: 5, source: mine}\n");
        Assert.False(StationCatalogueFile.TryLoad(Path.Combine(folder.Folder, "own.yaml"), StationCatalogueFile.LoadBuiltIn(), out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains("at 30 dBm it sends 1 W and draws 0.5 W", Assert.Single(faults).Text, StringComparison.Ordinal);
    }

    private static ImmutableArray<PlanProblem> Check(PlanFolderFixture folder, string supply, string radio) =>
        SupplyAgainstRows.Check(PlanFileTests.Good(folder.Read(Text(supply, radio))), StationCatalogueFile.LoadBuiltIn().Supply);
}
