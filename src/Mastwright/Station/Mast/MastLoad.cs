namespace Mastwright.Station.Mast;

/// <summary>A force across a mast, spread evenly over a length or at one height.</summary>
/// <param name="Code">Stable name of its ledger line.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="ForceNewtons">The whole force in newtons.</param>
/// <param name="FromMetres">Where it begins above the upper bracket, in metres.</param>
/// <param name="ToMetres">Where it ends; the same for a force at one height. May lie above the top of the mast.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Note">How it came about.</param>
public sealed record MastLoad(string Code, string Label, double ForceNewtons, double FromMetres, double ToMetres, string Source = "", string Note = "")
{
    /// <summary>Height of its centre above the upper bracket in metres.</summary>
    public double CentreMetres => (FromMetres + ToMetres) / 2;

    /// <summary>The part of the force above a height, in newtons.</summary>
    public double Above(double heightMetres) => ToMetres > FromMetres
        ? ForceNewtons * Math.Clamp((ToMetres - heightMetres) / (ToMetres - FromMetres), 0, 1)
        : FromMetres > heightMetres ? ForceNewtons : 0;

    /// <summary>Moment in N·m that it makes in the mast at a height.</summary>
    public double MomentAt(double heightMetres)
    {
        double from = Math.Max(FromMetres, heightMetres);
        return ToMetres <= heightMetres ? 0 : Above(heightMetres) * (((from + ToMetres) / 2) - heightMetres);
    }
}
