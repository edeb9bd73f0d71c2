using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Mast;

namespace Mastwright.Station.Hazards;

/// <summary>The hazards of a site held against what the mast is.</summary>
public static class HazardExamination
{
    /// <summary>Length in metres that people and what they hold add to a mast being raised: common practice, an arm and a pole.</summary>
    public const double HandlingMetres = 2;

    /// <summary>Height in metres above which work counts as work at height here: common practice; local law may say any height.</summary>
    public const double WorkAtHeightMetres = 2;

    /// <summary>Examines a fit-out's hazards.</summary>
    /// <param name="hazards">What is known of the site.</param>
    /// <param name="mast">What the mast came to.</param>
    /// <param name="planPath">Where in the plan the fit-out's hazards stand.</param>
    public static Examination Of(SiteHazards hazards, MastResult mast, string planPath)
    {
        ArgumentNullException.ThrowIfNull(hazards);
        ArgumentNullException.ThrowIfNull(mast);
        List<Assumption> assumptions = [];
        List<Finding> findings = [];
        List<Ledger> ledgers = [];
        OverheadLine(hazards, mast, planPath, findings, ledgers, assumptions);
        WorkingHeight(hazards, mast, planPath, findings, assumptions);
        if (hazards.FallZone != FallZone.NotSaid)
        {
            findings.Add(Zone(hazards.FallZone, planPath));
        }

        Consents(hazards, planPath, findings);
        if (NotSaid(hazards) is { Length: > 0 } missing)
        {
            findings.Add(new()
            {
                Code = "hazards-unknown",
                Subject = planPath,
                Verdict = Verdict.Unknown,
                Details = FindingDetails.Of(("missing", missing)),
            });
        }

        return new() { Ledgers = [.. ledgers], Findings = [.. findings], Assumptions = [.. assumptions] };
    }

    private static void OverheadLine(
        SiteHazards hazards, MastResult mast, string path, List<Finding> findings, List<Ledger> ledgers, List<Assumption> assumptions)
    {
        double? distance = hazards.OverheadLineMetres?.Low;
        bool isWhole = mast.LengthLacks.IsEmpty;
        bool isTold = distance is not null || !mast.LengthLacks.Contains("mast");
        Ledger ledger = Reach(hazards, mast, path);
        if (isTold)
        {
            ledgers.Add(ledger);
            if (hazards.HandlingMetres is null)
            {
                assumptions.Add(new("handling-length", FormattableString.Invariant($"{HandlingMetres:0} m more for those who raise the mast and what they hold"), "common practice", path + "/handling-length"));
            }
        }

        // What is left out only makes the reach longer: a line within the known part is hit, one beyond it is not yet clear.
        bool isHit = distance < ledger.Total;
        bool isKnown = isWhole && distance is not null && hazards.LocalClearanceMetres is not null;
        findings.Add(new()
        {
            Code = "overhead-line",
            Subject = path,
            Verdict = isHit ? Verdict.Fails : isKnown ? Verdict.Ok : Verdict.Unknown,
            Quantity = "distance to an overhead line",
            Unit = "m",
            Value = hazards.OverheadLineMetres,
            Limit = isHit || isWhole ? ledger.Total : null,
            Margin = isHit || isWhole ? distance - ledger.Total : null,
            Source = "fallen reach of the mast and the clearance that the local rules ask for",
            Details = FindingDetails.Of(
                ("distance", distance is { } metres ? FormattableString.Invariant($"The nearest overhead line is {metres:0.#} m away or further") : "How far the nearest overhead line is, nobody said"),
                ("reach", isTold ? ReachWords(hazards, mast, ledger) : "how far the mast reaches when it falls is not known"),
                ("clearance", hazards.LocalClearanceMetres is null ? "; the local clearance is not given" : ""),
                ("ask", distance is null ? "Give the distance to the nearest line and ask the network operator for the clearance."
                    : hazards.LocalClearanceMetres is null ? "Ask the network operator for the clearance and give it as the local clearance."
                    : "Before the work, ask the network operator whether the clearance still holds.")),
        });
    }

    private static Ledger Reach(SiteHazards hazards, MastResult mast, string path)
    {
        bool isWhole = mast.LengthLacks.IsEmpty;
        return new($"reach of the fallen mast, with the clearance to overhead lines{(isWhole ? "" : ", as far as it is known")}", "m",
        [
            new("mast", "mast and antenna from the lower bracket to the tip", mast.LeastLengthMetres, "mast and antenna of the plan", isWhole ? "" : "without " + string.Join(", ", mast.LengthLacks)),
            new("handling", "those who raise it and what they hold", hazards.HandlingMetres ?? HandlingMetres, hazards.HandlingMetres is null ? "common practice, assumed" : path + "/handling-length"),
            .. hazards.LocalClearanceMetres is { } clear
                ? [new LedgerLine("clearance", "local clearance to overhead lines", clear, path + "/local-clearance")]
                : Array.Empty<LedgerLine>(),
        ]);
    }

