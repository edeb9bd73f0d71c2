using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Cli.Commands;

/// <summary>prove: two periods of a station's records against each other.</summary>
internal static class ProveCommand
{
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
                parsed.GetRequiredValue(plan),
                parsed.GetRequiredValue(store),
                new(parsed.GetRequiredValue(site), parsed.GetValue(network), parsed.GetValue(before), parsed.GetValue(after), parsed.GetValue(entry)),
                parsed.GetValue(prediction),
                parsed.GetValue(outside)),
            PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark)),
            parsed.GetValue(json),
            parsed.GetValue(failOn))));
        return command;
    }

    internal static int Run(ProveQuestion question, PictureFile? picture, bool json, string[]? failOn)
    {
        if (picture?.Problem is { } problem)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        if (PlanSession.Read(question.Plan, question.AllowOutside) is not { } document || PlanSession.Catalogue(document, question.AllowOutside) is not { } catalogue)
        {
            return ExitCode.BadInput;
        }

        using RecordStore? store = StoreOptions.There(question.Store);
        if (store is null || ProofRun.Make(document.Plan, catalogue, store, question.Request, Console.Error.WriteLine) is not { } answer)
        {
            return ExitCode.BadInput;
        }

        if (question.WithPrediction)
        {
            using PlanSession? session = PlanSession.Open(question.Plan, question.AllowOutside);
            if (session is null || ProofPrediction.Of(session, question.Request.Site, answer.Report, answer.Stations, Console.Error.WriteLine) is not { } agreement)
            {
                return ExitCode.BadInput;
            }

            answer = answer.With(agreement);
        }

        if (picture is not null && !picture.Write(ProofPicture.Draw(answer.Report, answer.Agreement, picture.IsDark ? Theme.Dark : Theme.Light)))
        {
            return ExitCode.BadInput;
        }

        if (json)
        {
            Console.Out.WriteLine(ProofJson.Write(answer.Report, answer.Stations, answer.Agreement));
        }
        else
        {
            ProofText.Write(answer.Report, answer.Agreement, picture?.Path);
        }

        return Options.Code(answer.Report.Findings, failOn);
    }
}

/// <summary>What prove is asked for, and where.</summary>
internal sealed record ProveQuestion(string Plan, string Store, ProveRequest Request, bool WithPrediction, bool AllowOutside);
