using System.Collections.Immutable;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Writes the stations of a plan for other programs.</summary>
public static class SitesExport
{
    /// <summary>The sites, then the neighbours, as a file's text in one of the formats.</summary>
    public static string Write(Plan plan, PlaceFormat format)
    {
        ImmutableArray<ExchangedPlace> places = Places(plan);
        return format switch
        {
            PlaceFormat.Gpx => GpxPlaces.Write(places),
            PlaceFormat.GeoJson => GeoJsonPlaces.Write(places),
            PlaceFormat.Kml => KmlPlaces.Write(places),
            PlaceFormat.Csv => CsvPlaces.Write(places),
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "Unknown format."),
        };
    }

    /// <summary>The stations of a plan as places.</summary>
    public static ImmutableArray<ExchangedPlace> Places(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            .. plan.Sites.Select(site => new ExchangedPlace { Key = site.Key, Name = site.Name, IsNeighbour = false, Position = site.Position, ElevationMetres = site.GroundHeightMetres?.Median }),
            .. plan.Neighbours.Select(one => new ExchangedPlace { Key = one.Key, Name = one.Name, IsNeighbour = true, Position = one.Position, ElevationMetres = one.GroundHeightMetres?.Median }),
        ];
    }
}
