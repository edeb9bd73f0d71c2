using System.Globalization;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;
using Spectre.Console;

namespace Mastwright.Cli;

/// <summary>
/// Work that a command needs later and that depends on no input, done on another core while the plan is read: the built-in tables, and
/// the first drawing of a table or a picture, which is mostly compiling and loading. Measured: 80 ms of 440 ms of 'check' on the demo.
/// </summary>
internal static class HeadStart
{
    /// <summary>Begins. Nobody waits for it: what fails here fails again, and is told, where it is needed.</summary>
    internal static void Begin(bool withTable, bool withPicture = false) => _ = Task.Run(() =>
    {
        _ = StationCatalogueFile.LoadBuiltIn();
        _ = CoverCatalogue.BuiltIn;
        if (withTable)
        {
            DrawATable();
        }

        if (withPicture)
        {
            DrawAPicture();
        }
    });

    private static void DrawAPicture() => PngWriter.Write(new()
    {
        WidthPixels = 8,
        HeightPixels = 8,
        Title = "",
        Description = "",
        Paper = default,
        Shapes = [new TextShape(new(1, 7), "a", 6, default), new TextShape(new(4, 7), "b", 6, default) { Weight = TextWeight.SemiBold }],
    });

    private static void DrawATable()
    {
        using StringWriter nowhere = new(CultureInfo.InvariantCulture);
        IAnsiConsole console = AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(nowhere), ColorSystem = ColorSystemSupport.NoColors });
        console.Profile.Width = 80;
        Table table = new Table().Border(TableBorder.Simple).Width(80);
        table.AddColumn(new TableColumn("a"));
        table.AddColumn(new TableColumn("b").RightAligned().NoWrap());
        table.AddRow(new Text("x"), new Text("y", Output.VerdictText.Style(Verdict.Ok)));
        console.Write(table);
        console.Write(new Padder(new Text("x"), new Padding(3, 0, 0, 0)));
    }
}
