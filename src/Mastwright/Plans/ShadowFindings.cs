using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network.Shadow;

namespace Mastwright.Plans;

/// <summary>What is to be said of a shadow.</summary>
internal static class ShadowFindings
{
    private const double SquareMetresASquareKilometre = 1e6;

    internal static Ledger Areas(string name, ImmutableArray<ShadowPart> parts) => Ledger.SummingTo(
        parts.Sum(part => part.AreaSquareMetres) / SquareMetresASquareKilometre,
        $"Area around {name} by what reaches it",
        "km²",
        [.. parts.Select(part => new LedgerLine(Code(part.Cause), Words(part.Cause), part.AreaSquareMetres / SquareMetresASquareKilometre, Source(part.Cause)))]);

    internal static Finding Of(string subject, string name, ImmutableArray<ShadowPart> parts)
    {
        ImmutableArray<ShadowPart> dark = [.. parts.Where(part => part.Cause != ShadowCause.Reached)];
        double shadow = dark.Sum(part => part.AreaSquareMetres);
        double opened = dark.Sum(part => part.ByHops.Sum());
        ShadowPart most = dark.MaxBy(part => part.AreaSquareMetres)!;
        return new()
        {
            Code = "shadow-cause",
            Subject = subject,
            Verdict = Verdict.Ok,
            Quantity = "area",
            Unit = "km²",
            Value = Quantities.Estimate.Exactly(shadow / SquareMetresASquareKilometre),
            Source = "ITU-R P.1812, P.526, P.525 on the same paths",
            Details = FindingDetails.Of(
                ("name", name),
                ("shadow", Area(shadow)),
                ("most", shadow == 0 ? "" : Text($"; the largest part, {Area(most.AreaSquareMetres)}, is {Words(most.Cause)}")),
                ("opened", opened == 0 ? "none of it" : Area(opened)),
                ("advice", shadow == 0 ? "" : " " + Advice(most.Cause))),
        };
    }

    /// <summary>The stable name of a cause.</summary>
    internal static string Code(ShadowCause cause) => cause switch
    {
        ShadowCause.Reached => "reached",
        ShadowCause.TooFar => "too-far",
        ShadowCause.Curve => "earth-curve",
        ShadowCause.Ground => "ground",
        ShadowCause.Cover => "cover",
        _ => "unknown",
    };

    /// <summary>A cause in words.</summary>
    internal static string Words(ShadowCause cause) => cause switch
    {
        ShadowCause.Reached => "reached directly",
        ShadowCause.TooFar => "too far, in free space already",
        ShadowCause.Curve => "behind the curve of a smooth Earth",
        ShadowCause.Ground => "behind bare ground",
        ShadowCause.Cover => "behind trees and buildings alone",
        _ => "not known",
    };

    private static string Source(ShadowCause cause) => cause switch
    {
        ShadowCause.TooFar => "ITU-R P.525",
        ShadowCause.Curve => "ITU-R P.526, spherical Earth",
        _ => "ITU-R P.1812",
    };

    private static string Advice(ShadowCause cause) => cause switch
    {
        ShadowCause.TooFar => "More power within the rules, more gain, or a slower setting; or a relay nearer by.",
        ShadowCause.Curve => "A higher mast, or a relay on high ground.",
        ShadowCause.Ground => "A relay on the ridge that throws the shadow helps more than power.",
        _ => "An antenna above the trees and roofs helps more than power.",
    };

    private static string Area(double squareMetres) => Text($"{squareMetres / SquareMetresASquareKilometre:0.0} km²");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
