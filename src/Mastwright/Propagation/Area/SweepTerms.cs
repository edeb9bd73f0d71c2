using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Everything that is the same for all cells of a sweep.</summary>
internal readonly struct SweepTerms
{
    internal SweepTerms(in SweepInput input, SweepRaster raster)
    {
        Input = input;
        Frequency = input.FrequencyHz * 1e-9;
        LogFrequency = Math.Log10(Frequency);
        Step = raster.CellMetres;
        StationLatitude = raster.StationLatitudeDegrees;
        TangentOfLatitude = Math.Tan(double.DegreesToRadians(raster.StationLatitudeDegrees));
        int middle = raster.Layout.Middle;
        StationGround = double.IsNaN(input.StationGroundMetres) ? raster.HeightOf(middle) : input.StationGroundMetres;
        StationZone = raster.ZoneOf(middle);
        StationAntenna = StationGround + input.StationHeightMetres;
        MedianRadius = EffectiveEarth.FromGradient(input.RefractivityGradient);
        DuctingRadius = EffectiveEarth.DuctingFactor * EffectiveEarth.MeanRadiusMetres;
        NeedsDucting = input.TimePercent < 50;
        HasCover = input.AddCover && raster.HasCover;
        TimeDeviations = NeedsDucting ? InverseNormal.Of(input.TimePercent / 100) : 0;
        PlacesDb = LocationVariability.LossDb(input.LocationPercent, input.LocationSigmaDb);
        double halfLog = Math.Log10(Frequency / 2);
        ScatterDb = 190.1 + (25 * LogFrequency) - (2.5 * halfLog * halfLog) - (0.15 * input.SurfaceRefractivity)
            - (10.125 * Math.Pow(Math.Log10(50 / input.TimePercent), 0.7)); // P.1812 (44)
    }

    internal SweepInput Input { get; }

    internal double Frequency { get; }

    internal double LogFrequency { get; }

    internal double Step { get; }

    internal double StationLatitude { get; }

    internal double TangentOfLatitude { get; }

    internal double StationGround { get; }

    internal Zone StationZone { get; }

    internal double StationAntenna { get; }

    internal double MedianRadius { get; }

    internal double DuctingRadius { get; }

    /// <summary>Half the curvature of the Earth at either radius: a point x away from the antenna falls by this times x².</summary>
    internal double MedianFall => 0.5 / MedianRadius;

    internal double DuctingFall => 0.5 / DuctingRadius;

    internal bool NeedsDucting { get; }

    internal bool HasCover { get; }

    internal double TimeDeviations { get; }

    internal double PlacesDb { get; }

    internal double ScatterDb { get; }

    /// <summary>Latitude of the middle of a path, in degrees.</summary>
    /// <param name="east">Distance of the cell to the east, in metres along the geodesic's bearing.</param>
    /// <param name="north">Distance of the cell to the north, in metres.</param>
    /// <remarks>
    /// The great circle of P.1812 (4) to second order in half the length: within 0.001° at 200 km below 70° of latitude (measured in
    /// SweepProfileTests). β0 asks no more: 0.001° move it by a third of a thousandth of a percent of itself.
    /// </remarks>
    internal double PathCentreLatitude(double east, double north)
    {
        const double perMetre = 0.5 / EffectiveEarth.MeanRadiusMetres;
        double x = east * perMetre;
        double y = north * perMetre;
        return Math.Clamp(StationLatitude + double.RadiansToDegrees(y - (0.5 * TangentOfLatitude * x * x)), -90, 90);
    }

    /// <summary>The same for eight cells.</summary>
    internal Vector512<double> PathCentreLatitude(Vector512<double> east, Vector512<double> north)
    {
        const double perMetre = 0.5 / EffectiveEarth.MeanRadiusMetres;
        Vector512<double> x = east * perMetre;
        Vector512<double> latitude = Vector512.Create(StationLatitude) + (((north * perMetre) - (x * x * (0.5 * TangentOfLatitude))) * (180 / Math.PI));
        return Vector512.MinNative(Vector512.MaxNative(latitude, Vector512.Create(-90.0)), Vector512.Create(90.0));
    }
}
