using System.Text.Json;
using Mastwright.Network;
using Mastwright.Network.Relays;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>A relay search as a JSON document of shape "relay", version 1.</summary>
internal static class RelayJson
{
    internal static string Write(RelayReport report) => JsonDocumentWriter.Write("relay", 1, writer =>
    {
        writer.WriteString("plan", report.Plan);
        writer.WriteString("station", report.Home.Subject);
        writer.WriteString("like", report.Like.Subject);
        writer.WriteString("goal", RelayFindings.GoalNames[(int)report.Goal]);
        writer.WriteString("unit", report.Unit);
        writer.WriteNumber("asked", report.Asked);
        writer.WriteBoolean("through-relays", report.ThroughRelays);
        writer.Number("wanted-margin-db", report.Settings.Wanted.MarginDb);
        writer.WriteString("receiver", report.Receiver?.Key);
        writer.Number("half-side-metres", report.HalfSideMetres);
        writer.Number("cell-metres", report.Frame?.StepX);
        writer.Strings("network", report.Network);
        writer.Strings("outside", report.Outside);
        writer.WriteNumber("candidates-found", report.Found);
        writer.WriteNumber("candidates-linked", report.Linked);
        writer.WriteNumber("candidates-weighed", report.Weighed);
        writer.Number("before", report.Before);
        writer.Number("open", report.Open);
        Choice(writer, report.Choice);
        writer.WriteStartArray("relays");
        foreach (ChosenRelay relay in report.Chosen)
        {
            Relay(writer, relay);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("ranking");
        foreach (RankedRelay ranked in report.Ranking)
        {
            writer.WriteStartObject();
            Candidate(writer, ranked.Candidate);
            writer.Number("alone", ranked.Alone);
            writer.Number("margin-db", ranked.MarginDb);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Strings("still-alone", report.StillAlone);
        writer.Ledger("ledger", RelayFindings.Gains(report));
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    private static void Choice(Utf8JsonWriter writer, RelayChoice choice)
    {
        writer.WriteStartObject("choice");
        writer.Number("value", choice.Value);
        writer.Number("upper-bound", choice.UpperBound);
        writer.WriteString("bound", choice.Bound switch { RelayBound.Exact => "exact", RelayBound.Gains => "gains", _ => "relaxation" });
        writer.Number("greedy-value", choice.GreedyValue);
        writer.WriteNumber("exchanges", choice.Exchanges);
        writer.WriteEndObject();
    }

    private static void Candidate(Utf8JsonWriter writer, RelayCandidate candidate)
    {
        writer.WriteString("key", candidate.Key);
        writer.WriteString("name", candidate.Name);
        writer.WriteString("origin", candidate.Origin.ToString().ToLowerInvariant());
        writer.Number("latitude-degrees", candidate.Place.LatitudeDegrees);
        writer.Number("longitude-degrees", candidate.Place.LongitudeDegrees);
        writer.Number("mast-metres", candidate.MastMetres);
        writer.Number("prominence-metres", candidate.ProminenceMetres);
    }

    private static void Relay(Utf8JsonWriter writer, ChosenRelay relay)
    {
        writer.WriteStartObject();
        Candidate(writer, relay.Candidate);
        writer.Number("ground-metres", relay.GroundMetres);
        writer.WriteString("power", relay.Candidate.Power.Length > 0 ? relay.Candidate.Power : "unknown");
        writer.WriteString("access", relay.Candidate.Access.Length > 0 ? relay.Candidate.Access : "unknown");
        writer.Number("gain", relay.Gain);
        writer.Number("alone", relay.Alone);
        writer.Strings("joins", relay.Joins);
        writer.Number("opened-square-metres", relay.OpenedSquareMetres);
        writer.Number("opened-works", relay.OpenedWorks);
        writer.WriteNumber("parent-count", relay.ParentCount);
        writer.WriteBoolean("hangs-on-relay", relay.HangsOnRelay);
        writer.WriteStartArray("parents");
        foreach (LinkReport parent in relay.Parents)
        {
            writer.WriteStartObject();
            writer.WriteString("station", parent.To.Subject);
            writer.Number("distance-metres", parent.Segment.DistanceMetres);
            writer.Number("bearing-degrees", parent.Segment.InitialBearingDegrees);
            Direction(writer, "out", parent.Out);
            Direction(writer, "back", parent.Back);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Direction(Utf8JsonWriter writer, string name, LinkDirection direction)
    {
        writer.WriteStartObject(name);
        writer.Estimate("margin-db", direction.MarginDb);
        writer.Number("works", direction.Odds?.Works);
        writer.Number("delivers-if-it-works", direction.Odds?.DeliversIfItWorks);
        writer.Ledger("budget", direction.Budget);
        writer.WriteEndObject();
    }
}
