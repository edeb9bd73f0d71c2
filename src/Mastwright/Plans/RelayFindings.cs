using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Relays;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>What is to be said of relays that were looked for.</summary>
public static class RelayFindings
{
    private const int FewNames = 6;

    /// <summary>The findings of a search.</summary>
    public static ImmutableArray<Finding> Of(RelayReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<Finding> findings = [];
        if (report.Chosen.IsEmpty)
        {
            findings.Add(None(report));
        }
        else
        {
            findings.Add(Bound(report));
        }

        for (int i = 0; i < report.Chosen.Length; i++)
        {
            findings.Add(Choice(report, report.Chosen[i], i + 1));
        }

        foreach (ChosenRelay relay in report.Chosen)
        {
            if (relay.Candidate.Power.Length == 0)
            {
                findings.Add(Finding.Unknown("relay-power-unknown", relay.Candidate.Key, "power", ("name", relay.Candidate.Name)));
            }

            if (relay.Candidate.Access.Length == 0)
            {
                findings.Add(Finding.Unknown("relay-access-unknown", relay.Candidate.Key, "access", ("name", relay.Candidate.Name)));
            }
        }

        if (!report.StillAlone.IsEmpty)
        {
            findings.Add(new()
            {
                Code = "relay-single",
                Subject = report.Home.Subject,
                Verdict = Verdict.Tight,
                Source = "links of the plan and the relays",
                Details = FindingDetails.Of(("count", Text($"{report.StillAlone.Length}")), ("names", Names(report.StillAlone))),
            });
        }

        return [.. findings];
    }

    /// <summary>What each relay adds, as a ledger in the goal's unit.</summary>
    public static Ledger Gains(RelayReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Ledger.SummingTo(
            report.Chosen.Sum(relay => relay.Gain),
            Text($"What relays add for {report.Home.Name}: {GoalWords(report.Goal)}"),
            report.Unit,
            [.. report.Chosen.Select(relay => new LedgerLine(relay.Candidate.Key, relay.Candidate.Name, relay.Gain, "links and sweeps, ITU-R P.1812", "besides those before it"))]);
    }

