using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station;
using Mastwright.Station.Rules;
using Mastwright.Storage.Catalogue;

namespace Mastwright.Storage.Tests.Law;

public sealed class RuleBookTests
{
    private const string Own = """
        format: 1
        radio-regions:
          - {key: CA, name: Canada, law: the radio act}
        radio-rules:
          - {key: eu-o, region: EU, name: my band, from-mhz: 869.4, to-mhz: 869.65, erp-mw: 100, document: Own reading, edition: "1", clause: a, read: 2026-11-28}
          - {key: ca-1, region: CA, name: all of it, from-mhz: 902, to-mhz: 928, eirp-mw: 4000, document: Own reading, edition: "1", clause: b, from-memory: yes}
        """;

    [Fact]
    public void Every_shipped_row_says_where_it_stands_and_how_it_was_read()
    {
        RuleBook book = Stations.Catalogue.Law;
        RuleSource[] sources = [.. book.Rules.Select(row => row.Source), .. book.Approvals.Select(row => row.Source), .. book.ExposureLimits.Select(row => row.Source)];

        Assert.True(sources.Length >= 40);
        Assert.All(sources, source => Assert.False(string.IsNullOrWhiteSpace(source.Document) || string.IsNullOrWhiteSpace(source.Edition) || string.IsNullOrWhiteSpace(source.Clause)));
        Assert.All(sources, source => Assert.NotEqual(source.FromMemory, source.Read.Length > 0));
        Assert.All(sources.Where(source => !source.FromMemory), source => Assert.NotEmpty(source.How));
        Assert.All(book.Rules, rule => Assert.NotNull(book.Region(rule.Region)));
        Assert.All(book.Missing, missing => Assert.Null(book.Region(missing.Key)));
    }

    /// <summary>An edition is a version, a year, a date or a volume; a row of which none is known says so in the one word that keeps it from yielding ok.</summary>
    [Fact]
    public void Every_shipped_row_names_a_real_edition_or_rests_on_none()
    {
        RuleBook book = Stations.Catalogue.Law;
        RuleSource[] sources = [.. book.Rules.Select(row => row.Source), .. book.Approvals.Select(row => row.Source), .. book.ExposureLimits.Select(row => row.Source)];

        Assert.Contains(sources, source => source.IsFirm);
        Assert.All(sources.Where(source => source.EditionKnown), source =>
        {
            Assert.Matches(@"\d{4}|V\d+\.\d+|\d+:\d+", source.Edition);
            Assert.DoesNotMatch("draft|not |unknown|entry", source.Edition);
        });
        Assert.All(sources.Where(source => !source.EditionKnown), source => Assert.False(source.IsFirm));
        Assert.All(sources.Where(source => source.FromMemory), source => Assert.False(source.IsFirm));
    }

    /// <summary>Decision 2006/771/EC binds the members of the Union and nobody else; a country with a text of its own comes before what covers it.</summary>
    [Theory]
    [InlineData("NO", "CEPT", false)]
    [InlineData("IS", "CEPT", false)]
    [InlineData("CEPT", "CEPT", false)]
    [InlineData("FR", "EU", true)]
    public void Only_members_of_the_Union_are_bound_by_its_decision(string word, string key, bool read)
    {
        RadioRegion region = Stations.Catalogue.Law.Region(word)!;

        Assert.Equal(key, region.Key);
        Assert.Equal(read, region.Unread.Length == 0);
        Assert.Contains(Stations.Catalogue.Law.RulesOf(region), rule => rule.Key == "eu-o");
        Assert.True(StationCatalogueFile.TryParse("format: 1\nradio-regions:\n  - {key: \"NO\", name: Norway, law: its own}\n", "own.yaml", out StationCatalogue own, out _));
        Assert.Equal("NO", Stations.Catalogue.Overlay(own).Law.Region("no")!.Key);
    }

