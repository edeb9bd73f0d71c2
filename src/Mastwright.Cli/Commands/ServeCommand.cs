using System.CommandLine;
using System.Net;
using System.Runtime.CompilerServices;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Cli.Commands;

/// <summary>serve: opens a plan as pages for the browser.</summary>
internal static class ServeCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        ServeOptions serve = new();
        Option<bool> outside = Options.AllowOutside();
        Command command = new("serve", "Open a plan as pages in the browser, on this machine or with an access key from others.") { plan, outside };
        serve.AddTo(command);
        command.SetAction((parsed, cancellation) => serve.Problem(parsed) is { } problem
            ? Refused(problem)
            : Run(serve.Of(parsed, parsed.GetRequiredValue(plan), parsed.GetValue(outside)), cancellation));
        return command;
    }

    /// <summary>Serves until the end. A method of its own: no other command may load the pages and what they stand on.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal static async Task<int> Run(ServeQuestion question, CancellationToken cancellation)
    {
        if (!File.Exists(question.PlanPath))
        {
            Console.Error.WriteLine($"{question.PlanPath}: there is no such file; '{OwnName.Command} new {question.PlanPath}' writes one to start from");
            return ExitCode.BadInput;
        }

        return await WorkbenchServer.RunAsync(Wanted(question), Console.Out, Console.Error, cancellation).ConfigureAwait(false) ? ExitCode.Fine : ExitCode.BadInput;
    }

    private static WorkbenchOptions Wanted(ServeQuestion question) => new()
    {
        PlanPath = question.PlanPath,
        Port = question.Port ?? WorkbenchOptions.UsualPort,
        Address = question.Address,
        HostNames = question.HostNames,
        AllowOutside = question.AllowOutside,
        BackgroundTiles = question.BackgroundTiles,
        CertificatePath = question.CertificatePath,
        CertificateKeyPath = question.CertificateKeyPath,
        WithoutTls = question.WithoutTls,
        InsistOnKeyInClear = question.InsistOnKeyInClear,
        NewKey = question.NewKey,
        RecordsPlace = question.RecordsPlace,
    };

    private static Task<int> Refused(string problem)
    {
        Console.Error.WriteLine(problem);
        return Task.FromResult(ExitCode.BadInput);
    }
}

/// <summary>What the serve command was asked for, in words of this project: nothing of the pages is loaded to hold it.</summary>
internal sealed record ServeQuestion(string PlanPath, bool AllowOutside)
{
    internal int? Port { get; init; }

    internal IPAddress Address { get; init; } = IPAddress.Loopback;

    internal string[] HostNames { get; init; } = [];

    internal string? BackgroundTiles { get; init; }

    internal string? CertificatePath { get; init; }

    internal string? CertificateKeyPath { get; init; }

    internal bool WithoutTls { get; init; }

    internal bool InsistOnKeyInClear { get; init; }

    internal bool NewKey { get; init; }

    internal string? RecordsPlace { get; init; }
}
