using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>Who is carried from cell to cell: a hand-held, a mast, or a station like one of the plan's neighbours or sites.</summary>
public sealed record ReachReceiver
{
    /// <summary>Key of the hand-held outdoors.</summary>
    public const string HandheldKey = "handheld";

    /// <summary>Key of the hand-held inside a house.</summary>
    public const string IndoorsKey = "handheld-indoors";

    /// <summary>Key of the mast.</summary>
    public const string MastKey = "mast";

    private const double HandheldMetres = 1.5;
    private const double HandheldGainDbi = 0;
    private const double HandheldBodyDb = 3;
    private const double MastMetres = 6;
    private const double MastGainDbi = 2;
    private const double PowerDbm = 14;
    private const double NoiseFigureDb = 6;
    private const double LeastMetres = 0.5;
    private const double MostMetres = 500;

    /// <summary>Key by which it was asked for.</summary>
    public required string Key { get; init; }

    /// <summary>Name to speak of it by, with its height.</summary>
    public required string Name { get; init; }

    /// <summary>Height of its antenna above the ground, in metres.</summary>
    public required double HeightMetres { get; init; }

    /// <summary>Loss to the body that holds it, in dB, zero or more.</summary>
    public double BodyLossDb { get; init; }

    /// <summary>The station it is like; its place has no meaning.</summary>
    public required LinkStation Station { get; init; }

    /// <summary>What was assumed of it.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Keys of the kinds that need no plan.</summary>
    public static ImmutableArray<string> Kinds => [HandheldKey, IndoorsKey, MastKey];

    /// <summary>Finds a receiver by its key: one of <see cref="Kinds"/>, a neighbour of the plan, or one of its sites (with the fit-out in use, or as SITE/FIT-OUT).</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="key">The key.</param>
    /// <param name="heightMetres">Height above the ground that takes the place of its own, in metres; null for its own.</param>
    /// <param name="problem">What is wrong, and what would be right; empty when nothing is.</param>
    /// <returns>The receiver; null when something is wrong.</returns>
    public static ReachReceiver? Find(Plan plan, string key, double? heightMetres, out string problem)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(key);
        problem = "";
        if (heightMetres is { } given && !(given is >= LeastMetres and <= MostMetres))
        {
            problem = Text($"the receiver's height is {given:0.##} m; give {LeastMetres:0.#} to {MostMetres:0} m above the ground");
            return null;
        }

        if (Kinds.Contains(key))
        {
            return OfKind(key, heightMetres);
        }

        if (plan.Neighbours.FirstOrDefault(one => one.Key == key) is { } neighbour)
        {
            return Like(LinkSelection.Station(plan, neighbour), heightMetres, out problem);
        }

        string[] parts = key.Split('/');
        Site? site = plan.Sites.FirstOrDefault(one => one.Key == parts[0]);
        string wanted = parts.Length > 1 ? parts[1] : site?.InUse ?? "";
        if (site?.FitOuts.FirstOrDefault(one => one.Key == wanted) is { } fitOut)
        {
            return Like(LinkStation.Of(site, fitOut), heightMetres, out problem);
        }

        IEnumerable<string> known = Kinds.Concat(plan.Neighbours.Select(one => one.Key)).Concat(plan.Sites.SelectMany(one => one.FitOuts.Select(of => $"{one.Key}/{of.Key}")));
        problem = $"'{key}' is no receiver; there are {string.Join(", ", known)}";
        return null;
    }

    private static ReachReceiver OfKind(string key, double? heightMetres)
    {
        bool isMast = key == MastKey;
        bool isIndoors = key == IndoorsKey;
        double height = heightMetres ?? (isMast ? MastMetres : HandheldMetres);
        double gain = isMast ? MastGainDbi : HandheldGainDbi;
        string what = isMast ? "a mast" : isIndoors ? "a hand-held in a house" : "a hand-held";
        Neighbour like = new()
        {
            Key = key,
            Name = isMast ? "the mast" : "the hand-held",
            Position = new(new GeoPoint(0, 0), 0),
            Height = new(Estimate.Exactly(height), HeightAbove.Ground),
            GainDbi = Estimate.Exactly(gain),
            PowerDbm = Estimate.Exactly(PowerDbm),
            NoiseFigureDb = Estimate.Exactly(NoiseFigureDb),
            Surroundings = new() { BuildingKind = isIndoors ? "traditional" : "" },
        };
        List<Assumption> assumptions = [];
        if (heightMetres is null)
        {
            assumptions.Add(new("receiver-height", Text($"{what} is {height:0.#} m above the ground"), "common practice"));
        }

        assumptions.Add(new("receiver-gain", Text($"antenna of {what}: {gain:0.#} dBi in every direction, upright"), "common practice"));
        assumptions.Add(new("receiver-power", Text($"power of {what}: {PowerDbm:0} dBm into its antenna"), "common practice"));
        assumptions.Add(new("receiver-noise-figure", Text($"noise figure of {what}: {NoiseFigureDb:0} dB"), "common practice"));
        if (!isMast)
        {
            assumptions.Add(new("receiver-body", Text($"the body that holds it takes {HandheldBodyDb:0} dB both ways"), "common practice"));
        }

        if (isIndoors)
        {
            assumptions.Add(new("receiver-building", "the house is a traditional one: median loss of ITU-R P.2109 at the horizon", "common practice"));
        }

        return new()
        {
            Key = key,
            Name = Text($"{what} at {height:0.#} m"),
            HeightMetres = height,
            BodyLossDb = isMast ? 0 : HandheldBodyDb,
            Station = LinkStation.Of(like) with { Indoors = isIndoors },
            Assumptions = [.. assumptions],
        };
    }

    /// <summary>A station like one of the plan's, without what stands around that one.</summary>
    private static ReachReceiver? Like(LinkStation station, double? heightMetres, out string problem)
    {
        problem = "";
        double? own = station.Height switch
        {
            { Above: HeightAbove.Ground } height => height.Metres.Median,
            { Above: HeightAbove.Roof } height => height.Metres.Median + (height.RoofMetres?.Median ?? 0),
            _ => null,
        };
        if ((heightMetres ?? own) is not { } metres)
        {
            problem = $"how high above the ground '{station.Subject}' stands is not known; give --receiver-height";
            return null;
        }

        metres = Math.Max(metres, LeastMetres);
        List<Assumption> assumptions =
        [
            new(
                "receiver-like-neighbour",
                $"each cell holds a station with the height, gain, power and noise of {station.Name}, without what stands around that one",
                "plan",
                station.IsSite ? station.FitOutPath : station.PlanPath),
        ];
        if (station.IsSite)
        {
            assumptions.Add(new("receiver-points-here", $"the main beam of each station like {station.Name} points at the one of the map", "common practice"));
        }

        return new()
        {
            Key = station.Subject,
            Name = Text($"a station like {station.Name} at {metres:0.#} m"),
            HeightMetres = metres,
            Station = station with { Surroundings = new() { BuildingKind = station.Indoors ? station.Surroundings.BuildingKind : "" } },
            Assumptions = [.. assumptions],
        };
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
