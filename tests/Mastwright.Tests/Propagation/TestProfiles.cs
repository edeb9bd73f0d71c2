using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

/// <summary>Profiles made for tests.</summary>
internal static class TestProfiles
{
    /// <summary>The path b2iseac_rural_land_1km of the validation set published beside Rec. ITU-R P.1812 (first kilometre of b2iseac).</summary>
    public static PathProfile PublishedKilometre { get; } = PathProfile.FromSamples(
        [0, 200, 400, 600, 800, 1000],
        [754.4, 754.4, 729.9, 685.3, 634.3, 610.3],
        [10, 10, 10, 10, 10, 10],
        new Zone[6]);

    /// <summary>Random paths: uneven steps, rough or flat ground, with and without cover, all inland or of mixed zones.</summary>
    public static Gen<PathProfile> Any { get; } =
        Gen.Select(Gen.Int[3, 60], Gen.Double[300, 200_000], Gen.Double[0, 300], Gen.Int[0, 2], Gen.Bool).SelectMany((count, length, relief, cover, mixed) =>
            Gen.Select(
                Gen.Double[0.2, 1].Array[count - 1],
                Gen.Double[0, 1].Array[count],
                Gen.Int[0, 3].Array[count],
                Gen.Int[0, 2].Array[count],
                (steps, heights, covers, zones) => Make(length, relief, cover, mixed, steps, heights, covers, zones)));

    public static PathProfile Flat(double lengthMetres, int count, Zone zone = Zone.Inland) => PathProfile.FromSamples(
        [.. Enumerable.Range(0, count).Select(i => i * lengthMetres / (count - 1))],
        new double[count],
        new double[count],
        [.. Enumerable.Repeat(zone, count)]);

    /// <summary>Flat ground with one ridge of one point.</summary>
    public static PathProfile Ridge(double lengthMetres, double ridgeAtMetres, double ridgeMetres)
    {
        int count = 101;
        double[] distances = [.. Enumerable.Range(0, count).Select(i => i * lengthMetres / (count - 1))];
        double[] heights = new double[count];
        heights[(int)Math.Round(ridgeAtMetres / lengthMetres * (count - 1))] = ridgeMetres;
        return PathProfile.FromSamples(distances, heights, new double[count], new Zone[count]);
    }

    public static P1812Input Input(double hertz = 868e6, double time = 50, double transmitter = 10, double receiver = 3) => new()
    {
        FrequencyHz = hertz,
        TimePercent = time,
        TransmitterHeightMetres = transmitter,
        ReceiverHeightMetres = receiver,
        PathCentreLatitudeDegrees = 46.4,
    };

    private static PathProfile Make(
        double length, double relief, int cover, bool mixed, double[] steps, double[] heights, int[] covers, int[] zones)
    {
        double sum = steps.Sum();
        double[] distances = new double[steps.Length + 1];
        for (int i = 1; i < distances.Length; i++)
        {
            distances[i] = distances[i - 1] + (steps[i - 1] / sum * length);
        }

        return PathProfile.FromSamples(
            distances,
            [.. heights.Select(height => height * relief)],
            [.. covers.Select(of => cover == 0 ? 0 : of * 5.0)],
            [.. zones.Select(zone => mixed ? (Zone)zone : Zone.Inland)]);
    }
}
