using Mastwright.Station.Antenna;

namespace Mastwright.Station.Mast;

/// <summary>What the lean of a mast's top costs of an antenna's beam.</summary>
internal static class MastPointing
{
    /// <summary>Loss in dB: 12·(lean/beamwidth)², the main-beam form of <see cref="DirectionalBeam"/> (Rec. ITU-R F.1336).</summary>
    /// <param name="leanDegrees">Lean of the top in degrees.</param>
    /// <param name="beamwidthDegrees">Vertical beamwidth in degrees, greater than zero.</param>
    internal static double LossDb(double leanDegrees, double beamwidthDegrees) => 12 * leanDegrees / beamwidthDegrees * leanDegrees / beamwidthDegrees;

    /// <summary>Vertical beamwidth of an antenna in degrees, given or from its gain; null when neither is known.</summary>
    internal static double? BeamwidthDegrees(AntennaFit antenna) => antenna.ElevationBeamwidthDegrees
        ?? (antenna.GainDbi?.Median is not { } dbi ? null
            : antenna.Pattern == PatternKind.Yagi ? DirectionalBeam.BeamwidthDegrees(dbi, antenna.AzimuthBeamwidthDegrees) : AverageSideLobes.BeamwidthDegrees(dbi));

    /// <summary>Lean of the top of a case in degrees, without its sign.</summary>
    internal static double LeanDegrees(MastCase at) => double.RadiansToDegrees(Math.Abs(at.Beam.SlopeRadians(at.Beam.LengthMetres)));
}
