using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The map of how much better one fit-out is than another.</summary>
public static class DifferencePicture
{
    private const HatchKind Gained = HatchKind.Dots;
    private const HatchKind Lost = HatchKind.Crossed;

    /// <summary>Draws the picture.</summary>
    /// <param name="model">The map and what is told of it.</param>
    /// <param name="other">The map that it is compared with, of the same cells.</param>
    /// <param name="otherName">What stands on that one, in a line.</param>
    /// <exception cref="ArgumentException">The maps do not have the same cells, or the relief is of another zone.</exception>
    public static Drawing Draw(ReachPictureModel model, ReachMap other, string otherName)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentException.ThrowIfNullOrEmpty(otherName);
        model.Relief.RequireZoneOf(model.Map.Field.Frame);
        ReachComparison comparison = ReachComparison.Of(model.Map, other, model.Direction);
        string verb = model.Direction switch { ReachDirection.Hears => "hears", ReachDirection.Both => "links", _ => "is heard" };
        return new MapSheet
        {
            Title = $"How much {(comparison.MedianDb < 0 ? "worse" : "better")} {model.StationName} {verb}",
            Radio = $"by {model.ReceiverName} · {model.RadioText}",
            Details = $"{model.FitOutName}, compared with {char.ToLowerInvariant(otherName[0])}{otherName[1..]}",
            Method = model.MethodText,
            Theme = model.Theme,
        }.Draw(model.Relief, Image(model, other), MapMarks.Of(model.Map, model.StationName, model.Marks), Panel(model, other, comparison));
    }

    /// <summary>The pixels of the map, one a point of the relief.</summary>
    public static PixelImage Image(ReachPictureModel model, ReachMap other)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(other);
        ReachScale scale = ReachScale.For(model.Theme);
        float[] margins = model.Map.MarginsDb(model.Direction);
        float[] others = other.MarginsDb(model.Direction);
        return MapImage.Draw(model.Relief, scale, (x, y) =>
        {
            (double margin, ReachFlags flags) = ReachImage.MarginAt(model.Map.Field, margins, x, y);
            (double before, ReachFlags otherFlags) = ReachImage.MarginAt(other.Field, others, x, y);
            if (double.IsNaN(margin - before))
            {
                return new(((flags | otherFlags) & ReachFlags.Outside) != ReachFlags.None ? MapPixelKind.Outside : MapPixelKind.Missing);
            }

            return margin < 0 && before < 0
                ? new(MapPixelKind.Below)
                : new(MapPixelKind.Coloured, scale.OfDifference(DifferenceClasses.IndexOf(margin - before)), before < 0 ? Gained : margin < 0 ? Lost : null);
        });
    }

    private static ImmutableArray<Shape> Panel(ReachPictureModel model, ReachMap other, ReachComparison comparison)
    {
        ReachScale scale = ReachScale.For(model.Theme);
        MapPanel panel = new(model.Theme);
        panel.Answer(string.Create(CultureInfo.InvariantCulture, $"{comparison.MedianDb:+0.0;−0.0;0.0} dB at the median place"));
        panel.Sentence(string.Create(CultureInfo.InvariantCulture, $"{comparison.LowDb:+0.0;−0.0;0.0} to {comparison.HighDb:+0.0;−0.0;0.0} dB at nine places of ten, of all that were worked out."));
        panel.Heading("Difference of the margins", "area");
        panel.Gap(8);
        double[] areas = Areas(model, other, out double neither, out double missing);
        for (int i = DifferenceClasses.Count - 1; i >= 0; i--)
        {
            panel.Flat(new(scale.OfDifference(i)), DifferenceClasses.Text(i), MapPanel.Area(areas[i]));
        }

        panel.Below("below the limit on both", "no colour, whatever the difference", MapPanel.Area(neither));
        panel.Missing(missing);
        panel.Heading("Over it, where a link comes or goes", "area");
        panel.Gap(8);
        Ink plain = scale.OfDifference(DifferenceClasses.Count / 2);
        panel.Flat(new(plain, new(Gained, ReachScale.MarksOn(plain))), "gained: 0 dB and more only now", MapPanel.Area(comparison.GainedSquareMetres));
        panel.Flat(new(plain, new(Lost, ReachScale.MarksOn(plain))), "lost: 0 dB and more only before", MapPanel.Area(comparison.LostSquareMetres));
        panel.Marks(model.StationName, !model.Marks.IsEmpty);
        panel.Heading("How sure that is");
        panel.Gap(3);
        panel.Note("Errors of the prediction that both share cancel:");
        panel.Note("the difference is known better than either map.");
        panel.Assumptions(model.Assumptions);
        return panel.Shapes;
    }

    private static double[] Areas(ReachPictureModel model, ReachMap other, out double neither, out double missing)
    {
        double[] areas = new double[DifferenceClasses.Count];
        double cell = model.Map.Field.CellAreaSquareMetres;
        (neither, missing) = (0, 0);
        float[] differences = ReachComparison.DifferencesDb(model.Map, other, model.Direction);
        for (int i = 0; i < differences.Length; i++)
        {
            if ((model.Map.Field.Flags[i] & ReachFlags.Outside) != ReachFlags.None)
            {
                continue;
            }

            bool isBelow = model.Map.MarginDb(i, model.Direction) < 0 && other.MarginDb(i, model.Direction) < 0;
            if (float.IsNaN(differences[i]))
            {
                missing += cell;
            }
            else if (isBelow)
            {
                neither += cell;
            }
            else
            {
                areas[DifferenceClasses.IndexOf(differences[i])] += cell;
            }
        }

        return areas;
    }
}
