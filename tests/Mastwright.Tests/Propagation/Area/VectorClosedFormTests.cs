using System.Diagnostics;
using System.Globalization;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>The closed form in single-precision vectors against the plain double form, at each width, and on processors without the wider ones.</summary>
public sealed class VectorClosedFormTests
{
    /// <summary>Tells a child process the width that it has to have.</summary>
    private const string ExpectedBits = "MASTWRIGHT_TEST_VECTOR_BITS";

    public static TheoryData<string, double, bool, WavePolarisation> Cases => new()
    {
        { "hilly", 50, true, WavePolarisation.Vertical },
        { "hilly", 10, false, WavePolarisation.Horizontal },
        { "alpine", 1, true, WavePolarisation.Vertical },
        { "coast with sea", 10, true, WavePolarisation.Vertical },
        { "coast with sea", 1, false, WavePolarisation.Horizontal },
        { "coast with sea", 50, false, WavePolarisation.Vertical },
        { "flat", 10, false, WavePolarisation.Vertical },
        { "rolling", 50, true, WavePolarisation.Horizontal },
        { "rolling", 10, false, WavePolarisation.Vertical },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_a_hundred_cells_ninety_nine_are_within_a_thousandth_of_a_decibel(string scene, double p, bool withCover, WavePolarisation polarisation)
    {
        (SweepRaster raster, double height) = SweepScenes.Of(scene, withCover, reach: 90);
        SweepInput input = new()
        {
            FrequencyHz = 868e6,
            StationHeightMetres = height,
            ReceiverHeightMetres = 2,
            TimePercent = p,
            Polarisation = polarisation,
            LocationPercent = 90,
            LocationSigmaDb = 4,
            Radials = 800,
        };
        double[] exact = new double[raster.Side * raster.Side];
        SweepResult plain = AreaSweep.RunExact(raster, input, exact);
        SweepResult fast = AreaSweep.Run(raster, input);
        int cells = 0;
        int off = 0;
        double worst = 0;
        for (int i = 0; i < exact.Length; i++)
        {
            Assert.Equal(plain.MarksOf(i), fast.MarksOf(i));
            Assert.True(float.IsFinite(fast.LossDb[i]) && float.IsFinite(fast.ElevationDegrees[i]));
            if (plain.LossDb[i] == SweepResult.NoLossDb)
            {
                continue;
            }

            cells++;
            double error = Math.Abs(fast.LossDb[i] - exact[i]);
            worst = Math.Max(worst, error);
            off += error > 1e-3 ? 1 : 0;
            Assert.Equal(plain.ElevationDegrees[i], fast.ElevationDegrees[i], 1e-5);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{scene} p {p}, {AreaSweep.VectorBits} bits: {off} of {cells} off, worst {worst:0.00000} dB"));
        Assert.True(off * 100 <= cells, $"{off} of {cells}");
    }

    [Theory]
    [InlineData(128)]
    [InlineData(256)]
    [InlineData(512)]
    public void Every_width_gives_the_same_map(int bits)
    {
        SweepRaster raster = SweepScenes.Made(40, 90, (x, y) => 200 + (90 * Math.Sin(x * 0.2) * Math.Cos(y * 0.17)) + (x % 5), withCover: true, sea: true);
        SweepInput input = new() { FrequencyHz = 868e6, StationHeightMetres = 12, ReceiverHeightMetres = 2, TimePercent = 7 };
        double[] exact = new double[raster.Side * raster.Side];
        AreaSweep.RunExact(raster, input, exact);
        SweepResult map = AreaSweep.RunAt(bits, raster, input, null, 1, null, null, CancellationToken.None);
        int off = Enumerable.Range(0, exact.Length).Count(i => map.LossDb[i] != SweepResult.NoLossDb && !(Math.Abs(map.LossDb[i] - exact[i]) <= 1e-3));
        Assert.InRange(off, 0, exact.Length / 100);
    }

    [Fact]
    public void The_width_is_the_one_expected_of_the_processor()
    {
        int[] widths = [0, 128, 256, 512];
        if (Environment.GetEnvironmentVariable(ExpectedBits) is { Length: > 0 } expected)
        {
            Assert.Equal(int.Parse(expected, CultureInfo.InvariantCulture), AreaSweep.VectorBits);
        }

        Assert.Contains(AreaSweep.VectorBits, widths);
    }

    [Theory]
    [InlineData("DOTNET_EnableAVX512", 256)]
    [InlineData("DOTNET_EnableAVX2", 128)]
    [InlineData("DOTNET_EnableHWIntrinsic", 0)]
    [Trait("needs", "system")]
    public async Task The_tests_hold_on_a_processor_with_less(string switchedOff, int bits)
    {
        Assert.SkipWhen(Environment.GetEnvironmentVariable(ExpectedBits) is not null, "this is the child process");
        Assert.SkipUnless(AreaSweep.VectorBits >= 256, $"this processor has {AreaSweep.VectorBits} bits");
        string program = Path.Combine(AppContext.BaseDirectory, "Mastwright.Tests" + (OperatingSystem.IsWindows() ? ".exe" : ""));
        ProcessStartInfo start = new(program, ["-class", typeof(VectorClosedFormTests).FullName!, "-class", typeof(FastMathTests).FullName!])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment[switchedOff] = "0";
        start.Environment[ExpectedBits] = bits.ToString(CultureInfo.InvariantCulture);
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, output + await errors);
        Assert.DoesNotContain("Total: 0", output, StringComparison.Ordinal);
    }
}
