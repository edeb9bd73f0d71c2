namespace Mastwright.Station.Sun;

/// <summary>What a panel makes of the light of an hour: the share of each part of it that falls on a square metre of the panel.</summary>
/// <param name="Direct">Of the beam: the cosine of its angle of incidence; 0 behind the panel or below the horizon.</param>
/// <param name="Diffuse">Of the sky's light on level ground.</param>
/// <param name="Ground">Of the light on level ground, thrown back by it.</param>
public readonly record struct PanelView(double Direct, double Diffuse, double Ground)
{
    /// <summary>Mean power of the light on a square metre of the panel, in watts.</summary>
    /// <param name="light">The light of the hour.</param>
    public double LightOf(HourLight light) => (light.Direct * Direct) + (light.Diffuse * Diffuse) + (light.Global * Ground);

    /// <summary>The three shares, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Direct:0.###} of the beam, {Diffuse:0.###} of the sky, {Ground:0.###} of the ground");
}
