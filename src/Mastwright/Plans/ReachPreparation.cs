using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>From a station of a plan and a receiver to what a reach map is worked out from.</summary>
internal static class ReachPreparation
{
    internal static ReachSetup Of(
        LinkStation station, ReachReceiver receiver, StationChainResult stationChain, StationChainResult receiverChain, GroundMosaic ground, PathAir air, PathSettings settings, ReachArea area, AdoptedCorrection? correction, bool hasOwnCover)
    {
        GeoPoint place = station.Position.Point;
        SiteGround site = SiteGround.Resolve(ground, place, station.GroundHeightMetres, station.PlanPath);
        bool isSurface = ground.HeightAt(place).Window is { Kind: HeightKind.Surface };
        (Estimate Metres, bool IsBuried)? height = station.Height is { } mount && site.HeightMetres is { } foot ? EndHeight.AboveGround(mount, foot) : null;
        double metres = height?.Metres.Median ?? EndHeight.LeastMetres;
        EndLoss stationEnd = EndLoss.Of(station, settings.FrequencyHz, metres, 0, isSurface);
        EndLoss receiverEnd = EndLoss.Of(receiver.Station, settings.FrequencyHz, receiver.HeightMetres, 0, isSurface);
        double locationDb = settings.LocationDb ?? LocationVariability.SigmaDb(settings.FrequencyHz, area.CellMetres, 0, 0);
        ReachFieldInput field = new()
        {
            Station = place,
            RadiusMetres = area.RadiusMetres,
            CellMetres = area.CellMetres,
            StationHeightMetres = metres,
            StationGroundMetres = site.HeightMetres?.Median,
            ReceiverHeightMetres = receiver.HeightMetres,
            FrequencyHz = settings.FrequencyHz,
            TimePercent = settings.TimePercent,
            LocationPercent = settings.LocationPercent,
            LocationSigmaDb = locationDb,
            Polarisation = station.Polarisation == Polarisation.Horizontal ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
            RefractivityGradient = air.RefractivityGradient,
            SurfaceRefractivity = air.SurfaceRefractivity,
            ReplacesCoverAtStation = stationEnd.CoverTakenOutMetres > 0,
        };
        ReachBudget budget = new()
        {
            Station = End(station, stationChain),
            StationPattern = stationChain.Pattern,
            Receiver = End(receiver.Station, receiverChain),
            EndLosses = [.. stationEnd.Lines, .. receiverEnd.Lines, .. Body(receiver), .. Crossed(station, receiver), .. Correction(correction)],
            EndSpreads = [.. stationEnd.Spreads, .. receiverEnd.Spreads],
            Wanted = CorrectionUse.Corrected(correction, settings.LocationDb is null ? settings.Wanted with { LocationDb = locationDb } : settings.Wanted, null),
            LocationShiftDb = LocationVariability.LossDb(settings.LocationPercent, locationDb),
        };
        ImmutableArray<string> missing =
        [
            .. station.Height is null ? [station.FitOutPath + "/height"] : Array.Empty<string>(),
            .. site.HeightMetres is null ? [$"ground: no tile {GroundTile.OneDegree(place)} at the station itself"] : Array.Empty<string>(),
            .. stationEnd.Missing.Concat(receiverEnd.Missing),
            .. stationChain.MissingToSend.Concat(stationChain.MissingToReceive).Concat(receiverChain.MissingToSend).Concat(receiverChain.MissingToReceive).Distinct(),
        ];
        return new()
        {
            Station = station,
            Receiver = receiver,
            Air = air,
            Field = missing.IsEmpty ? field : null,
            Budget = missing.IsEmpty ? budget : null,
            Findings =
            [
                .. stationChain.Findings, .. stationEnd.Findings, .. receiverEnd.Findings,
                .. Buried(station, height?.IsBuried ?? false), .. OutsideModel(station, field, area.RadiusMetres),
            ],
            Assumptions =
            [
                .. receiver.Assumptions.Concat(stationChain.Assumptions).Concat(OfReceiver(receiver, receiverChain)).Concat(air.Assumptions)
                    .Concat(stationEnd.Assumptions).Concat(receiverEnd.Assumptions).Concat(site.Assumptions).Concat(Own(settings, locationDb))
                    .Concat(OfCorrection(correction, station, hasOwnCover)).Distinct(),
            ],
            Missing = missing,
        };
    }

