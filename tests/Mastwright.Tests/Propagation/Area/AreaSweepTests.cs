using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>The sweep against the one-path method, which meets the published results of P.1812: cell by cell on the same points.</summary>
public sealed class AreaSweepTests
{
    public static TheoryData<string, double, bool, WavePolarisation> Cases => CasesOf(10);

    public static TheoryData<string, double, bool, WavePolarisation> MoreCases => CasesOf(1, 50);

    [Theory, MemberData(nameof(Cases))]
    public void A_cell_has_the_loss_that_the_one_path_method_finds_on_its_points(string scene, double p, bool withCover, WavePolarisation polarisation) =>
        HasTheLossOfOnePath(scene, p, withCover, polarisation);

    /// <summary>Left to the full run: other shares of time, on the same scenes.</summary>
    [Theory, MemberData(nameof(MoreCases)), Trait("needs", "system")]
    public void A_cell_has_the_loss_of_the_one_path_method_at_other_shares_of_time(string scene, double p, bool withCover, WavePolarisation polarisation) =>
        HasTheLossOfOnePath(scene, p, withCover, polarisation);

    private static TheoryData<string, double, bool, WavePolarisation> CasesOf(params double[] timePercents)
    {
        TheoryData<string, double, bool, WavePolarisation> cases = [];
        foreach (string scene in (string[])["hilly", "alpine", "peaks", "coast with sea", "flat", "rolling"])
        {
            foreach (double p in timePercents)
            {
                cases.Add(scene, p, false, WavePolarisation.Vertical);
                cases.Add(scene, p, true, p == 10 ? WavePolarisation.Horizontal : WavePolarisation.Vertical);
            }
        }

        return cases;
    }

