using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Grid references, against published ones and an independent program.</summary>
public sealed class MilitaryGridTests
{
    /// <summary>Computed with GeoConvert 2.1.2 of GeographicLib (-m -p 0), an independent program.</summary>
    public static TheoryData<double, double, string> GeographicLib => new()
    {
        { 46.4, -18.7, "27TXM7680441062" },
        { 60.39, 5.32, "32VKN9723000510" },
        { 78.22, 15.63, "33XWG1435782999" },
        { -54.8, -68.3, "19FEV4500027239" },
        { 83.9, 179.99, "60XWU3545717850" },
        { -79.9, -179.99, "01CDM4148828072" },
        { 0.001, 12, "33NSA6602100110" },
        { -0.001, 12, "33MSV6602199889" },
        { 48.8584, 2.2945, "31UDQ4825211954" },
        { -33.8568, 151.2153, "56HLH3490052288" },
        { 33.3, 44.4, "38SMB4414084706" },
    };

    [Theory, MemberData(nameof(GeographicLib))]
    public void References_agree_with_an_independent_program(double latitude, double longitude, string reference) =>
        Assert.Equal(reference, MilitaryGrid.Format(new GeoPoint(latitude, longitude)));

    [Theory]
    [InlineData(5, "18SUJ2348306479")]
    [InlineData(4, "18SUJ23480647")]
    [InlineData(3, "18SUJ234064")]
    [InlineData(2, "18SUJ2306")]
    [InlineData(1, "18SUJ20")]
    public void Digits_are_cut_off_and_not_rounded(int digitPairs, string reference) =>
        // FGDC-STD-011-2001 section 5.2.2; the shortest one follows from its rule.
        Assert.Equal(reference, MilitaryGrid.Format(new GeoPoint(38.889467309501576, -77.0352402156242), digitPairs));

    [Fact]
    public void A_published_reference_reads_back_to_its_place()
    {
        Assert.True(MilitaryGrid.TryParse("18S UJ 23483 06479", out LocatedPoint position, out string problem), problem);
        double off = Geodesic.Inverse(position.Point, new GeoPoint(38.889467309501576, -77.0352402156242)).DistanceMetres;
        Assert.InRange(off, 0, position.RadiusMetres);

        // Half of the diagonal of a metre, at the grid's scale of 0.9996.
        Assert.Equal(0.7074, position.RadiusMetres, 1e-4);
    }

    [Fact]
    public void Every_place_lies_in_the_square_that_its_reference_names() =>
        Gen.Select(Gen.Double[-80, 84], Gen.Double[-180, 180], Gen.Int[1, 5]).Sample((latitude, longitude, digitPairs) =>
        {
            GeoPoint point = new(latitude, longitude);
            string reference = MilitaryGrid.Format(point, digitPairs);
            return MilitaryGrid.TryParse(reference, out LocatedPoint position, out _)
                && Geodesic.Inverse(point, position.Point).DistanceMetres <= position.RadiusMetres * 1.0001;
        });

    [Theory]
    [InlineData("61SUJ2306", "zones run from 1 to 60")]
    [InlineData("18OUJ2306", "bands run from C to X")]
    [InlineData("18SIJ2306", "first letter is one of")]
    [InlineData("18SUJ23064", "as many digits")]
    [InlineData("18SUJ", "as many digits")]
    [InlineData("18SUJ123456123456", "no grid reference")]
    [InlineData("ZAH1234", "polar grid")]
    [InlineData("18SUA2306", "does not reach into")]
    [InlineData("", "no grid reference")]
    public void A_wrong_reference_says_what_would_be_right(string text, string part)
    {
        Assert.False(MilitaryGrid.TryParse(text, out _, out string problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_text_is_an_answer() =>
        Gen.String[Gen.Char["0123456789ABCDEFGHJKLMNPQRSTUVWXYZ .-é"], 0, 20].Sample(text =>
        {
            bool isRead = MilitaryGrid.TryParse(text, out _, out string problem);
            return isRead == (problem.Length == 0);
        });
}