    private static string ReachWords(SiteHazards hazards, MastResult mast, Ledger reach)
    {
        bool isWhole = mast.LengthLacks.IsEmpty;
        string length = FormattableString.Invariant($"{mast.LeastLengthMetres + (hazards.HandlingMetres ?? HandlingMetres):0.#} m{(isWhole ? "" : " at least")}");
        string clear = hazards.LocalClearanceMetres is null ? "" : FormattableString.Invariant($", with the local clearance {reach.Total:0.#} m");
        string open = isWhole ? "" : $"; how far in full is not known, for want of {string.Join(", ", mast.LengthLacks)}";
        return $"the mast with its antenna and those who raise it reach {length} when they fall{clear}{open}";
    }

    private static void WorkingHeight(SiteHazards hazards, MastResult mast, string path, List<Finding> findings, List<Assumption> assumptions)
    {
        if (hazards.Access == Access.NotSaid)
        {
            return;
        }

        double? height = hazards.WorkingHeightMetres;
        if (height is null && hazards.Access is not (Access.Ground or Access.TiltOver) && mast.BracketHeightMetres is { } bracket)
        {
            height = bracket;
            assumptions.Add(new("working-height", "work at the height of the upper bracket", "assumed", path + "/working-height"));
        }

        // From a mast that is let down one works lower than its bracket; else the two belong together.
        bool isDoubtful = hazards.Access != Access.TiltOver && mast.BracketHeightMetres - height > WorkAtHeightMetres;
        findings.Add(new()
        {
            Code = "working-height",
            Subject = path,
            Verdict = height is not { } metres || (isDoubtful && metres <= WorkAtHeightMetres) ? Verdict.Unknown : metres > WorkAtHeightMetres ? Verdict.Tight : Verdict.Ok,
            Quantity = "height at which one works",
            Unit = "m",
            Value = height is { } known ? Estimate.Exactly(known) : null,
            Limit = WorkAtHeightMetres,
            Margin = WorkAtHeightMetres - height,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("access", Word(hazards.Access)),
                ("height", height is { } given ? FormattableString.Invariant($"{given:0.#} m above the ground") : "at an unknown height"),
                ("differs", isDoubtful ? FormattableString.Invariant($"; the upper bracket is {mast.BracketHeightMetres:0.#} m above it, which takes work higher up or counts from other ground") : "")),
        });
    }

    private static Finding Zone(FallZone zone, string path) => new()
    {
        Code = "fall-zone",
        Subject = path,
        Verdict = zone == FallZone.OwnGround ? Verdict.Ok : Verdict.Tight,
        Source = "common practice",
        Details = FindingDetails.Of(("zone", zone switch
        {
            FallZone.OwnGround => "ground of your own that can be closed off",
            FallZone.Neighbour => "a neighbour's ground",
            FallZone.PublicWay => "a way that people use",
            _ => "a place where people stay",
        })),
    };

    private static void Consents(SiteHazards hazards, string path, List<Finding> findings)
    {
        (string Who, Consent Consent)[] all = [("the owner", hazards.Owner), ("the planning authority", hazards.Planning), ("the airfield", hazards.Airfield)];
        if (all.All(one => one.Consent == Consent.NotSaid))
        {
            return;
        }

        Consent worst = all.Any(one => one.Consent == Consent.Refused) ? Consent.Refused
            : all.Any(one => one.Consent == Consent.NotSaid) ? Consent.NotSaid
            : all.Any(one => one.Consent == Consent.Asked) ? Consent.Asked : Consent.Granted;
        findings.Add(new()
        {
            Code = "consents-given",
            Subject = path + "/consents",
            Verdict = worst switch { Consent.Refused => Verdict.Fails, Consent.NotSaid => Verdict.Unknown, Consent.Asked => Verdict.Tight, _ => Verdict.Ok },
            Source = path + "/consents",
            Details = FindingDetails.Of(("list", string.Join("; ", all.Select(one => $"{one.Who}: {Word(one.Consent)}")))),
        });
    }

    private static string NotSaid(SiteHazards hazards)
    {
        List<string> missing = [];
        Add(hazards.Access == Access.NotSaid, "how one gets up there (access)");
        Add(hazards.FallZone == FallZone.NotSaid, "who is under it (fall-zone)");
        Add(hazards is { Owner: Consent.NotSaid, Planning: Consent.NotSaid, Airfield: Consent.NotSaid }, "whose consent there is (consents)");
        return string.Join(", ", missing);

        void Add(bool lacks, string what)
        {
            if (lacks)
            {
                missing.Add(what);
            }
        }
    }

    private static string Word(Consent consent) => consent switch
    {
        Consent.Granted => "granted",
        Consent.NotNeeded => "not needed",
        Consent.Asked => "asked for",
        Consent.Refused => "refused",
        _ => "nobody asked",
    };

    private static string Word(Access access) => access switch
    {
        Access.Ground => "from the ground",
        Access.TiltOver => "on the mast let down",
        Access.Ladder => "on a ladder",
        Access.Roof => "across a roof",
        Access.Scaffold => "on a scaffold",
        _ => "climbing the mast",
    };
}
