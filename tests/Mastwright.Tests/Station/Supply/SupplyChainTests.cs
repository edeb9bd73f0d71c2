using System.Collections.Immutable;
using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Supply;
using static Mastwright.Tests.Station.Supply.SupplySamples;

namespace Mastwright.Tests.Station.Supply;

public sealed class SupplyChainTests
{
    /// <summary>IEEE 802.3 type 1 at its limit: 44 V through 20 ohm, 12.95 W at the device, 15.4 W at the source, 350 mA, 37 V.</summary>
    [Fact]
    public void A_class_3_source_at_the_end_of_its_channel_is_on_the_limits_of_the_standard()
    {
        // 200 ohm/km over 100 m, two conductors each way: 20 ohm of loop.
        SupplyResult result = Compute(OfClass("class-3"), Data("pairs-20-ohm", 100, pairs: null), Steady(12.95, Estimate.Between(36, 57)));

        Assert.Equal(15.4, result.PeakWatts!.Value, 1e-9);
        Assert.Equal(0.35, result.Peak[0].Amperes, 1e-9);
        Assert.Equal(37, result.Peak[1].Volts, 1e-9);
        Assert.Equal(2.45, result.Peak[0].HeatWatts, 1e-9);
        Finding power = Only(result, "supply-class");
        Assert.Equal((Verdict.Ok, 12.95), (power.Verdict, power.Limit));
        Assert.Equal(0, power.Margin!.Value, 1e-9);
    }

    [Fact]
    public void More_than_the_class_lets_a_device_have_names_the_class_that_is_needed()
    {
        Finding power = Only(Compute(OfClass("class-2", 53), Data("awg-24", 10), Steady(10)), "supply-class");

        Assert.Equal(Verdict.Fails, power.Verdict);
        Assert.Contains("class-3 would do", FindingSentences.Text(power), StringComparison.Ordinal);
    }

    /// <summary>2 × 1.5 mm² of IEC 60228 (12.1 ohm/km), 40 m, 2 A: 1.936 V; 2.5 mm² (7.41 ohm/km): 1.1856 V.</summary>
    [Theory]
    [InlineData("solid-1-5", 1.936)]
    [InlineData("solid-2-5", 1.1856)]
    public void A_cable_of_two_cores_drops_what_its_table_says(string type, double drop)
    {
        // The power that is 2 A at the far end.
        SupplyResult result = Compute(Adapter(24, 100), Cores(type, 40), Steady(2 * (24 - drop)));

        Assert.Equal(drop, 24 - result.Peak[1].Volts, 1e-9);
        Assert.Equal(2, result.Peak[1].Amperes, 1e-9);
    }

    /// <summary>6 W through 0.88, then through 0.92: 6.8182 W, 7.4111 W.</summary>
    [Fact]
    public void Converters_in_a_row_multiply_their_losses()
    {
        SupplyResult result = Compute(
            Adapter(48, 30),
            new SupplyConverter("p/supply/2", 12) { Efficiency = 0.92 },
            new SupplyConverter("p/supply/3", 5) { Efficiency = 0.88 },
            Steady(6));

        Assert.Equal(6.8182, result.Mean[1].Watts, 1e-4);
        Assert.Equal(7.4111, result.Mean[0].Watts, 1e-4);
    }

    [Fact]
    public void What_the_cable_cannot_carry_does_not_start()
    {
        SupplyResult result = Compute(Injector(24, 30), Data("awg-24", 100), Steady(24));

        Assert.Null(result.PeakWatts);
        Finding finding = Only(result, "supply-will-not-start");
        Assert.Equal((Verdict.Fails, "p/supply/2"), (finding.Verdict, finding.Subject));
        Assert.Equal(17.10, finding.Limit!.Value, 0.005); // 24²/(4·8.42), as in ConstantPowerFeedTests.
    }

