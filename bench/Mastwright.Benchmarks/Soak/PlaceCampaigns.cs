using Mastwright.Geodesy;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Places, lines between them and the ways to write them: there and back again; and any text where one is expected.</summary>
internal static class PlaceCampaigns
{
    private static readonly double[] Awkward = [-180, -179.999999999, -90, -89.999999999, -45, -1e-9, 0, 1e-300, 1e-9, 45, 56, 64, 72, 84, 89.999999999, 90, 179.999999999, 180];
    private static readonly string[] Pieces = ["46", "-18.7", " ", ", ", "°", "'", "\"", "N", "s", "W", "±", "…", "km", "m", "JN58", "td", "33U", "UP", "123", "456", "e9", ".", "−", "0", "/", "dB", "%", "\0", "😀", "MHz"];

    internal static IEnumerable<Campaign> All()
    {
        yield return new("geodesy", Lines);
        yield return new("position-text", Texts);
    }

    private static SoakCase Lines(Random random)
    {
        GeoPoint from = Point(random);
        GeoPoint to = random.Next(4) switch
        {
            0 => Clamped(-from.LatitudeDegrees + Near(random), from.LongitudeDegrees + 180 + Near(random)),
            1 => Clamped(from.LatitudeDegrees + Near(random), from.LongitudeDegrees + Near(random)),
            _ => Point(random),
        };
        return SoakCase.OfText("places.txt", FormattableString.Invariant($"{from.LatitudeDegrees:R} {from.LongitudeDegrees:R} {to.LatitudeDegrees:R} {to.LongitudeDegrees:R}\n"), () => Check(from, to));
    }

    private static void Check(GeoPoint from, GeoPoint to)
    {
        // 15 nm is what the source of the method claims for one direction; half a meridian is the longest line.
        GeodesicSegment there = Geodesic.Inverse(from, to);
        SoakFailureException.Require(there.DistanceMetres is >= 0 and <= 20003931.4587, $"{there.DistanceMetres} m");
        SoakFailureException.Require(there.InitialBearingDegrees is >= 0 and < 360 && there.FinalBearingDegrees is >= 0 and < 360, "a bearing is outside 0° to 360°");
        double back = Geodesic.Inverse(to, from).DistanceMetres;
        SoakFailureException.Require(Math.Abs(there.DistanceMetres - back) < 2e-8, $"{there.DistanceMetres} m there, {back} m back");
        GeoPoint reached = Geodesic.Direct(from, there.InitialBearingDegrees, there.DistanceMetres);
        double missed = Geodesic.Inverse(reached, to).DistanceMetres;
        SoakFailureException.Require(missed < 50e-9, $"the line misses its end by {missed} m");
        foreach (GeoPoint point in (GeoPoint[])[from, to])
        {
            Texts(point);
        }
    }

    private static void Texts(GeoPoint point)
    {
        if (UniversalTransverseMercator.Covers(point))
        {
            double missed = Geodesic.Inverse(point, UniversalTransverseMercator.ToGeo(UniversalTransverseMercator.FromGeo(point))).DistanceMetres;
            SoakFailureException.Require(missed < 20e-9, $"UTM and back misses by {missed} m");
            for (int digits = 1; digits <= 5; digits++)
            {
                string reference = MilitaryGrid.Format(point, digits);
                SoakFailureException.Require(MilitaryGrid.TryParse(reference, out LocatedPoint square, out string problem), $"{reference}: {problem}");
                SoakFailureException.Require(Geodesic.Inverse(point, square.Point).DistanceMetres <= square.RadiusMetres * 1.0001, $"{reference} does not hold its place");
            }
        }

        for (int length = 2; length <= 10; length += 2)
        {
            string locator = Locator.Format(point, length);
            SoakFailureException.Require(Locator.TryParse(locator, out LocatedPoint square, out string problem), $"{locator}: {problem}");
            SoakFailureException.Require(Locator.Format(square.Point, length) == locator, $"{locator} comes back as {Locator.Format(square.Point, length)}");
            SoakFailureException.Require(Geodesic.Inverse(point, square.Point).DistanceMetres <= (square.RadiusMetres * (1 + 1e-6)) + 1e-6, $"{locator} does not hold its place");
        }

        string text = PositionText.Format(point);
        SoakFailureException.Require(PositionText.TryParse(text, out LocatedPoint read, out string wrong), $"{text}: {wrong}");

        // Five decimals: 0.000005° is 0.56 m each way.
        SoakFailureException.Require(Geodesic.Inverse(point, read.Point).DistanceMetres < 0.8, $"{text} is not where it was");
    }

    private static SoakCase Texts(Random random)
    {
        string text = string.Concat(Enumerable.Range(0, random.Next(14)).Select(_ => random.Next(20) == 0 ? ((char)random.Next(1, 0xD800)).ToString() : Pieces[random.Next(Pieces.Length)]));
        return SoakCase.OfText("text.txt", text, () =>
        {
            bool isRead = PositionText.TryParse(text, out LocatedPoint read, out string problem);
            SoakFailureException.Require(isRead == (problem.Length == 0), $"'{text}': read {isRead}, problem '{problem}'");
            SoakFailureException.Require(!isRead || read.RadiusMetres is >= 0 and < 1e9, $"'{text}': radius {read.RadiusMetres} m");
            SoakFailureException.Require(MilitaryGrid.TryParse(text, out _, out problem) == (problem.Length == 0), $"'{text}' as a grid reference");
            SoakFailureException.Require(Locator.TryParse(text, out _, out problem) == (problem.Length == 0), $"'{text}' as a locator");
        });
    }

    private static GeoPoint Point(Random random) => random.Next(4) == 0
        ? Clamped(Awkward[random.Next(Awkward.Length)], Awkward[random.Next(Awkward.Length)])
        : Clamped((random.NextDouble() * 180) - 90, (random.NextDouble() * 360) - 180);

    private static double Near(Random random) => (random.NextDouble() - 0.5) * Math.Pow(10, -random.Next(12));

    private static GeoPoint Clamped(double latitude, double longitude) => new(Math.Clamp(latitude, -90, 90), Math.IEEERemainder(longitude, 360));
}
