using System.Collections.Immutable;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Network;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Evidence;

/// <summary>Holds what a station heard against what the plan predicts for it.</summary>
internal static class ProofPrediction
{
    /// <summary>The links of the site with its fit-out in use; null, after telling why, where the plan or its ground cannot be used.</summary>
    internal static AgreementSummary? Of(PlanSession session, string site, ProofReport report, IReadOnlyList<string> stations, Action<string> tell)
    {
        ImmutableArray<LinkStation> all = LinkSelection.Stations(session.Plan, new Dictionary<string, string>(StringComparer.Ordinal));
        if (all.FirstOrDefault(one => one.Key == site) is not { } own)
        {
            tell($"{site} has no fit-out in use, so nothing can be predicted for it");
            return null;
        }

        List<AgreementRow> rows = [];
        foreach (LinkStation other in all.Where(one => one != own))
        {
            LinkReport link = session.Assessment.Link(other, own);
            if (link.Out is { LevelDbm: { } level, Odds: { } odds, Spread: { } spread } && link.ToChain.Feed.PassiveLossDb is { } feed)
            {
                rows.Add(Row(other, level.Median - feed.Median, odds, spread, report, stations));
            }
        }

        return session.TellDamage(tell) ? null : AgreementSummary.Of(rows, report.Settings.Confidence);
    }

    private static AgreementRow Row(LinkStation other, double predictedDbm, LinkOdds odds, LinkSpread spread, ProofReport report, IReadOnlyList<string> stations)
    {
        int place = stations.ToList().IndexOf(other.Key);
        StationProof? proof = report.Result.Stations.FirstOrDefault(one => one.Station == place);
        SenderPeriod? heard = place < 0 ? null : report.Result.After.Direct(place);
        int levels = heard?.Levels.Sum() ?? 0;
        return new(
            other.Key,
            other.Name,
            predictedDbm,
            Math.Sqrt((spread.Unknown.Total * spread.Unknown.Total) + (spread.Fading.Total * spread.Fading.Total)),
            odds.Works,
            levels == 0 ? null : heard!.PowerDb.Sum() / levels,
            proof?.Knowledge is ShiftKnowledge.AtMost or ShiftKnowledge.Open);
    }
}
