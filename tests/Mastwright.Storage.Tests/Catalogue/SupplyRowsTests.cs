using System.Collections.Immutable;
using Mastwright.Station;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;
using Mastwright.Storage.Catalogue;

namespace Mastwright.Storage.Tests.Catalogue;

/// <summary>The rows of the supply that ship, against what is published.</summary>
public sealed class SupplyRowsTests
{
    private static readonly SupplyCatalogue Rows = StationCatalogueFile.LoadBuiltIn().Supply;

    /// <summary>Class, source W, device W, source V, device V: IEEE 802.3, the class table as three public copies agree (one of them misprints 99 W for class 8).</summary>
    public static TheoryData<string, double, double, double, double> Classes => new()
    {
        { "class-0", 15.4, 12.95, 44, 37 },
        { "class-1", 4, 3.84, 44, 37 },
        { "class-2", 7, 6.49, 44, 37 },
        { "class-3", 15.4, 12.95, 44, 37 },
        { "class-4", 30, 25.5, 50, 42.5 },
        { "class-5", 45, 40, 50, 42.5 },
        { "class-6", 60, 51, 50, 42.5 },
        { "class-7", 75, 62, 52, 41.1 },
        { "class-8", 90, 71.3, 52, 41.1 },
    };

    [Theory, MemberData(nameof(Classes))]
    public void Classes_are_those_of_the_standard(string key, double source, double device, double sourceVolts, double deviceVolts)
    {
        PowerClassRow row = Rows.Class(key)!;
        Assert.Equal((source, device, sourceVolts, deviceVolts, 57.0), (row.SourceWatts, row.DeviceWatts, row.SourceLeastVolts, row.DeviceLeastVolts, row.MostVolts));

        // Through the loop that the type allows (20 ohm, 12.5 ohm, half of that over four pairs) its device gets its power at its least voltage or more.
        double ohms = row.Type == 1 ? 20 : row.Pairs == 4 ? 6.25 : 12.5;
        FeedPoint point = ConstantPowerFeed.Solve(row.SourceLeastVolts, ohms, row.DeviceWatts)!;
        Assert.True(point.Volts >= row.DeviceLeastVolts - 1e-9, key);
        Assert.True(point.Amperes <= row.MostAmperes + 1e-9, key);
    }

    /// <summary>Ohms per kilometre of one conductor: wire tables (ASTM B258), TIA-568 for category 5e, IEC 60228 by section.</summary>
    [Theory]
    [InlineData("cat-5e", 93.8)]
    [InlineData("awg-22", 52.95)]
    [InlineData("awg-23", 66.80)]
    [InlineData("awg-24", 84.22)]
    [InlineData("flexible-6", 3.30)]
    [InlineData("solid-6", 3.08)]
    [InlineData("stranded-16", 1.15)]
    [InlineData("awg-12-two-core", 5.21 * 1.02)]
    [InlineData("solid-1-5", 12.1)]
    [InlineData("solid-2-5", 7.41)]
    [InlineData("solid-4", 4.61)]
    public void Cables_resist_as_their_tables_say(string key, double ohms) => Assert.Equal(ohms, Rows.Cable(key)!.OhmsPerKilometre, ohms * 1e-3);

    [Fact]
    public void Clad_aluminium_resists_half_as_much_again_as_copper() =>
        Assert.InRange(Rows.Cable("awg-24-clad")!.OhmsPerKilometre / Rows.Cable("awg-24")!.OhmsPerKilometre, 1.5, 1.6);

    /// <summary>A maker's table of sealed lead-acid for more than an hour: -16 % at 0 °C to +5 % at 40 °C.</summary>
    [Theory]
    [InlineData(0, -16)]
    [InlineData(5, -12)]
    [InlineData(10, -10)]
    [InlineData(15, -6)]
    [InlineData(20, -1)]
    [InlineData(25, 0)]
    [InlineData(30, 3)]
    [InlineData(35, 4)]
    [InlineData(40, 5)]
    public void Lead_acid_holds_what_the_makers_table_says(double celsius, double percent) =>
        Assert.Equal(1 + (percent / 100), Rows.Cell("lead-acid")!.CapacityByCelsius.Median.At(celsius), 1e-12);

    /// <summary>Battery manual of lithium iron phosphate: nothing below 0 °C or above 60 °C, 0.1 C to 10 °C, 0.2 C to 25 °C, 0.5 C to 50 °C, 0.1 C to 60 °C.</summary>
    [Theory]
    [InlineData(-1, 0)]
    [InlineData(5, 0.1)]
    [InlineData(20, 0.2)]
    [InlineData(30, 0.5)]
    [InlineData(55, 0.1)]
    [InlineData(61, 0)]
    public void Iron_phosphate_is_charged_as_its_manual_says(double celsius, double rate)
    {
        BatteryPack pack = new() { Cell = Rows.Cell("lifepo4")!, Series = 4, Parallel = 1, CellAmpereHours = 50 };
        Assert.Equal(50 * rate, pack.MostChargeAmperes(celsius), 1e-9);
    }

