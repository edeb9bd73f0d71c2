using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Workbench.Desk;

/// <summary>A station tried at another place or height, or one that is not there yet. It stands in addresses and in no file.</summary>
/// <remarks>
/// As text: "ferry-house/net-loft@46.39810,-18.67000" moves a site; a third number is the height of that fit-out's antenna above the ground in
/// metres. "like:ferry-house/net-loft@…" is a station of its own with the same fit-out.
/// </remarks>
public sealed record Trial
{
    /// <summary>Key of a station of its own, where the plan has no site of that key; else with a number after it.</summary>
    public const string UsualKey = "trial";

    /// <summary>Most metres of a mast that is tried.</summary>
    public const double MostHeightMetres = 200;

    private const double LeastHeightMetres = 0.5;
    private const string LikeMark = "like:";

    /// <summary>Key of the site that is moved, or whose fit-out the new station has.</summary>
    public required string Site { get; init; }

    /// <summary>Key of the fit-out.</summary>
    public required string FitOut { get; init; }

    /// <summary>Whether it is a station of its own beside the site, not the site moved.</summary>
    public bool IsNew { get; init; }

    /// <summary>The place.</summary>
    public required GeoPoint Place { get; init; }

    /// <summary>Height of the antenna above the ground in metres; null for the fit-out's own.</summary>
    public double? HeightMetres { get; init; }

    /// <summary>Reads a trial.</summary>
    /// <param name="text">The text.</param>
    /// <param name="plan">The plan whose site is meant.</param>
    /// <param name="problem">What is wrong, and what would be right; empty when nothing is.</param>
    /// <returns>The trial; null when something is wrong.</returns>
    public static Trial? Parse(string text, Plan plan, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(plan);
        bool isNew = text.StartsWith(LikeMark, StringComparison.Ordinal);
        string[] halves = (isNew ? text[LikeMark.Length..] : text).Split('@');
        if (halves.Length != 2)
        {
            problem = "trial: write SITE/FIT-OUT@LATITUDE,LONGITUDE, and the antenna's height in metres as a third number where it is tried too";
            return null;
        }

        string[] keys = halves[0].Split('/');
        if (plan.Sites.FirstOrDefault(site => site.Key == keys[0]) is not { } moved
            || (keys.Length > 1 ? keys[1] : moved.InUse) is not { } fitOutKey
            || moved.FitOuts.All(fitOut => fitOut.Key != fitOutKey))
        {
            problem = $"trial: '{halves[0]}' is no site of the plan with one of its fit-outs";
            return null;
        }

        double[] numbers = [.. halves[1].Split(',').Select(part => double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : double.NaN)];
        if (numbers.Length is not (2 or 3) || !(Math.Abs(numbers[0]) <= 85) || !(Math.Abs(numbers[1]) <= 180))
        {
            problem = $"trial: '{halves[1]}' is no place; write latitude and longitude in degrees: 46.39810,-18.67000";
            return null;
        }

        if (numbers is [_, _, var height] && !(height is >= LeastHeightMetres and <= MostHeightMetres))
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"trial: the antenna's height is {LeastHeightMetres:0.#} to {MostHeightMetres:0} m above the ground");
            return null;
        }

        problem = "";
        return new() { Site = keys[0], FitOut = fitOutKey, IsNew = isNew, Place = new(numbers[0], numbers[1]), HeightMetres = numbers.Length == 3 ? numbers[2] : null };
    }

    /// <summary>Key of the station that is tried.</summary>
    public string KeyIn(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!IsNew)
        {
            return Site;
        }

        HashSet<string> taken = [.. plan.Sites.Select(site => site.Key), .. plan.Neighbours.Select(neighbour => neighbour.Key)];
        return taken.Contains(UsualKey)
            ? Enumerable.Range(2, taken.Count + 1).Select(number => string.Create(CultureInfo.InvariantCulture, $"{UsualKey}-{number}")).First(key => !taken.Contains(key))
            : UsualKey;
    }

    /// <summary>The plan with the trial in it; the plan itself stays as it is.</summary>
    /// <remarks>
    /// At another place the ground's height and the surroundings that the plan gives for the old one do not hold: they are left out, and the
    /// ground's own files answer. A new station is judged against every other, besides the links that the plan lists.
    /// </remarks>
    public Plan In(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Site site = plan.Sites.First(one => one.Key == Site);
        Site tried = WithHeight(site);
        if (site.Position.Point != Place)
        {
            tried = tried with { Position = new(Place, 0), GroundHeightMetres = null, Surroundings = new() };
        }

        if (!IsNew)
        {
            return plan with { Sites = plan.Sites.Replace(site, tried) };
        }

        string key = KeyIn(plan);
        tried = tried with { Key = key, Formerly = [], Name = "Trial place", InUse = FitOut, FitOuts = [.. tried.FitOuts.Where(one => one.Key == FitOut)] };
        IEnumerable<string> others = plan.Sites.Where(one => one.InUse.Length > 0).Select(one => one.Key).Concat(plan.Neighbours.Select(one => one.Key));
        return plan with
        {
            Sites = plan.Sites.Add(tried),
            Links = plan.Links.IsEmpty ? [] : [.. plan.Links, .. others.Select(other => new WantedLink(key, other, ""))],
        };
    }

    /// <summary>The text that means this trial: places to 5 decimals, about a metre.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(IsNew ? LikeMark : "")}{Site}/{FitOut}@{Place.LatitudeDegrees:0.00000},{Place.LongitudeDegrees:0.00000}{(HeightMetres is { } height ? string.Create(CultureInfo.InvariantCulture, $",{height:0.##}") : "")}");

    private Site WithHeight(Site site) => HeightMetres is not { } metres
        ? site
        : site with
        {
            FitOuts =
            [
                .. site.FitOuts.Select(fitOut => fitOut.Key == FitOut
                    ? fitOut with { Antenna = fitOut.Antenna with { Height = new(Estimate.Exactly(metres), HeightAbove.Ground) } }
                    : fitOut),
            ],
        };
}