    private static void HasTheLossOfOnePath(string scene, double p, bool withCover, WavePolarisation polarisation)
    {
        const int wanted = 2_000;
        (SweepRaster raster, double height) = SweepScenes.Of(scene, withCover);
        SweepInput input = new()
        {
            FrequencyHz = 868e6,
            StationHeightMetres = height,
            ReceiverHeightMetres = 2,
            TimePercent = p,
            Polarisation = polarisation,
            LocationPercent = 80,
            LocationSigmaDb = 4,
            Radials = 1600,
        };
        double[] exact = new double[raster.Side * raster.Side];
        SweepResult map = AreaSweep.RunExact(raster, input, exact);
        Random random = new(17);
        int seen = 0;
        List<string> off = [];
        double worst = 0;
        while (seen < wanted)
        {
            int east = random.Next(-raster.Reach, raster.Reach + 1);
            int north = random.Next(-raster.Reach, raster.Reach + 1);
            int cell = ((raster.Reach - north) * raster.Side) + raster.Reach + east;
            if ((map.MarksOf(cell) & (SweepMarks.Beyond | SweepMarks.GroundMissing | SweepMarks.Station)) != SweepMarks.None)
            {
                continue;
            }

            seen++;
            SweepProfile path = SweepProfile.Of(raster, input, east, north)!;
            PathLossPrediction expected = PathLoss.Predict(path.Profile, path.Input);
            double error = Math.Abs(exact[cell] - expected.LossDb);
            worst = Math.Max(worst, error);
            if (!(error <= 1e-9))
            {
                off.Add(FormattableString.Invariant($"{east},{north}: {exact[cell]:R} for {expected.LossDb:R}"));
            }

            Assert.Equal(expected.LossDb, map.LossDb[cell], 1e-4);
            if (expected.P1812Result is P1812Result terms)
            {
                Assert.Equal(terms.ThetaTMrad * 0.18 / Math.PI, map.ElevationDegrees[cell], 1e-5);
                Assert.Equal(terms.IsLineOfSight, (map.MarksOf(cell) & SweepMarks.LineOfSight) != SweepMarks.None);
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{scene} p {p} cover {withCover}: {off.Count} off, worst {worst:E1} dB"));
        Assert.True(off.Count <= wanted / 1000, string.Join('\n', off));
    }

    /// <summary>Where the radial gives but its first point: on flat ground every cell so near has the loss of its own path too, for all points have one height.</summary>
    [Fact]
    public void Every_near_cell_on_flat_ground_has_the_loss_of_its_own_path()
    {
        const int reach = 40;
        const int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        Array.Fill(heights, 10f);
        SweepRaster raster = new(reach, 90, 46.4, heights);
        SweepInput input = new() { FrequencyHz = 869.525e6, StationHeightMetres = 12, ReceiverHeightMetres = 1.5 };
        double[] exact = new double[side * side];
        AreaSweep.RunExact(raster, input, exact);
        for (int north = -20; north <= 20; north++)
        {
            for (int east = -20; east <= 20; east++)
            {
                if (east == 0 && north == 0)
                {
                    continue;
                }

                double found = exact[((reach - north) * side) + reach + east];
                SweepProfile path = SweepProfile.Of(raster, input, east, north)!;
                Assert.Equal(PathLoss.Predict(path.Profile, path.Input).LossDb, found, 1e-9);

                // Its points lie elsewhere along the path by up to a step: the nearest to the ray is found to some hundredths of a decibel.
                SweepProfile straight = SweepProfile.Straight(raster, input, east, north)!;
                Assert.Equal(PathLoss.Predict(straight.Profile, straight.Input).LossDb, found, 0.05);
            }
        }
    }

    [Fact]
    public void The_map_is_the_same_whatever_the_number_of_threads()
    {
        (SweepRaster raster, double height) = SweepScenes.Of("flat", withCover: true);
        SweepInput input = new() { FrequencyHz = 433e6, StationHeightMetres = height, ReceiverHeightMetres = 1.5, TimePercent = 10, Radials = 1600 };
        SweepResult one = AreaSweep.Run(raster, input, threads: 1);
        SweepResult two = AreaSweep.Run(raster, input, new(raster.Side), threads: 2);
        Assert.True(one.LossDb.SequenceEqual(two.LossDb));
        Assert.True(one.ElevationDegrees.SequenceEqual(two.ElevationDegrees));
        Assert.Equal(one.CellsWithLoss, two.CellsWithLoss);
        Assert.Equal(Enumerable.Range(0, raster.Side * raster.Side).Select(one.MarksOf), Enumerable.Range(0, raster.Side * raster.Side).Select(two.MarksOf));
    }

    [Fact]
    public void Every_cell_of_the_disc_has_a_loss_and_those_beyond_have_none()
    {
        SweepRaster raster = SweepScenes.Made(60, 30, (x, y) => x + y, withCover: false, sea: false);
        SweepResult map = AreaSweep.Run(raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 });
        for (int cell = 0; cell < map.LossDb.Length; cell++)
        {
            int x = (cell % map.Side) - 60;
            int y = (cell / map.Side) - 60;
            bool isInside = (x * x) + (y * y) <= 3600;
            Assert.Equal(isInside, map.LossDb[cell] < SweepResult.NoLossDb);
            Assert.Equal(!isInside, map.MarksOf(cell) == SweepMarks.Beyond);
            Assert.Equal(isInside && Math.Sqrt((x * x) + (y * y)) * 30 < 250, (map.MarksOf(cell) & SweepMarks.ShortPath) != SweepMarks.None);
            Assert.Equal(x == 0 && y == 0, (map.MarksOf(cell) & SweepMarks.Station) != SweepMarks.None);
        }
    }

    [Fact]
    public void What_the_station_hears_differs_only_in_the_places_of_a_receiver_at_sea()
    {
        (SweepRaster raster, double height) = SweepScenes.Of("coast with sea", withCover: false);
        SweepInput sends = new() { FrequencyHz = 868e6, StationHeightMetres = height, ReceiverHeightMetres = 5, LocationPercent = 90, LocationSigmaDb = 5, Radials = 1600 };
        SweepInput hears = sends with { StationReceives = true };
        SweepResult sent = AreaSweep.Run(raster, sends);
        SweepResult back = AreaSweep.Run(raster, hears);
        double places = LocationVariability.LossDb(90, 5);
        Random random = new(3);
        int atSea = 0;
        for (int i = 0; i < 400; i++)
        {
            int east = random.Next(-175, 176);
            int north = random.Next(-175, 176);
            int cell = ((raster.Reach - north) * raster.Side) + raster.Reach + east;
            if (east == 0 && north == 0)
            {
                continue;
            }

            bool isSea = (sent.MarksOf(cell) & SweepMarks.Sea) != SweepMarks.None;
            bool stationAtSea = (sent.MarksOf((raster.Reach * raster.Side) + raster.Reach) & SweepMarks.Sea) != SweepMarks.None;
            Assert.Equal((stationAtSea ? 0 : places) - (isSea ? 0 : places), back.LossDb[cell] - sent.LossDb[cell], 1e-3);
            SweepProfile path = SweepProfile.Of(raster, hears, east, north)!;
            Assert.Equal(PathLoss.Predict(path.Profile, path.Input).LossDb, back.LossDb[cell], 2e-3);
            atSea += isSea ? 1 : 0;
        }

        Assert.InRange(atSea, 50, 399);
    }

    [Fact]
    public void A_sweep_can_be_stopped()
    {
        SweepRaster raster = SweepScenes.Made(60, 30, (x, y) => x + y, withCover: false, sea: false);
        using CancellationTokenSource source = new();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(
            () => AreaSweep.Run(raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 }, cancellation: source.Token));
    }

