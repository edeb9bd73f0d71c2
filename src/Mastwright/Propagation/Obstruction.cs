namespace Mastwright.Propagation;

/// <summary>A run of neighbouring points that leave less than 0.6 of the first Fresnel zone free.</summary>
/// <param name="FirstPoint">Index of the first point of the run.</param>
/// <param name="LastPoint">Index of the last point of the run.</param>
/// <param name="Worst">The point with the least clearance in radii.</param>
/// <param name="EdgeLossDb">What a single knife edge there would cost, in dB (Rec. ITU-R P.526); the losses of several do not add.</param>
public readonly record struct Obstruction(int FirstPoint, int LastPoint, ClearancePoint Worst, double EdgeLossDb)
{
    /// <summary>Whether it stands above the ray, not only in the Fresnel zone.</summary>
    public bool BlocksTheRay => Worst.ClearanceMetres < 0;

    /// <summary>The worst point, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Worst}, {EdgeLossDb:0.0} dB");
}
