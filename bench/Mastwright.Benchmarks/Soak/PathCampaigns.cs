using System.Globalization;
using System.Text;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Paths of every kind: each number is a number, and the loss keeps to its bounds.</summary>
internal static class PathCampaigns
{
    internal static IEnumerable<Campaign> All()
    {
        yield return new("p1812", Loss);
    }

    private static SoakCase Loss(Random random)
    {
        int count = random.Next(10) == 0 ? random.Next(3, 3_000) : random.Next(3, 80);
        double length = Math.Pow(10, 2.4 + (random.NextDouble() * 4));
        double relief = random.Next(4) switch { 0 => 0, 1 => 20, 2 => 300, _ => 4_000 };
        double lift = random.Next(3) == 0 ? -400 : random.Next(3) * 500;
        int zones = random.Next(4);
        bool hasCover = random.Next(2) == 0;
        double[] distances = new double[count];
        double[] heights = new double[count];
        double[] cover = new double[count];
        Zone[] zone = new Zone[count];
        for (int i = 0; i < count; i++)
        {
            distances[i] = i == 0 ? 0 : distances[i - 1] + 0.1 + random.NextDouble();
            heights[i] = lift + (relief * random.NextDouble());
            cover[i] = hasCover ? random.Next(4) * 10.0 : 0;
            zone[i] = zones < 3 ? (Zone)zones : i > 0 && random.Next(3) > 0 ? zone[i - 1] : (Zone)random.Next(3);
        }

        double scale = length / distances[^1];
        for (int i = 0; i < count; i++)
        {
            distances[i] *= scale;
        }

        P1812Input input = new()
        {
            FrequencyHz = Math.Pow(10, 7.48 + (random.NextDouble() * 2.29)),
            TimePercent = 1 + (random.NextDouble() * 49),
            LocationPercent = 1 + (random.NextDouble() * 98),
            LocationSigmaDb = random.NextDouble() * 10,
            TransmitterHeightMetres = Math.Pow(10, random.NextDouble() * 3.4),
            ReceiverHeightMetres = Math.Pow(10, random.NextDouble() * 3.4),
            Polarisation = random.Next(2) == 0 ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
            RefractivityGradient = -100 + (random.NextDouble() * 250),
            SurfaceRefractivity = 200 + (random.NextDouble() * 250),
            PathCentreLatitudeDegrees = -90 + (random.NextDouble() * 180),
            DistanceToCoastTransmitterMetres = random.Next(3) == 0 ? random.NextDouble() * 100_000 : null,
            DistanceToCoastReceiverMetres = random.Next(3) == 0 ? random.NextDouble() * 100_000 : null,
        };
        return SoakCase.OfText("path.csv", Text(distances, heights, cover, zone, input), () => Check(PathProfile.FromSamples(distances, heights, cover, zone), input));
    }

    private static void Check(PathProfile profile, P1812Input input)
    {
        P1812Result result = P1812.Evaluate(profile, input);
        foreach ((string name, double value) in result.Named())
        {
            SoakFailureException.Require(double.IsFinite(value), $"{name} is {value}");
        }

        SoakFailureException.Require(result.LbDb >= result.Lb0pDb, "the loss is below that of a clear path");
        SoakFailureException.Require(result.LbDb is > 20 and < 5_000, $"the loss is {result.LbDb} dB");
        SoakFailureException.Require(result.LbullaDb >= 0 && result.LbullsDb >= 0 && result.LdsphDb >= 0 && result.Ld50Db >= 0, "a diffraction loss is below 0 dB");
        SoakFailureException.Require(result.Fj is >= 0 and <= 1 && result.Fk is >= 0 and <= 1 && result.SeaFraction is >= 0 and <= 1, "a share is outside 0 to 1");

        // Among high peaks the equivalent edge of the flatter duct can lie higher than the median's; then the fading turns round.
        double median = P1812.LossDb(profile, input with { TimePercent = 50 });
        SoakFailureException.Require(result.LdbDb > result.Ld50Db || result.LbDb <= median + 1e-6, $"{input.TimePercent} % of the time takes more than half of it: {result.LbDb} over {median} dB");
        double most = P1812.LossDb(profile, input with { LocationPercent = 99 });
        SoakFailureException.Require(result.LbDb <= most + 1e-9, "fewer places take more");
        if (!profile.Zones.Contains(Zone.Sea))
        {
            double back = P1812.LossDb(profile.Reversed(), input with
            {
                TransmitterHeightMetres = input.ReceiverHeightMetres,
                ReceiverHeightMetres = input.TransmitterHeightMetres,
                DistanceToCoastTransmitterMetres = input.DistanceToCoastReceiverMetres,
                DistanceToCoastReceiverMetres = input.DistanceToCoastTransmitterMetres,
            });
            SoakFailureException.Require(Math.Abs(back - result.LbDb) < 1e-4, $"over land the way back loses {back}, not {result.LbDb} dB");
        }

        PathLossPrediction prediction = PathLoss.Predict(profile, input);
        SoakFailureException.Require(double.IsFinite(prediction.LossDb) && Math.Abs(prediction.LossDb - prediction.Lines.Sum(line => line.Value)) < 1e-9 * Math.Max(1, prediction.LossDb), "the lines of the prediction do not sum to it");
        foreach (double factor in (double[])[4.0 / 3, 0.5])
        {
            ClearanceAnalysis clearance = FresnelClearance.Analyse(profile, input.TransmitterHeightMetres, input.ReceiverHeightMetres, input.FrequencyHz, factor);
            SoakFailureException.Require(double.IsFinite(clearance.TransmitterElevationDegrees) && double.IsFinite(clearance.ReceiverElevationDegrees), "an elevation is no number");
        }
    }

    private static string Text(double[] distances, double[] heights, double[] cover, Zone[] zones, P1812Input input)
    {
        StringBuilder text = new(FormattableString.Invariant($"# {input}\ndistance_km,height_m,cover_m,zone\n"));
        for (int i = 0; i < distances.Length; i++)
        {
            string zone = zones[i] switch { Zone.Sea => "sea", Zone.Coast => "coast", _ => "inland" };
            text.Append(CultureInfo.InvariantCulture, $"{distances[i] / 1000:R},{heights[i]:R},{cover[i]:R},{zone}\n");
        }

        return text.ToString();
    }
}
