namespace Mastwright.Station.Mast;

/// <summary>A round tube's cross-section. Geometry alone; EN 10210-2 and EN 10219-2 print the same figures to three digits.</summary>
public readonly record struct TubeSection
{
    /// <summary>Makes the section.</summary>
    /// <param name="outerDiameterMetres">Outer diameter in metres, greater than zero.</param>
    /// <param name="wallMetres">Wall in metres: greater than zero, at most half the diameter (then it is a solid rod).</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such tube.</exception>
    public TubeSection(double outerDiameterMetres, double wallMetres)
    {
        if (Problem(outerDiameterMetres, wallMetres) is { } problem)
        {
            throw new ArgumentOutOfRangeException(nameof(wallMetres), problem);
        }

        OuterDiameterMetres = outerDiameterMetres;
        WallMetres = wallMetres;
    }

    /// <summary>Outer diameter in metres.</summary>
    public double OuterDiameterMetres { get; }

    /// <summary>Wall in metres.</summary>
    public double WallMetres { get; }

    /// <summary>Area in m².</summary>
    public double AreaSquareMetres => Math.PI / 4 * ((OuterDiameterMetres * OuterDiameterMetres) - (Inner * Inner));

    /// <summary>Second moment of area in m⁴.</summary>
    public double SecondMomentMetres4 => Math.PI / 64 * (Math.Pow(OuterDiameterMetres, 4) - Math.Pow(Inner, 4));

    /// <summary>Elastic section modulus in m³.</summary>
    public double ElasticModulusMetres3 => 2 * SecondMomentMetres4 / OuterDiameterMetres;

    /// <summary>Plastic section modulus in m³.</summary>
    public double PlasticModulusMetres3 => (Math.Pow(OuterDiameterMetres, 3) - Math.Pow(Inner, 3)) / 6;

    private double Inner => OuterDiameterMetres - (2 * WallMetres);

    /// <summary>Why there is no tube of these measures; null when there is one.</summary>
    public static string? Problem(double outerDiameterMetres, double wallMetres)
    {
        if (!(outerDiameterMetres > 0) || !double.IsFinite(outerDiameterMetres))
        {
            return "The outer diameter of a tube is more than 0.";
        }

        if (!(wallMetres > 0))
        {
            return "The wall of a tube is more than 0.";
        }

        return wallMetres > outerDiameterMetres / 2
            ? FormattableString.Invariant($"The wall of {wallMetres * 1000:0.##} mm is thicker than the tube's radius of {outerDiameterMetres * 500:0.##} mm.")
            : null;
    }
}
