using System.Collections.Immutable;
using Mastwright.Station.Antenna;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>The wind on everything that stands free: tubes, antenna, box and cable, bare or with ice.</summary>
/// <remarks>
/// Each part takes the pressure at its own top (EN 1991-1-4, clause 7.9.2 (5) for upright cylinders). Nothing shields anything, and the end-effect factor is
/// one: neither makes the force too small.
/// </remarks>
internal sealed class MastLoads(MastInput input, MastAssembly assembly, WindModel wind, IceRow? ice)
{
    private readonly double _pressureShare = ice is null ? 1 : input.Wind.IceWindShare ?? 1;
    private readonly double _iceDensity = input.Wind.IceDensity ?? ice?.DensityKilogramsPerCubicMetre ?? 0;

    /// <summary>What stops the antenna from being counted; empty when nothing does.</summary>
    internal string Missing { get; private set; } = "";

    internal ImmutableArray<MastLoad> All() => [.. Tubes(), .. Antenna(), .. Box(), .. Cable(), .. Guys()];

    private IEnumerable<MastLoad> Tubes()
    {
        foreach (StandingTube tube in assembly.Tubes)
        {
            double bare = tube.Section.OuterDiameterMetres;
            (double force, string note) = Cylinder(bare, tube.Tube.LengthMetres, tube.TopMetres, CylinderDrag.GalvanisedRoughnessMetres, null);
            yield return new(
                FormattableString.Invariant($"tube-{tube.Number}"), FormattableString.Invariant($"wind on tube {tube.Number}, {tube.Measures}"), force,
                tube.FootMetres, tube.TopMetres, tube.Tube.PlanPath + "; EN 1991-1-4, clause 7.9", note);
        }
    }

    private IEnumerable<MastLoad> Antenna()
    {
        AntennaFit antenna = input.Antenna;
        if (assembly.AntennaCentreMetres is not { } centre)
        {
            Missing = "antenna/height";
            yield break;
        }

        double half = (assembly.AntennaLengthMetres ?? 0) / 2;
        (double Force, string Note)? rod = antenna.DiameterMetres is { } diameter && assembly.AntennaLengthMetres is { } length
            ? Cylinder(diameter, length, centre + half, CylinderDrag.GalvanisedRoughnessMetres, antenna.DragCoefficient)
            : null;
        (double Force, string Note)? face = antenna.WindAreaSquareMetres is { } area
            ? Flat(area, centre + half, antenna.DragCoefficient ?? WindDefaults.FlatCoefficient)
            : null;
        if (rod is null && (face is null || ice is not null))
        {
            Missing = face is null ? "antenna/wind-area, or antenna/diameter and antenna/total-length" : "antenna/diameter and antenna/total-length, to put ice on it";
            yield break;
        }

        // A given area speaks of the bare antenna; with ice the larger counts.
        (double force, string note) = face is { } flat && (ice is null || rod is null || flat.Force > rod.Value.Force) ? flat : rod!.Value;
        yield return new("antenna", "wind on the antenna", force, centre - half, centre + half, input.AntennaPath, note);
    }

    private IEnumerable<MastLoad> Box()
    {
        if (input.Mast!.Box is { } box && box.CentreMetres > 0)
        {
            double coat = Coat(0.03) - 0.03;
            double area = (box.WidthMetres + coat) * (box.HeightMetres + coat);
            (double force, string note) = Flat(area, box.CentreMetres + (box.HeightMetres / 2), box.DragCoefficient ?? WindDefaults.FlatCoefficient);
            yield return new(
                "box", "wind on the box", force, box.CentreMetres, box.CentreMetres, input.MastPath + "/box", note);
        }
    }

    private IEnumerable<MastLoad> Cable()
    {
        if (input.Mast!.Cable is { } cable)
        {
            double top = Math.Min(cable.LengthMetres ?? input.Mast.FreeLengthMetres, input.Mast.FreeLengthMetres);
            (double force, string note) = Cylinder(cable.DiameterMetres, top, top, CylinderDrag.GalvanisedRoughnessMetres, null);
            yield return new("cable", "wind on the cable", force, 0, top, input.MastPath + "/cable", note);
        }
    }

    /// <summary>Half of the wind on the ropes, as if it met each square on.</summary>
    private IEnumerable<MastLoad> Guys()
    {
        if (input.Mast!.Guys is { } guys)
        {
            (double force, string note) = Cylinder(guys.DiameterMetres, guys.LengthMetres, guys.HeightMetres, CylinderDrag.GalvanisedRoughnessMetres, CylinderDrag.Subcritical);
            int count = guys.Count ?? GuyLevel.UsualCount;
            yield return new(
                "guy-wind", "half of the wind on the guys", force * count / 2, guys.HeightMetres, guys.HeightMetres, input.MastPath + "/guys", FormattableString.Invariant($"{count} guys, each {note}"));
        }
    }

    private (double Force, string Note) Cylinder(double bareMetres, double lengthMetres, double topMetres, double roughness, double? coefficient)
    {
        double pressure = PressureAt(topMetres);
        double diameter = Coat(bareMetres);
        double reynolds = CylinderDrag.Reynolds(diameter, pressure, wind.AirDensity);
        double drag = coefficient ?? (ice is null ? CylinderDrag.Coefficient(reynolds, diameter, roughness) : CylinderDrag.Subcritical);
        string iced = ice is null ? "" : $" with ice {ice.Key}";
        return (pressure * drag * diameter * lengthMetres, FormattableString.Invariant(
            $"{pressure:0} Pa · {drag:0.00} · {diameter * 1000:0.#} mm{iced} · {lengthMetres:0.##} m; Re = {reynolds / 1e5:0.00}·10⁵"));
    }

    private (double Force, string Note) Flat(double area, double topMetres, double drag)
    {
        double pressure = PressureAt(topMetres);
        return (pressure * drag * area, FormattableString.Invariant($"{pressure:0} Pa · {drag:0.00} · {area:0.####} m²"));
    }

    private double PressureAt(double topMetres) => _pressureShare * wind.PressurePa(assembly.BracketHeightMetres!.Value + topMetres);

    private double Coat(double diameterMetres) => ice is null ? diameterMetres : IceCoat.On(ice, diameterMetres, _iceDensity).DiameterMetres;
}
