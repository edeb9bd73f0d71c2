using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The elements of a fit-out from the antenna down to the source of its power, each with its budgets and judgements.</summary>
public static class StationElements
{
    /// <summary>The key of what is said of no single part.</summary>
    public const string Whole = "whole";

    /// <summary>Finds the elements.</summary>
    /// <param name="plan">The plan's report, which has the fit-out among those in use or chosen.</param>
    /// <param name="fitOut">What was worked out of the fit-out.</param>
    /// <returns>Those of the diagram from the top down, then those beside it; every finding of the fit-out belongs to exactly one.</returns>
    public static ImmutableArray<StationElement> Of(PlanReport plan, FitOutReport fitOut)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(fitOut);
        ImmutableArray<StationElement> bare = [.. new ElementRows(fitOut).All(), .. ElementRows.Beside(fitOut)];
        string? load = RadioLoad(fitOut.Station.FitOut!.Supply);
        ILookup<string, Finding> byElement = plan.AllFindings.Where(finding => Concerns(finding, fitOut.Station)).Distinct()
            .ToLookup(finding => KeyOf(finding, fitOut.Station, bare, load), StringComparer.Ordinal);
        return [.. bare.Select(element => element with { Findings = [.. byElement[element.Key]], Ledgers = ElementLedgers.Of(element, fitOut) })];
    }

    /// <summary>Whether a finding is about this fit-out, its site, or something that all stations share.</summary>
    private static bool Concerns(Finding finding, LinkStation station)
    {
        string subject = finding.Subject;
        return subject.Split(' ').Contains(station.Subject, StringComparer.Ordinal)
            || IsAtOrBelow(subject, station.FitOutPath)
            || (IsAtOrBelow(subject, station.PlanPath) && !subject.StartsWith(station.PlanPath + "/fit-outs/", StringComparison.Ordinal))
            || !(subject.StartsWith("sites/", StringComparison.Ordinal) || subject.StartsWith("neighbours/", StringComparison.Ordinal) || subject.StartsWith("links/", StringComparison.Ordinal) || subject.Contains(' ', StringComparison.Ordinal));
    }

    private static string KeyOf(Finding finding, LinkStation station, ImmutableArray<StationElement> elements, string? radioLoad)
    {
        string subject = finding.Subject;
        if (subject == station.FitOutPath)
        {
            return ByCode(finding.Code);
        }

        if (radioLoad is not null && IsAtOrBelow(subject, radioLoad))
        {
            return "radio";
        }

        if (IsAtOrBelow(subject, station.PlanPath + "/hazards"))
        {
            return "hazards";
        }

        return subject == "wind" || subject.StartsWith("wind/", StringComparison.Ordinal) || IsAtOrBelow(subject, station.PlanPath + "/wind")
            ? "mast"
            : elements.Where(element => IsAtOrBelow(subject, element.PlanPath) && element.Key != Whole).MaxBy(element => element.PlanPath.Length)?.Key ?? WithoutPlace(subject, station);
    }

    /// <summary>A judgement on a list, or on a return loss: on the antenna that the feed leads to, or on the source that a supply hangs on.</summary>
    private static string WithoutPlace(string subject, LinkStation station)
    {
        string below = subject.StartsWith(station.FitOutPath + "/", StringComparison.Ordinal) ? subject[(station.FitOutPath.Length + 1)..] : "";
        return below switch
        {
            "feed" or "return-loss" => "antenna",
            _ when below.StartsWith("nearby-transmitters", StringComparison.Ordinal) => "radio",
            _ => Whole,
        };
    }

    private static string ByCode(string code) => code switch
    {
        "radiated-power" or "time-on-air" => "radio",
        _ when code.StartsWith("radio-", StringComparison.Ordinal) => "radio",
        _ when code.StartsWith("approval-", StringComparison.Ordinal) => "radio",
        _ when code.StartsWith("exposure-", StringComparison.Ordinal) => "people",
        _ when code.StartsWith("box-", StringComparison.Ordinal) => "box",
        _ when code.StartsWith("mast-", StringComparison.Ordinal) => "mast",
        _ when code.StartsWith("earthing-", StringComparison.Ordinal) => "earthing",
        _ => Whole,
    };

    /// <summary>Where in the plan the radio stands as a load; null where the supply feeds none.</summary>
    internal static string? RadioLoad(ImmutableArray<SupplyPart> parts)
    {
        foreach (SupplyPart part in parts)
        {
            string? found = part switch
            {
                SupplyLoad { IsRadio: true } load => load.PlanPath,
                SupplyBranches fork => fork.Branches.Select(branch => RadioLoad(branch.Parts)).FirstOrDefault(path => path is not null),
                _ => null,
            };
            if (found is not null)
            {
                return found;
            }
        }

        return null;
    }

    internal static bool IsAtOrBelow(string path, string place) =>
        path.StartsWith(place, StringComparison.Ordinal) && (path.Length == place.Length || path[place.Length] == '/');

    /// <summary>A text in the invariant culture, with a true minus before numbers below zero.</summary>
    internal static string Text(FormattableString text)
    {
        string plain = text.ToString(CultureInfo.InvariantCulture);
        return (plain.StartsWith('-') ? '−' + plain[1..] : plain).Replace(" -", " −", StringComparison.Ordinal);
    }
}
