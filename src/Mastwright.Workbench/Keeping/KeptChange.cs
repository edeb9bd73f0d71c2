using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Keeping;

/// <summary>
/// A change that was made in the pages: another place or antenna height of a site, a site that was not there, or values of fit-outs by their path.
/// </summary>
internal sealed record KeptChange
{
    /// <summary>Most metres of a mast that is kept.</summary>
    internal const double MostHeightMetres = 200;

    /// <summary>Key of the site; where <see cref="NewKey"/> is given, of the one whose fit-out the new site gets.</summary>
    internal string Site { get; init; } = "";

    /// <summary>Values of fit-outs, each with the text that is to stand there; empty where the change is one of the map.</summary>
    internal ImmutableArray<PlanEdit> Edits { get; init; } = [];

    /// <summary>Key of the fit-out; needed with a height and for a new site.</summary>
    internal string? FitOut { get; init; }

    /// <summary>Latitude in degrees; null to leave the place as it is.</summary>
    internal double? LatitudeDegrees { get; init; }

    /// <summary>Longitude in degrees; null to leave the place as it is.</summary>
    internal double? LongitudeDegrees { get; init; }

    /// <summary>Height of the antenna above the ground in metres; null to leave it.</summary>
    internal double? HeightMetres { get; init; }

    /// <summary>Key of a new site; null to change the one that is there.</summary>
    internal string? NewKey { get; init; }

    /// <summary>Name of a new site.</summary>
    internal string? NewName { get; init; }

    /// <summary>What is done, for the list of changes.</summary>
    internal string What => Edits is [var edit] ? $"{edit.Site}/{edit.FitOut}: {edit.Path} changed to {edit.Value}"
        : Edits.Length > 1 ? string.Create(CultureInfo.InvariantCulture, $"{Edits[0].Site}/{Edits[0].FitOut}: {Edits.Length} values changed")
        : NewKey is { } key ? $"{key} added"
        : (LatitudeDegrees, HeightMetres) switch
        {
            ({ }, { }) => $"{Site} moved, antenna height changed",
            ({ }, null) => $"{Site} moved",
            _ => $"{Site}: antenna height changed",
        };

    /// <summary>The plan with the change in it; comments, order and quoting stay.</summary>
    internal PlanChange In(PlanRevision state)
    {
        if (!Edits.IsEmpty)
        {
            PlanRevision? edited = PlanEdit.In(state, Edits, out PlanProblem? refused);
            return new(edited, refused);
        }

        PlanTextResult read = state.AsText();
        if (read.Text is not { } text)
        {
            return new(null, read.Problem);
        }

        List<string> notes = [];
        string site = $"sites/{NewKey ?? Site}";
        PlanTextResult changed = new(text, null);
        if (NewKey is { } key)
        {
            changed = SiteCopy.Insert(text, Site, FitOut ?? text.Value($"sites/{Site}/in-use") ?? "", key, NewName ?? "Trial place", Place);
        }
        else if (LatitudeDegrees is not null)
        {
            changed = text.Has(site) ? text.With($"{site}/position", Place) : Missing(site, "There is no site of this key.");
            // What the plan says of the old place is not taken out: the keeper may have measured it anew.
            notes.AddRange(((string[])["ground-height", "surroundings"]).Where(one => text.Has($"{site}/{one}")).Select(one => $"{site}/{one} was written for the old place: look whether it still holds."));
        }

        if (changed.Text is { } placed && HeightMetres is { } metres)
        {
            string antenna = $"{site}/fit-outs/{FitOut ?? placed.Value($"{site}/in-use") ?? ""}/antenna";
            if (NewKey is not null && placed.Value($"{antenna}/above") == "roof" && placed.With($"{antenna}/roof", "0 m").Text is { } grounded)
            {
                // The roof stays where it is.
                placed = grounded;
                notes.Add($"{antenna}/roof is 0 m: at the new place the mast stands on the ground. Look at its mast, cable and supply, which were copied.");
            }

            changed = Raised(placed, antenna, metres);
        }

        if (changed.Text is not { } done)
        {
            return new(null, changed.Problem);
        }

        return state.With(done.Text, out PlanProblem? problem) is { } made ? new(made, null) { Notes = [.. notes] } : new(null, problem);
    }

    private string Place => string.Create(CultureInfo.InvariantCulture, $"{LatitudeDegrees:0.00000}, {LongitudeDegrees:0.00000}");

    /// <summary>Writes the height as the plan measures it there: from the ground, or from the roof.</summary>
    private static PlanTextResult Raised(PlanText text, string antenna, double metres)
    {
        if (!text.Has(antenna))
        {
            return Missing(antenna, "There is no such fit-out with an antenna.");
        }

        switch (text.Value($"{antenna}/above"))
        {
            case null or "ground":
                return text.With($"{antenna}/height", Metres(metres));
            case "roof" when UnitMetres(text.Value($"{antenna}/roof")) is { } roof:
                return metres - roof > 0
                    ? text.With($"{antenna}/height", Metres(metres - roof))
                    : Missing($"{antenna}/height", string.Create(CultureInfo.InvariantCulture, $"{metres:0.##} m above the ground is below the roof of {roof:0.##} m."));
            default:
                return Missing($"{antenna}/height", "This height is not measured from the ground: change it in the text.");
        }
    }

    private static string Metres(double metres) => string.Create(CultureInfo.InvariantCulture, $"{metres:0.##} m");

    /// <summary>Metres of a roof that is written as one number in metres; null for anything else.</summary>
    private static double? UnitMetres(string? written) =>
        written is [.. var number, 'm'] && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double metres) ? metres : null;

    private static PlanTextResult Missing(string path, string message) => new(null, new() { Code = "plan-keep", File = "", Path = path, Message = message });
}
