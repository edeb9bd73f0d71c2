using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.WebUtilities;

namespace Mastwright.Workbench.Desk;

/// <summary>What the page shows. It is the page's address and stands nowhere else: a link to it, or a reload, shows the same.</summary>
public sealed record BenchState
{
    /// <summary>The page: one of <see cref="Pages"/>; empty for the ground.</summary>
    public string Page { get; init; } = "";

    /// <summary>What of the page is shown, where it has several parts; null for its first.</summary>
    public string? Topic { get; init; }

    /// <summary>What else is asked of the page's work, by name: "hop-limit".</summary>
    public ImmutableSortedDictionary<string, string> Asked { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>The period before a change that is proved, "2026-06-01..2026-07-01"; null where an entry says it.</summary>
    public string? Before { get; init; }

    /// <summary>The period after it.</summary>
    public string? After { get; init; }

    /// <summary>Number of the log entry of a change that is proved; null where periods say it.</summary>
    public int? Entry { get; init; }

    /// <summary>Key of the element of a fit-out that is selected; null for the fit-out as a whole.</summary>
    public string? Element { get; init; }

    /// <summary>Values of fit-outs that are tried with another text, in the order in which they were made.</summary>
    public ImmutableArray<PlanEdit> Changes { get; init; } = [];

    /// <summary>Key of the selected station; null when none is.</summary>
    public string? Site { get; init; }

    /// <summary>Key of the other end of the selected path; null when no path is selected.</summary>
    public string? To { get; init; }

    /// <summary>Fit-out by site key that stands in for the one in use.</summary>
    public ImmutableSortedDictionary<string, string> FitOuts { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>What lies over the ground: "links" or "none".</summary>
    public string Layer { get; init; } = "links";

    /// <summary>How the ground is drawn: "relief", "plain" or "background".</summary>
    public string Ground { get; init; } = "relief";

    /// <summary>Where the map is: latitude, longitude, zoom and, where it is turned or tilted, bearing and pitch; null for the whole plan.</summary>
    public string? View { get; init; }

    /// <summary>"light" or "dark"; null for what the reader's system says.</summary>
    public string? Theme { get; init; }

    /// <summary>The verdict whose findings alone are listed; null for all but "ok".</summary>
    public string? Show { get; init; }

    /// <summary>"plan" for the plan's text at the side; null for stations and ledger.</summary>
    public string? Panel { get; init; }

    /// <summary>Whether the way back is shown in the ledger of a path, not the way there.</summary>
    public bool IsBack { get; init; }

    /// <summary>A station tried at another place or height, as <see cref="Desk.Trial"/> writes it; null when nothing is tried.</summary>
    public string? Trial { get; init; }

    /// <summary>The layer of the reach that lies over the ground: one of <see cref="ReachLayers"/>; null for none.</summary>
    public string? Reach { get; init; }

    /// <summary>"heard", "hears" or "both".</summary>
    public string Direction { get; init; } = "heard";

    /// <summary>Who is carried about to hear the station.</summary>
    public string Receiver { get; init; } = Mastwright.Plans.ReachReceiver.HandheldKey;

    /// <summary>Radius of the reach in kilometres, one of <see cref="Radii"/>.</summary>
    public int RadiusKilometres { get; init; } = UsualRadiusKilometres;

    /// <summary>Key of the fit-out that the reach is compared with, for the layer "difference".</summary>
    public string? Compare { get; init; }

    /// <summary>How much of the ground the reach covers, in per cent from 10 to 100.</summary>
    public int Opacity { get; init; } = UsualOpacity;

    private const int UsualRadiusKilometres = 10;
    private const int UsualOpacity = 70;
    private const int MostAsked = 16;
    private const int MostChanges = 24;
    private const string AskedPrefix = "with.";

    /// <summary>The pages beside the ground, as they stand in the address.</summary>
    public static ImmutableArray<string> Pages => ["build", "proof", "network", "log"];

    /// <summary>The layers that a page shows.</summary>
    public static ImmutableArray<string> ReachLayers => ["margin", "confidence", "delivery", "level", "difference"];

    /// <summary>The radii that a page offers, in kilometres.</summary>
    public static ImmutableArray<int> Radii => [5, 10, 20];

    /// <summary>The state that an address means. What it does not know, or nobody could mean, is left out.</summary>
    public static BenchState Parse(Uri address)
    {
        Dictionary<string, Microsoft.Extensions.Primitives.StringValues> query = QueryHelpers.ParseQuery((address ?? throw new ArgumentNullException(nameof(address))).Query);
        string page = address.AbsolutePath.Trim('/');
        return new()
        {
            Page = Pages.Contains(page) ? page : "",
            Topic = One("topic") is { Length: < 40 } topic ? topic : null,
            Before = One("before") is { Length: < 80 } before ? before : null,
            After = One("after") is { Length: < 80 } after ? after : null,
            Entry = Number("entry"),
            Asked = query.Where(one => one.Key.StartsWith(AskedPrefix, StringComparison.Ordinal) && one.Key.Length is > 5 and < 40 && one.Value[0] is { Length: > 0 and < 200 }).Take(MostAsked)
                .ToImmutableSortedDictionary(one => one.Key[AskedPrefix.Length..], one => one.Value[0]!, StringComparer.Ordinal),
            Element = One("element") is { Length: < 100 } element ? element : null,
            Changes = query.TryGetValue("change", out Microsoft.Extensions.Primitives.StringValues changes)
                ? [.. changes.Select(PlanEdit.Parse).OfType<PlanEdit>().Take(MostChanges)]
                : [],
            Site = One("site"),
            To = One("to"),
            FitOuts = query.TryGetValue("fit-out", out Microsoft.Extensions.Primitives.StringValues fitOuts)
                ? fitOuts.OfType<string>().Select(one => one.Split('/')).Where(parts => parts.Length == 2 && parts.All(part => part.Length > 0))
                    .DistinctBy(parts => parts[0], StringComparer.Ordinal).ToImmutableSortedDictionary(parts => parts[0], parts => parts[1], StringComparer.Ordinal)
                : ImmutableSortedDictionary<string, string>.Empty,
            Layer = One("layer") is "none" ? "none" : "links",
            Ground = One("ground") is "plain" or "background" ? One("ground")! : "relief",
            View = One("view") is { Length: < 80 } view && view.Split(',').All(part => double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out _)) ? view : null,
            Theme = One("theme") is "light" or "dark" ? One("theme") : null,
            Show = One("show") is "ok" or "tight" or "fails" or "unknown" ? One("show") : null,
            Panel = One("panel") is "plan" ? "plan" : null,
            IsBack = One("way") is "back",
            Trial = One("trial") is { Length: < 200 } trial ? trial : null,
            Reach = One("reach") is { } reach && ReachLayers.Contains(reach) ? reach : null,
            Direction = One("direction") is "hears" or "both" ? One("direction")! : "heard",
            Receiver = One("receiver") is { Length: < 100 } receiver ? receiver : Mastwright.Plans.ReachReceiver.HandheldKey,
            RadiusKilometres = Number("radius") is { } radius && Radii.Contains(radius) ? radius : UsualRadiusKilometres,
            Compare = One("compare") is { Length: < 100 } compare ? compare : null,
            Opacity = Number("opacity") is { } opacity and >= 10 and <= 100 ? opacity : UsualOpacity,
        };

        int? Number(string name) => int.TryParse(One(name), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

        string? One(string name) => query.TryGetValue(name, out Microsoft.Extensions.Primitives.StringValues values) && values[0] is { Length: > 0 } value ? value : null;
    }

    /// <summary>The address, relative to the server, that means this state.</summary>
    public string Address()
    {
        QueryBuilder query = [];
        Add("topic", Topic);
        Add("site", Site);
        Add("to", To);
        foreach ((string site, string fitOut) in FitOuts)
        {
            query.Add("fit-out", $"{site}/{fitOut}");
        }

        Add("way", IsBack ? "back" : null);
        Add("panel", Panel);
        Add("show", Show);
        Add("layer", Layer == "links" ? null : Layer);
        Add("ground", Ground == "relief" ? null : Ground);
        Add("theme", Theme);
        Add("trial", Trial);
        Add("reach", Reach);
        Add("direction", Direction == "heard" ? null : Direction);
        Add("receiver", Receiver == Mastwright.Plans.ReachReceiver.HandheldKey ? null : Receiver);
        Add("radius", RadiusKilometres == UsualRadiusKilometres ? null : RadiusKilometres.ToString(CultureInfo.InvariantCulture));
        Add("compare", Compare);
        Add("opacity", Opacity == UsualOpacity ? null : Opacity.ToString(CultureInfo.InvariantCulture));
        Add("before", Before);
        Add("after", After);
        Add("element", Element);
        foreach (PlanEdit change in Changes)
        {
            Add("change", change.ToString());
        }

        Add("entry", Entry?.ToString(CultureInfo.InvariantCulture));
        foreach ((string name, string value) in Asked)
        {
            Add(AskedPrefix + name, value);
        }

        Add("view", View);
        // A comma or a slash in a query needs no escape, and reads better without.
        return "/" + Page + query.ToQueryString().Value?.Replace("%2C", ",", StringComparison.Ordinal).Replace("%2F", "/", StringComparison.Ordinal).Replace("%40", "@", StringComparison.Ordinal).Replace("%3A", ":", StringComparison.Ordinal);

        void Add(string name, string? value)
        {
            if (value is not null)
            {
                query.Add(name, value);
            }
        }
    }

    /// <summary>The same selection on another page: what belongs to one page alone stays behind.</summary>
    public BenchState On(string page) => this with { Page = page, Topic = null, Before = null, After = null, Entry = null, Element = null, Changes = [], Asked = ImmutableSortedDictionary<string, string>.Empty };

    /// <summary>With a value tried; a value that was tried there before gives way.</summary>
    public BenchState Trying(PlanEdit change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return this with { Changes = [.. Changes.Where(one => one.PlanPath != change.PlanPath), change] };
    }

    /// <summary>Without what was tried at a place.</summary>
    public BenchState Dropping(string planPath) => this with { Changes = [.. Changes.Where(one => one.PlanPath != planPath)] };

    /// <summary>With something asked of the page's work, or, with nothing, as usual.</summary>
    public BenchState Asking(string name, string? value) => this with { Asked = string.IsNullOrEmpty(value) ? Asked.Remove(name) : Asked.SetItem(name, value) };

    /// <summary>With a station picked: the first becomes the station, another the far end; the same again lets it go.</summary>
    public BenchState Picked(string key) => (Site, To) switch
    {
        (null, _) => this with { Site = key, To = null, IsBack = false },
        ({ } site, null) when site == key => this with { Site = null },
        ({ } site, { } to) when site == key => this with { Site = to, To = null, IsBack = false },
        (_, { } to) when to == key => this with { To = null, IsBack = false },
        _ => this with { To = key, IsBack = false },
    };
}
