using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Records.Store;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>records fit: a correction of the prediction from what was heard, which the plan may adopt by name.</summary>
internal static class RecordsFitCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Option<string> store = StoreOptions.Store();
        Option<string?> network = StoreOptions.Network();
        Option<string?> period = new("--period") { Description = "Only records of this time, UTC: 2026-06-01..2026-07-01.", HelpName = "FROM..TO" };
        Option<int?> packets = Options.Whole("--packets", "Packets below which a link is not used (default 5).");
        Option<string?> adopt = new("--adopt") { Description = "Write the correction into the plan under this name and use it, where it beats its rivals.", HelpName = "NAME" };
        Option<bool> outside = Options.AllowOutside();
        Option<bool> json = Options.Json();
        Option<string[]> failOn = Options.FailOn();
        Command command = new("fit", "Fit a correction of the prediction to what your stations heard.") { plan, store, network, period, packets, adopt, outside, json, failOn };
        command.SetAction(parsed => StoreOptions.Guarded(() => Run(
            new(parsed.GetRequiredValue(plan), parsed.GetRequiredValue(store), parsed.GetValue(network), parsed.GetValue(period), parsed.GetValue(packets), parsed.GetValue(adopt), parsed.GetValue(outside)),
            parsed.GetValue(json),
            parsed.GetValue(failOn))));
        return command;
    }

    private static int Run(FitQuestion question, bool json, string[]? failOn)
    {
        using PlanSession? session = PlanSession.Open(question.Plan, question.AllowOutside);
        using RecordStore? store = session is null ? null : StoreOptions.There(question.Store);
        if (session is null || store is null)
        {
            return ExitCode.BadInput;
        }

        if (question.Adopt is { } wanted && CorrectionText.Refusal(session.Plan, wanted) is { } taken)
        {
            Console.Error.WriteLine(taken);
            return ExitCode.BadInput;
        }

        CorrectionAnswer? answer;
        using (Ticker.Start("Fitting"))
        {
            answer = CorrectionRun.Make(session, store, question.Network, question.Period, question.Packets ?? CorrectionRun.UsualPackets, Console.Error.WriteLine);
        }

        if (answer is null)
        {
            return ExitCode.BadInput;
        }

        int code = question.Adopt is { } name ? Adopt(answer, question.Plan, name) : ExitCode.Fine;
        if (json)
        {
            Console.Out.WriteLine(CorrectionJson.Write(answer, code == ExitCode.Fine ? question.Adopt : null));
        }
        else
        {
            CorrectionFitText.Write(answer);
            if (question.Adopt is not null && code == ExitCode.Fine)
            {
                Console.Out.WriteLine($"Adopted in {question.Plan} as {question.Adopt}; 'correction: {question.Adopt}' puts it to use.");
            }
        }

        return code == ExitCode.Fine ? Options.Code(answer.Findings, failOn) : code;
    }

    private static int Adopt(CorrectionAnswer answer, string plan, string name)
    {
        if (PlanRevision.Read(plan, out PlanProblem? problem) is not { } before || before.AsText() is not { Text: { } text })
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        if (CorrectionRun.Adopt(answer, text, name, Console.Error.WriteLine) is not { } changed)
        {
            return ExitCode.BadInput;
        }

        if (changed.Save() is { } refused)
        {
            Console.Error.WriteLine(refused);
            return ExitCode.BadInput;
        }

        return ExitCode.Fine;
    }

    private sealed record FitQuestion(string Plan, string Store, string? Network, string? Period, int? Packets, string? Adopt, bool AllowOutside);
}
