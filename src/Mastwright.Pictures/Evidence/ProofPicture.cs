using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Evidence;

/// <summary>A proof: above the level of each station day by day with the change marked, below the shift of each station with its interval.</summary>
/// <remarks>Stations are told apart by dashes and by their names at the end of their lines, never by colour alone.</remarks>
public static class ProofPicture
{
    private const double Margin = 18;
    private const double AxisWidth = 52;
    private const double NameWidth = 128;
    private const double TextPixels = 13;
    private const double SmallPixels = 11;
    private const int Width = 1000;
    private const double LevelsTop = 118;
    private const double LevelsHeight = 250;
    private const double RowPixels = 26;
    private static readonly ImmutableArray<ImmutableArray<double>> Dashes = [[], [7, 4], [2, 3], [9, 3, 2, 3], [12, 5], [4, 2]];

    /// <summary>Draws a proof.</summary>
    /// <param name="report">The proof.</param>
    /// <param name="agreement">Prediction against records, drawn below; null for none.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(ProofReport report, AgreementSummary? agreement, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(report);
        Palette palette = Palette.Of(theme);
        List<StationProof> shown = [.. report.Result.Stations.Where(one => one.Before.Packets + one.After.Packets > 0).Take(40)];
        Box levels = new(Margin + AxisWidth, LevelsTop, Width - Margin - NameWidth, LevelsTop + LevelsHeight);
        List<StationProof> shifted = [.. shown.Where(one => one.SignalPower is not null)];
        double rowsTop = levels.Bottom + 92;
        double rows = RowPixels * (shifted.Count + 1);
        List<AgreementRow> heard = [.. (agreement?.Rows ?? []).Where(row => row.MeasuredDbm is not null)];
        double agreementTop = rowsTop + rows + 96;
        string title = $"{report.Question.Name}: before and after";
        return new()
        {
            WidthPixels = Width,
            HeightPixels = (int)(heard.Count == 0 ? rowsTop + rows + 56 : agreementTop + AgreementLayer.Height + 56),
            Title = title,
            Description = string.Join(' ', report.Verdict),
            Paper = palette.Paper,
            Shapes =
            [
                new TextShape(new(Margin, 36), TextRuler.Fit(title, Width - (2 * Margin), 17, TextWeight.SemiBold), 17, palette.Ink) { Weight = TextWeight.SemiBold },
                new TextShape(new(Margin, 58), TextRuler.Fit(report.Verdict[0], Width - (2 * Margin), TextPixels), TextPixels, palette.Ink),
                new TextShape(new(Margin, 77), TextRuler.Fit(report.Verdict[1], Width - (2 * Margin), TextPixels), TextPixels, palette.Muted),
                new GroupShape("levels", Levels(report, shown, levels, palette)),
                new GroupShape("shifts", Shifts(report, shifted, new(Margin + 190, rowsTop, Width - Margin - 120, rowsTop + rows), palette)),
                .. heard.Count == 0 ? Array.Empty<Shape>() : [new GroupShape("agreement", AgreementLayer.Draw(heard, agreementTop, Width - Margin, palette))],
            ],
        };
    }

    private static ImmutableArray<Shape> Levels(ProofReport report, List<StationProof> stations, Box box, Palette palette)
    {
        ProofFold before = report.Result.Before;
        ProofFold after = report.Result.After;
        double first = before.Period.FromMicroseconds;
        double last = after.Period.ToMicroseconds;
        double X(double time) => box.Left + ((time - first) / (last - first) * box.Width);
        List<(StationProof Station, List<List<(double Time, double Level)>> Runs)> lines = [.. stations.Select(one => (one, Runs(before, one.Station).Concat(Runs(after, one.Station)).ToList()))];
        double[] all = [.. lines.SelectMany(line => line.Runs).SelectMany(run => run).Select(point => point.Level)];
        if (all.Length == 0)
        {
            return [new TextShape(new(box.Left, box.Top + 20), "No reception tells a signal power.", TextPixels, palette.Muted)];
        }

        double low = all.Min() - 2;
        double high = all.Max() + 2;
        double Y(double level) => box.Bottom - ((level - low) / (high - low) * box.Height);
        Ticks ticks = Ticks.Between(low, high, 6);
        List<Shape> shapes = [new TextShape(new(Margin, box.Top - 12), "Signal power, mean of each day, dBm", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold }];
        foreach (double value in ticks.Values)
        {
            shapes.Add(new LineShape([new(box.Left, Y(value)), new(box.Right, Y(value))], new(palette.Faint, 1)));
            shapes.Add(new TextShape(new(box.Left - 8, Y(value) + 4), ticks.Text(value), SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
        }

        // What lies between the periods belongs to neither.
        double change = X(before.Period.ToMicroseconds);
        double begin = X(after.Period.FromMicroseconds);
        shapes.Add(AreaShape.Of(new(change, box.Top, Math.Max(begin, change + 1.5), box.Bottom), new(palette.Tight.Veil(0.35))));
        shapes.Add(new TextShape(new(change, box.Bottom + 18), "change", SmallPixels, palette.Tight) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold });
        foreach ((long time, TextAnchor anchor) in ((long, TextAnchor)[])[(before.Period.FromMicroseconds, TextAnchor.Start), (after.Period.ToMicroseconds, TextAnchor.End)])
        {
            shapes.Add(new TextShape(new(X(time), box.Bottom + 18), Day(time), SmallPixels, palette.Muted) { Anchor = anchor });
        }

        // Names at the right, kept apart.
        double under = box.Top - 8;
        int place = 0;
        foreach ((StationProof station, List<List<(double Time, double Level)>> runs) in lines.Where(line => line.Runs.Count > 0).OrderByDescending(line => line.Runs[^1][^1].Level))
        {
            Stroke stroke = new(station.IsCompared || station.Chance is not null ? palette.Ok : palette.Missing, 1.7) { Dashes = Dashes[place++ % Dashes.Length] };
            foreach (List<(double Time, double Level)> run in runs.Where(run => run.Count > 1))
            {
                shapes.Add(new LineShape([.. run.Select(point => new Spot(X(point.Time), Y(point.Level)))], stroke));
            }

            under = Math.Max(under + 14, Y(runs[^1][^1].Level) + 4);
            shapes.Add(new TextShape(new(box.Right + 6, under), TextRuler.Fit(report.Question.NameOf(station.Station), NameWidth - 4, SmallPixels), SmallPixels, palette.Ink));
        }

        return [.. shapes];
    }

    /// <summary>Daily means, broken where a day has none.</summary>
    private static List<List<(double Time, double Level)>> Runs(ProofFold fold, int station)
    {
        List<List<(double, double)>> runs = [];
        List<(double, double)> run = [];
        if (fold.Direct(station) is not { } heard)
        {
            return runs;
        }

        for (int day = 0; day * 24 < heard.Levels.Length; day++)
        {
            int length = Math.Min(24, heard.Levels.Length - (day * 24));
            int count = heard.Levels.AsSpan(day * 24, length).ToArray().Sum();
            if (count > 0)
            {
                run.Add(((fold.Period.FirstHour + (day * 24) + (length / 2.0)) * ProofPeriod.Hour, heard.PowerDb.AsSpan(day * 24, length).ToArray().Sum() / count));
            }
            else if (run.Count > 0)
            {
                runs.Add(run);
                run = [];
            }
        }

        if (run.Count > 0)
        {
            runs.Add(run);
        }

        return runs;
    }

    private static ImmutableArray<Shape> Shifts(ProofReport report, List<StationProof> stations, Box box, Palette palette)
    {
        List<(string Name, ShiftEstimate Shift, bool Counts, string Note)> rows =
        [
            .. stations.Select(one => (report.Question.NameOf(one.Station), one.SignalPower!, one.IsCompared, Note(one))),
        ];
        if (report.Result.Combined is { } combined)
        {
            rows.Add(("together", combined.Estimate, true, ""));
        }

        if (rows.Count == 0)
        {
            return [new TextShape(new(Margin, box.Top), "No station was heard in both periods.", TextPixels, palette.Muted)];
        }

        double low = Math.Min(-1, rows.Min(row => row.Shift.Interval?.Low ?? row.Shift.Shift)) - 0.5;
        double high = Math.Max(1, rows.Max(row => row.Shift.Interval?.High ?? row.Shift.Shift)) + 0.5;
        double X(double shift) => box.Left + ((shift - low) / (high - low) * box.Width);
        Ticks ticks = Ticks.Between(low, high, 8);
        List<Shape> shapes = [new TextShape(new(Margin, box.Top - 16), ProofShiftTitle(report), TextPixels, palette.Ink) { Weight = TextWeight.SemiBold }];
        foreach (double value in ticks.Values)
        {
            shapes.Add(new LineShape([new(X(value), box.Top), new(X(value), box.Bottom)], new(value == 0 ? palette.Ink : palette.Faint, value == 0 ? 1.2 : 1)));
            shapes.Add(new TextShape(new(X(value), box.Bottom + 18), ticks.Text(value), SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle });
        }

        for (int i = 0; i < rows.Count; i++)
        {
            (string name, ShiftEstimate shift, bool counts, string note) = rows[i];
            double y = box.Top + ((i + 0.5) * RowPixels);
            Ink ink = counts ? palette.Ok : palette.Missing;
            double half = name == "together" ? 6 : 4.5;
            shapes.Add(new TextShape(new(box.Left - 10, y + 4), TextRuler.Fit(name, 178, SmallPixels), SmallPixels, palette.Ink) { Anchor = TextAnchor.End, Weight = name == "together" ? TextWeight.SemiBold : TextWeight.Regular });
            if (shift.Interval is { } interval)
            {
                shapes.Add(new LineShape([new(X(interval.Low), y), new(X(interval.High), y)], new(ink, 2.4)));
                shapes.Add(new LineShape([new(X(interval.Low), y - 4), new(X(interval.Low), y + 4)], new(ink, 1.6)));
                shapes.Add(new LineShape([new(X(interval.High), y - 4), new(X(interval.High), y + 4)], new(ink, 1.6)));
            }

            double x = X(shift.Shift);
            shapes.Add(new AreaShape([new(x, y - half), new(x + half, y), new(x, y + half), new(x - half, y)], new(counts ? ink : palette.Paper), new(ink, 1.4)));
            shapes.Add(new TextShape(new(box.Right + 8, y + 4), note, SmallPixels, palette.Muted));
        }

        return [.. shapes];
    }

    private static string ProofShiftTitle(ProofReport report) =>
        string.Create(CultureInfo.InvariantCulture, $"Shift of signal power in dB, with its {100 * report.Settings.Confidence:0.#} % interval; filled marks count");

    private static string Note(StationProof one) => one.OwnStep is not null || one.MovedAlone ? "own change" : one.Knowledge switch
    {
        ShiftKnowledge.LossesCounted => "losses counted",
        ShiftKnowledge.AtLeast => "at least",
        ShiftKnowledge.AtMost => "at most",
        ShiftKnowledge.Open => "near the limit",
        _ => "",
    };

    private static string Day(long time) => DateTimeOffset.UnixEpoch.AddTicks(10 * time).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
