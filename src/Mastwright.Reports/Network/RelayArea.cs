using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Network;

/// <summary>The ground of a relay search, all of it in memory, with its grid and its plane.</summary>
internal sealed class RelayArea
{
    /// <summary>Beyond the square paths and sweeps need a little more.</summary>
    private const double RimMetres = 2_000;

    /// <summary>Samples of height that are held in memory: some 500 MB.</summary>
    private const double MostSamples = 100e6;

    /// <summary>Cells on each side of the plane that candidates are looked for on.</summary>
    private const double MostPlaneReach = 700;

    private RelayArea(LinkStation home, GridFrame frame, GroundMosaic ground, RelayPlane plane)
    {
        Home = home;
        Frame = frame;
        Ground = ground;
        Plane = plane;
        Hash = new(() => GroundExtent.Of(ground).ContentHash.Value);
    }

    /// <summary>The station in the middle.</summary>
    internal LinkStation Home { get; }

    /// <summary>The grid of the search.</summary>
    internal GridFrame Frame { get; }

    /// <summary>The ground.</summary>
    internal GroundMosaic Ground { get; }

    /// <summary>Heights on a plane around the station.</summary>
    internal RelayPlane Plane { get; }

    /// <summary>Content hash of the ground.</summary>
    internal Lazy<string> Hash { get; }

    /// <summary>Reads it; null, with the problem told, when it cannot be had.</summary>
    internal static RelayArea? Read(PlanSession session, LinkStation home, RelayOptions options, Action<string> tell, CancellationToken cancellation)
    {
        GeoPoint middle = home.Position.Point;
        if (ReachGrid.Shared([middle], options.HalfSideMetres, options.CellMetres, out string problem) is not { } frame)
        {
            tell($"relay: {problem}");
            return null;
        }

        if (ReachGrid.Problem(middle, options.ReachMetres, options.CellMetres, ReachGrid.MostCells) is { Length: > 0 } tooFar)
        {
            tell($"--reach: {tooFar}");
            return null;
        }

        GeoBounds square = GeoBounds.Of(middle).Expanded((options.HalfSideMetres * 1.01) + RimMetres);
        GeoBounds all = PlanArea.Of(session.Plan) is { } stations ? Joined(square, stations) : square;
        double step = session.Ground.FinestMetres ?? double.PositiveInfinity;
        double metresHigh = (all.NorthDegrees - all.SouthDegrees) * 111_320;
        double metresWide = all.WidthDegrees * 111_320 * Math.Cos(double.DegreesToRadians(middle.LatitudeDegrees));
        if (metresHigh * metresWide / (step * step) > MostSamples)
        {
            tell(FormattableString.Invariant($"relay: the ground of the square and of all stations of the plan is {metresWide / 1000:0} × {metresHigh / 1000:0} km in steps of {step:0} m, more than is held in memory; give a smaller --area, a coarser height file, or a plan of fewer stations"));
            return null;
        }

        GroundMosaic ground = session.Ground.MosaicFor(all);
        if (session.TellDamage(tell))
        {
            return null;
        }

        if (ground.Heights.IsEmpty)
        {
            tell("relay: there is no ground here");
            return null;
        }

        if (ground.Heights.Any(window => window.Kind == HeightKind.Surface))
        {
            tell("relay: some of the ground is a surface model, whose roofs and trees would pass for summits. Give bare-earth heights and a cover file");
            return null;
        }

        RelayPlane plane = RelayPlane.Read(ground, middle, options.HalfSideMetres, Math.Max(step, options.HalfSideMetres / MostPlaneReach), cancellation);
        return new(home, frame, ground, plane);
    }

    /// <summary>Where a place lies on the plane, in columns and rows.</summary>
    internal (double Column, double Row) OnPlane(GeoPoint place)
    {
        (double east, double north) = Plane.Frame.Locate(place);
        return (east + Plane.Frame.Reach, Plane.Frame.Reach - north);
    }

    private static GeoBounds Joined(GeoBounds one, GeoBounds other) => GeoBounds.Of(
        new GeoPoint(one.SouthDegrees, one.WestDegrees),
        new GeoPoint(one.NorthDegrees, one.EastDegrees),
        new GeoPoint(other.SouthDegrees, other.WestDegrees),
        new GeoPoint(other.NorthDegrees, other.EastDegrees));
}
