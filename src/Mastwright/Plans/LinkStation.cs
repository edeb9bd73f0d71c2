using Mastwright.Geodesy;
using Mastwright.Network.Links;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Rules;

namespace Mastwright.Plans;

/// <summary>One station of a plan as links see it: a site with one of its fit-outs, or a neighbour.</summary>
public sealed record LinkStation
{
    /// <summary>Key of the site or neighbour.</summary>
    public required string Key { get; init; }

    /// <summary>Key, and for a site the key of its fit-out: "ferry-house/net-loft".</summary>
    public required string Subject { get; init; }

    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>Where in the plan it stands: "sites/ferry-house".</summary>
    public required string PlanPath { get; init; }

    /// <summary>Where in the plan its fit-out stands; for a neighbour the same as <see cref="PlanPath"/>.</summary>
    public required string FitOutPath { get; init; }

    /// <summary>Where it is.</summary>
    public required LocatedPoint Position { get; init; }

    /// <summary>Bare ground above sea level in metres, where the plan gives it.</summary>
    public Estimate? GroundHeightMetres { get; init; }

    /// <summary>Height of the antenna; null when unknown.</summary>
    public MountHeight? Height { get; init; }

    /// <summary>Whether the height is that of a correction, because the plan gives none.</summary>
    public bool HeightIsFitted { get; init; }

    /// <summary>What stands close around.</summary>
    public Surroundings Surroundings { get; init; } = new();

    /// <summary>Polarisation of the antenna.</summary>
    public Polarisation Polarisation { get; init; }

    /// <summary>Whether the antenna is inside a building.</summary>
    public bool Indoors { get; init; }

    /// <summary>What the station sends; null where nobody said.</summary>
    public TrafficRate? Traffic { get; init; }

    /// <summary>The site; null for a neighbour.</summary>
    public Site? Site { get; init; }

    /// <summary>The fit-out; null for a neighbour.</summary>
    public FitOut? FitOut { get; init; }

    /// <summary>The neighbour; null for a site.</summary>
    public Neighbour? Neighbour { get; init; }

    /// <summary>The station as a matrix of links sees it.</summary>
    public MatrixStation OnMatrix => new(Key, Subject, Name, Position.Point, IsSite);

    /// <summary>Whether it is a site of the plan.</summary>
    public bool IsSite => FitOut is not null;

    /// <summary>The station of a site with one of its fit-outs.</summary>
    public static LinkStation Of(Site site, FitOut fitOut)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(fitOut);
        return new()
        {
            Key = site.Key,
            Subject = $"{site.Key}/{fitOut.Key}",
            Name = site.Name,
            PlanPath = $"sites/{site.Key}",
            FitOutPath = $"sites/{site.Key}/fit-outs/{fitOut.Key}",
            Position = site.Position,
            GroundHeightMetres = site.GroundHeightMetres,
            Height = fitOut.Antenna.Height,
            Surroundings = site.Surroundings,
            Traffic = site.Traffic,
            Polarisation = fitOut.Antenna.Polarisation,
            Indoors = fitOut.Antenna.Indoors,
            Site = site,
            FitOut = fitOut,
        };
    }

    /// <summary>The station of a neighbour.</summary>
    public static LinkStation Of(Neighbour neighbour)
    {
        ArgumentNullException.ThrowIfNull(neighbour);
        return new()
        {
            Key = neighbour.Key,
            Subject = neighbour.Key,
            Name = neighbour.Name,
            PlanPath = $"neighbours/{neighbour.Key}",
            FitOutPath = $"neighbours/{neighbour.Key}",
            Position = neighbour.Position,
            GroundHeightMetres = neighbour.GroundHeightMetres,
            Height = neighbour.Height,
            Surroundings = neighbour.Surroundings,
            Polarisation = neighbour.Polarisation,
            Neighbour = neighbour,
        };
    }

    /// <summary>The subject.</summary>
    public override string ToString() => Subject;
}
