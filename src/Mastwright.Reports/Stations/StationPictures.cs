using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Station;
using Mastwright.Pictures.Sun;
using Mastwright.Plans;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;

namespace Mastwright.Reports.Stations;

/// <summary>The pictures of a fit-out, from what was worked out of it.</summary>
internal static class StationPictures
{
    /// <summary>The pictures that there are, by the words that name them.</summary>
    internal static ImmutableArray<string> Kinds => ["diagram", "mast", "box", "hold-up", "sun"];

    /// <summary>What a picture calls its station and fit-out.</summary>
    internal static string NameOf(FitOutReport fitOut) => $"{fitOut.Station.Name}, {fitOut.Station.FitOut!.Key}";

    /// <summary>Whether there is something to draw.</summary>
    internal static bool Has(FitOutReport fitOut, string kind) => kind switch
    {
        "diagram" => true,
        "mast" => fitOut.Mast?.Figure is { Tubes.IsEmpty: false },
        "box" => fitOut.Box is { Model: not null, OutsideCelsius: not null, HeatWatts: not null },
        "hold-up" => !fitOut.Supply.Batteries.IsEmpty,
        "sun" => fitOut.Solar is { Setup: not null, Year: not null },
        _ => false,
    };

    /// <summary>Draws one; null with the reason where there is nothing to draw.</summary>
    /// <param name="plan">The plan's report, with the fit-out in use or chosen.</param>
    /// <param name="fitOut">What was worked out of the fit-out.</param>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="theme">Light or dark.</param>
    /// <param name="problem">Why there is none; empty when there is one.</param>
    internal static Drawing? Draw(PlanReport plan, FitOutReport fitOut, string kind, int width, Theme theme, out string problem)
    {
        string name = NameOf(fitOut);
        string path = fitOut.Station.FitOutPath;
        Drawing? drawing;
        (drawing, problem) = kind switch
        {
            "diagram" => (DiagramPicture.Draw(name, StationElements.Of(plan, fitOut), width, theme).Drawing, ""),
            "mast" => fitOut.Mast?.Figure is { Tubes.IsEmpty: false } mast ? (MastPicture.Draw(name, mast, width, theme), "") : (null, $"No mast can be drawn: give it tubes under {path}/mast"),
            "box" => StationBoxCourse.Of(fitOut) is { } course ? (BoxPicture.Draw(name, course, fitOut.Station.FitOut!.Box.Parts, width, theme), "") : (null, $"How warm the box gets is not known; describe it under {path}/box"),
            "hold-up" => fitOut.Supply.Batteries.FirstOrDefault() is { } battery ? (HoldUpPicture.Draw(name, Course(battery), width, theme), "") : (null, $"There is no battery that lasts for a known time under {path}/supply"),
            "sun" => fitOut.Solar is { Setup: { } setup, Year: { } year } ? (SolarPicture.Draw(name, setup, year, year.WorstMonth, theme), "") : ((Drawing?)null, $"There is no solar year; give a panel under {path}/solar"),
            _ => (null, $"'{kind}' is no picture; there are {string.Join(", ", Kinds)}"),
        };
        return drawing;
    }

    private static HoldUpCourse Course(SupplyBatteryResult battery) => HoldUpCourse.Of(battery.Battery, battery.Load, battery.HoldUp);
}
