using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Network.Links;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Storage.Network;

namespace Mastwright.Cli.Commands;

/// <summary>shadow: what a station does not reach directly, why, and what relays reach of it.</summary>
internal static class ShadowCommand
{
    private const int MostHops = 32;

    internal static Command Create()
    {
        NetworkOptions network = new();
        Argument<string> site = new("SITE") { Description = "Station: KEY, or SITE/FIT-OUT." };
        Option<Estimate?> radius = Options.Quantity("--radius", Dimension.Length, "How far from the station (default 10 km).");
        Option<Estimate?> cell = Options.Quantity("--cell", Dimension.Length, "Side of a cell (default 90 m).");
        Option<string?> receiver = new("--receiver") { Description = "Who hears: handheld (default), handheld-indoors, mast, or the key of a neighbour or site that it is like." };
        Option<Estimate?> height = Options.Quantity("--receiver-height", Dimension.Length, "Height of the receiver above ground (default 1.5 m, a mast 6 m).");
        Option<string?> direction = new("--direction") { Description = "heard (default): stations send; hears: they receive; both: the weaker way." };
        direction.AcceptOnlyFromAmong("heard", "hears", "both");
        Option<int?> limit = Options.Whole("--hop-limit", "Most links from the station to a cell (default 3); 1 looks at no relays.");
        Option<string?> picture = new("--picture") { HelpName = "FILE", Description = "Draw the shadow into this file (.svg or .png)." };
        Option<bool> dark = new("--dark") { Description = "Draw it light on dark." };
        Option<string?> geoJson = new("--geojson") { HelpName = "FILE", Description = "Write causes, what relays open and ridges as GeoJSON into this file." };
        Command command = new("shadow", "Tell what a station does not reach directly, why, and what relays reach of it.")
        {
            network.Plan, site, radius, cell, receiver, height, direction, limit, picture, dark, geoJson,
        };
        network.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            PictureFile? file = PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark));
            int hops = parsed.GetValue(limit) ?? 3;
            if ((file?.Problem ?? (hops is < 1 or > MostHops ? $"--hop-limit: {hops} is out of range; 1 to {MostHops} are possible" : null)) is { } problem)
            {
                Console.Error.WriteLine(problem);
                return Task.FromResult(ExitCode.BadInput);
            }

            ReachOptions options = new()
            {
                Stations = [parsed.GetRequiredValue(site)],
                Area = new(parsed.GetValue(radius)?.Median ?? ReachOptions.UsualRadiusMetres, parsed.GetValue(cell)?.Median ?? ReachOptions.UsualCellMetres),
                Receiver = parsed.GetValue(receiver) ?? ReachReceiver.HandheldKey,
                ReceiverHeightMetres = parsed.GetValue(height)?.Median,
                Direction = ReachReport.DirectionOf(parsed.GetValue(direction)),
                Files = [],
            };
            return Task.FromResult(Run(network, parsed, options, hops, file, parsed.GetValue(geoJson), cancellation));
        });
        return command;
    }

    private static int Run(NetworkOptions network, ParseResult parsed, ReachOptions options, int hopLimit, PictureFile? picture, string? geoJson, CancellationToken cancellation)
    {
        using NetworkSession? session = network.Open(parsed);
        if (session is null || StationChoice.Find(session.Plan.Plan, options.Stations[0]) is not { } station)
        {
            return ExitCode.BadInput;
        }

        NetworkSession with = session.With(station);
        LinkMatrix? links = null;
        if (hopLimit > 1)
        {
            if (with.Links(cancellation, (double?)null) is not [{ } matrix])
            {
                return ExitCode.BadInput;
            }

            links = matrix.Matrix;
        }

        using Progress progress = Progress.Start("maps");
        ShadowReport? report = ShadowRun.Make(session.Plan, station, with.Stations, links, options, hopLimit, Console.Error.WriteLine, progress, cancellation);
        progress.Stop();
        if (report is null || (picture is not null && !picture.Write(ShadowPicture.Draw(report, picture.IsDark ? Theme.Dark : Theme.Light)))
            || (geoJson is not null && !Options.Write(geoJson, ShadowGeoJson.Write(report))))
        {
            return ExitCode.BadInput;
        }

        if (parsed.GetValue(network.Json))
        {
            Console.Out.WriteLine(ShadowJson.Write(session.Plan.Plan.Name, report));
        }
        else
        {
            ShadowText.Write(session.Plan.Plan.Name, report, [.. new[] { picture?.Path, geoJson }.OfType<string>()]);
        }

        return Options.Code(report.Findings, parsed.GetValue(network.FailOn));
    }
}