    [Fact]
    public void A_keepers_rows_replace_and_add_with_their_own_source()
    {
        Assert.True(StationCatalogueFile.TryParse(Own, "own.yaml", out StationCatalogue rows, out _));
        RuleBook book = Stations.Catalogue.Overlay(rows).Law;

        RuleSource source = book.Rules.Single(rule => rule.Key == "eu-o").Source;
        Assert.Equal("Own reading, 1, a, read 2026-11-28", source.ToString());
        Assert.Equal(20, book.Rules.Single(rule => rule.Key == "eu-o").PowerDbm!.Value, 1e-9);
        Assert.NotNull(book.Region("ca"));
        Assert.DoesNotContain(book.Missing, missing => missing.Key == "CA");
        Assert.Null(RadioRules.RegionUnknown("CA", book));
    }

    [Theory]
    [InlineData("EU", "EU")]
    [InlineData("de", "EU")]
    [InlineData("GB", "UK")]
    [InlineData("USA", "US")]
    public void A_country_is_found_by_its_code(string word, string key) => Assert.Equal(key, Stations.Catalogue.Law.Region(word)!.Key);

    [Theory]
    [InlineData("", "does not say whose rules")]
    [InlineData("AU", "Australia")]
    [InlineData("Narnia", "no rules for 'Narnia'")]
    public void A_region_without_rows_is_unknown_and_says_why(string word, string words)
    {
        Finding finding = RadioRules.RegionUnknown(word, Stations.Catalogue.Law)!;

        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains(words, FindingSentences.Text(finding), StringComparison.Ordinal);
        Assert.Contains("US (the United States)", FindingSentences.Advice(finding), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Wrong => new()
    {
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 869, to-mhz: 868, document: d, edition: e, clause: c, read: 2026-11-28}", "must be above from-mhz" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, document: d, edition: e, clause: c}", "the key 'read' is missing" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, document: d, edition: e, clause: c, read: yesterday}", "the day on which the text was read" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, document: d, edition: e, clause: c, read: 2026-11-28, from-memory: yes}", "read on no day" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, edition: e, clause: c, read: 2026-11-28}", "the key 'document' is missing" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, erp-mw: 25, eirp-mw: 25, document: d, edition: e, clause: c, read: 2026-11-28}", "give the power once" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, erp-mw: -25, document: d, edition: e, clause: c, read: 2026-11-28}", "'-25' is not a number" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, access: free, document: d, edition: e, clause: c, read: 2026-11-28}", "'free' is none of any, hopping" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, access: refused, document: d, edition: e, clause: c, read: 2026-11-28}", "the key 'kept-for' is missing" },
        { "radio-rules:\n  - {key: a, region: EU, name: n, from-mhz: 868, to-mhz: 869, density-dbm: 8, document: d, edition: e, clause: c, read: 2026-11-28}", "the key 'density-khz' is missing" },
        { "radio-regions:\n  - {key: XX, name: n, law: l, covers: XY}", "a list of country codes" },
        { "exposure-limits:\n  - {key: a, region: EU, for: all, over: b, from-mhz: 1, to-mhz: 2, volts-per-metre: 1, frequency-power: 0, averaging-minutes: 6, document: d, edition: e, clause: c, read: 2026-11-28}", "'all' is none of public, workers" },
        { "exposure-limits:\n  - {key: a, region: EU, for: public, over: b, from-mhz: 1, to-mhz: 2, frequency-power: 0, averaging-minutes: 6, document: d, edition: e, clause: c, read: 2026-11-28}", "give the limit once" },
        { "exposure-limits:\n  - {key: a, region: EU, for: public, over: b, from-mhz: 1, to-mhz: 2, volts-per-metre: 1, frequency-power: 0, averaging-minutes: 6, standing: custom, document: d, edition: e, clause: c, read: 2026-11-28}", "'custom' is none of law, minimum, recommendation" },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void A_wrong_row_says_what_is_wrong(string text, string words)
    {
        Assert.False(StationCatalogueFile.TryParse("format: 1\n" + text, "own.yaml", out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains(words, Assert.Single(faults).Text, StringComparison.Ordinal);
        Assert.True(faults[0].Line >= 3);
    }
}
