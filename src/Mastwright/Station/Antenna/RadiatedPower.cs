using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>Power radiated along the main beam.</summary>
/// <param name="EirpDbm">Relative to an isotropic antenna, in dBm.</param>
/// <param name="ErpDbm">Relative to a half-wave dipole, in dBm: 2.15 dB less.</param>
/// <param name="EirpLedger">From the radio's power to the EIRP.</param>
/// <param name="ErpLedger">From the radio's power to the ERP.</param>
public sealed record RadiatedPower(Estimate EirpDbm, Estimate ErpDbm, Ledger EirpLedger, Ledger ErpLedger)
{
    /// <summary>Gain of a half-wave dipole in dBi, rounded as in radio regulations (ITU Radio Regulations 1.161 and 1.162: ERP is relative to one).</summary>
    public const double HalfWaveDipoleDbi = 2.15;

    /// <summary>The ERP in dBm of an EIRP in dBm.</summary>
    public static double ErpFromEirpDbm(double eirpDbm) => eirpDbm - HalfWaveDipoleDbi;

    /// <summary>The EIRP in dBm of an ERP in dBm.</summary>
    public static double EirpFromErpDbm(double erpDbm) => erpDbm + HalfWaveDipoleDbi;

    /// <summary>Radiated power from the power into an antenna.</summary>
    /// <param name="powerIntoAntennaDbm">Power into the antenna in dBm.</param>
    /// <param name="transmitLines">Lines that sum to its median.</param>
    /// <param name="gainDbi">Gain of the main beam in dBi.</param>
    /// <param name="gainSource">Where the gain comes from.</param>
    public static RadiatedPower Compute(
        Estimate powerIntoAntennaDbm, ImmutableArray<LedgerLine> transmitLines, Estimate gainDbi, string gainSource)
    {
        Estimate eirp = powerIntoAntennaDbm + gainDbi;
        Estimate erp = eirp.Map(ErpFromEirpDbm);
        ImmutableArray<LedgerLine> lines = transmitLines.Add(new("antenna-gain", "gain of the main beam", gainDbi.Median, gainSource));
        ImmutableArray<LedgerLine> toDipole = lines.Add(new("to-dipole", "relative to a half-wave dipole", -HalfWaveDipoleDbi, "definition of ERP"));
        return new(
            eirp,
            erp,
            Ledger.SummingTo(eirp.Median, "EIRP", "dBm", lines),
            Ledger.SummingTo(erp.Median, "ERP", "dBm", toDipole));
    }
}
