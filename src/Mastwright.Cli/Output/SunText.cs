using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Station.Sun;

namespace Mastwright.Cli.Output;

/// <summary>A solar year on the terminal, 80 columns wide: month by month, its energy, what is to be said of it.</summary>
internal static class SunText
{
    internal static void Write(LinkStation station, SolarResult result, string? picture)
    {
        StringBuilder text = new();
        text.Wrapped($"{station.Name} ({station.Subject}): the solar year", 0);
        if (result is { Setup: { } setup, Year: { } year, Range: { } range })
        {
            Months(text, setup, year);
            text.AppendLine();
            foreach (LedgerLine line in year.Ledger.Lines)
            {
                text.Line($"  {line.Label,-58} {line.Value,9:#,0} Wh");
            }

            text.Line($"  {"for the loads, in all",-58} {year.Ledger.Total,9:#,0} Wh");
            text.AppendLine();
            Sizes(text, range, result.Pairs, result.Examination.Findings.FirstOrDefault(finding => finding.Code == "solar-service")?.Limit ?? SunDefaults.WantedHoursWithout);
        }

        text.AppendLine();
        foreach (Finding finding in result.Examination.Findings)
        {
            text.Wrapped($"{VerdictText.Word(finding.Verdict)}: {FindingSentences.Text(finding)}{(finding.Verdict == Verdict.Ok ? "" : " " + FindingSentences.Advice(finding))}", 2);
        }

        foreach (Assumption assumption in result.Examination.Assumptions)
        {
            text.Wrapped($"  Assumed: {assumption.Text} ({assumption.Source})", 2);
        }

        text.Wrapped(CheckText.Promise, 0);
        if (picture is not null)
        {
            text.Line($"Written: {picture}");
        }

        Console.Out.Write(text.ToString());
    }

    private static void Sizes(StringBuilder text, SolarRange range, ImmutableArray<SolarPair> pairs, double borne)
    {
        (SolarSetup setup, SolarYield yield) = (range.Poor, range.PoorYield);
        string panel = SolarSizes.SmallestPanelWatts(setup, yield, borne) is { } watts ? Text($"a panel of {watts:0} W with this battery") : "no panel of up to 400 W with this battery";
        string battery = SolarSizes.FewestParallel(setup, yield, borne) is { } cells ? Text($"{cells} {(cells == 1 ? "cell" : "cells")} side by side with this panel") : "not even 64 cells side by side with this panel";
        text.Wrapped(Text($"The smallest that keep to {borne:0.#} h a year without service: {panel}; {battery}. Taken at the poor end: {(range.YearCount > 1 ? Text($"the hardest of {range.YearCount} years, ") : "")}the greatest load, poor cells."), 2);
        if (pairs.IsEmpty)
        {
            return;
        }

        text.AppendLine();
        text.Line($"  {"panel",10} {"fewest cells side by side",26}");
        foreach (SolarPair pair in pairs)
        {
            text.Line($"  {pair.PanelWatts,8:0} W {pair.Parallel,26}");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static void Months(StringBuilder text, SolarSetup setup, SolarYearResult year)
    {
        text.AppendLine();
        text.Line($"  {"month",-12} {"light, level",14} {"offered",12} {"drawn",11} {"least",7} {"without",9}");
        text.Line($"  {"",-12} {"kWh/m² a day",14} {"Wh a day",12} {"Wh a day",11} {"charge",7} {"service",9}");
        for (int month = 0; month < 12; month++)
        {
            int first = WeatherYear.FirstHourOf(month);
            int days = WeatherYear.DaysOf(month);
            double light = setup.Weather.Hours.Skip(first).Take(24 * days).Sum(hour => hour.Light.Global) / 1000 / days;
            double offered = year.OfferedByHour.AsSpan(first, 24 * days).ToArray().Sum() / days;
            double least = year.ChargeByHour.AsSpan(first, 24 * days).ToArray().Min() / year.FullAmpereHours;
            double without = year.WithoutByHour.AsSpan(first, 24 * days).ToArray().Sum();
            text.Line($"  {CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[month],-12} {light,14:0.0} {offered,12:0.0} {24 * setup.LoadWatts,11:0.0} {100 * least,5:0} % {without,7:0} h");
        }
    }
}
