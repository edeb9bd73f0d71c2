namespace Mastwright.Propagation;

/// <summary>Direction of the electric field of a wave, which the ground along a path sees.</summary>
public enum WavePolarisation
{
    /// <summary>The electric field is level with the ground.</summary>
    Horizontal,

    /// <summary>The electric field stands upright.</summary>
    Vertical,
}
