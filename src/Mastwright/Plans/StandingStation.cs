using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Earthing;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;

namespace Mastwright.Plans;

/// <summary>Whether a fit-out stands, whom it can hurt, and how it is earthed.</summary>
internal static class StandingStation
{
    internal static Examination Of(LinkStation station, Plan plan, StationCatalogue catalogue)
    {
        FitOut fitOut = station.FitOut!;
        Site site = station.Site!;
        if (fitOut.Antenna.Indoors)
        {
            return Examination.Nothing;
        }

        Estimate? height = HeightMetres(station);
        MastResult mast = MastExamination.Of(new()
        {
            FitOutPath = station.FitOutPath,
            Mast = fitOut.Mast,
            Antenna = fitOut.Antenna,
            AntennaHeightMetres = height,
            Wind = site.Wind ?? plan.Wind ?? new(),
            WindPath = site.Wind is null ? "wind" : station.PlanPath + "/wind",
            Catalogue = catalogue,
        });
        Examination hazards = HazardExamination.Of(
            fitOut.Hazards ?? site.Hazards ?? new(), mast, (fitOut.Hazards is null ? station.PlanPath : station.FitOutPath) + "/hazards");
        double? length = fitOut.Antenna.TotalLengthMetres ?? fitOut.Antenna.LengthMetres;
        Examination earthing = EarthingExamination.Of(new()
        {
            FitOutPath = station.FitOutPath,
            Earthing = fitOut.Earthing,
            TipHeightMetres = height?.High + (length / 2),
            Feed = fitOut.Feed,
            Catalogue = catalogue,
        });
        return Examination.Of(mast.Examination, hazards, earthing);
    }

    /// <summary>Height of the antenna's centre above the ground; null when it is above the sea and the ground's height is not given.</summary>
    private static Estimate? HeightMetres(LinkStation station)
    {
        if (station.Height is not { } height)
        {
            return null;
        }

        return height.Above switch
        {
            HeightAbove.Roof => height.RoofMetres is { } roof ? height.Metres + roof : null,
            HeightAbove.SeaLevel => station.GroundHeightMetres is { } ground ? height.Metres - ground : null,
            _ => height.Metres,
        };
    }
}