    /// <summary>A value in its unit.</summary>
    public static string Value(RelayReport report, double value)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Goal switch
        {
            RelayGoal.Shadow => Text($"{value:0.0} km²"),
            RelayGoal.Weights => Text($"weight {value:0.#}"),
            _ => Text($"{value:0} {(Math.Round(value) == 1 ? "station" : "stations")}"),
        };
    }

    /// <summary>The goals as options and documents name them, in the order of <see cref="RelayGoal"/>.</summary>
    public static ImmutableArray<string> GoalNames { get; } = [.. Enum.GetNames<RelayGoal>().Select(name => name.ToLowerInvariant())];

    /// <summary>The goal of a name; <see cref="RelayGoal.Shadow"/> where there is none.</summary>
    /// <param name="name">One of <see cref="GoalNames"/>.</param>
    public static RelayGoal GoalOf(string? name) => GoalNames.IndexOf(name ?? "") is >= 0 and var place ? (RelayGoal)place : RelayGoal.Shadow;

    /// <summary>What the goal is, in words.</summary>
    public static string GoalWords(RelayGoal goal) => goal switch
    {
        RelayGoal.Stations => "stations joined",
        RelayGoal.Shadow => "shadow opened",
        RelayGoal.Weights => "weight reached",
        _ => "stations that no single loss cuts off",
    };

    private static Finding None(RelayReport report) => new()
    {
        Code = "relay-none",
        Subject = report.Home.Subject,
        Verdict = report.Open > 0 ? Verdict.Fails : Verdict.Ok,
        Source = "links of the candidates",
        Details = FindingDetails.Of(
            ("found", Text($"{report.Found}")),
            ("linked", Text($"{report.Linked}")),
            ("wanted", Text($"{report.Settings.Wanted.MarginDb:0.#} dB")),
            ("goal", GoalWords(report.Goal)),
            ("name", report.Home.Name),
            ("why", report.Open > 0 ? "none adds anything" : "there is nothing left to add")),
    };

    private static Finding Bound(RelayReport report)
    {
        RelayChoice choice = report.Choice;
        string bound = choice.Bound switch
        {
            RelayBound.Exact => Text($"All choices of as many among the {report.Weighed} candidates weighed were tried, and none is worth more"),
            RelayBound.Gains => Text($"No choice among the {report.Weighed} candidates weighed is worth more than {Value(report, choice.UpperBound)}, so this one comes to {LinkOdds.Percent(choice.ShareOfBound)} of the best or more"),
            _ => Text($"No choice among the {report.Weighed} candidates weighed is worth more than {Value(report, choice.UpperBound)}, by an easier question; how near this one is to the best is not known closer"),
        };
        return new()
        {
            Code = "relay-bound",
            Subject = report.Home.Subject,
            Verdict = Verdict.Ok,
            Quantity = report.Goal is RelayGoal.Shadow ? "area" : report.Goal is RelayGoal.Weights ? "weight" : "count",
            Unit = report.Goal is RelayGoal.Shadow ? "km²" : "",
            Value = Estimate.Exactly(choice.Value),
            Limit = choice.UpperBound,
            Source = choice.Bound == RelayBound.Gains ? "Nemhauser, Wolsey, Fisher 1978, gains of a submodular objective" : "all choices, or a relaxation",
            Details = FindingDetails.Of(
                ("count", report.Chosen.Length == 1 ? "One relay is" : Text($"{report.Chosen.Length} relays are")),
                ("value", Value(report, choice.Value)),
                ("open", Value(report, report.Open)),
                ("goal", GoalWords(report.Goal)),
                ("bound", bound),
                ("left", report.Weighed < report.Linked ? Text($" Another {report.Linked - report.Weighed} that could count were left out by what is in sight of them, a rule of thumb: the bound says nothing of those.") : "")),
        };
    }

    private static Finding Choice(RelayReport report, ChosenRelay relay, int rank)
    {
        LinkReport parent = relay.Parents[0];
        double margin = parent.Weaker.MarginDb!.Value.Median;
        double works = Math.Min(parent.Out.Odds!.Value.Works, parent.Back.Odds!.Value.Works);
        double wanted = report.Settings.Wanted.MarginDb;
        return new()
        {
            Code = "relay-choice",
            Subject = relay.Candidate.Key,
            Verdict = Verdict.Ok,
            Quantity = "margin",
            Unit = "dB",
            Value = parent.Weaker.MarginDb,
            Limit = wanted,
            Margin = margin - wanted,
            Confidence = works,
            Source = "ITU-R P.1812 and the plan",
            Details = FindingDetails.Of(
                ("rank", Text($"{rank}")),
                ("name", relay.Candidate.Name),
                ("mast", Text($"{relay.Candidate.MastMetres:0.#} m")),
                ("does", Does(report, relay)),
                ("parent", parent.To.Name),
                ("margin", Text($"{margin:0.0} dB")),
                ("works", LinkOdds.Percent(works)),
                ("wanted", Text($"{wanted:0.#} dB")),
                ("others", relay.ParentCount > 1 ? Text($"; {relay.ParentCount - 1} more such {(relay.ParentCount == 2 ? "link" : "links")}") : "; it hangs on this link alone"),
                ("through", relay.HangsOnRelay ? " It counts only through another relay of the choice: lose that one and it is lost as well." : "")),
        };
    }

    private static string Does(RelayReport report, ChosenRelay relay)
    {
        List<string> parts = [];
        if (report.Goal is RelayGoal.Shadow or RelayGoal.Weights)
        {
            string sure = relay.OpenedWorks is { } works ? Text($" (confidence {LinkOdds.Percent(works)} on average)") : "";
            parts.Add(Text($"opens {Value(report, relay.Gain)}{sure}"));
        }
        else if (report.Goal == RelayGoal.Robustness)
        {
            parts.Add(relay.Gain >= 0.5 ? Text($"holds {Value(report, relay.Gain)} more against any single loss") : "completes what the others begin");
        }

        if (!relay.Joins.IsEmpty)
        {
            parts.Add($"joins {Names(relay.Joins)}");
        }

        return parts.Count == 0 ? "carries others" : string.Join(" and ", parts);
    }

    private static string Names(ImmutableArray<string> names) =>
        string.Join(", ", names.Take(FewNames)) + (names.Length > FewNames ? Text($" and {names.Length - FewNames} more") : "");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
