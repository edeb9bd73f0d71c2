using System.Collections.Immutable;

namespace Mastwright.Pictures.Paths;

/// <summary>The curves of a path picture, in metres, at the places where they are drawn.</summary>
/// <remarks>
/// The ray is straight, so the ground bends: at the distances d1 and d2 from the ends it is raised by d1·d2/(2·k·a), with a = 6371 km
/// (the parabola that effective earth radius profiles use; Rec. ITU-R P.526, effective earth radius). First Fresnel radius:
/// √(λ·d1·d2/(d1+d2)), Rec. ITU-R P.526.
/// </remarks>
internal sealed class PathGeometry
{
    /// <summary>Mean radius of the earth, in metres.</summary>
    public const double EarthRadiusMetres = 6_371_000;

    private const double SpeedOfLightMetresPerSecond = 299_792_458;
    private const int FewestSteps = 400;

    private readonly PathPictureModel model;

    private PathGeometry(PathPictureModel model, List<Place> places)
    {
        this.model = model;
        LengthMetres = model.DistancesMetres[^1];
        LeftAntennaMetres = IsMissing(model, 0) ? null : model.GroundMetres[0] + model.TransmitterHeightMetres;
        RightAntennaMetres = IsMissing(model, LengthMetres) ? null : model.GroundMetres[^1] + model.ReceiverHeightMetres;
        Distances = [.. places.Select(place => place.Distance)];
        Ground = [.. places.Select(place => place.Ground)];
        Cover = [.. places.Select(place => place.Cover)];
        Source = [.. places.Select(place => place.Source)];
        RaisedGround = [.. places.Select(place => place.Ground + BulgeMetres(place.Distance, model.KFactor))];
        Top = [.. RaisedGround.Zip(Cover, (ground, cover) => ground + cover)];
        Ray = HasRay ? [.. Distances.Select(RayMetres)] : [];
        Fresnel = HasRay ? [.. Distances.Select(FresnelMetres)] : [];
        Missing = [.. Distances.Select(distance => IsMissing(model, distance))];
        Known = [.. Bands.Stretches(Missing).Where(stretch => !stretch.Value && stretch.Last > stretch.First).Select(stretch => new Stretch(stretch.First, stretch.Last))];
    }

    /// <summary>Length of the path.</summary>
    public double LengthMetres { get; }

    /// <summary>Height of the left antenna above sea level; null when it or its ground is unknown.</summary>
    public double? LeftAntennaMetres { get; }

    /// <summary>Height of the right antenna above sea level; null when it or its ground is unknown.</summary>
    public double? RightAntennaMetres { get; }

    /// <summary>Whether both antennas are known, so that there is a ray with its zone.</summary>
    public bool HasRay => LeftAntennaMetres is not null && RightAntennaMetres is not null;

    /// <summary>Whether the ground at each place is unknown; its numbers there are of no meaning.</summary>
    public ImmutableArray<bool> Missing { get; }

    /// <summary>The stretches of places with known ground, two places or more each.</summary>
    public ImmutableArray<Stretch> Known { get; }

    /// <summary>Where the curves are drawn, from 0 to the length.</summary>
    public ImmutableArray<double> Distances { get; }

    /// <summary>Ground above sea level, flat earth.</summary>
    public ImmutableArray<double> Ground { get; }

    /// <summary>Cover above the ground.</summary>
    public ImmutableArray<double> Cover { get; }

    /// <summary>Index of the profile point that each place takes its cover from.</summary>
    public ImmutableArray<int> Source { get; }

    /// <summary>Ground with the bulge.</summary>
    public ImmutableArray<double> RaisedGround { get; }

    /// <summary>Ground with the bulge and the cover.</summary>
    public ImmutableArray<double> Top { get; }

    /// <summary>The straight ray; empty where there is none.</summary>
    public ImmutableArray<double> Ray { get; }

    /// <summary>Radius of the first Fresnel zone; empty where there is no ray.</summary>
    public ImmutableArray<double> Fresnel { get; }

    /// <summary>The curves of a checked model.</summary>
    /// <param name="model">The model.</param>
    /// <param name="columns">Columns of the plot: of the points in one column the highest and the lowest are kept.</param>
    public static PathGeometry Of(PathPictureModel model, int columns)
    {
        List<Place> kept = WithEdges(model, model.DistancesMetres.Length > 2 * columns ? Thinned(model, columns) : [.. Enumerable.Range(0, model.DistancesMetres.Length).Select(i => PlaceAt(model, i))]);
        double widest = model.DistancesMetres[^1] / FewestSteps;
        List<Place> places = [kept[0]];
        for (int i = 1; i < kept.Count; i++)
        {
            Place from = kept[i - 1];
            Place to = kept[i];
            int steps = (int)Math.Ceiling((to.Distance - from.Distance) / widest);
            for (int step = 1; step < steps; step++)
            {
                // Ground runs straight between two points; cover is a property of a point and of its half of the way to the next.
                double share = (double)step / steps;
                Place near = share < 0.5 ? from : to;
                places.Add(near with { Distance = from.Distance + (share * (to.Distance - from.Distance)), Ground = from.Ground + (share * (to.Ground - from.Ground)) });
            }

            places.Add(to);
        }

        return new(model, places);
    }

