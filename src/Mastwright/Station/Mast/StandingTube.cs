namespace Mastwright.Station.Mast;

/// <summary>A tube of a mast with its measures and its grade found.</summary>
/// <param name="Number">Its number from the bracket up, from 1.</param>
/// <param name="Tube">As the plan gives it.</param>
/// <param name="Section">Its cross-section.</param>
/// <param name="Grade">Its grade.</param>
/// <param name="FootMetres">Where it begins above the upper bracket, in metres.</param>
/// <param name="SizeSource">Where its measures come from.</param>
internal sealed record StandingTube(int Number, MastTube Tube, TubeSection Section, TubeGradeRow Grade, double FootMetres, string SizeSource)
{
    /// <summary>Least thickness of wall that plates need not be checked for: D/t at most 90·235/fy for steel (EN 1993-1-1, Table 5.2, class 3).</summary>
    private const double SteelSlenderness = 90;

    /// <summary>A stand-in for aluminium, whose own limits (EN 1999-1-1, clause 6.1.4) depend on temper and welds: common practice.</summary>
    private const double AluminiumSlenderness = 50;

    internal double TopMetres => FootMetres + Tube.LengthMetres;

    internal double Stiffness => Grade.ModulusPa * Section.SecondMomentMetres4;

    internal double KilogramsPerMetre => Section.AreaSquareMetres * Grade.DensityKilogramsPerCubicMetre;

    internal bool IsSoftened => Tube.WeldedAtFoot == true && Grade.WeldShare < 1;

    internal string Measures => FormattableString.Invariant($"{Section.OuterDiameterMetres * 1000:0.#} × {Section.WallMetres * 1000:0.#} mm");

    internal double Slenderness => Section.OuterDiameterMetres / Section.WallMetres;

    internal double SlendernessLimit => Grade.Material == TubeMaterial.Steel ? SteelSlenderness * 235e6 / Grade.YieldPa : AluminiumSlenderness;

    /// <summary>Bending strength in N·m before any factor.</summary>
    internal double YieldMoment => Section.ElasticModulusMetres3 * Grade.YieldPa;
}
