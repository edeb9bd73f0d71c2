using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Storage.Files;
using Mastwright.Storage.Plans.Exchange;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>sites: brings places into a plan from other files, and writes the plan's places out.</summary>
internal static class SitesCommand
{
    internal static Command Create() => new("sites", "Import places into a plan, or export the plan's places.") { Import(), Export() };

    private static Command Import()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> file = new("FILE") { Description = "GPX, GeoJSON, KML or CSV file with places." };
        Option<string?> kind = Format();
        Option<bool> neighbours = new("--as-neighbours") { Description = "Add them as neighbours." };
        Option<bool> sites = new("--as-sites") { Description = "Add them as own sites." };
        Option<bool> elevation = new("--elevation-is-ground") { Description = "Take elevations in the file as the height of the bare ground." };
        Command command = new("import", "Add places from a file to a plan as sites or neighbours; nothing in the plan is changed.")
        {
            plan, file, kind, neighbours, sites, elevation,
        };
        command.SetAction(parsed =>
        {
            bool? asNeighbours = parsed.GetValue(neighbours) ? true : parsed.GetValue(sites) ? false : null;
            if (parsed.GetValue(neighbours) && parsed.GetValue(sites))
            {
                Console.Error.WriteLine("--as-neighbours and --as-sites exclude each other; give one");
                return ExitCode.BadInput;
            }

            return RunImport(
                parsed.GetRequiredValue(plan),
                parsed.GetRequiredValue(file),
                FormatOf(parsed.GetValue(kind)),
                new() { AsNeighbours = asNeighbours, ElevationIsGround = parsed.GetValue(elevation) });
        });
        return command;
    }

    private static Command Export()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> file = new("FILE") { Description = "File to write; its ending names the format (.gpx, .geojson, .kml, .csv)." };
        Option<string?> kind = Format();
        Option<bool> overwrite = new("--overwrite") { Description = "Replace the file when it is there." };
        Command command = new("export", "Write the places of a plan as GPX, GeoJSON, KML or CSV.") { plan, file, kind, overwrite };
        command.SetAction(parsed => RunExport(
            parsed.GetRequiredValue(plan), parsed.GetRequiredValue(file), FormatOf(parsed.GetValue(kind)), parsed.GetValue(overwrite)));
        return command;
    }

    private static int RunImport(string planPath, string file, PlaceFormat? format, SitesImportOptions options)
    {
        PlaceReading reading = PlaceFile.Read(file, format);
        if (!Tell(reading.Problems))
        {
            return ExitCode.BadInput;
        }

        foreach (PlanProblem note in reading.Notes)
        {
            Console.Error.WriteLine($"Note: {note}");
        }

        PlanTextResult plan = PlanText.Read(planPath);
        if (!Tell(plan.Problem))
        {
            return ExitCode.BadInput;
        }

        SitesImportResult result = SitesImport.Insert(plan.Text!, reading.Places, options);
        if (!Tell(result.Problem) || !Tell(PlanFile.Read(result.Text!, new()).Problems) || !Tell(result.Text!.Save()))
        {
            return ExitCode.BadInput;
        }

        Console.Out.WriteLine($"Added {result.Paths.Length} to {planPath}:");
        foreach (string path in result.Paths)
        {
            Console.Out.WriteLine($"  {path}");
        }

        return ExitCode.Fine;
    }

    private static int RunExport(string planPath, string file, PlaceFormat? format, bool overwrite)
    {
        if ((format ?? PlaceFormats.ByExtension(file)) is not { } form)
        {
            Console.Error.WriteLine($"{file}: the ending names no format; use .gpx, .geojson, .kml or .csv, or --format");
            return ExitCode.BadInput;
        }

        if (File.Exists(file) && !overwrite)
        {
            Console.Error.WriteLine($"{file}: is there already; --overwrite replaces it");
            return ExitCode.BadInput;
        }

        if (PlanSession.Read(planPath, allowOutside: false) is not { } document)
        {
            return ExitCode.BadInput;
        }

        try
        {
            WholeFile.Write(file, SitesExport.Write(document.Plan, form));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{file}: cannot be written: {fault.Message}");
            return ExitCode.BadInput;
        }

        Console.Out.WriteLine($"Wrote {document.Plan.Sites.Length} sites and {document.Plan.Neighbours.Length} neighbours to {file}");
        return ExitCode.Fine;
    }

    private static bool Tell(ImmutableArray<PlanProblem> problems)
    {
        foreach (PlanProblem problem in problems)
        {
            Console.Error.WriteLine(problem.ToString());
        }

        return problems.IsEmpty;
    }

    private static bool Tell(PlanProblem? problem) => problem is null || Tell([problem]);

    private static Option<string?> Format()
    {
        Option<string?> option = new("--format") { Description = "Format, where the file's ending does not say." };
        option.AcceptOnlyFromAmong("gpx", "geojson", "kml", "csv");
        return option;
    }

    private static PlaceFormat? FormatOf(string? name) => name switch
    {
        "gpx" => PlaceFormat.Gpx,
        "geojson" => PlaceFormat.GeoJson,
        "kml" => PlaceFormat.Kml,
        "csv" => PlaceFormat.Csv,
        _ => null,
    };
}