    /// <summary>How far the ground is raised at a distance.</summary>
    public double BulgeMetres(double distanceMetres, double kFactor) =>
        distanceMetres * (LengthMetres - distanceMetres) / (2 * kFactor * EarthRadiusMetres);

    /// <summary>Height of the ray above sea level at a distance; only where there is one.</summary>
    public double RayMetres(double distanceMetres) =>
        LeftAntennaMetres!.Value + (distanceMetres / LengthMetres * (RightAntennaMetres!.Value - LeftAntennaMetres.Value));

    /// <summary>Radius of the first Fresnel zone at a distance.</summary>
    public double FresnelMetres(double distanceMetres) => Math.Sqrt(
        SpeedOfLightMetresPerSecond / model.FrequencyHz * Math.Max(0, distanceMetres * (LengthMetres - distanceMetres)) / LengthMetres);

    /// <summary>Ground with the bulge of another k-factor.</summary>
    public IEnumerable<double> GroundAt(double kFactor) => Ground.Zip(Distances, (ground, distance) => ground + BulgeMetres(distance, kFactor));

    /// <summary>Whether a distance lies strictly inside a stretch without data, or at an end of the path that one reaches.</summary>
    public static bool IsMissing(PathPictureModel model, double distanceMetres)
    {
        double length = model.DistancesMetres[^1];
        return model.Missing.Any(stretch =>
            (stretch.FromMetres < distanceMetres || (distanceMetres <= 0 && stretch.FromMetres <= 0))
            && (stretch.ToMetres > distanceMetres || (distanceMetres >= length && stretch.ToMetres >= length)));
    }

    /// <summary>The places with known ground, with one at each edge of what is missing, so that the ground ends where the data end.</summary>
    private static List<Place> WithEdges(PathPictureModel model, List<Place> places)
    {
        if (model.Missing.IsEmpty)
        {
            return places;
        }

        double length = model.DistancesMetres[^1];
        List<Place> known = [.. places.Where(place => place.Distance <= 0 || place.Distance >= length || !IsMissing(model, place.Distance))];
        foreach (double edge in model.Missing.SelectMany(stretch => (double[])[stretch.FromMetres, stretch.ToMetres]).Distinct())
        {
            if (!known.Exists(place => place.Distance == edge))
            {
                known.Add(Between(model, edge));
            }
        }

        known.Sort((one, other) => one.Distance.CompareTo(other.Distance));
        return known;
    }

    private static Place Between(PathPictureModel model, double distance)
    {
        int found = model.DistancesMetres.BinarySearch(distance);
        if (found >= 0)
        {
            return PlaceAt(model, found);
        }

        Place from = PlaceAt(model, ~found - 1);
        Place to = PlaceAt(model, ~found);
        double share = (distance - from.Distance) / (to.Distance - from.Distance);
        return (share < 0.5 ? from : to) with { Distance = distance, Ground = from.Ground + (share * (to.Ground - from.Ground)) };
    }

    private static List<Place> Thinned(PathPictureModel model, int columns)
    {
        List<Place> kept = [PlaceAt(model, 0)];
        double width = model.DistancesMetres[^1] / columns;
        int last = model.DistancesMetres.Length - 1;
        for (int i = 1; i < last;)
        {
            double end = (Math.Floor(model.DistancesMetres[i] / width) + 1) * width;
            if (IsMissing(model, model.DistancesMetres[i]))
            {
                i++;
                continue;
            }

            int high = i;
            int low = i;
            int next = i + 1;
            for (; next < last && model.DistancesMetres[next] < end && !IsMissing(model, model.DistancesMetres[next]); next++)
            {
                high = PlaceAt(model, next).Summit > PlaceAt(model, high).Summit ? next : high;
                low = model.GroundMetres[next] < model.GroundMetres[low] ? next : low;
            }

            kept.Add(PlaceAt(model, Math.Min(high, low)));
            if (high != low)
            {
                kept.Add(PlaceAt(model, Math.Max(high, low)));
            }

            i = next;
        }

        kept.Add(PlaceAt(model, last));
        return kept;
    }

    private static Place PlaceAt(PathPictureModel model, int i) =>
        new(model.DistancesMetres[i], model.GroundMetres[i], model.CoverHeightMetres.IsDefaultOrEmpty ? 0 : model.CoverHeightMetres[i], i);

    /// <summary>A stretch of places, from the first to the last, both inside.</summary>
    internal readonly record struct Stretch(int First, int Last)
    {
        /// <summary>The values of the stretch.</summary>
        public ImmutableArray<double> Of(ImmutableArray<double> values) => values[First..(Last + 1)];
    }

    private readonly record struct Place(double Distance, double Ground, double Cover, int Source)
    {
        public double Summit => Ground + Cover;
    }
}
