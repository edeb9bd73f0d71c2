using System.Collections.Immutable;
using Mastwright.Station;
using Mastwright.Station.Feed;
using Mastwright.Station.Mast;
using Mastwright.Station.Radio;
using Mastwright.Storage.Catalogue;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Catalogue;

public sealed class StationCatalogueFileTests
{
    [Fact]
    public void Every_shipped_row_has_a_source_and_a_fit_within_5_percent()
    {
        StationCatalogue catalogue = StationCatalogueFile.LoadBuiltIn();

        Assert.True(catalogue.LineTypes.Length >= 10);
        Assert.All(catalogue.LineTypes, row => Assert.False(string.IsNullOrWhiteSpace(row.Source)));
        Assert.All(catalogue.LineTypes, row => Assert.InRange(row.Fit.WorstResidual, 0, AttenuationFit.AllowedResidual));
        Assert.All(Enum.GetValues<LossyPartKind>(), kind => Assert.NotNull(catalogue.Part(kind)));
        Assert.NotNull(catalogue.Part(PartLossRow.AmplifierBypass));
    }

    /// <summary>
    /// dB per 100 m at 868 MHz. RG-213, 1/2 in and 7/8 in: least squares through a two-way radio training guide, appendix H, page 73
    /// (24.90, 6.95, 3.75). Foam classes: their published constants, from memory (31.958, 24.339, 12.561, 8.043). Tolerance: rounding.
    /// </summary>
    [Theory]
    [InlineData("rg-213", 24.90)]
    [InlineData("corrugated-1-2", 6.95)]
    [InlineData("corrugated-7-8", 3.75)]
    [InlineData("foam-5mm", 31.958)]
    [InlineData("foam-6mm", 24.339)]
    [InlineData("foam-10mm", 12.561)]
    [InlineData("foam-15mm", 8.043)]
    public void Shipped_lines_lose_what_their_tables_say_at_868_MHz(string key, double db) =>
        Assert.Equal(db, StationCatalogueFile.LoadBuiltIn().LineType(key)!.DbPer100Metres(868e6), 0.01);

    /// <summary>County emergency-radio tables print 5.3 dB (6 mm) and 2.7 dB (10 mm) per 100 ft at 450 MHz; 1.5 dB (10 mm) at 150 MHz.</summary>
    [Theory]
    [InlineData("foam-6mm", 450e6, 5.3)]
    [InlineData("foam-10mm", 450e6, 2.7)]
    [InlineData("foam-10mm", 150e6, 1.5)]
    public void Foam_classes_agree_with_another_published_table(string key, double frequencyHz, double dbPer100Feet) =>
        Assert.Equal(dbPer100Feet, 0.3048 * StationCatalogueFile.LoadBuiltIn().LineType(key)!.DbPer100Metres(frequencyHz), 0.05);

    /// <summary>Demodulation limits: modem data sheet, table 13.</summary>
    [Fact]
    public void Shipped_demodulation_limits_are_those_of_the_data_sheet()
    {
        ModemRow modem = StationCatalogueFile.LoadBuiltIn().Modem(Modulation.ChirpSpreadSpectrum)!;

        for (int factor = 7; factor <= 12; factor++)
        {
            Assert.Equal(-7.5 - (2.5 * (factor - 7)), modem.SnrLimitDb[factor]);
        }
    }

    /// <summary>kg/m of steel tubes as the section tables of EN 10219-2 print them (from memory, to the digits shown).</summary>
    [Theory]
    [InlineData("steel-48.3x3.2", 3.56)]
    [InlineData("steel-60.3x3.2", 4.51)]
    [InlineData("steel-60.3x4", 5.55)]
    [InlineData("steel-88.9x4", 8.38)]
    [InlineData("steel-114.3x5", 13.5)]
    public void Shipped_tubes_weigh_what_the_section_tables_say(string key, double kilogramsPerMetre)
    {
        TubeRow row = StationCatalogueFile.LoadBuiltIn().Structure.Tubes.Find(key)!;

        Assert.Equal(kilogramsPerMetre, new TubeSection(row.OuterDiameterMetres, row.WallMetres).AreaSquareMetres * 7850, kilogramsPerMetre * 0.003);
    }

