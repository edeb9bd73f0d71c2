using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Storage.Profiles;

namespace Mastwright.Tests.Profiles;

public sealed class ProfileCsvTests
{
    private const string Good = "distance_km,height_m,cover_m,zone\n0,5,0,coast\n0.5,0,0,sea\n# a remark\n1.25,80.5,15,inland\n";

    [Fact]
    public void A_profile_reads_as_it_stands()
    {
        Assert.True(ProfileCsv.TryParse(Good, "p.csv", out PathProfile? profile, out _));
        Assert.Equal([0.0, 500, 1250], profile!.DistancesMetres.ToArray());
        Assert.Equal([5.0, 0, 80.5], profile.HeightsMetres.ToArray());
        Assert.Equal([0.0, 0, 15], profile.CoverMetres.ToArray());
        Assert.Equal([Zone.Coast, Zone.Sea, Zone.Inland], profile.Zones.ToArray());
    }

    [Fact]
    public void Columns_may_stand_in_any_order_and_cover_and_zone_may_be_missing()
    {
        Assert.True(ProfileCsv.TryParse("height_m,distance_km\n1,0\n2,1\n3,2\n", "p.csv", out PathProfile? profile, out _));
        Assert.Equal([1.0, 2, 3], profile!.HeightsMetres.ToArray());
        Assert.Equal(Zone.Inland, profile.Zones[2]);
    }

    [Theory]
    [InlineData("", "p.csv:1: the file is empty")]
    [InlineData("distance_km,height_m\n0,1\n1,2\n", "p.csv:1: there are 2 points")]
    [InlineData("distance_km,hight_m\n0,1\n", "p.csv:1: 'hight_m' is not a column")]
    [InlineData("distance_km,height_m\n0,1\n1,x\n2,2\n", "p.csv:3: height_m is 'x'")]
    [InlineData("distance_km,height_m\n0,1\n1,NaN\n2,2\n", "p.csv:3: height_m is 'NaN'")]
    [InlineData("distance_km,height_m\n1,1\n2,2\n3,3\n", "p.csv:2: the first distance_km is not 0")]
    [InlineData("distance_km,height_m\n0,1\n2,2\n1,3\n", "p.csv:4: distance_km is not greater")]
    [InlineData("distance_km,height_m\n0,1\n2,99999\n3,3\n", "p.csv:3: height_m is 99999; it lies between")]
    [InlineData("distance_km,height_m,zone\n0,1,lake\n2,2,sea\n3,3,sea\n", "p.csv:2: zone is 'lake'")]
    [InlineData("distance_km,height_m\n0,1\n2\n3,3\n", "p.csv:3: there are 1 columns")]
    public void A_wrong_line_is_named_with_what_would_be_right(string text, string problem)
    {
        Assert.False(ProfileCsv.TryParse(text, "p.csv", out PathProfile? profile, out IReadOnlyList<string> problems));
        Assert.Null(profile);
        Assert.StartsWith(problem, problems[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Changed_files_never_throw() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Char, Gen.Int[0, 40]).Sample((at, character, cut) =>
        {
            string changed = string.Concat(Good.AsSpan(0, at), character.ToString(), Good.AsSpan(Math.Min(Good.Length, at + cut)));
            bool read = ProfileCsv.TryParse(changed, "p.csv", out PathProfile? profile, out IReadOnlyList<string> problems);
            return read == profile is not null && read == (problems.Count == 0);
        });
}
