using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Station.Antenna;
using Mastwright.Storage.Demo;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Demo;

/// <summary>The demo, written once for all tests into a folder of its own, and read back like anyone's plan.</summary>
[CollectionDefinition(Name)]
public sealed class SkerrinFolder : ICollectionFixture<SkerrinFolder>, IDisposable
{
    internal const string Name = "Skerrin, written out";

    private readonly Lazy<short[]> _heights;
    private readonly Lazy<byte[]> _cover;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("skerrin-");

    public SkerrinFolder()
    {
        FirstTime = SkerrinDemo.WriteTo(Path);
        Reading = PlanFile.Read(FirstTime.PlanPath);
        Library = GroundLibrary.Open(Path, Plan.Heights, Plan.Covers);
        _heights = new(() => Array.ConvertAll(Whole("N46W019.hgt").ReadHeights(0, 0, SkerrinGround.HeightSide, SkerrinGround.HeightSide), height => checked((short)height)));
        _cover = new(() => Whole("cover/N46W019.tif").ReadCover(0, 0, SkerrinGround.CoverSide, SkerrinGround.CoverSide));
    }

    /// <summary>All heights of the tile as they were written, north-west post first.</summary>
    internal ReadOnlySpan<short> Heights => _heights.Value;

    /// <summary>All cover of the tile as it was written, north-west cell first.</summary>
    internal ReadOnlySpan<byte> Cover => _cover.Value;

    /// <summary>What was said when the folder was empty.</summary>
    internal SkerrinDemoFiles FirstTime { get; }

    internal string Path => _folder.FullName;

    internal PlanReading Reading { get; }

    internal Plan Plan => Reading.Document?.Plan ?? throw new InvalidOperationException(string.Join('\n', Reading.Problems));

    internal GroundLibrary Library { get; }

    public void Dispose()
    {
        Library.Dispose();
        _folder.Delete(recursive: true);
    }

    /// <summary>Place and antenna height above the ground of "site/fit-out" or "neighbour".</summary>
    internal (GeoPoint Point, double HeightMetres) End(string name)
    {
        string[] parts = name.Split('/');
        if (parts.Length == 1)
        {
            Neighbour neighbour = Plan.Neighbours.Single(one => one.Key == parts[0]);
            return (neighbour.Position.Point, AboveGround(neighbour.Height!));
        }

        Site site = Plan.Sites.Single(one => one.Key == parts[0]);
        return (site.Position.Point, AboveGround(site.FitOuts.Single(one => one.Key == parts[1]).Antenna.Height));
    }

    private GroundFile Whole(string name) => GroundFileFormat.OpenFile(System.IO.Path.Combine(Path, "ground", name));

    private static double AboveGround(MountHeight height) => height.Metres.Median + (height.RoofMetres?.Median ?? 0);
}