    [Fact]
    public void Shipped_rows_of_mast_wind_and_earth_are_those_of_the_standards()
    {
        StationCatalogue catalogue = StationCatalogueFile.LoadBuiltIn();

        // EN 1991-1-4, Table 4.1; IEC 62305-3, Table 2; EN 10219-1.
        Assert.Equal([0.003, 0.01, 0.05, 0.3, 1], new[] { "0", "I", "II", "III", "IV" }.Select(key => catalogue.Structure.Terrains.Find(key)!.RoughnessLengthMetres));
        Assert.Equal([1, 1, 2, 5, 10], new[] { "0", "I", "II", "III", "IV" }.Select(key => catalogue.Structure.Terrains.Find(key)!.LeastHeightMetres));
        Assert.Equal([20, 30, 45, 60], new[] { "I", "II", "III", "IV" }.Select(key => catalogue.Earthing.Classes.Find(key)!.SphereMetres));
        Assert.Equal(355e6, catalogue.Structure.Grades.Find("S355")!.YieldPa);
        Assert.Equal(250e6, catalogue.Structure.Grades.Find("aw-6082-t6")!.YieldPa);
        Assert.Equal(16, catalogue.Earthing.Conductors.Find("copper")!.LeastSquareMillimetres);
        Assert.All(catalogue.Structure.Tubes.Rows, row => Assert.NotEmpty(row.Source));
        Assert.Equal(3, catalogue.Structure.Exposures.Rows.Length);
        Assert.Equal(14, catalogue.Structure.Ice.Rows.Length);
        Assert.True(catalogue.Earthing.Soils.Rows.Length >= 6);
    }

