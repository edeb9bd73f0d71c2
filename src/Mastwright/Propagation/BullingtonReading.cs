namespace Mastwright.Propagation;

/// <summary>The three readings of a profile from which Bullington's equivalent knife edge follows.</summary>
/// <param name="SlopeFromTransmitter">Largest slope Stim from the transmitter to a point, bulge included.</param>
/// <param name="SlopeFromReceiver">Largest slope Srim from the receiver to a point, bulge included.</param>
/// <param name="ClearanceKey">Largest c·|c|/(x(d − x)), c being the height above the line; read only where the path is clear.</param>
internal readonly record struct BullingtonReading(double SlopeFromTransmitter, double SlopeFromReceiver, double ClearanceKey)
{
    /// <summary>The Bullington part of the diffraction loss, in dB.</summary>
    /// <param name="length">Path length in metres.</param>
    /// <param name="lineSlope">Slope of the line from transmitter to receiver.</param>
    /// <param name="wavelength">Wavelength in metres.</param>
    /// <remarks>Source: Rec. ITU-R P.1812 section 4.3.1, equations (13) to (21), in metres throughout.</remarks>
    internal double LossDb(double length, double lineSlope, double wavelength)
    {
        double v;
        if (SlopeFromTransmitter < lineSlope)
        {
            v = Math.CopySign(Math.Sqrt(Math.Abs(ClearanceKey)), ClearanceKey) * Math.Sqrt(2 * length / wavelength);
        }
        else
        {
            double point = (((lineSlope + SlopeFromReceiver) * length) / (SlopeFromTransmitter + SlopeFromReceiver));

            // A point exactly on the line makes 0/0; the edge then just touches the ray.
            v = point > 0 && point < length
                ? (SlopeFromTransmitter - lineSlope) * Math.Sqrt(2 * length * point / (wavelength * (length - point)))
                : 0;
        }

        double edge = KnifeEdge.LossDb(v);
        return edge + ((1 - Math.Exp(-edge / 6)) * (10 + (0.02 * length / 1000)));
    }
}
