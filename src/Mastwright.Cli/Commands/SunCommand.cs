using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Sun;
using Mastwright.Plans;
using Mastwright.Station.Sun;

namespace Mastwright.Cli.Commands;

/// <summary>sun: how a solar station comes through the year, month by month, with a picture of the worst one.</summary>
internal static class SunCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> station = new("STATION") { Description = "A site with a solar panel, or one of its fit-outs as SITE/FIT-OUT." };
        Option<string?> picture = new("--picture") { Description = "Draw a month into this .svg or .png file: how full the battery is, what the panel offers.", HelpName = "FILE" };
        Option<int?> month = Options.Whole("--month", "The month to draw, 1 to 12 (default: the one with the emptiest battery).");
        Option<bool> dark = new("--dark") { Description = "Draw for a dark page." };
        Option<bool> outside = Options.AllowOutside();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("sun", "Tell how a panel and its battery come through the year.") { plan, station, picture, month, dark, outside, failOn };
        command.SetAction(parsed => Run(
            parsed.GetRequiredValue(plan),
            parsed.GetRequiredValue(station),
            PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark)),
            parsed.GetValue(month),
            parsed.GetValue(outside),
            parsed.GetValue(failOn)));
        return command;
    }

    private static int Run(string planPath, string name, PictureFile? picture, int? month, bool allowOutside, string[]? failOn)
    {
        if ((picture?.Problem ?? (month is < 1 or > 12 ? $"--month: {month} is no month; 1 to 12 are" : null)) is { } wrong)
        {
            Console.Error.WriteLine(wrong);
            return ExitCode.BadInput;
        }

        using PlanSession? session = PlanSession.Open(planPath, allowOutside);
        if (session is null || StationChoice.Find(session.Plan, name) is not { } station)
        {
            return ExitCode.BadInput;
        }

        SolarResult? result = session.Assessment.Solar(station);
        if (session.TellDamage())
        {
            return ExitCode.BadInput;
        }

        if (result is null)
        {
            Console.Error.WriteLine($"{station.Subject} has no panel; give it one under {station.FitOutPath}/solar");
            return ExitCode.BadInput;
        }

        if (picture is not null && result is { Setup: { } setup, Year: { } year }
            && !picture.Write(SolarPicture.Draw($"{station.Name}, {station.FitOut!.Name}", setup, year, month - 1 ?? year.WorstMonth, picture.IsDark ? Theme.Dark : Theme.Light)))
        {
            return ExitCode.BadInput;
        }

        SunText.Write(station, result, result.Year is null ? null : picture?.Path);
        return Options.Code(result.Examination.Findings, failOn);
    }
}