    private static IEnumerable<Assumption> Own(PathSettings settings, double locationDb)
    {
        yield return new("reach-one-air", "the air of the station's own place over the whole map", "common practice");
        yield return new("reach-one-loss", "the loss from the station to a cell counts for both directions", "ITU-R P.1812, reciprocity");
        yield return new("reach-best-guess", "the station stands where and as high as the plan's best guess has it; the range of either is not counted", "plan");
        if (settings.LocationDb is null)
        {
            yield return new(
                "location-spread",
                string.Create(CultureInfo.InvariantCulture, $"location variability {locationDb:0.0} dB within a cell, as below the tops of trees and houses"),
                "ITU-R P.1812, location variability",
                "spread/location");
        }
    }

    private static IEnumerable<LedgerLine> Correction(AdoptedCorrection? correction) =>
        correction is null ? [] : [CorrectionUse.OffsetLine(correction, -correction.OffsetDb.Median)];

    private static IEnumerable<Assumption> OfCorrection(AdoptedCorrection? correction, LinkStation station, bool hasOwnCover)
    {
        foreach (Assumption one in CorrectionUse.Assumptions(correction, hasOwnCover, station))
        {
            yield return one;
        }

        if (correction is not null && correction.Stations.ContainsKey(station.Key))
        {
            yield return new("correction-own", "the station's own offset, which is of what it hears alone, is left out of the map", $"adopted correction {correction.Key}");
        }
    }

    /// <summary>Of a named kind everything is told by the receiver itself; of a neighbour, what the plan leaves out.</summary>
    private static IEnumerable<Assumption> OfReceiver(ReachReceiver receiver, StationChainResult chain) => ReachReceiver.Kinds.Contains(receiver.Key)
        ? chain.Assumptions.Where(assumption => !assumption.PlanPath.StartsWith(receiver.Station.PlanPath, StringComparison.Ordinal))
        : chain.Assumptions;

    private static LinkEnd End(LinkStation station, StationChainResult chain) => new()
    {
        Subject = station.Subject,
        Name = station.Name,
        PowerIntoAntennaDbm = chain.PowerIntoAntennaDbm,
        TransmitLines = chain.TransmitLedger?.Lines ?? [],
        GainDbi = chain.Pattern.MainBeamDbi,
        GainNote = chain.Pattern.Form,
        RequiredDbm = chain.RequiredDbm,
        RequiredLedger = chain.RequiredLedger,
        MissingToSend = chain.MissingToSend,
        MissingToReceive = chain.MissingToReceive,
    };

    private static IEnumerable<LedgerLine> Body(ReachReceiver receiver)
    {
        if (receiver.BodyLossDb > 0)
        {
            yield return new("body", "The body that holds it", receiver.BodyLossDb, "common practice");
        }
    }

    private static IEnumerable<LedgerLine> Crossed(LinkStation station, ReachReceiver receiver)
    {
        Estimate loss = PolarisationMismatch.LossDb(station.Polarisation, receiver.Station.Polarisation);
        if (loss.Median != 0)
        {
            yield return new("polarisation", "Polarisations differ", loss.Median, "common practice");
        }
    }

    private static ImmutableArray<Finding> Buried(LinkStation station, bool isBuried) => !isBuried ? [] :
    [
        new()
        {
            Code = "antenna-under-ground",
            Subject = station.FitOutPath + "/height",
            Verdict = Verdict.Fails,
            Source = "height of the ground",
            Details = FindingDetails.Of(("name", station.Name)),
        },
    ];

    private static IEnumerable<Finding> OutsideModel(LinkStation station, ReachFieldInput field, double radiusMetres)
    {
        P1812Input input = new()
        {
            FrequencyHz = field.FrequencyHz,
            TimePercent = field.TimePercent,
            LocationPercent = field.LocationPercent,
            TransmitterHeightMetres = field.StationHeightMetres,
            ReceiverHeightMetres = field.ReceiverHeightMetres,
            PathCentreLatitudeDegrees = field.Station.LatitudeDegrees,
        };
        return ModelRange.Problems(Math.Max(radiusMetres, ModelRange.ShortestPathMetres), input).Select(problem => new Finding
        {
            Code = "path-outside-model",
            Subject = station.Subject,
            Verdict = Verdict.Unknown,
            Source = "ITU-R P.1812",
            Details = FindingDetails.Of(("problem", problem.Text), ("method", PathLoss.Recommendation)),
        });
    }
}

/// <summary>How far and how finely a reach map goes.</summary>
/// <param name="RadiusMetres">Radius in metres.</param>
/// <param name="CellMetres">Side of a cell in metres.</param>
public readonly record struct ReachArea(double RadiusMetres, double CellMetres);
