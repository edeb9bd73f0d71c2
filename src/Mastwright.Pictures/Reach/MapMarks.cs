using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Pictures.Reach;

/// <summary>What is marked on a map.</summary>
/// <param name="Stations">The stations that it is of, one or more.</param>
/// <param name="Places">Other places.</param>
/// <param name="RadiusMetres">Radius around the first station, to be drawn with rings inside it; null for no rings.</param>
internal sealed record MapMarks(ImmutableArray<MapStation> Stations, ImmutableArray<ReachMark> Places, double? RadiusMetres)
{
    /// <summary>The marks of a map of one station.</summary>
    public static MapMarks Of(ReachMap map, string stationName, ImmutableArray<ReachMark> places)
    {
        GridFrame frame = map.Field.Frame;
        UtmPosition at = UniversalTransverseMercator.FromGeo(map.Field.Input.Station, frame.UtmZone, frame.IsNorth);
        return new([new(stationName, 0, at.EastingMetres, at.NorthingMetres)], places, map.Field.Input.RadiusMetres);
    }
}

/// <summary>A station that a map is of.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Number">Its number, from 1; 0 where it is the only one.</param>
/// <param name="EastingMetres">Easting in the map's zone.</param>
/// <param name="NorthingMetres">Northing in the map's zone.</param>
public sealed record MapStation(string Name, int Number, double EastingMetres, double NorthingMetres);