    /// <summary>The mean of such a supply is worked out, and yet nothing recharges from it.</summary>
    [Fact]
    public void Where_it_does_not_start_no_battery_is_full_again()
    {
        SupplyLoad board = Steady(0.1) with { BootWatts = 20 };
        SupplyBattery small = Battery with { ChargerAmperes = 0.2, TemperatureCelsius = Estimate.Exactly(20) };
        SupplyResult weak = Compute(Injector(24, 30), Data("awg-24", 100), new SupplyBranches("p/supply/3", [new("a", [small, Node]), new("b", [board])]));
        SupplyResult strong = Compute(Injector(24, 30), Data("awg-24", 1), new SupplyBranches("p/supply/3", [new("a", [small, Node]), new("b", [board])]));

        Assert.Equal((false, true), (weak.Starts, strong.Starts));
        Assert.NotNull(weak.MeanWatts);
        Assert.Equal(Verdict.Fails, Only(weak, "battery-recharge").Verdict);
        Assert.Null(Only(weak, "battery-recharge").Value);
        Assert.Contains("does not start", FindingSentences.Text(Only(weak, "battery-recharge")), StringComparison.Ordinal);
        Assert.NotNull(Only(strong, "battery-recharge").Value);
    }

    /// <summary>Four pairs for classes 5 to 8, two for those below: IEEE 802.3-2022 clauses 145 and 33 (from memory).</summary>
    [Theory]
    [InlineData("class-8", 2, Verdict.Fails)]
    [InlineData("class-8", 4, Verdict.Ok)]
    [InlineData("class-3", 2, Verdict.Ok)]
    [InlineData("class-3", 1, Verdict.Fails)]
    public void A_class_wants_its_pairs(string key, int pairs, Verdict verdict) =>
        Assert.Equal(verdict, Only(Compute(OfClass(key), Data("awg-24", 10, 20, pairs), Steady(5)), "supply-class").Verdict);

    [Fact]
    public void A_start_that_needs_more_than_the_running_does_is_told_too()
    {
        SupplyLoad board = Steady(5) with { BootWatts = 20 };

        SupplyResult result = Compute(Injector(24, 30), Data("awg-24", 100), board);

        Assert.NotNull(result.MeanWatts);
        Assert.Contains("20.0 W are wanted", FindingSentences.Text(Only(result, "supply-will-not-start")), StringComparison.Ordinal);
    }

    /// <summary>Two loads on one cable, one of them behind a cable of its own: the search agrees with Kirchhoff's laws, written out here.</summary>
    [Fact]
    public void A_fork_with_a_cable_in_a_branch_keeps_currents_and_voltages()
    {
        SupplyResult result = Compute(
            Adapter(24, 100),
            Cores("solid-1-5", 100),
            new SupplyBranches("p/supply/3", [new("near", [Steady(10)]), new("far", [Cores("solid-1-5", 50), Steady(8)])]));

        SupplyPoint cable = result.Peak[0];
        SupplyPoint near = result.Peak[2];
        SupplyPoint branch = result.Peak[3];
        SupplyPoint far = result.Peak[4];
        Assert.Equal(cable.Amperes, near.Amperes + branch.Amperes, 1e-9);
        Assert.Equal(24 - (2.42 * cable.Amperes), near.Volts, 1e-9);
        Assert.Equal(near.Volts - (1.21 * branch.Amperes), far.Volts, 1e-9);
        Assert.Equal(10, near.Volts * near.Amperes, 1e-9);
        Assert.Equal(8, far.Volts * far.Amperes, 1e-6);
    }

    /// <summary>A branch whose cable has no length is a fork without cables: closed form and search must meet.</summary>
    [Fact]
    public void The_search_agrees_with_the_closed_form() =>
        Gen.Select(Gen.Double[10, 60], Gen.Double[1, 200], Gen.Double[0.1, 0.9]).Sample((volts, metres, share) =>
        {
            double ohms = 2 * 12.1 * metres / 1000;
            double watts = share * ConstantPowerFeed.MostWatts(volts, ohms);
            SupplyResult searched = Compute(
                Adapter(volts, 1e6), Cores("solid-1-5", metres), new SupplyBranches("p/supply/3", [new("a", [Cores("solid-1-5", 1e-9), Steady(watts / 2)]), new("b", [Steady(watts / 2)])]));
            double closed = ConstantPowerFeed.Solve(volts, ohms, watts)!.Volts;
            return Math.Abs(searched.Peak[1].Volts - closed) < 1e-6 * volts;
        }, iter: 200);