    [Theory]
    [InlineData("tubes:\n  - {key: a, outer-diameter-mm: 48.3, wall-mm: 25, material: steel, source: s}", "wall-mm", "radius")]
    [InlineData("tubes:\n  - {key: a, outer-diameter-mm: 48.3, wall-mm: 3, material: wood, source: s}", "material", "wood")]
    [InlineData("ice-classes:\n  - {key: a, density: 900, source: s}", "ice-classes/a", "one of the two")]
    [InlineData("soils:\n  - {key: a, ohm-m: [3, 2, 1], source: s}", "ohm-m", "rise")]
    [InlineData("box-materials:\n  - {key: a, w-per-m2-k: 9.5, emissivity: 0.9, source: s}", "w-per-m2-k", "outside film")]
    [InlineData("box-colours:\n  - {key: a, absorptivity: 1.2, source: s}", "absorptivity", "0 to 1")]
    [InlineData("box-seals:\n  - {key: a, air-changes-per-hour: [1, 2, 3], breathes: perhaps, source: s}", "breathes", "yes or no")]
    [InlineData("box-places:\n  - {key: a, needed: IP77, galvanic-v: 0.2, source: s}", "needed", "IP code")]
    [InlineData("metals:\n  - {key: a, volts: 0.2}", "metals/a", "source")]
    public void A_row_that_cannot_be_is_a_fault(string row, string key, string says)
    {
        Assert.False(StationCatalogueFile.TryParse("format: 1\n" + row + "\n", "own.yaml", out _, out ImmutableArray<CatalogueFault> faults));
        CatalogueFault fault = Assert.Single(faults);
        Assert.Contains(key, fault.Key, StringComparison.Ordinal);
        Assert.Contains(says, fault.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_users_rows_add_to_and_replace_the_shipped_ones()
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllText(path, """
            format: 1
            line-types:
              - key: rg-213
                name: my drum
                points: { 100: 6, 400: 14 }
                source: own measurement
              - key: barn-drum
                name: unmarked line from the barn
                points: { 100: 8, 400: 18 }
                source: own measurement
            """);
        try
        {
            Assert.True(StationCatalogueFile.TryLoad(path, StationCatalogueFile.LoadBuiltIn(), out StationCatalogue catalogue, out _));
            Assert.Equal("my drum", catalogue.LineType("RG-213")!.Name);
            Assert.NotNull(catalogue.LineType("barn-drum"));
            Assert.NotNull(catalogue.LineType("rg-58"));
        }
        finally
        {
            File.Delete(path);
        }
    }

    public static TheoryData<string, string, long> Wrong => new()
    {
        { "format: 1\nlines: []", "'lines' is not a key here", 2 },
        { "line-types: []", "the key 'format' is missing", 1 },
        { "format: 2", "'2' is not a number from 1 to 1", 1 },
        { "format: 1\nline-types:\n  - key: a\n    name: a\n    source: s\n    points: { 100: 1 }", "two or more frequencies", 6 },
        { "format: 1\nline-types:\n  - key: a\n    name: a\n    source: s\n    points: { 100: 1, 200: x }", "'x' is not a number", 6 },
        { "format: 1\nline-types:\n  - key: a\n    name: a\n    points: { 100: 1, 200: 2 }", "the key 'source' is missing", 3 },
        { "format: 1\nfeed-parts:\n  - key: connector\n    loss-db: [3, 2, 1]\n    source: s", "must rise", 4 },
        { "format: 1\nfeed-parts:\n  - key: connector\n    loss-db: 3\n    source: s", "[lowest, middle, highest]", 4 },
        { "format: 1\nmodems:\n  - key: m\n    modulation: morse\n    source: s", "'morse' is not a modulation", 3 },
        { "format: 1\nmodems: &a []", "The anchor '&a' is refused: a catalogue says", 2 },
        { "format: 1\nformat: 1", "The key 'format' stands twice in one place", 2 },
        { "format: 1\nmodems: [1, 2", "not well-formed YAML", 3 },
        { "[[[[[[[[[[[[[[[[[", "nesting is deeper than any catalogue's", 1 },
        { "", "The file is empty", 1 },
        { "- a", "does not hold keys and values", 1 },
        { "format: 1\nmodems: \u0000", "holds characters that no text has", 2 },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void A_wrong_file_says_what_and_where(string text, string words, long line)
    {
        Assert.False(StationCatalogueFile.TryParse(text, "own.yaml", out StationCatalogue catalogue, out ImmutableArray<CatalogueFault> faults));
        CatalogueFault fault = Assert.Single(faults);
        Assert.Contains(words, fault.Text, StringComparison.Ordinal);
        Assert.Equal(line, fault.Line);
        Assert.Empty(catalogue.LineTypes);
    }

    [Fact]
    public void All_faults_are_told_in_one_go_in_our_words()
    {
        const string Text = """
            format: 1
            line-types:
              - key: roll
                name: a roll
                points: {100: five, 900: 20, 900: 21, 1000: 0}
                source: &s own
              - name: no key
                points: {100: 5}
                source: *s
              - key: roll
                name: [again]
                points: {100: 5, 900: 20}
                source: !!str own
            feed-parts:
              - key: connector
                loss-db: [a, 2, 1000]
            modems:
              - key: m
                modulation: chirp-spread-spectrum
                snr-limits: {4: {db: 90}, 7: -7.5}
                source: own
            lines: []

            """;
        Assert.False(StationCatalogueFile.TryParse(Text, "own.yaml", out _, out ImmutableArray<CatalogueFault> faults));

        Assert.Equal([5, 5, 5, 6, 7, 8, 9, 10, 11, 13, 15, 16, 16, 20, 20, 20, 20, 22], faults.Select(fault => fault.Line));
        Assert.Contains(faults, fault => fault.Text.Contains("'900' stands twice in one place", StringComparison.Ordinal));
        Assert.Contains(faults, fault => fault is { Key: "line-types/2/key", Line: 7 });
        Assert.All(faults, fault => Assert.DoesNotContain("(Line", fault.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Mutated_text_never_crashes_the_reader()
    {
        string valid = File.ReadAllText(Path.Combine(TestPlaces.Repository, "data", "catalogue", "modem.yaml"));
        Gen.Select(Gen.Int[0, valid.Length - 1], Gen.Char, Gen.Int[0, 40]).Sample((at, character, cut) =>
        {
            string mutated = valid.Remove(at, Math.Min(cut, valid.Length - at)).Insert(at, character.ToString());
            bool read = StationCatalogueFile.TryParse(mutated, "own.yaml", out _, out ImmutableArray<CatalogueFault> faults);
            return read == faults.IsEmpty;
        }, iter: 3000);
    }

    [Fact]
    public void A_missing_file_is_a_fault_not_a_crash()
    {
        Assert.False(StationCatalogueFile.TryLoad("/no/such/file.yaml", StationCatalogue.Empty, out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains("cannot be read", faults[0].Text, StringComparison.Ordinal);
    }
}
