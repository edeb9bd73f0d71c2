using System.CommandLine;
using Mastwright.Agreement;
using Mastwright.Cli.Output;
using Mastwright.Evidence;
using Mastwright.Evidence.Proof;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Evidence;
using Mastwright.Plans;
using Mastwright.Records;
using Mastwright.Records.Proof;
using Mastwright.Records.Store;
using Mastwright.Station;
using Mastwright.Station.Radio;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>prove: two periods of a station's records against each other.</summary>
internal static class ProveCommand
{
    private static readonly long Earliest = UtcTime.Of(new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero));

    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> site = new("SITE") { Description = "The site whose station is to be proved." };
        Option<string> store = StoreOptions.Store();
        Option<string?> network = StoreOptions.Network();
        Option<string?> before = new("--before") { Description = "The period before the change, UTC: 2026-06-01..2026-07-01.", HelpName = "FROM..TO" };
        Option<string?> after = new("--after") { Description = "The period after it.", HelpName = "FROM..TO" };
        Option<int?> entry = Options.Whole("--entry", "In place of both: the log entry of the change.");
        Option<bool> prediction = new("--prediction") { Description = "Hold what was heard after against what the plan predicts, too." };
        Option<string?> picture = new("--picture") { Description = "Draw levels over time and the shift of each station into this .svg or .png file.", HelpName = "FILE" };
        Option<bool> dark = new("--dark") { Description = "Draw for a dark page." };
        Option<bool> outside = Options.AllowOutside();
        Option<bool> json = Options.Json();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("prove", "Hold a station's records before and after a change against each other.") { plan, site, store, network, before, after, entry, prediction, picture, dark, outside, json, failOn };
        command.SetAction(parsed => StoreOptions.Guarded(() => Run(
            new(
                parsed.GetRequiredValue(plan), parsed.GetRequiredValue(site), parsed.GetRequiredValue(store), parsed.GetValue(network),
                parsed.GetValue(before), parsed.GetValue(after), parsed.GetValue(entry), parsed.GetValue(outside)) { WithPrediction = parsed.GetValue(prediction) },
            PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark)),
            parsed.GetValue(json),
            parsed.GetValue(failOn))));
        return command;
    }

    internal static int Run(ProveRequest request, PictureFile? picture, bool json, string[]? failOn)
    {
        if (picture?.Problem is { } problem)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        if (PlanSession.Read(request.Plan, request.AllowOutside) is not { } document || PlanSession.Catalogue(document, request.AllowOutside) is not { } catalogue)
        {
            return ExitCode.BadInput;
        }

        if (document.Plan.Sites.FirstOrDefault(one => one.Key == request.Site) is not { } site)
        {
            Console.Error.WriteLine($"'{request.Site}' is no site of the plan; there are {string.Join(", ", document.Plan.Sites.Select(one => one.Key))}");
            return ExitCode.BadInput;
        }

        using RecordStore? store = StoreOptions.There(request.Store);
        if (store is null || StoreOptions.NetworkOf(store, request.Network) is not { } network || ProofPeriods.Of(request, store, network) is not { } periods)
        {
            return ExitCode.BadInput;
        }

        ProofReport report = Report(document, catalogue, site, store, network, periods, out ProofReading reading);
        if (report.Result.Before.Packets == 0 || report.Result.After.Packets == 0)
        {
            Console.Error.WriteLine($"{site.Key} heard nothing in the period {(report.Result.Before.Packets == 0 ? "before" : "after")}; the network knows the receivers' addresses as they were imported, the plan's 'addresses' say which are this site's");
            return ExitCode.BadInput;
        }

        AgreementSummary? agreement = request.WithPrediction ? ProofPrediction.Of(request, report, reading.Stations) : null;
        if (request.WithPrediction && agreement is null)
        {
            return ExitCode.BadInput;
        }

        if (agreement is not null)
        {
            report = report with { Findings = [.. report.Findings, .. agreement.Findings(site.Key)] };
        }

        if (picture is not null && !picture.Write(ProofPicture.Draw(report, agreement, picture.IsDark ? Theme.Dark : Theme.Light)))
        {
            return ExitCode.BadInput;
        }

        if (json)
        {
            Console.Out.WriteLine(ProofJson.Write(report, reading.Stations, agreement));
        }
        else
        {
            ProofText.Write(report, agreement, picture?.Path);
        }

        return Options.Code(report.Findings, failOn);
    }

    private static ProofReport Report(
        PlanDocument document, StationCatalogue catalogue, Site site, RecordStore store, string network, (ProofPeriod Before, ProofPeriod After) periods, out ProofReading reading)
    {
        StationNames names = new(document.Plan);
        ProofReading read = ProofReading.Of(store, network, names, site.Key, periods.Before, periods.After);
        ModemSetting modem = document.Plan.Modem;
        ProofSettings settings = new()
        {
            UsualSpreadingFactor = modem.SpreadingFactor,
            LimitSnrDb = factor => Demodulation.SnrLimit(modem with { SpreadingFactor = factor }, null, catalogue)?.SnrDb,
        };
        reading = read;
        long now = UtcTime.Of(TimeProvider.System.GetUtcNow());
        return ProofReport.Of(
            new(site.Key, site.Name, place => names.NameOf(read.Stations[place])),
            ProofExamination.Run(read.Before, read.After, settings),
            read.ElsewhereBefore.Packets > 0 && read.ElsewhereAfter.Packets > 0 ? ProofExamination.Run(read.ElsewhereBefore, read.ElsewhereAfter, settings) : null,
            settings,
            store.Span(network, long.MinValue, Earliest) is not null || store.Span(network, now + (24 * ProofPeriod.Hour), long.MaxValue) is not null);
    }
}

/// <summary>What prove is asked for.</summary>
internal sealed record ProveRequest(string Plan, string Site, string Store, string? Network, string? Before, string? After, int? Entry, bool AllowOutside)
{
    /// <summary>Whether the plan's prediction is held against the records too.</summary>
    internal bool WithPrediction { get; init; }
}
