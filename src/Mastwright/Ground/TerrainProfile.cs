using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>The ground along the geodesic between two places: heights, cover and zones at equidistant points.</summary>
/// <remarks>
/// <para>
/// A path of length D over ground of resolution s has n = ceil(D/s) equal steps (two at least) and n + 1 points, both ends among them.
/// So the last point before either antenna lies one step, s or a little less, in front of it: the area sweep keeps the same rule with
/// its virtual point one step before the receiver.
/// </para>
/// <para>Immutable and safe from many threads.</para>
/// </remarks>
public sealed class TerrainProfile
{
    /// <summary>Most points of one profile.</summary>
    public const int MostPoints = 100_000;

    /// <summary>Step in metres where no window lies on the path.</summary>
    public const double StepWithoutGroundMetres = 30;

    private readonly ProfileSamples _samples;

    internal TerrainProfile(GeoPoint from, GeoPoint to, GeodesicSegment segment, ProfileSamples samples)
    {
        From = from;
        To = to;
        Segment = segment;
        _samples = samples;
        (DistanceToCoastFromMetres, DistanceToCoastToMetres) = CoastDistances(samples.Zones, StepMetres, LengthMetres);
    }

    /// <summary>Where the path starts.</summary>
    public GeoPoint From { get; }

    /// <summary>Where the path ends.</summary>
    public GeoPoint To { get; }

    /// <summary>Length and bearings of the geodesic.</summary>
    public GeodesicSegment Segment { get; }

    /// <summary>Length of the path in metres.</summary>
    public double LengthMetres => Segment.DistanceMetres;

    /// <summary>Number of points, three or more.</summary>
    public int Count => _samples.Heights.Length;

    /// <summary>Distance between two points in metres.</summary>
    public double StepMetres => LengthMetres / (Count - 1);

    /// <summary>Height of the source at each point in metres above its datum; NaN where it is missing.</summary>
    public ReadOnlySpan<double> HeightsMetres => _samples.Heights;

    /// <summary>Cover code at each point; 0 where nothing is known.</summary>
    public ReadOnlySpan<byte> CoverCodes => _samples.CoverCodes;

    /// <summary>
    /// Representative height of the cover at each point, in metres above the ground, to be added to the height; 0 where the height is of a
    /// surface model, which holds trees and buildings already.
    /// </summary>
    public ReadOnlySpan<double> CoverHeightsMetres => _samples.CoverHeights;

    /// <summary>Class of the cover at each point.</summary>
    public ReadOnlySpan<CoverClass> CoverClasses => _samples.CoverClasses;

    /// <summary>Radio-climatic zone of each point.</summary>
    public ReadOnlySpan<Zone> Zones => _samples.Zones;

    /// <summary>Stretches without a height, in the order of the path.</summary>
    public ImmutableArray<GroundGap> Gaps => _samples.Gaps;

    /// <summary>The sources the heights came from, in the order in which the path meets them.</summary>
    public ImmutableArray<ProfileSource> Sources => _samples.Sources;

    /// <summary>Whether every point has a height.</summary>
    public bool IsComplete => Gaps.IsEmpty;

    /// <summary>Whether any height is of a surface model.</summary>
    public bool HasSurface => Sources.Any(source => source.Kind == HeightKind.Surface);

    /// <summary>Distance over land from the start to the first sea on the path, in metres; 0 at sea, null where the path meets none (dct of ITU-R P.1812).</summary>
    public double? DistanceToCoastFromMetres { get; }

    /// <summary>Distance over land from the end back to the last sea on the path, in metres; 0 at sea, null where the path meets none (dcr of ITU-R P.1812).</summary>
    public double? DistanceToCoastToMetres { get; }

    /// <summary>Distance of a point from the start, in metres.</summary>
    public double DistanceMetres(int index) => index == Count - 1 ? LengthMetres : index * StepMetres;

    /// <summary>Cuts the ground along the geodesic between two places.</summary>
    /// <param name="mosaic">The ground.</param>
    /// <param name="from">Start.</param>
    /// <param name="to">End; not the same place.</param>
    /// <param name="stepMetres">Longest step in metres, greater than zero; null for the resolution of the finest window on the path.</param>
    /// <remarks>
    /// Positions are exact on the geodesic at nodes at most 16 points and 1 km apart and quadratic in between: within 5 mm below 85° of
    /// latitude (measured in TerrainProfileTests); beyond 89° every point is a node.
    /// </remarks>
    /// <exception cref="ArgumentException">The two places are less than a millimetre apart, or the step asks for more than <see cref="MostPoints"/> points.</exception>
    public static TerrainProfile Extract(GroundMosaic mosaic, GeoPoint from, GeoPoint to, double? stepMetres = null)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        GeodesicSegment segment = Geodesic.Inverse(from, to);
        double length = segment.DistanceMetres;
        if (!(length >= 0.001))
        {
            throw new ArgumentException("A profile lies between two different places.", nameof(to));
        }

