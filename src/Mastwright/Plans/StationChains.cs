using Mastwright.Findings;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;

namespace Mastwright.Plans;

/// <summary>The radio chain of each kind of station in a plan.</summary>
internal static class StationChains
{
    internal static StationChainResult Of(LinkStation station, Plan plan, StationCatalogue catalogue) =>
        station.FitOut is { } fitOut ? OfFitOut(station, fitOut, plan, catalogue) : OfNeighbour(station, station.Neighbour!, plan, catalogue);

    private static StationChainResult OfFitOut(LinkStation station, FitOut fitOut, Plan plan, StationCatalogue catalogue) =>
        StationChain.Compute(new()
        {
            PlanPath = station.FitOutPath,
            Antenna = fitOut.Antenna,
            Feed = fitOut.Feed,
            Mismatch = fitOut.Mismatch,
            Radio = fitOut.Radio,
            Modem = plan.Modem,
            Catalogue = catalogue,
            ExternalNoiseFigureDb = plan.Air.ExternalNoiseFigureDb,
            NoiseEnvironment = plan.Air.NoiseEnvironment,
            NearbyTransmitters =
            [
                .. fitOut.NearbyTransmitters.Select(other => new NearbyEmitter(other.Key, other.FrequencyHz, other.EirpDbm, other.DistanceMetres)),
            ],
        });

    /// <summary>A neighbour has no feed of its own: its power is into the antenna, its gain after the feed.</summary>
    private static StationChainResult OfNeighbour(LinkStation station, Neighbour neighbour, Plan plan, StationCatalogue catalogue)
    {
        StationChainResult chain = StationChain.Compute(new()
        {
            PlanPath = station.PlanPath,
            Antenna = new()
            {
                Name = neighbour.Name,
                GainDbi = neighbour.GainDbi,
                Height = neighbour.Height ?? new(Quantities.Estimate.Exactly(0), HeightAbove.Ground),
                Polarisation = neighbour.Polarisation,
            },
            Radio = new() { Name = neighbour.Name, ConductedPowerDbm = neighbour.PowerDbm, NoiseFigureDb = neighbour.NoiseFigureDb },
            Modem = plan.Modem,
            Catalogue = catalogue,
            ExternalNoiseFigureDb = plan.Air.ExternalNoiseFigureDb,
            NoiseEnvironment = plan.Air.NoiseEnvironment,
        });
        return chain with
        {
            MissingToSend = [.. chain.MissingToSend.Select(InNeighbour)],
            MissingToReceive = [.. chain.MissingToReceive.Select(InNeighbour)],
            Assumptions = [.. chain.Assumptions.Select(assumption => assumption with { PlanPath = InNeighbour(assumption.PlanPath) })],

            // What a neighbour's antenna is like is not the keeper's to mend: what is unknown of it shows in the link.
            Findings = [],
        };
    }

    /// <summary>Where a neighbour would say what a fit-out says elsewhere; empty where it cannot.</summary>
    private static string InNeighbour(string planPath)
    {
        string path = planPath.Replace("/radio/", "/", StringComparison.Ordinal).Replace("/antenna/", "/", StringComparison.Ordinal);
        string key = path[(path.LastIndexOf('/') + 1)..];
        return path.StartsWith("neighbours/", StringComparison.Ordinal) && key is not ("gain" or "power" or "noise-figure" or "polarisation") ? "" : path;
    }
}
