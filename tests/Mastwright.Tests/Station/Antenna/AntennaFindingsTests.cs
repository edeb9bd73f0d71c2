using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Station.Antenna;

public sealed class AntennaFindingsTests
{
    private const double FrequencyHz = 868e6;

    /// <summary>2·L/λ by hand at 868 MHz (λ = 0.34538 m): 1.1 m is 6.370 or 8.04 dBi; 0.8 m is 4.633 or 6.66 dBi; 0.17 m less than a dipole's 2.15 dBi.</summary>
    [Theory]
    [InlineData(8, 1.1, Verdict.Ok, 8.04)]
    [InlineData(8.5, 1.1, Verdict.Tight, 8.04)]
    [InlineData(8, 0.8, Verdict.Fails, 6.66)]
    [InlineData(2.15, 0.17, Verdict.Ok, 2.15)]
    [InlineData(6, 0.17, Verdict.Fails, 2.15)]
    public void A_gain_beyond_the_antennas_length_is_found(double gainDbi, double lengthMetres, Verdict verdict, double limitDbi)
    {
        Finding finding = Assert.Single(Review(Fit(Estimate.Exactly(gainDbi)) with { LengthMetres = lengthMetres }));

        Assert.Equal("antenna-gain-for-length", finding.Code);
        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(limitDbi, finding.Limit!.Value, 0.005);
    }

    [Fact]
    public void A_range_of_gain_over_the_limit_leaves_it_unknown() =>
        Assert.Equal(Verdict.Unknown, Assert.Single(Review(Fit(Estimate.Between(5, 9)) with { LengthMetres = 0.8 })).Verdict);

    [Theory]
    [InlineData(0.3, Verdict.Tight)]
    [InlineData(0.4, Verdict.Ok)]
    public void A_mast_within_a_wavelength_is_found(double metres, Verdict verdict)
    {
        Finding finding = Assert.Single(Review(Fit(Estimate.Exactly(2)) with { SideMountOffsetMetres = metres }));

        Assert.Equal("antenna-side-mount", finding.Code);
        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(0.3454, finding.Limit!.Value, 1e-4);
    }

    [Fact]
    public void A_gain_that_nobody_gave_is_found() =>
        Assert.Equal("antenna-gain-unknown", Assert.Single(Review(Fit(null))).Code);

    [Fact]
    public void Crossed_polarisations_are_found_and_equal_ones_are_not()
    {
        Assert.Null(PolarisationMismatch.Judge(Polarisation.Vertical, Polarisation.Vertical, "link"));
        Assert.Equal(0, PolarisationMismatch.LossDb(Polarisation.Horizontal, Polarisation.Horizontal).High);

        Finding finding = PolarisationMismatch.Judge(Polarisation.Vertical, Polarisation.Horizontal, "link")!;
        Assert.Equal("polarisation-differs", finding.Code);
        Assert.Equal(20, finding.Value!.Value.Median);
    }

    /// <summary>Licence-exempt limits: 25 mW ERP is 13.979 dBm ERP and 16.129 dBm EIRP; 500 mW 26.990 and 29.140; 10 mW 10.0 and 12.15; 5 mW 6.990 and 9.140 (ETSI EN 300 220-2 limits in ERP; EIRP = ERP + 2.15 dB).</summary>
    [Theory]
    [InlineData(25, 13.979, 16.129)]
    [InlineData(500, 26.990, 29.140)]
    [InlineData(10, 10.0, 12.15)]
    [InlineData(5, 6.990, 9.140)]
    public void Radiated_power_relative_to_a_dipole_is_2_15_dB_less(double milliwatts, double erpDbm, double eirpDbm)
    {
        Assert.Equal(erpDbm, PowerLevel.FromMilliwatts(milliwatts).Dbm, 0.0005);
        Assert.Equal(eirpDbm, RadiatedPower.EirpFromErpDbm(PowerLevel.FromMilliwatts(milliwatts).Dbm), 0.0005);
        Assert.Equal(erpDbm, RadiatedPower.ErpFromEirpDbm(eirpDbm), 0.0005);
    }

    [Fact]
    public void The_ledger_of_radiated_power_sums_from_the_radio_to_the_beam()
    {
        ImmutableArray<LedgerLine> lines = [new("conducted-power", "power", 22, "plan"), new("feed", "feed", -2, "plan")];

        RadiatedPower power = RadiatedPower.Compute(Estimate.PlusMinus(20, 1), lines, Estimate.PlusMinus(8, 1), "plan");

        Assert.Equal(28, power.EirpDbm.Median, 1e-9);
        Assert.Equal(26, power.EirpDbm.Low, 1e-9);
        Assert.Equal(25.85, power.ErpLedger.Total, 1e-9);
        Assert.Equal(4, power.ErpLedger.Lines.Length);
    }

    private static AntennaFit Fit(Estimate? gain) => new()
    {
        Height = new(Estimate.Exactly(5), HeightAbove.Ground),
        GainDbi = gain,
    };

    private static ImmutableArray<Finding> Review(AntennaFit fit) => AntennaFindings.Review(fit, FrequencyHz, "p/antenna");
}
