using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Ground;

public sealed class CoverCatalogueTests
{
    /// <summary>Default representative clutter heights of ITU-R P.1812 (from memory): water 0, open 0, suburban 10, urban or trees 15, dense urban 20 m.</summary>
    [Fact]
    public void Every_shipped_row_has_the_height_of_its_class_and_says_why()
    {
        Assert.Equal([10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 100], CoverCatalogue.BuiltIn.Rows.Select(row => (int)row.Code));
        Assert.All(CoverCatalogue.BuiltIn.Rows, row =>
        {
            double expected = row.CoverClass switch { CoverClass.Suburban => 10, CoverClass.UrbanOrTrees => 15, CoverClass.DenseUrban => 20, _ => 0 };
            Assert.Equal(expected, row.HeightMetres);
            Assert.NotEmpty(row.Reason);
            Assert.NotEmpty(row.Source);
        });
        Assert.Equal(CoverClass.Water, CoverCatalogue.BuiltIn.ClassOf(80));
    }

    [Fact]
    public void A_row_of_ones_own_replaces_the_shipped_one()
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllText(path, "format: 1\ncover:\n  - { code: 50, name: town, class: dense-urban, height-metres: 20, reason: centre, source: own survey }\n");
        try
        {
            Assert.True(CoverCatalogue.TryLoad(path, CoverCatalogue.BuiltIn, out CoverTable table, out _));
            Assert.Equal(20, table.HeightMetres(50));
            Assert.Equal(15, table.HeightMetres(10));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("format: 2\ncover: []", "must be 1")]
    [InlineData("format: 1\ncover:\n  - { code: 300, name: a, class: open, height-metres: 0, reason: a, source: a }", "'300' is not a number from 1 to 255")]
    [InlineData("format: 1\ncover:\n  - { code: 3, name: a, class: forest, height-metres: 0, reason: a, source: a }", "'forest' is not a class")]
    [InlineData("format: 1\ncover:\n  - { code: 3, name: a, class: open, heigth_m: 0, reason: a, source: a }", "'heigth_m' is not known")]
    [InlineData("format: 1\ncover:\n  - { code: 3, name: a, class: open, height-metres: 0, source: a }", "must be given")]
    public void A_wrong_row_is_told_with_its_line(string text, string fault)
    {
        Assert.False(CoverCatalogue.TryParse(text, "own.yaml", out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains(faults, one => one.Text.Contains(fault, StringComparison.Ordinal) && one.Line > 0);
    }
}
