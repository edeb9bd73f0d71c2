using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Storage.Network;

namespace Mastwright.Cli.Commands;

/// <summary>links: every two stations of a plan, both directions.</summary>
internal static class LinksCommand
{
    internal static Command Create()
    {
        NetworkOptions network = new();
        Option<bool> all = new("--all") { Description = "Show the pairs that fall short as well." };
        Option<string?> picture = new("--picture") { HelpName = "FILE", Description = "Draw the links into this file (.svg or .png)." };
        Option<bool> dark = new("--dark") { Description = "Draw them light on dark." };
        Option<string?> geoJson = new("--geojson") { HelpName = "FILE", Description = "Write stations and links as GeoJSON into this file." };
        Command command = new("links", "Work out the link between every two stations of a plan.") { network.Plan, all, picture, dark, geoJson };
        network.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            network, parsed, parsed.GetValue(all), PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark)), parsed.GetValue(geoJson), cancellation)));
        return command;
    }

    private static int Run(NetworkOptions network, ParseResult parsed, bool all, PictureFile? picture, string? geoJson, CancellationToken cancellation)
    {
        if (picture?.Problem is { } problem)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        using NetworkSession? session = network.Open(parsed);
        if (session?.Links(cancellation, (double?)null) is not [{ } report])
        {
            return ExitCode.BadInput;
        }

        if (picture is not null && !picture.Write(LinksPicture.Draw(report.Plan.Name, report.Matrix, report.Settings.Wanted.MarginDb, picture.IsDark ? Theme.Dark : Theme.Light)))
        {
            return ExitCode.BadInput;
        }

        if (geoJson is not null && !Options.Write(geoJson, LinksGeoJson.Write(report.Matrix, all)))
        {
            return ExitCode.BadInput;
        }

        if (parsed.GetValue(network.Json))
        {
            Console.Out.WriteLine(LinksJson.Write(report));
        }
        else
        {
            LinksText.Write(report, all, [.. new[] { picture?.Path, geoJson }.OfType<string>()]);
        }

        return Options.Code(report.Findings, parsed.GetValue(network.FailOn));
    }
}
