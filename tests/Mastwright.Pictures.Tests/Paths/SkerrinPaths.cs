using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Pictures.Paths;
using Mastwright.Ground;

namespace Mastwright.Pictures.Tests.Paths;

/// <summary>Invented paths on the invented island, one for each thing a picture must show.</summary>
internal static class SkerrinPaths
{
    public static PathPictureModel ClearSea { get; } = Path(
        "Pilot Hut", "Gannet Stack", 9_100, 304,
        distance => distance < 250 ? 34 - (distance * 0.12) : distance > 8_900 ? (distance - 8_900) * 0.19 : 0,
        distance => distance is > 280 and < 8_900 ? (CoverKind.Water, 0) : (CoverKind.Grass, 0)) with
    {
        TransmitterHeightMetres = 6,
        ReceiverHeightMetres = 4,
        Verdict = Verdict.Ok,
        MarginDb = 21.4,
        Headline = "Open water with a clear ray: the sea stays 40 m below it at mid-path.",
        LowKFactor = 0.8,
        Obstructions = [new(4_900, -39.9, -1.43)],
        Directions = [new("Pilot Hut", "Gannet Stack", 23.8, Verdict.Ok), new("Gannet Stack", "Pilot Hut", 21.4, Verdict.Ok)],
    };

    public static PathPictureModel RidgeInTheWay { get; } = Path(
        "Ferry House", "Lantern Bay", 21_300, 711,
        distance => Math.Max(0, Hill(distance, 9_800, 2_300, 640) + Hill(distance, 14_500, 1_500, 310) + Hill(distance, 6_000, 900, 120) + (8 * Math.Sin(distance / 310)) + 6 - (distance < 700 ? 6 : 0)),
        distance => distance is < 700 ? (CoverKind.Water, 0)
            : distance is > 1_300 and < 2_100 ? (CoverKind.Buildings, 8)
            : distance is > 5_200 and < 7_400 ? (CoverKind.Trees, 16)
            : distance is > 17_600 and < 18_300 ? (CoverKind.Water, 0)
            : (CoverKind.Grass, 0)) with
    {
        TransmitterHeightMetres = 11,
        ReceiverHeightMetres = 7,
        Verdict = Verdict.Fails,
        MarginDb = -23.4,
        LowKFactor = 0.8,
        Headline = "The Combs stand 634 m above the ray at 9.8 km; a hop over the ridge would do it.",
        Obstructions = [new(9_800, 633.5, 15.9, "The Combs"), new(14_500, 318.4, 8.1, "East shoulder"), new(6_000, 163, 4.4)],
        Directions = [new("Ferry House", "Lantern Bay", -23.4, Verdict.Fails), new("Lantern Bay", "Ferry House", -21, Verdict.Fails)],
        Notes = ["Diffraction over three edges costs 71 dB more than free space. Invented ground and figures."],
    };

    public static PathPictureModel ShortHop { get; } = Path(
        "Ferry House", "Creamery", 60, 13,
        distance => 4 + (distance * 0.02),
        distance => distance is > 25 and < 38 ? (CoverKind.Buildings, 5) : (CoverKind.None, 0)) with
    {
        TransmitterHeightMetres = 9,
        ReceiverHeightMetres = 3,
        Verdict = Verdict.Ok,
        MarginDb = 61,
        Headline = "Sixty metres over one roof.",
        Obstructions = [new(35, -0.5, -0.2, "Boat shed")],
    };

    public static PathPictureModel Woodland { get; } = Path(
        "Creamery", "Upper School", 4_200, 141,
        distance => 42 + (12 * Math.Sin(distance / 700)) + (0.006 * distance),
        distance => distance is > 1_500 and < 2_650 ? (CoverKind.Trees, 15 + (2 * Math.Sin(distance / 40)))
            : distance > 3_700 ? (CoverKind.Buildings, 7)
            : distance is > 2_900 and < 3_050 ? (CoverKind.Other, 4)
            : (CoverKind.Grass, 0)) with
    {
        TransmitterHeightMetres = 26,
        ReceiverHeightMetres = 12,
        Verdict = Verdict.Tight,
        MarginDb = 4.2,
        Headline = "The wood at 2 km reaches into the Fresnel zone.",
        Obstructions = [new(2_010, -4.2, -0.22, "Creamery Wood")],
        Missing = [new(3_100, 3_500)],
        Directions = [new("Creamery", "Upper School", 4.2, Verdict.Tight), new("Upper School", "Creamery", null, Verdict.Unknown)],
    };

