using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Air;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>The budgets of a day on the channel.</summary>
internal static class AirLedgers
{
    internal static ImmutableArray<Ledger> Of(LinkMatrix matrix, AirSettings settings, AirResult result)
    {
        if (result.Stations.IsEmpty)
        {
            return [];
        }

        int busiest = Enumerable.Range(0, result.Stations.Length).MaxBy(station => result.Stations[station].AirSeconds);
        AirStation station = result.Stations[busiest];
        long left = result.Strong - result.Received - result.LostToOverlap - result.LostToSending;
        double own = Math.Min(station.Made * settings.AirtimeSeconds, station.AirSeconds);
        return
        [
            Ledger.SummingTo(
                result.Received,
                "Receptions strong enough, and what becomes of them",
                "packets",
                [
                    new("strong", "Strong enough to be received", result.Strong, "simulation"),
                    new("overlap", "Lost: another packet on the air there", -result.LostToOverlap, "simulation"),
                    new("sending", "Lost: the station was sending itself", -result.LostToSending, "simulation"),
                    new("left", "Not over at the end", -left, "simulation"),
                ]),
            Ledger.SummingTo(
                station.AirSeconds,
                $"Time on the air of {matrix.Stations[busiest].Name}, who sends most",
                "s",
                [
                    new("own", "Own packets", own, "simulation"),
                    new("relayed", "Packets passed on", station.AirSeconds - own, "simulation"),
                ]),
        ];
    }
}