    [Fact]
    public void Progress_ends_with_the_whole()
    {
        SweepRaster raster = SweepScenes.Made(60, 30, (x, y) => x + y, withCover: false, sea: false);
        Told told = new();
        AreaSweep.Run(raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 }, progress: told);
        Assert.Equal(1, told.Largest);
        Assert.True(told.Count > 3);
    }

    [Theory]
    [InlineData(0, 10, 2, 50, 0)]
    [InlineData(868e6, 0, 2, 50, 0)]
    [InlineData(868e6, 10, double.NaN, 50, 0)]
    [InlineData(868e6, 10, 2, 60, 0)]
    [InlineData(868e6, 10, 2, 0.5, 0)]
    [InlineData(868e6, 10, 2, 50, 12)]
    public void What_the_recommendation_cannot_take_is_refused(double frequency, double station, double receiver, double time, int radials)
    {
        SweepRaster raster = SweepScenes.Made(10, 30, (x, y) => 0, withCover: false, sea: false);
        SweepInput input = new() { FrequencyHz = frequency, StationHeightMetres = station, ReceiverHeightMetres = receiver, TimePercent = time, Radials = radials };
        Assert.ThrowsAny<ArgumentException>(() => AreaSweep.Run(raster, input));
    }

    [Fact]
    public void No_ground_and_no_input_make_a_value_that_is_no_number() => Gen.Select(
        Gen.Int[2, 40],
        Gen.Double[1, 600],
        Gen.Int[0, 4],
        Gen.Int[0, 1_000_000],
        Gen.Double[30e6, 6e9],
        Gen.Select(Gen.Double[0.1, 400], Gen.Double[0.1, 400], Gen.Double[1, 50], Gen.Bool),
        Gen.Select(Gen.Double[-50, 150], Gen.Double[-89, 89], Gen.Int[0, 30], Gen.Bool))
        .Sample((reach, cell, kind, draw, frequency, radio, air) =>
        {
            SweepRaster raster = Wild(reach, cell, kind, draw, air.Item2);
            SweepInput input = new()
            {
                FrequencyHz = frequency,
                StationHeightMetres = radio.Item1,
                ReceiverHeightMetres = radio.Item2,
                TimePercent = radio.Item4 ? 50 : radio.Item3,
                RefractivityGradient = air.Item1,
                Polarisation = air.Item4 ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
                LocationPercent = 90,
                LocationSigmaDb = 6,
                Radials = 8 * air.Item3,
            };
            SweepResult map = AreaSweep.Run(raster, input, threads: 1);
            for (int i = 0; i < map.LossDb.Length; i++)
            {
                bool hasNone = (map.MarksOf(i) & (SweepMarks.Beyond | SweepMarks.GroundMissing)) != SweepMarks.None;
                if (!float.IsFinite(map.LossDb[i]) || !float.IsFinite(map.ElevationDegrees[i]) || hasNone != (map.LossDb[i] == SweepResult.NoLossDb))
                {
                    return false;
                }
            }

            return true;
        }, iter: 400, threads: 1);

    /// <summary>Ground nobody would expect: voids, cliffs, sea, noise, or nothing at all.</summary>
    private static SweepRaster Wild(int reach, double cellMetres, int kind, int draw, double latitude)
    {
        Random random = new(draw);
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = kind switch
            {
                0 => 0,
                1 => random.Next(0, 9000) - 400,
                2 => i % side > reach ? 8000 : 0,
                3 => random.Next(0, 60) == 0 ? float.NaN : random.Next(0, 40),
                _ => i % side < reach ? float.NaN : (float)random.NextDouble(),
            };
        }

        return SweepScenes.Raster(reach, cellMetres, latitude, heights, withCover: (draw & 1) == 0, sea: (draw & 2) == 0);
    }

    private sealed class Told : IProgress<double>
    {
        private readonly Lock gate = new();

        internal double Largest { get; private set; }

        internal int Count { get; private set; }

        public void Report(double value)
        {
            lock (gate)
            {
                Largest = Math.Max(Largest, value);
                Count++;
            }
        }
    }
}
