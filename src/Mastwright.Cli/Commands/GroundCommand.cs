using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using Mastwright.Cli.Output;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Cli.Commands;

/// <summary>ground: what ground files a plan has, and fetching those it lacks.</summary>
internal static class GroundCommand
{
    internal static Command Create() => new("ground", "Look at the ground files of a plan, or fetch those that it lacks.") { Info(), GroundFetchCommand.Create() };

    private static Command Info()
    {
        Argument<string> plan = Options.Plan();
        Option<bool> json = Options.Json();
        Option<bool> outside = Options.AllowOutside();
        Command command = new("info", "Read every ground file of a plan from end to end and tell what it holds.") { plan, json, outside };
        command.SetAction((parsed, cancellation) => Task.FromResult(
            Run(parsed.GetRequiredValue(plan), parsed.GetValue(outside), parsed.GetValue(json), cancellation)));
        return command;
    }

    private static int Run(string planPath, bool allowOutside, bool json, CancellationToken cancellation)
    {
        if (PlanSession.Read(planPath, allowOutside) is not { } document)
        {
            return ExitCode.BadInput;
        }

        using GroundLibrary ground = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, new() { AllowOutside = allowOutside });
        ImmutableArray<GroundFileInfo> files;
        using (Ticker.Start("Reading"))
        {
            files = ground.Info(cancellation);
        }

        ImmutableArray<GroundTile> missing = PlanArea.Of(document.Plan) is { } area ? ground.MissingTiles(area) : [];
        Console.Out.WriteLine(json ? GroundInfoJson.Write(document.Folder, files, missing) : Text(document.Folder, files, missing));
        foreach (GroundProblem problem in ground.Problems)
        {
            Console.Error.WriteLine(problem.ToString());
        }

        return ground.Problems.IsEmpty ? ExitCode.Fine : ExitCode.BadInput;
    }

    private static string Text(string folder, ImmutableArray<GroundFileInfo> files, ImmutableArray<GroundTile> missing)
    {
        StringBuilder text = new();
        foreach (GroundFileInfo file in files)
        {
            text.Line($"{Path.GetRelativePath(folder, file.FilePath)}");
            text.Line($"  {file.Format}, {file.Frame.Columns} × {file.Frame.Rows} samples {file.Frame.ResolutionMetres:0.#} m apart");
            text.Line($"  {file.Bounds.SouthDegrees:0.0000} to {file.Bounds.NorthDegrees:0.0000} N, {file.Bounds.WestDegrees:0.0000} to {file.Bounds.EastDegrees:0.0000} E");
            string what = file.IsCover
                ? "cover codes"
                : $"heights of the {Kind(file.Kind)}, datum {(file.Datum.Length == 0 ? "unknown" : file.Datum)}";
            text.Line($"  {what}, {Range(file)}, {(file.VoidPercent is { } voids ? string.Create(CultureInfo.InvariantCulture, $"{voids:0.###} % empty") : "damaged")}");
            text.Line($"  SHA-256 {file.Sha256}");
        }

        if (files.IsEmpty)
        {
            text.AppendLine("The plan has no ground files.");
        }

        if (!missing.IsEmpty)
        {
            text.Line($"Missing around the plan's stations: {string.Join(", ", missing.Select(tile => tile.Name))}. 'ground fetch' brings them.");
        }

        return text.ToString().TrimEnd();
    }

    private static string Range(GroundFileInfo file) => file is { Lowest: { } low, Highest: { } high }
        ? string.Create(CultureInfo.InvariantCulture, $"{low:0} to {high:0}{(file.IsCover ? "" : " m")}")
        : "nothing in it";

    internal static string Kind(HeightKind kind) => kind switch
    {
        HeightKind.BareEarth => "bare earth",
        HeightKind.Surface => "surface",
        _ => "ground (kind unknown)",
    };
}
