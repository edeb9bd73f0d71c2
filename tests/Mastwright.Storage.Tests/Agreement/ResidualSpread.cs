using System.Collections.Immutable;

namespace Mastwright.Storage.Tests.Agreement;

/// <summary>How far measured losses lie from predicted ones: measured minus predicted, in dB, one value a link.</summary>
/// <param name="Count">Number of links.</param>
/// <param name="BiasDb">Mean. Holds every gain, loss and power that is not published.</param>
/// <param name="OverallDb">Standard deviation around one mean for all.</param>
/// <param name="WithinStationsDb">Standard deviation around each station's own mean, which takes out its unknown gain.</param>
internal sealed record ResidualSpread(int Count, double BiasDb, double OverallDb, double WithinStationsDb)
{
    internal static ResidualSpread Of(IReadOnlyCollection<(string Station, double ResidualDb)> residuals)
    {
        ImmutableArray<double> all = [.. residuals.Select(residual => residual.ResidualDb)];
        ImmutableArray<double> centred = [.. Centred(residuals).Select(residual => residual.ResidualDb)];
        int stations = residuals.Select(residual => residual.Station).Distinct(StringComparer.Ordinal).Count();
        return new(all.Length, all.Average(), ReceivedPower.Deviation(all), Math.Sqrt(centred.Sum(value => value * value) / (all.Length - stations)));
    }

    /// <summary>The same residuals, each less the mean of its station; in the same order.</summary>
    internal static ImmutableArray<(string Station, double ResidualDb)> Centred(IReadOnlyCollection<(string Station, double ResidualDb)> residuals)
    {
        Dictionary<string, double> means = residuals
            .GroupBy(residual => residual.Station, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Average(residual => residual.ResidualDb), StringComparer.Ordinal);
        return [.. residuals.Select(residual => (residual.Station, residual.ResidualDb - means[residual.Station]))];
    }

    public override string ToString() => FormattableString.Invariant(
        $"{Count} links: bias {BiasDb:0.0} dB, deviation {OverallDb:0.00} dB, within stations {WithinStationsDb:0.00} dB");
}
