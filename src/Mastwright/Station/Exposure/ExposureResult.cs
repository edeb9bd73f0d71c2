namespace Mastwright.Station.Exposure;

/// <summary>One limit of exposure turned into distances in the main beam.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="DensityWattsPerSquareMetre">It as a power density at the frequency, in W/m².</param>
/// <param name="FreeMetres">Distance at which it is reached in the open, sending all the time, in metres.</param>
/// <param name="ReflectedMetres">The same over a ground that reflects.</param>
/// <param name="AveragedMetres">The same over a ground that reflects, pauses counted; null where the limit or the plan does not let them count.</param>
/// <param name="AirShare">Share of the averaging time on the air that this is for, 0 to 1; null likewise.</param>
public sealed record ExposureResult(
    ExposureLimit Limit, double DensityWattsPerSquareMetre, double FreeMetres, double ReflectedMetres, double? AveragedMetres, double? AirShare)
{
    /// <summary>The distance to keep, in metres: with reflection, sending all the time, and never under 0.2 m.</summary>
    public double KeepMetres => Math.Max(ReflectedMetres, ExposureDistance.LeastMetres);

    /// <summary>A limit turned into distances.</summary>
    internal static ExposureResult Of(ExposureLimit limit, double frequencyHz, double eirpWatts, Rules.TrafficEstimate? traffic)
    {
        double density = limit.DensityAt(frequencyHz);
        double? share = limit.AveragesPauses && traffic is { IsAssumed: false } ? traffic.ShareOf(limit.AveragingSeconds) : null;
        return new(
            limit,
            density,
            ExposureDistance.Metres(eirpWatts, density),
            ExposureDistance.Metres(eirpWatts, density, ExposureDistance.ReflectionFactor),
            share is { } on ? ExposureDistance.Metres(eirpWatts * on, density, ExposureDistance.ReflectionFactor) : null,
            share);
    }
}
