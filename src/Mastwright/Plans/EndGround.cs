using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>The bare ground at the foot of an antenna, and what is to be said of it.</summary>
/// <param name="Metres">Height above sea level in metres.</param>
/// <param name="Findings">What is to be said of it.</param>
/// <param name="Assumptions">What was assumed.</param>
internal sealed record EndGround(Estimate Metres, ImmutableArray<Finding> Findings, ImmutableArray<Assumption> Assumptions)
{
    /// <summary>Difference in metres between the plan's ground and the source's beyond which one of them is doubted. Common practice: the error of 30 m models on slopes.</summary>
    private const double DoubtMetres = 20;

    /// <summary>The ground at a place of a station; a place without ground has none, which the profile's gaps tell.</summary>
    internal static EndGround At(GroundMosaic mosaic, TerrainProfile terrain, LinkStation station, bool isStart)
    {
        Geodesy.GeoPoint place = isStart ? terrain.From : terrain.To;
        double source = isStart ? terrain.HeightsMetres[0] : terrain.HeightsMetres[^1];
        SiteGround ground = SiteGround.Resolve(mosaic, place, station.GroundHeightMetres, station.PlanPath);
        Estimate metres = ground.HeightMetres ?? Estimate.Exactly(source);
        List<Finding> findings = [];
        if (station.GroundHeightMetres is { } given && Math.Abs(given.Median - source) > DoubtMetres)
        {
            findings.Add(Of("ground-height-differs", Verdict.Tight, station.PlanPath + "/ground-height", Estimate.Exactly(given.Median - source), ("name", station.Name), ("given", Metre(given.Median)), ("source", Metre(source))));
        }

        if (station.Height is { Above: HeightAbove.SeaLevel, Datum: { Length: > 0 } datum } && ground.Datum.Length > 0
            && !string.Equals(datum, ground.Datum, StringComparison.OrdinalIgnoreCase))
        {
            findings.Add(Of("antenna-datum-differs", Verdict.Tight, station.FitOutPath + "/height", null, ("name", station.Name), ("given", datum), ("source", ground.Datum)));
        }

        return new(metres, [.. findings], ground.Assumptions);
    }

    private static Finding Of(string code, Verdict verdict, string subject, Estimate? value, params ReadOnlySpan<(string Name, string Value)> details)
    {
        return new()
        {
            Code = code,
            Subject = subject,
            Verdict = verdict,
            Quantity = value is null ? "" : "difference",
            Unit = value is null ? "" : "m",
            Value = value,
            Source = "common practice",
            Details = FindingDetails.Of(details),
        };
    }

    private static string Metre(double metres) => FormattableString.Invariant($"{metres:0.#} m");
}
