using Mastwright.Geodesy;
using Mastwright.Network.Links;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Network;

/// <summary>Where stations lie on a picture: true to scale about their middle, north up.</summary>
internal sealed class NetworkMap
{
    private const double MetresADegree = 111_320;

    private readonly double middleLatitude;
    private readonly double firstLongitude;
    private readonly double pixelsAMetre;
    private readonly double west;
    private readonly double north;
    private readonly Box box;

    internal NetworkMap(IReadOnlyList<MatrixStation> stations, Box box)
    {
        this.box = box;
        firstLongitude = stations.Count == 0 ? 0 : stations[0].Place.LongitudeDegrees;
        middleLatitude = stations.Count == 0 ? 0 : (stations.Min(one => one.Place.LatitudeDegrees) + stations.Max(one => one.Place.LatitudeDegrees)) / 2;
        Spot[] metres = [.. stations.Select(one => Metres(one.Place))];
        double width = metres.Length == 0 ? 1 : Math.Max(1, metres.Max(one => one.X) - metres.Min(one => one.X));
        double height = metres.Length == 0 ? 1 : Math.Max(1, metres.Max(one => one.Y) - metres.Min(one => one.Y));
        pixelsAMetre = Math.Min(box.Width / width, box.Height / height);
        west = (metres.Length == 0 ? 0 : metres.Min(one => one.X)) - (((box.Width / pixelsAMetre) - width) / 2);
        north = (metres.Length == 0 ? 0 : metres.Max(one => one.Y)) + (((box.Height / pixelsAMetre) - height) / 2);
    }

    /// <summary>Pixels of one metre.</summary>
    internal double PixelsAMetre => pixelsAMetre;

    /// <summary>Where a place lies.</summary>
    internal Spot At(GeoPoint place)
    {
        Spot metres = Metres(place);
        return new(box.Left + ((metres.X - west) * pixelsAMetre), box.Top + ((north - metres.Y) * pixelsAMetre));
    }

    /// <summary>Metres east and north on a cylinder that is true at the middle latitude; a picture needs no better.</summary>
    private Spot Metres(GeoPoint place)
    {
        double east = place.LongitudeDegrees - firstLongitude;
        east -= 360 * Math.Round(east / 360);
        return new(east * MetresADegree * Math.Cos(middleLatitude * Math.PI / 180), (place.LatitudeDegrees - middleLatitude) * MetresADegree);
    }
}
