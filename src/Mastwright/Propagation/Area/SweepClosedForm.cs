using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>The part of P.1812 that needs no more of a path than <see cref="SweepCell"/> holds, in double precision: the measure of every faster form.</summary>
/// <remarks>Source: Rec. ITU-R P.1812; the equations of <see cref="P1812.Evaluate"/>, numbered there.</remarks>
internal static class SweepClosedForm
{
    /// <summary>Basic transmission loss in dB.</summary>
    /// <param name="cell">The path.</param>
    /// <param name="t">What all paths share.</param>
    /// <param name="elevation">Elevation at the station of the ray, in mrad.</param>
    internal static double LossDb(ref readonly SweepCell cell, in SweepTerms t, out double elevation)
    {
        double p = t.Input.TimePercent;
        double f = t.Frequency;
        double d = cell.Length / 1000;
        double ae = t.MedianRadius / 1000;
        double fall = cell.Length * t.MedianFall;
        double thetaT = 1000 * Math.Atan(cell.IsLineOfSight ? cell.LineSlope - fall : cell.HorizonFromStation); // (76) to (78)
        double thetaR = 1000 * Math.Atan(cell.IsLineOfSight ? -cell.LineSlope - fall : cell.HorizonFromCell); // (79) to (81)
        elevation = thetaT;
        double dlt = cell.StationHorizonMetres / 1000;
        double dlr = cell.CellHorizonMetres / 1000;
        double theta = (1000 * d / ae) + thetaT + thetaR; // (82)

        double omega = cell.Climate.SeaFraction;
        double tau = cell.Climate.Tau;
        double beta0 = cell.Climate.DuctingPercent(cell.Latitude, tau);
        double fi = !t.NeedsDucting ? 0 : p <= beta0 ? 1 : t.TimeDeviations / InverseNormal.Of(beta0 / 100); // (40)

        double fallOfAntennas = (t.StationAntenna - cell.AntennaMetres) * 1e-3;
        double lbfs = 92.4 + (20 * t.LogFrequency) + (20 * Math.Log10(Math.Sqrt((d * d) + (fallOfAntennas * fallOfAntennas)))); // (8)
        double multipath = 2.6 * (1 - Math.Exp(-0.1 * (dlt + dlr)));
        double lb0p = lbfs + (multipath * Math.Log10(p / 50)); // (10)
        double lb0b = lbfs + (multipath * Math.Log10(beta0 / 50)); // (11)

        SurfaceWave surface = new(f, t.Input.Polarisation, omega);
        double ld50 = DiffractionDb(in cell, in t, cell.Median, t.MedianRadius, surface);
        double ldp = ld50;
        if (t.NeedsDucting)
        {
            ldp += (DiffractionDb(in cell, in t, cell.Ducting, t.DuctingRadius, surface) - ld50) * fi; // (41)
        }

        double lbd50 = lbfs + ld50; // (42)
        double lbd = lb0p + ldp; // (43)
        double lbs = t.ScatterDb + (20 * Math.Log10(d)) + (0.573 * theta); // (44)

        double beta = DuctingLoss.DuctTimePercent(beta0, tau, d, dlt, dlr, ae, cell.EffectiveStation, cell.EffectiveCell, cell.Roughness);
        double lba = DuctingLoss.FixedCouplingDb(
                f, dlt, dlr, thetaT, thetaR, cell.StationToCoastMetres / 1000, cell.CellToCoastMetres / 1000, t.StationAntenna, cell.AntennaMetres, omega)
            + DuctingLoss.AngleAndTimeDb(f, d, dlt, dlr, thetaT, thetaR, ae, p, beta); // (46)

        double fj = 1 - (0.5 * (1 + Math.Tanh(2.4 * (theta - 0.3) / 0.3))); // (57)
        double fk = 1 - (0.5 * (1 + Math.Tanh(1.5 * (d - 20) / 20))); // (58)
        double overLand = (1 - omega) * ldp;
        double lminb0p = p < beta0 ? lb0p + overLand : lbd50 + ((lb0b + overLand - lbd50) * fi); // (59)
        double lminbap = P1812.SoftMaximum(lba, lb0p, 2.5); // (60)
        double lbda = lminbap > lbd ? lbd : lminbap + ((lbd - lminbap) * fk); // (61)
        double lbam = lbda + ((lminb0p - lbda) * fj); // (62)
        double lbc = -P1812.SoftMaximum(-lbs, -lbam, 5 / Math.Log(10)); // (63)

        Zone receiver = t.Input.StationReceives ? t.StationZone : cell.Zone;
        return Math.Max(lb0p, lbc + (receiver == Zone.Sea ? 0 : t.PlacesDb)); // (69)
    }

    private static double DiffractionDb(ref readonly SweepCell cell, in SweepTerms t, BullingtonReading reading, double radius, in SurfaceWave surface) => new DiffractionTerms(
        reading.LossDb(cell.Length, cell.LineSlope, surface.WavelengthMetres),
        SweepSmoothEdge.LossDb(in cell, t.Step, radius, surface.WavelengthMetres),
        SphericalEarth.LossDb(cell.Length / 1000, cell.OverSmoothStation, cell.OverSmoothCell, radius / 1000, surface)).LossDb;
}