    [Fact]
    public void Every_row_has_a_source_and_every_cell_holds_less_in_the_cold()
    {
        Assert.All(Rows.Cables.Select(row => row.Source).Concat(Rows.Classes.Select(row => row.Source)).Concat(Rows.Converters.Select(row => row.Source))
            .Concat(Rows.Loads.Select(row => row.Source)).Concat(Rows.Cells.Select(row => row.Source)), source => Assert.False(string.IsNullOrWhiteSpace(source)));
        Assert.All(Rows.Cells, cell =>
        {
            for (int celsius = -40; celsius < 60; celsius++)
            {
                Assert.True(cell.CapacityByCelsius.At(celsius).Low <= cell.CapacityByCelsius.At(celsius + 1).Low, cell.Key);
                Assert.True(cell.CapacityByCelsius.At(celsius).Median <= cell.CapacityByCelsius.At(celsius + 1).Median, cell.Key);
                Assert.True(cell.CapacityByCelsius.At(celsius).High <= cell.CapacityByCelsius.At(celsius + 1).High, cell.Key);
                Assert.True(cell.ResistanceByCelsius.At(celsius) >= cell.ResistanceByCelsius.At(celsius + 1), cell.Key);
            }

            Assert.True(cell.CutOffVolts < cell.NominalVolts && cell.NominalVolts < cell.FullVolts, cell.Key);
            Assert.All(cell.RestVolts.Points.Zip(cell.RestVolts.Points.Skip(1)), pair => Assert.True(pair.First.Y < pair.Second.Y, cell.Key));
        });
        Assert.NotNull(Rows.Converter(ConverterRow.MainsAdapter));
        Assert.NotNull(Rows.Converter(ConverterRow.Buck));
        Assert.NotNull(Rows.Converter(ConverterRow.Charger));
    }

    [Fact]
    public void A_users_row_replaces_the_one_that_ships()
    {
        const string Text = "format: 1\nconverters:\n  - {key: buck, name: mine, efficiency: {0: 0.5, 1: 0.9}, source: measured}\n";

        Assert.True(StationCatalogueFile.TryParse(Text, "mine.yaml", out StationCatalogue own, out _));
        SupplyCatalogue all = StationCatalogueFile.LoadBuiltIn().Overlay(own).Supply;
        Assert.Equal(("mine", 0.7), (all.Converter("buck")!.Name, all.Converter("buck")!.Efficiency.At(0.5)));
        Assert.Equal(Rows.Converters.Length, all.Converters.Length);
    }

    [Theory]
    [InlineData("cables:\n  - {key: a, name: a, most-ampere: 1, sheath-mm: 5, most-celsius: 60, source: s}", "give one of 'awg', 'mm2' and 'ohm-per-km'")]
    [InlineData("cables:\n  - {key: a, name: a, awg: 24, ohm-per-km: 80, most-ampere: 1, sheath-mm: 5, most-celsius: 60, source: s}", "give one of 'awg', 'mm2' and 'ohm-per-km'")]
    [InlineData("cables:\n  - {key: a, name: a, mm2: 1.5, most-ampere: 1, sheath-mm: 5, most-celsius: 60, source: s}", "with 'mm2' give 'strands'")]
    [InlineData("cables:\n  - {key: a, name: a, mm2: 1.5, strands: woven, most-ampere: 1, sheath-mm: 5, most-celsius: 60, source: s}", "'woven' is no make-up")]
    [InlineData("converters:\n  - {key: a, name: a, step: sideways, efficiency: {0.5: 0.9}, source: s}", "'sideways' is no way")]
    [InlineData("cables:\n  - {key: a, name: a, awg: 24, metal: tin, most-ampere: 1, sheath-mm: 5, most-celsius: 60, source: s}", "'tin' is no metal")]
    [InlineData("cables:\n  - {key: a, name: a, awg: 24, most-ampere: -1, sheath-mm: 5, most-celsius: 60, source: s}", "not a number from 0.001")]
    [InlineData("converters:\n  - {key: a, name: a, source: s}", "give the points as")]
    [InlineData("converters:\n  - {key: a, name: a, efficiency: {0.5: 1.2}, source: s}", "not a number from 0.01 to 1")]
    [InlineData("power-classes:\n  - {key: a, source: s}", "the key 'type' is missing")]
    [InlineData("loads:\n  - {key: a, name: a, kind: lamp, sleep-watt: 0, awake-watt: 1, boot-watt: 1, volt: [4, 5, 6], source: s}", "'lamp' is no kind of load")]
    [InlineData("loads:\n  - {key: a, name: a, kind: board, sleep-watt: 0, awake-watt: [2, 1, 3], busy-watt: 2, boot-watt: 1, volt: [4, 5, 6], source: s}", "must rise")]
    [InlineData("loads:\n  - {key: a, name: a, kind: board, sleep-watt: 0, awake-watt: [1, 2], busy-watt: 2, boot-watt: 1, volt: [4, 5, 6], source: s}", "one number, or [lowest")]
    [InlineData("cells:\n  - {key: a, name: a, source: s}", "capacity-by-celsius")]
    public void A_faulty_row_is_told(string text, string words)
    {
        Assert.False(StationCatalogueFile.TryParse("format: 1\n" + text + "\n", "mine.yaml", out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains(faults, fault => fault.ToString().Contains(words, StringComparison.Ordinal));
    }
}
