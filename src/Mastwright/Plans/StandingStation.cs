using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;

namespace Mastwright.Plans;

/// <summary>Whether a fit-out stands, whom it can hurt, and how it is earthed.</summary>
internal static class StandingStation
{
    internal static StandingResult Of(LinkStation station, Plan plan, StationCatalogue catalogue)
    {
        FitOut fitOut = station.FitOut!;
        Site site = station.Site!;
        if (fitOut.Antenna.Indoors)
        {
            return new(Examination.Nothing, null, Examination.Nothing, Examination.Nothing);
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
            Supply = fitOut.Supply,
            IsBoxOutside = fitOut.Box.IsDescribed && fitOut.Box.Shade != BoxShade.None,
            HasPanel = fitOut.Solar is not null,
            Catalogue = catalogue,
        });
        Examination metals = MetalPairs(station.FitOutPath, fitOut, catalogue);
        return new(Examination.Of(mast.Examination, hazards, earthing, metals), mast, hazards, earthing);
    }

    /// <summary>The metals that touch at the mast: the antenna's clamp and the earth conductor.</summary>
    private static Examination MetalPairs(string fitOutPath, FitOut fitOut, StationCatalogue catalogue)
    {
        if (fitOut.Mast is not { Tubes: [.., MastTube top] tubes } mast || catalogue.Structure.Grades.Find(top.Grade) is not { } topGrade)
        {
            return Examination.Nothing;
        }

        BoxCatalogue rows = catalogue.Box;
        BoxPlaceRow? place = rows.Places.Find(fitOut.Box.Place);
        List<Finding?> findings = [];
        List<Assumption> assumptions = [];
        string topMetal = Metal(topGrade);
        if (mast.Clamp.Length > 0)
        {
            Finding? clamp = GalvanicPair.Judge(StationDefaults.Join(fitOutPath, "mast/clamp"), "The antenna's clamp on the mast", mast.Clamp, topMetal, place, rows);
            findings.Add(clamp is null ? null : MastFindings.Held(clamp, mast));
        }

        if (fitOut.Earthing is { ConductorMaterial: { Length: > 0 } earth } && catalogue.Structure.Grades.Find(tubes[0].Grade) is { } footGrade)
        {
            findings.Add(GalvanicPair.Judge(StationDefaults.Join(fitOutPath, "earthing/material"), "The earth conductor on the mast", earth, Metal(footGrade), place, rows));
        }

        return new() { Findings = [.. findings.OfType<Finding>()], Assumptions = [.. assumptions.Distinct()] };

        string Metal(TubeGradeRow grade)
        {
            if (grade.Material != TubeMaterial.Steel)
            {
                return "aluminium";
            }

            assumptions.Add(new("mast-galvanised", "steel tubes are galvanised", "assumed", StationDefaults.Join(fitOutPath, "mast/tubes")));
            return "zinc";
        }
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

/// <summary>What came of what stands outside.</summary>
/// <param name="Examination">Ledgers, findings and assumptions.</param>
/// <param name="Mast">The mast; null for an antenna indoors.</param>
/// <param name="Hazards">What can hurt someone, alone.</param>
/// <param name="Earthing">Earth and lightning, alone.</param>
internal sealed record StandingResult(Examination Examination, MastResult? Mast, Examination Hazards, Examination Earthing);