    public static PathPictureModel VeryLong { get; } = Path(
        "Comb Cairn relay on the northern shoulder of The Combs above the old slate workings",
        "The weather hut that nobody has seen since the long winter, by the third marker stone",
        200_000, 6_667,
        distance => Math.Max(0, Hill(distance, 0, 5_000, 3_900) + Hill(distance, 200_000, 9_000, 4_000) + Hill(distance, 90_000, 8_000, 900)),
        _ => (CoverKind.None, 0)) with
    {
        TransmitterHeightMetres = 5,
        ReceiverHeightMetres = 5,
        Verdict = Verdict.Unknown,
        Headline = "The height of the far antenna is not given, and nothing can be said about the margin until somebody climbs up there with a tape and writes the figure into the plan, where it belongs.",
        Notes = ["One.", "Two.", "Three.", "Four."],
        LowKFactor = 0.6,
    };

    /// <summary>Everything at once: long names, a long headline, many notes, every cover, missing ground, many obstructions.</summary>
    public static PathPictureModel Crowded { get; } = Woodland with
    {
        TransmitterName = VeryLong.TransmitterName,
        ReceiverName = VeryLong.ReceiverName,
        Headline = VeryLong.Headline,
        LowKFactor = 0.8,
        Notes = [VeryLong.Headline, VeryLong.Headline, VeryLong.Headline],
        Missing = [new(60, 150), new(3_100, 3_500), new(4_080, 4_140)],
        Obstructions = [new(1_600, 6, 0.3, "Creamery Wood, west"), new(1_800, 4, 0.2, "Creamery Wood, middle"), new(2_010, -4.2, -0.22, "Creamery Wood, east"), new(2_600, -6, -0.4), new(3_000, -20, -1.4)],
        Directions = [new(VeryLong.TransmitterName, VeryLong.ReceiverName, 4.2, Verdict.Tight), new(VeryLong.ReceiverName, VeryLong.TransmitterName, null, Verdict.Unknown)],
    };

    /// <summary>The ridge with a far antenna whose height nobody gave.</summary>
    public static PathPictureModel NoHeight { get; } = RidgeInTheWay with
    {
        ReceiverHeightMetres = null,
        Headline = "The height of the antenna at Lantern Bay is not known.",
        Verdict = Verdict.Unknown,
        MarginDb = null,
        Directions = [new("Ferry House", "Lantern Bay", null, Verdict.Unknown), new("Lantern Bay", "Ferry House", null, Verdict.Unknown)],
    };

    /// <summary>The ridge with two stretches without ground: across its foot, and from the shore to the far end.</summary>
    public static PathPictureModel NoGround { get; } = RidgeInTheWay with
    {
        Missing = [new(4_980, 7_020), new(16_980, 21_300)],
        Headline = "Whether Lantern Bay is heard is not known, for want of ground.",
        Verdict = Verdict.Unknown,
        MarginDb = null,
        Directions = [new("Ferry House", "Lantern Bay", null, Verdict.Unknown), new("Lantern Bay", "Ferry House", null, Verdict.Unknown)],
    };

    public static PathPictureModel Path(string from, string to, double lengthMetres, int count, Func<double, double> ground, Func<double, (CoverKind Kind, double Height)> cover)
    {
        ImmutableArray<double> distances = [.. Enumerable.Range(0, count).Select(i => i * lengthMetres / (count - 1))];
        return new()
        {
            TransmitterName = from,
            ReceiverName = to,
            DistancesMetres = distances,
            GroundMetres = [.. distances.Select(ground)],
            CoverHeightMetres = [.. distances.Select(distance => cover(distance).Height)],
            CoverKinds = [.. distances.Select(distance => cover(distance).Kind)],
            Zones = lengthMetres < 1_000 ? [] : [.. distances.Select(distance => cover(distance).Kind == CoverKind.Water ? Zone.Sea : ground(distance) > 100 ? Zone.Inland : Zone.Coast)],
            TransmitterHeightMetres = 10,
            ReceiverHeightMetres = 10,
            FrequencyHz = 868e6,
            KFactor = 4.0 / 3,
            Verdict = Verdict.Unknown,
        };
    }

    private static double Hill(double distance, double at, double width, double height) => height * Math.Exp(-Math.Pow((distance - at) / width, 2));
}