        double step = stepMetres ?? Math.Max(SourceStep(mosaic, from, to, segment), length / (MostPoints - 1));
        if (!(step > 0) || !(length / step <= MostPoints - 1))
        {
            throw new ArgumentOutOfRangeException(nameof(stepMetres), stepMetres, string.Create(
                CultureInfo.InvariantCulture, $"The step of a profile is greater than zero and gives at most {MostPoints} points; {length:0} m long."));
        }

        // A path that is a whole number of steps long, but for rounding, has just that number.
        int steps = Math.Max(2, (int)Math.Ceiling((length / step) - 1e-9));
        ProfileTrack track = ProfileTrack.Along(from, segment, steps);
        return new(from, to, segment, ProfileSampler.Sample(mosaic, track));
    }

    /// <summary>The place of a point, exact on the geodesic.</summary>
    public GeoPoint PointAt(int index)
    {
        if (index == 0)
        {
            return From;
        }

        return index == Count - 1 ? To : Geodesic.Direct(From, Segment.InitialBearingDegrees, DistanceMetres(index));
    }

    /// <summary>The same profile with other heights and the same everything else.</summary>
    /// <exception cref="ArgumentException">There is not one height for each point.</exception>
    public TerrainProfile WithHeights(ReadOnlySpan<double> heightsMetres)
    {
        if (heightsMetres.Length != Count)
        {
            throw new ArgumentException($"The profile has {Count} points.", nameof(heightsMetres));
        }

        return new(From, To, Segment, _samples with { Heights = heightsMetres.ToArray() });
    }

    /// <summary>Ends, length and number of points.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{From} → {To}: {LengthMetres:0} m, {Count} points");

    private static double SourceStep(GroundMosaic mosaic, GeoPoint from, GeoPoint to, GeodesicSegment segment)
    {
        double finest = double.PositiveInfinity;
        GeoPoint middle = Geodesic.Direct(from, segment.InitialBearingDegrees, segment.DistanceMetres / 2);
        foreach (GroundWindow window in mosaic.Heights)
        {
            if (window.ResolutionMetres < finest && MayTouch(window.Frame, from, middle, to))
            {
                finest = window.ResolutionMetres;
            }
        }

        return double.IsFinite(finest) ? finest : StepWithoutGroundMetres;
    }

    /// <summary>Whether the rectangle around three places of the path meets the grid; a little generous, which only makes the step finer.</summary>
    private static bool MayTouch(GridFrame frame, GeoPoint from, GeoPoint middle, GeoPoint to)
    {
        (double c0, double r0) = frame.Locate(from);
        (double c1, double r1) = frame.Locate(middle);
        (double c2, double r2) = frame.Locate(to);
        return Math.Max(c0, Math.Max(c1, c2)) >= -0.5 && Math.Min(c0, Math.Min(c1, c2)) <= frame.Columns - 0.5
            && Math.Max(r0, Math.Max(r1, r2)) >= -0.5 && Math.Min(r0, Math.Min(r1, r2)) <= frame.Rows - 0.5;
    }

    private static (double? From, double? To) CoastDistances(ReadOnlySpan<Zone> zones, double step, double length)
    {
        int first = zones.IndexOf(Zone.Sea);
        if (first < 0)
        {
            return (null, null);
        }

        // The coast lies between two points: half a step before the first that is sea.
        int last = zones.LastIndexOf(Zone.Sea);
        double from = first == 0 ? 0 : (first - 0.5) * step;
        double to = last == zones.Length - 1 ? 0 : length - ((last + 0.5) * step);
        return (from, to);
    }
}

/// <summary>What a profile holds at its points: arrays of one length that nobody changes any more.</summary>
internal sealed record ProfileSamples(
    double[] Heights,
    byte[] CoverCodes,
    double[] CoverHeights,
    CoverClass[] CoverClasses,
    Zone[] Zones,
    ImmutableArray<GroundGap> Gaps,
    ImmutableArray<ProfileSource> Sources);
