using System.CommandLine;
using System.Text;
using Mastwright.Cli.Output;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Station;
using Mastwright.Plans;
using Mastwright.Reports.Stations;

namespace Mastwright.Cli.Commands;

/// <summary>draw: a picture of what stands at a site.</summary>
internal static class DrawCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> station = new("STATION") { Description = "A site, or one of its fit-outs as SITE/FIT-OUT." };
        Argument<string> kind = new("PICTURE") { Description = "What to draw: diagram (one line from antenna to source), mast (to scale, with moments), box (over a day and a year), hold-up (battery after a failure), sun (the panel's worst month)." };
        kind.AcceptOnlyFromAmong([.. StationPictures.Kinds]);
        Argument<string> file = new("FILE") { Description = "The .svg or .png file to write." };
        Option<int?> width = Options.Whole("--width", $"Pixels across, {StationSheet.LeastWidth} (a phone) to {StationSheet.MostWidth} (default {StationSheet.UsualWidth}).");
        Option<bool> dark = new("--dark") { Description = "Draw for a dark page." };
        Option<bool> outside = Options.AllowOutside();
        Command command = new("draw", "Draw a fit-out: diagram, mast, box, battery or panel.") { plan, station, kind, file, width, dark, outside };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            parsed.GetRequiredValue(plan),
            parsed.GetRequiredValue(station),
            parsed.GetRequiredValue(kind),
            PictureFile.Of(parsed.GetRequiredValue(file), parsed.GetValue(dark))!,
            parsed.GetValue(width) ?? StationSheet.UsualWidth,
            parsed.GetValue(outside),
            cancellation)));
        return command;
    }

    private static int Run(string planPath, string name, string kind, PictureFile file, int width, bool allowOutside, CancellationToken cancellation)
    {
        string? wrong = file.Problem?.Replace("--picture", "FILE", StringComparison.Ordinal)
            ?? (width is < StationSheet.LeastWidth or > StationSheet.MostWidth ? $"--width: a picture of a station is {StationSheet.LeastWidth} to {StationSheet.MostWidth} pixels wide" : null);
        if (wrong is not null)
        {
            Console.Error.WriteLine(wrong);
            return ExitCode.BadInput;
        }

        using PlanSession? session = PlanSession.Open(planPath, allowOutside);
        if (session is null || StationChoice.Find(session.Plan, name) is not { } station)
        {
            return ExitCode.BadInput;
        }

        if (station.FitOut is null)
        {
            Console.Error.WriteLine($"'{name}' is a neighbour, of which the plan knows no fit-out; name one of the sites");
            return ExitCode.BadInput;
        }

        PlanReport report = session.Assessment.Run(new Dictionary<string, string>(StringComparer.Ordinal) { [station.Key] = station.FitOut.Key }, station.Key, null, cancellation);
        if (session.TellDamage())
        {
            return ExitCode.BadInput;
        }

        Drawing? drawing = StationPictures.Draw(report, report.FitOuts.Single(one => one.Station.Key == station.Key), kind, width, file.IsDark ? Theme.Dark : Theme.Light, out string problem);
        if (drawing is null)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        if (!file.Write(drawing))
        {
            return ExitCode.BadInput;
        }

        StringBuilder text = new();
        text.Wrapped(drawing.Description, 0);
        text.AppendLine($"Written: {file.Path}");
        Console.Out.Write(text);
        return ExitCode.Fine;
    }
}
