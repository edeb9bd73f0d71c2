using Mastwright.Agreement;
using Mastwright.Evidence;
using Mastwright.Evidence.Proof;
using Mastwright.Plans;
using Mastwright.Records;
using Mastwright.Records.Proof;
using Mastwright.Records.Store;
using Mastwright.Reports.Sessions;
using Mastwright.Station;
using Mastwright.Station.Radio;

namespace Mastwright.Reports.Evidence;

/// <summary>A proof, and what it was made of.</summary>
/// <param name="Report">The proof.</param>
/// <param name="Stations">Keys or addresses of the stations by their place.</param>
/// <param name="Agreement">Prediction against records; null where it was not asked for.</param>
internal sealed record ProofAnswer(ProofReport Report, IReadOnlyList<string> Stations, AgreementSummary? Agreement = null)
{
    /// <summary>The same with what the plan predicts held against it.</summary>
    internal ProofAnswer With(AgreementSummary agreement) => this with
    {
        Agreement = agreement,
        Report = Report with { Findings = [.. Report.Findings, .. agreement.Findings(Report.Question.Subject)] },
    };
}

/// <summary>Holds two periods of a station's records against each other.</summary>
internal static class ProofRun
{
    private static readonly long Earliest = UtcTime.Of(new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero));

    /// <summary>The proof; null, with what is wrong told, when there is none.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="catalogue">Its parts.</param>
    /// <param name="store">The records.</param>
    /// <param name="request">What is asked for.</param>
    /// <param name="tell">Told each line of what is wrong.</param>
    internal static ProofAnswer? Make(Plan plan, StationCatalogue catalogue, RecordStore store, ProveRequest request, Action<string> tell)
    {
        if (plan.Sites.FirstOrDefault(one => one.Key == request.Site) is not { } site)
        {
            tell($"'{request.Site}' is no site of the plan; there are {string.Join(", ", plan.Sites.Select(one => one.Key))}");
            return null;
        }

        if (StoreDoor.NetworkOf(store, request.Network, tell) is not { } network || ProofPeriods.Of(request, store, network, tell) is not { } periods)
        {
            return null;
        }

        ProofAnswer answer = Make(plan, catalogue, site, store, network, periods);
        if (answer.Report.Result is { Before.Packets: 0 } or { After.Packets: 0 })
        {
            tell($"{site.Key} heard nothing in the period {(answer.Report.Result.Before.Packets == 0 ? "before" : "after")}; the network knows the receivers' addresses as they were imported, the plan's 'addresses' say which are this site's");
            return null;
        }

        return answer;
    }

    private static ProofAnswer Make(Plan plan, StationCatalogue catalogue, Site site, RecordStore store, string network, (ProofPeriod Before, ProofPeriod After) periods)
    {
        ProofReading read = ProofReading.Of(store, network, new(plan), site.Key, periods.Before, periods.After);
        ModemSetting modem = plan.Modem;
        Dictionary<string, double> intervals = plan.Neighbours.Where(one => one.SendsEverySeconds is not null).ToDictionary(one => one.Key, one => one.SendsEverySeconds!.Value, StringComparer.Ordinal);
        ProofSettings settings = new()
        {
            UsualSpreadingFactor = modem.SpreadingFactor,
            LimitSnrDb = factor => Demodulation.SnrLimit(modem with { SpreadingFactor = factor }, null, catalogue)?.SnrDb,
        };
        long now = UtcTime.Of(TimeProvider.System.GetUtcNow());
        ProofReport report = ProofReport.Of(
            new(site.Key, site.Name, place => new StationNames(plan).NameOf(read.Stations[place])),
            ProofExamination.Run(read.Before, read.After, settings with { SendsEverySeconds = place => intervals.TryGetValue(read.Stations[place], out double seconds) ? seconds : null }),
            read.ElsewhereBefore.Packets > 0 && read.ElsewhereAfter.Packets > 0 ? ProofExamination.Run(read.ElsewhereBefore, read.ElsewhereAfter, settings) : null,
            settings,
            store.Span(network, long.MinValue, Earliest) is not null || store.Span(network, now + (24 * ProofPeriod.Hour), long.MaxValue) is not null);
        return new(report, read.Stations);
    }
}