    [Fact]
    public void More_cable_never_gives_more_volts() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100], Gen.Double[0.1, 12], Gen.Double[-30, 60]).Sample((metres, more, watts, celsius) =>
        {
            SupplyResult near = Compute(Injector(24, 30), Data("awg-24", metres, celsius), Steady(watts));
            SupplyResult far = Compute(Injector(24, 30), Data("awg-24", metres + more, celsius), Steady(watts));
            return far.Peak.IsEmpty || (!near.Peak.IsEmpty && far.Peak[^1].Volts <= near.Peak[^1].Volts && far.PeakWatts >= near.PeakWatts - 1e-9);
        }, iter: 300);

    [Fact]
    public void A_warmer_cable_or_fewer_pairs_never_lose_less() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[-30, 60], Gen.Double[0, 40]).Sample((metres, celsius, warmer) =>
        {
            double Loss(double at, int pairs) => Compute(OfClass("class-3"), Data("awg-24", metres, at, pairs), Steady(8)).Peak[0].HeatWatts;
            return Loss(celsius + warmer, 2) >= Loss(celsius, 2) && Loss(celsius, 1) >= Loss(celsius, 2) && Loss(celsius, 2) >= Loss(celsius, 4);
        }, iter: 200);

    [Fact]
    public void Every_ledger_of_watts_ends_at_what_the_source_gives()
    {
        SupplyResult result = Compute(
            Adapter(12, 30), Cores("solid-1-5", 20), new SupplyConverter("p/supply/3", 5) { RatedWatts = 15 },
            new SupplyBranches("p/supply/5", [new("board", [new SupplyLoad("p/supply/6", false, "board")]), new("radio", [Battery, Node])]));

        Ledger mean = Assert.Single(result.Ledgers, ledger => ledger.Title == "power from the mains, on average");
        Assert.Equal(result.MeanWatts!.Value / 0.8, mean.Total, 1e-9); // The adapter of the samples is 80 % efficient.
        Assert.Equal(mean.Total, mean.Lines.Sum(line => line.Value), 1e-9);
        Assert.All(mean.Lines, line => Assert.True(line.Value >= 0, line.ToString()));
        Ledger volts = Assert.Single(result.Ledgers, ledger => ledger.Title == "voltage at board, at its peak");
        Assert.Equal(5, volts.Total, 1e-9);
    }

    [Fact]
    public void Watts_drawn_and_lost_are_those_of_the_ledger_the_source_s_own_loss_among_them()
    {
        SupplyResult[] results =
        [
            Compute(Adapter(12, 30), Cores("solid-1-5", 20), new SupplyConverter("p/supply/3", 5) { RatedWatts = 15 }, new SupplyBranches("p/supply/5", [new("board", [new SupplyLoad("p/supply/6", false, "board")]), new("radio", [Battery, Node])])),
            Compute(OfClass("class-3"), Data("awg-24", 50, 20, 2), Steady(4)),
            Compute(Battery, Node),
        ];
        Assert.All(results, result =>
        {
            Ledger mean = result.Ledgers.First(ledger => ledger.Unit == "W" && ledger.Title.EndsWith("on average", StringComparison.Ordinal));
            double loads = mean.Lines.Where(line => line.Code.EndsWith("-load", StringComparison.Ordinal)).Sum(line => line.Value);
            Assert.Equal(mean.Total, result.DrawnWatts!.Value, 1e-12);
            Assert.Equal(mean.Total - loads, result.LostWatts!.Value, 1e-9); // The batteries are full: what does not reach a load is lost.
        });

        // The catalogue's curve of a mains adapter, 80 % in the samples, stands in for what a power-over-cable source loses of the mains.
        Assert.Equal(results[1].MeanWatts!.Value / 0.8, results[1].DrawnWatts!.Value, 1e-9);
        Assert.Contains(results[1].Assumptions, assumption => assumption.Code == "adapter-efficiency");
        Assert.True(results[1].IsFromMains);
        Assert.False(results[2].IsFromMains);
    }

    [Fact]
    public void A_charger_is_never_asked_for_more_than_it_gives_and_the_battery_helps_at_the_peak()
    {
        SupplyBattery small = Battery with { ChargerAmperes = 0.01 };
        SupplyResult result = Compute(Adapter(5, 5), small, Node);

        // 10 mA at 4.2 V through 85 %: the radio's 0.3 W as it starts comes from the cell.
        Assert.Equal(0.01 * 4.2 / 0.85, result.PeakWatts!.Value, 1e-9);
        Assert.Contains(result.Ledgers.SelectMany(ledger => ledger.Lines), line => line.Label.StartsWith("helped out by", StringComparison.Ordinal) && line.Value < 0);
    }

    [Theory]
    [InlineData(10, Verdict.Ok)]
    [InlineData(12.5, Verdict.Tight)]
    [InlineData(16, Verdict.Fails)]
    public void A_rating_wants_a_fifth_to_spare(double watts, Verdict verdict) => Assert.Equal(verdict, Only(Compute(Adapter(24, 15), Steady(watts)), "supply-headroom").Verdict);

    [Fact]
    public void A_source_without_a_rating_is_not_judged() => Assert.Equal(Verdict.Unknown, Only(Compute(Adapter(24), Steady(5)), "supply-headroom").Verdict);

    [Fact]
    public void Too_much_voltage_fails_and_warns()
    {
        // 48 V passive into a board that bears 28 V.
        Finding finding = Only(Compute(Injector(48, 20), Data("awg-24", 10), Steady(5, Estimate.Between(9, 28))), "supply-overvoltage");

        Assert.Equal((Verdict.Fails, -20.0), (finding.Verdict, finding.Margin));
        Assert.Contains("destroys it", FindingSentences.Advice(finding), StringComparison.Ordinal);
    }

    [Fact]
    public void A_thin_cable_is_told_for_its_current_and_its_heat()
    {
        SupplyResult result = Compute(Adapter(24, 100), Cores("thread", 10), Steady(20));

        Assert.Equal(Verdict.Fails, Only(result, "supply-cable-current").Verdict);
        Finding heat = Only(result, "supply-cable-heat");

        // Loss over surface: I²·R/L over 10 W/(m²·K)·π·d. 0.2 ohm a metre of loop, sheath 1 mm.
        double amperes = result.Peak[0].Amperes;
        Assert.Equal(20 + (amperes * amperes * 0.2 / (10 * Math.PI * 0.001)), heat.Value!.Value.Median, 1e-6);
        Assert.Equal(Verdict.Fails, Only(result, "supply-fuse-missing").Verdict);
    }

    [Theory]
    [InlineData(1.0, Verdict.Ok)]
    [InlineData(0.25, Verdict.Tight)]
    [InlineData(0.1, Verdict.Fails)]
    [InlineData(25.0, Verdict.Fails)]
    public void A_fuse_lies_between_the_peak_and_what_the_cable_carries(double amperes, Verdict verdict)
    {
        // 5.4 W at 24 V are 0.226 A behind the cable; it carries 16 A.
        SupplyResult result = Compute(Adapter(24, 1000), new SupplyFuse("p/supply/2", amperes), Cores("solid-1-5", 20), Steady(5.4));

        Assert.Equal(verdict, Only(result, "supply-fuse").Verdict);
    }

    [Theory]
    [InlineData(0.5, 0.63)]
    [InlineData(0.506, 0.8)]
    [InlineData(3.0, 4.0)]
    public void A_fuse_is_suggested_with_a_quarter_to_spare(double peak, double size) => Assert.Equal(size, FuseSizes.For(peak));

    [Fact]
    public void What_the_catalogue_does_not_know_is_unknown_and_all_of_it_is_told()
    {
        SupplyResult result = Compute(
            Adapter(24, 30),
            Cores("awg-24", 3),
            new SupplyConverter("p/supply/3", 5) { Kind = "bukc" },
            new SupplyBranches("p/supply/4", [new("a", [new SupplyLoad("p/supply/5", false, "bord")]), new("b", [new SupplyBattery("p/supply/6", "cel"), new SupplyLoad("p/supply/7", true, "")])]));

        Assert.Equal(["p/supply/5", "p/supply/7", "p/supply/6", "p/supply/3", "p/supply/2"], result.Findings.Select(finding => finding.Subject));
        Assert.All(result.Findings, finding => Assert.Equal(Verdict.Unknown, finding.Verdict));
        Assert.Empty(result.Ledgers);
        Assert.Contains("Did you mean 'buck'?", FindingSentences.Text(result.Findings[3]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_without_a_supply_hears_nothing_of_it() => Assert.Empty(Compute().Findings);

    /// <summary>A profile of shares: 80 % asleep at 0.1, 5 % busy at 2, the rest at 1 W: 0.08 + 0.1 + 0.15.</summary>
    [Fact]
    public void The_mean_of_a_load_weighs_its_states_by_time()
    {
        LoadProfile profile = new()
        {
            Name = "x",
            SleepWatts = Estimate.Exactly(0.1),
            AwakeWatts = Estimate.Exactly(1),
            PeakWatts = Estimate.Exactly(2),
            BootWatts = 5,
            SleepShare = 0.8,
            PeakShare = 0.05,
        };

        Assert.Equal(0.33, profile.MeanWatts.Median, 1e-12);
        Assert.Equal(5, profile.MostWatts);
        Assert.Equal(2, profile.MostRunningWatts);

        // In an hour of half traffic it sleeps half at most: 0.05 + 1.
        Assert.Equal(1.05, profile.MeanWattsWith(0.5).Median, 1e-12);
    }

    [Fact]
    public void A_radio_draws_by_its_power_setting_and_its_airtime()
    {
        // 72 packets of 0.5 s an hour are 1 % of the time; 14 dBm draw 0.2 W in the samples: 0.99 · 0.05 + 0.01 · 0.2.
        SupplyResult result = Compute(Adapter(5, 5), Node);

        Assert.Equal((0.99 * 0.05) + (0.01 * 0.2), result.MeanWatts!.Value, 1e-12);
    }

    [Fact]
    public void Everything_that_was_not_given_is_listed()
    {
        SupplyContext bare = new() { PlanPath = "p", Catalogue = Catalogue };
        SupplyResult result = SupplyChain.Compute(
            [
                new SupplySource("p/supply/1", SupplySourceKind.Injector) { Volts = 24 }, new SupplyCable("p/supply/2", true, "awg-24", Estimate.Exactly(10)),
                new SupplyArrester("p/supply/3", null), new SupplyConverter("p/supply/4", 5), new SupplyBattery("p/supply/5", "cell"), new SupplyLoad("p/supply/6", true, "node"),
            ],
            bare);

        Assert.Equal(
            [
                "adapter-efficiency", "arrester-resistance", "battery-age", "battery-charge", "battery-parallel", "battery-series", "box-temperature", "cable-temperature", "cell-capacity",
                "charger-current", "charger-efficiency", "converter-efficiency", "converter-kind", "hold-up-wanted", "injector-pairs", "load-node", "radio-power-for-supply", "sleep-share",
                "transmit-share",
            ],
            result.Assumptions.Select(one => one.Code).Order(StringComparer.Ordinal));
        Assert.All(result.Assumptions, one => Assert.NotEmpty(one.PlanPath));
    }

    [Fact]
    public void A_load_with_figures_of_its_own_and_no_start_is_listed()
    {
        Assert.Contains(Compute(Adapter(24, 15), Steady(5)).Assumptions, one => (one.Code, one.PlanPath) == ("load-boot", "p/supply/9/boot"));
        Assert.DoesNotContain(Compute(Adapter(24, 15), Steady(5) with { BootWatts = 6 }).Assumptions, one => one.Code == "load-boot");
    }

    /// <summary>The row of the samples tells what is drawn from 0 to 22 dBm; 1 W radiated cannot come out of the 0.6 W of its last point.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(-5)]
    public void A_power_setting_outside_the_rows_is_unknown(double dbm)
    {
        SupplyResult result = SupplyChain.Compute([Adapter(5, 5), Node], Context with { ConductedPowerDbm = dbm });

        Finding finding = Only(result, "supply-load-unknown");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains("from 0 to 22 dBm", FindingSentences.Text(finding), StringComparison.Ordinal);
        Assert.Null(result.MeanWatts);
        Assert.NotNull(SupplyChain.Compute([Adapter(5, 5), Node with { PeakWatts = Estimate.Exactly(3) }], Context with { ConductedPowerDbm = dbm }).MeanWatts);
    }

    [Fact]
    public void An_input_that_nobody_described_is_unknown_and_so_is_the_passive_source()
    {
        SupplyConverter open = new("p/supply/3", 5) { Kind = "isolated" };
        SupplyLoad load = Steady(2, Estimate.Between(4.5, 5.5));
        SupplyResult unknown = Compute(Injector(48, 20), Data("awg-24", 10), open, load);
        Assert.Equal((Verdict.Unknown, "p/supply/3", 48.0), (Only(unknown, "supply-input-unknown").Verdict, Only(unknown, "supply-input-unknown").Subject, Only(unknown, "supply-input-unknown").Value!.Value.Median));
        Assert.Contains("'input'", FindingSentences.Advice(Only(unknown, "supply-input-unknown")), StringComparison.Ordinal);
        Assert.Equal(Verdict.Unknown, Only(unknown, "supply-passive").Verdict);

        SupplyResult known = Compute(Injector(48, 20), Data("awg-24", 10), open with { InputVolts = Estimate.Between(9, 57) }, load);
        Assert.DoesNotContain(known.Findings, finding => finding.Code == "supply-input-unknown");
        Assert.Equal(Verdict.Ok, Only(known, "supply-passive").Verdict);

        // A class says what its devices bear; a charger says nothing until its input is given.
        Assert.DoesNotContain(Compute(OfClass("class-3"), Data("awg-24", 10), open, load).Findings, finding => finding.Code == "supply-input-unknown");
        Assert.Equal("p/supply/4", Only(Compute(Adapter(5, 10), Battery, Node), "supply-input-unknown").Subject);
    }

    [Theory]
    [InlineData("buck", 24, 48, Verdict.Fails)]
    [InlineData("buck", 24, 24, Verdict.Fails)]
    [InlineData("buck", 24, 23.5, Verdict.Tight)]
    [InlineData("buck", 24, 5, Verdict.Ok)]
    [InlineData("boost", 24, 12, Verdict.Fails)]
    [InlineData("boost", 24, 24, Verdict.Fails)]
    [InlineData("boost", 24, 48, Verdict.Ok)]
    public void A_converter_changes_a_voltage_its_own_way_alone(string kind, double from, double to, Verdict verdict)
    {
        Finding finding = Only(Compute(Adapter(from, 20), new SupplyConverter("p/supply/2", to) { Kind = kind }, Steady(2)), "converter-step");

        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(Math.Abs(from - to) * (verdict == Verdict.Fails ? -1 : 1), finding.Margin!.Value, 1e-9);
        Assert.DoesNotContain(Compute(Adapter(from, 20), new SupplyConverter("p/supply/2", to) { Kind = "isolated" }, Steady(2)).Findings, one => one.Code == "converter-step");
    }

    /// <summary>A lithium cell gives 3.0 V when empty and 4.2 V when full: 3.3 V stepped down from it ends before it is empty, 4 V stepped up begins too late.</summary>
    [Theory]
    [InlineData("buck", 3.3, 3.0, Verdict.Fails)]
    [InlineData("boost", 4.0, 4.2, Verdict.Fails)]
    [InlineData("boost", 5.0, 4.2, Verdict.Ok)]
    public void A_converter_on_a_battery_meets_it_empty_and_full(string kind, double to, double from, Verdict verdict)
    {
        SupplyBattery battery = Battery with { PlanPath = "p/supply/1" };
        Finding finding = Only(Compute(battery, new SupplyConverter("p/supply/2", to) { Kind = kind }, Steady(0.2)), "converter-step");

        Assert.Equal((verdict, from), (finding.Verdict, finding.Value!.Value.Median));
    }

    [Fact]
    public void Impossible_parts_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Data("awg-24", -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Adapter(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SupplyConverter("p", 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Battery with { AmpereHours = 0 });
        Assert.Throws<ArgumentException>(() => Compute(Steady(1)));
    }

    public static TheoryData<string, SupplyPart[]> Disorders => new()
    {
        { "begins with what the power comes from", [Steady(1)] },
        { "ends without a load", [Adapter(5)] },
        { "ends without a load", [Adapter(5), Data("awg-24", 3)] },
        { "behind a load", [Adapter(5), Steady(1), Steady(1)] },
        { "source stands behind", [Adapter(5), Adapter(5), Steady(1)] },
        { "behind another battery", [Battery, Battery, Node] },
        { "behind another battery", [Battery, new SupplyBranches("p", [new("a", [Battery, Node])])] },
        { "ends without a load", [Adapter(5), new SupplyBranches("p", [new("a", [Data("awg-24", 3)])])] },
    };

    [Theory, MemberData(nameof(Disorders))]
    public void An_order_that_means_nothing_is_told(string words, SupplyPart[] parts) =>
        Assert.Contains(words, SupplyOrder.Check([.. parts])!.Message, StringComparison.Ordinal);

    private static Finding Only(SupplyResult result, string code) => Assert.Single(result.Findings, finding => finding.Code == code);
}
