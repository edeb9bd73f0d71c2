using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Storage.Network;

namespace Mastwright.Cli.Commands;

/// <summary>relay: where one to five more relays would help most.</summary>
internal static class RelayCommand
{
    internal static Command Create()
    {
        NetworkOptions network = new();
        Argument<string> station = new("STATION") { Description = "Whose network it is: KEY, or SITE/FIT-OUT." };
        Option<string?> goal = new("--goal") { Description = "What for: shadow opened (default), stations joined, weights reached, or robustness against any single loss." };
        goal.AcceptOnlyFromAmong([.. RelayFindings.GoalNames]);
        Option<string?> picture = new("--picture") { HelpName = "FILE", Description = "Draw what is reached, open and opened into this file (.svg or .png)." };
        Option<bool> dark = new("--dark") { Description = "Draw it light on dark." };
        Option<string?> geoJson = new("--geojson") { HelpName = "FILE", Description = "Write relays, their links and what was ranked as GeoJSON into this file." };
        RelaySearchOptions search = new();
        Command command = new("relay", "Find where one to five more relays would help most.") { network.Plan, station, goal };
        search.AddTo(command);
        command.Add(picture);
        command.Add(dark);
        command.Add(geoJson);
        network.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            PictureFile? file = PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark));
            RelayOptions options = search.Read(parsed, parsed.GetRequiredValue(station), RelayFindings.GoalOf(parsed.GetValue(goal)));
            string? problem = file?.Problem ?? RelaySearchOptions.Problem(options);
            if (problem is not null)
            {
                Console.Error.WriteLine(problem);
                return Task.FromResult(ExitCode.BadInput);
            }

            return Task.FromResult(Run(network, parsed, options, file, parsed.GetValue(geoJson), cancellation));
        });
        return command;
    }

    private static int Run(NetworkOptions network, ParseResult parsed, RelayOptions options, PictureFile? picture, string? geoJson, CancellationToken cancellation)
    {
        using NetworkSession? session = network.Open(parsed);
        if (session is null)
        {
            return ExitCode.BadInput;
        }

        RelayReport? report;
        using (JobLine line = new())
        using (LongWork work = new(session.CacheFolder, new(), line.Say, line))
        {
            report = RelayRun.Make(session.Plan, session.Stations, options, work, session.CacheFolder, line.Say, line, cancellation);
        }

        if (report is null
            || (picture is not null && !picture.Write(RelayPicture.Draw(report, picture.IsDark ? Theme.Dark : Theme.Light)))
            || (geoJson is not null && !Options.Write(geoJson, RelayGeoJson.Write(report))))
        {
            return ExitCode.BadInput;
        }

        if (parsed.GetValue(network.Json))
        {
            Console.Out.WriteLine(RelayJson.Write(report));
        }
        else
        {
            RelayText.Write(report, [.. new[] { picture?.Path, geoJson }.OfType<string>()]);
        }

        return Options.Code(report.Findings, parsed.GetValue(network.FailOn));
    }
}
