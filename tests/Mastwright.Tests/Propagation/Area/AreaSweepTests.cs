using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>The sweep against the one-path method, which meets the published results of P.1812: cell by cell on the same points.</summary>
public sealed class AreaSweepTests
{
    public static TheoryData<string, double, bool, WavePolarisation> Cases
    {
        get
        {
            TheoryData<string, double, bool, WavePolarisation> cases = [];
            foreach (string scene in (string[])["hilly", "alpine", "coast with sea", "flat", "rolling"])
            {
                foreach (double p in (double[])[1, 10, 50])
                {
                    cases.Add(scene, p, false, WavePolarisation.Vertical);
                    cases.Add(scene, p, true, p == 10 ? WavePolarisation.Horizontal : WavePolarisation.Vertical);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_cell_has_the_loss_that_the_one_path_method_finds_on_its_points(string scene, double p, bool withCover, WavePolarisation polarisation)
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
            Radials = 4000,
        };
        double[] exact = new double[raster.Side * raster.Side];
        SweepResult map = AreaSweep.RunExact(raster, input, null, 2, null, exact, CancellationToken.None);
        Random random = new(17);
        int seen = 0;
        List<string> off = [];
        double worst = 0;
        while (seen < wanted)
        {
            int east = random.Next(-raster.Reach, raster.Reach + 1);
            int north = random.Next(-raster.Reach, raster.Reach + 1);
            int cell = ((raster.Reach - north) * raster.Side) + raster.Reach + east;
            if ((map.MarksOf(cell) & (SweepMarks.Beyond | SweepMarks.GroundMissing | SweepMarks.Station)) != 0)
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
                Assert.Equal(terms.IsLineOfSight, (map.MarksOf(cell) & SweepMarks.LineOfSight) != 0);
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{scene} p {p} cover {withCover}: {off.Count} off, worst {worst:E1} dB"));
        Assert.True(off.Count <= wanted / 1000, string.Join('\n', off));
    }
}
