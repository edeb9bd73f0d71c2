using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>A hash of everything that the facts of a path depend on.</summary>
/// <remarks>
/// The ground counts by the samples that the path reads. Where more of it is read (an end that is vague, a surface model that buildings are
/// taken out of), all of the ground counts. The build of the program counts, for a method may change by a line that nobody thought of as one.
/// </remarks>
internal static class PathKey
{
    private static readonly string Build = FormattableString.Invariant($"path-facts 1, {typeof(P1812).Module.ModuleVersionId:N}, {Environment.Version}");

    internal static string Of(LinkStation from, LinkStation to, PathSettings settings, PathAir air, TerrainProfile terrain, Func<string> wholeGround)
    {
        StringBuilder text = new(512);
        text.Append(CultureInfo.InvariantCulture, $"{Build}\n{settings.FrequencyHz:R} {settings.TimePercent:R} {settings.LocationPercent:R} {settings.LocationDb:R}\n");
        text.Append(CultureInfo.InvariantCulture, $"{air.RefractivityGradient:R} {air.SurfaceRefractivity:R}\n");
        Append(text, from);
        Append(text, to);
        foreach (GroundGap gap in terrain.Gaps)
        {
            text.Append(CultureInfo.InvariantCulture, $"{gap}\n");
        }

        if (terrain.HasSurface || from.Position.RadiusMetres > 0 || to.Position.RadiusMetres > 0)
        {
            text.Append(wholeGround());
        }

        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes(text.ToString()));
        hash.AppendData(MemoryMarshal.AsBytes(terrain.HeightsMetres));
        hash.AppendData(terrain.CoverCodes);
        hash.AppendData(MemoryMarshal.AsBytes(terrain.CoverHeightsMetres));
        hash.AppendData(MemoryMarshal.AsBytes(terrain.CoverClasses));
        hash.AppendData(MemoryMarshal.AsBytes(terrain.Zones));
        return Convert.ToBase64String(hash.GetHashAndReset());
    }

    private static void Append(StringBuilder text, LinkStation station)
    {
        Surroundings around = station.Surroundings;
        text.Append(CultureInfo.InvariantCulture, $"{station.Name}\n{station.PlanPath}\n{station.FitOutPath}\n");
        text.Append(CultureInfo.InvariantCulture, $"{station.Position.Point.LatitudeDegrees:R} {station.Position.Point.LongitudeDegrees:R} {station.Position.RadiusMetres:R}\n");
        Append(text, station.GroundHeightMetres);
        Append(text, station.Height?.Metres);
        Append(text, station.Height?.RoofMetres);
        Append(text, around.ClutterHeightMetres);
        text.Append(CultureInfo.InvariantCulture, $"{station.Height?.Above}\n{station.Height?.Datum}\n{station.Polarisation}\n{station.Indoors}\n");
        text.Append(CultureInfo.InvariantCulture, $"{around.ClutterKind}\n{around.StreetWidthMetres:R}\n{around.WoodlandDepthMetres:R}\n{around.BuildingKind}\n");
    }

    private static void Append(StringBuilder text, Estimate? value) =>
        text.Append(CultureInfo.InvariantCulture, $"{value?.Low:R} {value?.Median:R} {value?.High:R}\n");
}
