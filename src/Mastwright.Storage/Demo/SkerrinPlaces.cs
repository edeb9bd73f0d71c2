namespace Mastwright.Storage.Demo;

/// <summary>Where people live on Skerrin, for the cover raster: middle of each village and how far its houses reach.</summary>
internal static class SkerrinPlaces
{
    /// <summary>Latitude and longitude in degrees, and radius in metres.</summary>
    public static readonly (double LatitudeDegrees, double LongitudeDegrees, double RadiusMetres)[] Villages =
    [
        (46.3991, -18.6664, 330), // the harbour town; Ferry House stands on its seaward edge
        (46.4398, -18.6480, 170), // round the creamery
        (46.3826, -18.6185, 210), // the upper village, with its school
        (46.4100, -18.5112, 190), // Lantern Bay
        (46.3742, -18.5074, 230), // East Quay
        (46.2945, -18.5640, 140), // the south village
        (46.4700, -18.4960, 150), // the north-east village
        (46.4990, -18.5900, 160), // the north village
    ];
}
