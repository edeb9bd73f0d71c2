using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Plans;
using Mastwright.Storage.Jobs;

namespace Mastwright.Cli;

/// <summary>What commands about all stations of a plan share: which stations, and where their paths are kept.</summary>
internal sealed class NetworkOptions
{
    internal Argument<string> Plan { get; } = Options.Plan();

    internal Option<bool> Json { get; } = Options.Json();

    internal Option<string[]> FailOn { get; } = Options.FailOn();

    private Option<string[]> FitOut { get; } = new("--fit-out") { HelpName = "SITE/FIT-OUT", Description = "SITE/FIT-OUT that stands in for the one in use; may be given for several sites." };

    private Option<string?> Cache { get; } = new("--cache") { HelpName = "FOLDER", Description = "Folder where worked-out paths are kept (default: the user's cache folder)." };

    private Option<bool> NoCache { get; } = new("--no-cache") { Description = "Neither use nor keep paths that were worked out before." };

    private Option<bool> Outside { get; } = Options.AllowOutside();

    internal void AddTo(Command command)
    {
        command.Add(FitOut);
        command.Add(Cache);
        command.Add(NoCache);
        command.Add(Json);
        command.Add(Outside);
        command.Add(FailOn);
    }

    /// <summary>Opens the plan; null, after telling what is wrong, when it cannot be used.</summary>
    internal NetworkSession? Open(ParseResult parsed)
    {
        if (parsed.GetValue(NoCache) && parsed.GetValue(Cache) is not null)
        {
            Console.Error.WriteLine("--no-cache: without a cache there is no --cache folder");
            return null;
        }

        if (parsed.GetValue(Cache) is { Length: 0 })
        {
            Console.Error.WriteLine("--cache: a folder is needed");
            return null;
        }

#pragma warning disable CA2000 // It goes into the answer, or is disposed below.
        PlanSession? session = PlanSession.Open(parsed.GetRequiredValue(Plan), parsed.GetValue(Outside));
#pragma warning restore CA2000
        if (session is null)
        {
            return null;
        }

        if (FitOutChoice.Read(session.Plan, parsed.GetValue(FitOut) ?? []) is not { } chosen)
        {
            session.Dispose();
            return null;
        }

        return new(session, LinkSelection.Stations(session.Plan, chosen), parsed.GetValue(NoCache) ? null : parsed.GetValue(Cache) ?? CacheFolder.Usual);
    }
}

/// <summary>A plan whose stations are looked at together.</summary>
/// <param name="Plan">The plan with its ground.</param>
/// <param name="Stations">Its stations.</param>
/// <param name="CacheFolder">Where paths are kept; null for nowhere.</param>
internal sealed record NetworkSession(PlanSession Plan, ImmutableArray<LinkStation> Stations, string? CacheFolder) : IDisposable
{
    /// <summary>The same with one station in place of that of its key, or beside the others.</summary>
    internal NetworkSession With(LinkStation station) => this with
    {
        Stations = Stations.Any(one => one.Key == station.Key) ? [.. Stations.Select(one => one.Key == station.Key ? station : one)] : Stations.Add(station),
    };

    /// <summary>The links at the plan's time percentage, then at others; null, after telling, when the ground turns out to be damaged.</summary>
    internal ImmutableArray<MatrixReport>? Links(CancellationToken cancellation, params double?[] timePercents)
    {
        using Progress progress = Progress.Start("pairs");
        return MatrixRun.All(Plan, Stations, CacheFolder, timePercents, progress, Say, Say, cancellation);

        void Say(string line)
        {
            progress.Stop();
            Console.Error.WriteLine(line);
        }
    }

    public void Dispose() => Plan.Dispose();
}
