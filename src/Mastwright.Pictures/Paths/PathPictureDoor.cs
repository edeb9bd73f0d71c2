using System.Collections.Immutable;

namespace Mastwright.Pictures.Paths;

/// <summary>Refuses a model that cannot be drawn, before anything is drawn.</summary>
internal static class PathPictureDoor
{
    /// <summary>Checks a model as a whole.</summary>
    /// <exception cref="ArgumentException">Something in it is missing, not finite, out of range or of another length.</exception>
    public static void Check(PathPictureModel model)
    {
        ArgumentNullException.ThrowIfNull(model);

        // Lazy: a later check relies on what an earlier one has found in order.
        if (ProfileFaults(model).Concat(NumberFaults(model)).Concat(MarkFaults(model)).FirstOrDefault() is string fault)
        {
            throw new ArgumentException($"The path picture cannot be drawn: {fault}.", nameof(model));
        }
    }

    private static IEnumerable<string> ProfileFaults(PathPictureModel model)
    {
        int count = Length(model.DistancesMetres);
        if (count < 2 || model.DistancesMetres[0] != 0)
        {
            yield return $"{nameof(model.DistancesMetres)} has fewer than two points, or does not begin at 0";
        }

        for (int i = 1; i < count; i++)
        {
            if (!double.IsFinite(model.DistancesMetres[i]) || model.DistancesMetres[i] <= model.DistancesMetres[i - 1])
            {
                yield return $"{nameof(model.DistancesMetres)} does not rise at point {i}";
            }
        }

        foreach ((string name, int length, bool mayBeEmpty) in ((string, int, bool)[])
        [
            (nameof(model.GroundMetres), Length(model.GroundMetres), false),
            (nameof(model.CoverHeightMetres), Length(model.CoverHeightMetres), true),
            (nameof(model.CoverKinds), Length(model.CoverKinds), true),
            (nameof(model.Zones), Length(model.Zones), true),
        ])
        {
            if (length != count && !(mayBeEmpty && length == 0))
            {
                yield return $"{name} has {length} entries for {count} points";
            }
        }
    }

    private static IEnumerable<string> NumberFaults(PathPictureModel model)
    {
        if (model.GroundMetres.Any(height => !double.IsFinite(height)))
        {
            yield return $"{nameof(model.GroundMetres)} holds a height that is not finite";
        }

        if (Length(model.CoverHeightMetres) > 0 && model.CoverHeightMetres.Any(height => !IsZeroOrMore(height)))
        {
            yield return $"{nameof(model.CoverHeightMetres)} holds a height that is not zero or more";
        }

        if (!IsZeroOrMore(model.TransmitterHeightMetres ?? 0) || !IsZeroOrMore(model.ReceiverHeightMetres ?? 0))
        {
            yield return "an antenna's height above ground is not zero or more";
        }

        if (!IsPositive(model.FrequencyHz))
        {
            yield return $"{nameof(model.FrequencyHz)} is not more than zero";
        }

        if (!IsPositive(model.KFactor) || !IsPositive(model.LowKFactor ?? 1))
        {
            yield return "a k-factor is not more than zero";
        }

        if (!double.IsFinite(model.MarginDb ?? 0))
        {
            yield return $"{nameof(model.MarginDb)} is not finite";
        }

        if (!IsRange(model.MarginLowDb, model.MarginHighDb))
        {
            yield return $"{nameof(model.MarginLowDb)} and {nameof(model.MarginHighDb)} are not the finite ends of a range";
        }

        if (string.IsNullOrWhiteSpace(model.TransmitterName) || string.IsNullOrWhiteSpace(model.ReceiverName))
        {
            yield return "an end has no name";
        }
    }

    private static IEnumerable<string> MarkFaults(PathPictureModel model)
    {
        double length = model.DistancesMetres[^1];
        if (model.Missing.IsDefault || model.Obstructions.IsDefault || model.Directions.IsDefault || model.Notes.IsDefault)
        {
            yield return "a list is default; an empty one says that there is nothing";
            yield break;
        }

        if (model.Missing.Any(stretch => !(stretch.FromMetres >= 0 && stretch.FromMetres < stretch.ToMetres && stretch.ToMetres <= length)))
        {
            yield return $"{nameof(model.Missing)} holds a stretch outside the path";
        }

        if (model.Obstructions.Any(one => !(one.DistanceMetres >= 0 && one.DistanceMetres <= length) || !double.IsFinite(one.AboveRayMetres) || !double.IsFinite(one.FresnelRadii)))
        {
            yield return $"{nameof(model.Obstructions)} holds one outside the path, or one whose height is not finite";
        }

        if (model.Directions.Any(direction => !double.IsFinite(direction.MarginDb ?? 0) || !IsRange(direction.MarginLowDb, direction.MarginHighDb)))
        {
            yield return $"{nameof(model.Directions)} holds a margin that is not finite or whose range does not rise";
        }
    }

    private static int Length<T>(ImmutableArray<T> array) => array.IsDefault ? 0 : array.Length;

    private static bool IsRange(double? low, double? high) => low is null == high is null && double.IsFinite(low ?? 0) && double.IsFinite(high ?? 0) && !(low > high);

    private static bool IsZeroOrMore(double value) => double.IsFinite(value) && value >= 0;

    private static bool IsPositive(double value) => double.IsFinite(value) && value > 0;
}
