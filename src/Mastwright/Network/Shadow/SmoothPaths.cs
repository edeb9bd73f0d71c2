using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation;

namespace Mastwright.Network.Shadow;

/// <summary>Losses from a station to places in free space and over a smooth Earth at sea level.</summary>
internal sealed class SmoothPaths
{
    /// <summary>Least height above the smooth Earth, in metres: an antenna on the shore.</summary>
    private const double LeastMetres = 0.5;

    private const double LeastDistanceMetres = 1;

    private readonly ReachFieldInput input;
    private readonly GroundMosaic ground;
    private readonly double stationMetres;
    private readonly double radiusMetres;

    internal SmoothPaths(ReachFieldInput input, GroundMosaic ground)
    {
        this.input = input;
        this.ground = ground;
        stationMetres = Math.Max(LeastMetres, (input.StationGroundMetres ?? GroundAt(input.Station)) + input.StationHeightMetres);
        radiusMetres = EffectiveEarth.FromGradient(input.RefractivityGradient);
    }

    /// <summary>Both losses in dB.</summary>
    internal (double FreeDb, double SmoothDb) Losses(GeoPoint place)
    {
        double distance = Math.Max(LeastDistanceMetres, Geodesic.Inverse(input.Station, place).DistanceMetres);
        double free = FreeSpace.LossDb(distance, input.FrequencyHz);
        double metres = Math.Max(LeastMetres, GroundAt(place) + input.ReceiverHeightMetres);
        return (free, free + SphericalEarth.LossDb(distance, stationMetres, metres, radiusMetres, input.FrequencyHz, input.Polarisation));
    }

    private double GroundAt(GeoPoint place) => ground.HeightAt(place).Metres is var metres && double.IsNaN(metres) ? 0 : metres;
}
