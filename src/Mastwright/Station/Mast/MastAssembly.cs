using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Mast;

/// <summary>Finds the measures of a mast's tubes and the height that it stands at; what is missing is named.</summary>
internal sealed class MastAssembly
{
    private readonly MastInput _input;
    private readonly MastFit _mast;

    internal MastAssembly(MastInput input)
    {
        _input = input;
        _mast = input.Mast!;
        Tubes = [.. FindTubes()];
        AntennaLengthMetres = AntennaLength();
        BracketHeightMetres = BracketHeight();
    }

    internal ImmutableArray<StandingTube> Tubes { get; }

    /// <summary>Height of the upper bracket above the ground in metres; null when unknown.</summary>
    internal double? BracketHeightMetres { get; }

    /// <summary>Length of the antenna over all in metres; null when unknown.</summary>
    internal double? AntennaLengthMetres { get; }

    internal List<string> Missing { get; } = [];

    internal List<Assumption> Assumptions { get; } = [];

    internal List<Finding> Findings { get; } = [];

    /// <summary>Height of the antenna's centre above the upper bracket in metres: on top of the mast, or where it hangs beside it.</summary>
    internal double? AntennaCentreMetres =>
        _input.Antenna.SideMountOffsetMetres is null
            ? _mast.FreeLengthMetres + ((AntennaLengthMetres ?? 0) / 2)
            : _input.AntennaHeightMetres?.Median - BracketHeightMetres;

    /// <summary>The mast as it stands, as far as it is known.</summary>
    internal MastFigure Figure() => new()
    {
        Tubes = [.. Tubes.Select(tube => new FigureTube(tube.Number, tube.FootMetres, tube.TopMetres, tube.Section.OuterDiameterMetres, tube.Measures))],
        FreeLengthMetres = _mast.FreeLengthMetres,
        BracketHeightMetres = BracketHeightMetres,
        BracketSpacingMetres = _mast.BracketSpacingMetres,
        AntennaFootMetres = AntennaCentreMetres - ((AntennaLengthMetres ?? 0) / 2),
        AntennaLengthMetres = AntennaLengthMetres,
        AntennaDiameterMetres = _input.Antenna.DiameterMetres,
        SideMountMetres = _input.Antenna.SideMountOffsetMetres,
        Box = _mast.Box,
        Cable = _mast.Cable,
        Guys = _mast.Guys,
    };

    private IEnumerable<StandingTube> FindTubes()
    {
        if (_mast.Tubes.IsEmpty)
        {
            Missing.Add("tubes");
        }

        double foot = 0;
        int number = 0;
        foreach (MastTube tube in _mast.Tubes)
        {
            number++;
            if (Find(tube, number, foot) is { } standing)
            {
                yield return standing;
            }

            foot += tube.LengthMetres;
        }
    }

    private StandingTube? Find(MastTube tube, int number, double foot)
    {
        StructureCatalogue rows = _input.Catalogue.Structure;
        TubeRow? size = tube.Size.Length > 0 ? rows.Tubes.Find(tube.Size) : null;
        TubeGradeRow? grade = rows.Grades.Find(tube.Grade);
        if (tube.Size.Length > 0 && size is null)
        {
            Findings.Add(MastFindings.NotListed(tube.PlanPath, "tube", tube.Size, rows.Tubes));
        }

        if (tube.Grade.Length > 0 && grade is null)
        {
            Findings.Add(MastFindings.NotListed(tube.PlanPath, "grade", tube.Grade, rows.Grades));
        }

        if (tube.Grade.Length == 0)
        {
            Missing.Add(FormattableString.Invariant($"tubes/{number}/grade"));
        }

        double? diameter = size?.OuterDiameterMetres ?? tube.OuterDiameterMetres;
        double? wall = size?.WallMetres ?? tube.WallMetres;
        if (diameter is not { } outer || wall is not { } thick || grade is null || TubeSection.Problem(outer, thick) is not null)
        {
            return null;
        }

        if (size is not null && size.Material != grade.Material)
        {
            Findings.Add(MastFindings.MaterialsDiffer(tube.PlanPath, size, grade));
            return null;
        }

        if (grade.WeldShare < 1 && tube.WeldedAtFoot is null)
        {
            Assumptions.Add(new("tube-not-welded", "no weld at the foot of an aluminium tube, which would soften it", "assumed", tube.PlanPath + "/welded"));
        }

        return new(number, tube, new(outer, thick), grade, foot, size is null ? tube.PlanPath : "catalogue " + size.Key + ": " + size.Source);
    }

    private double? AntennaLength()
    {
        if (_input.Antenna.TotalLengthMetres is { } total)
        {
            return total;
        }

        if (_input.Antenna.LengthMetres is { } radiating)
        {
            Assumptions.Add(new("antenna-total-length", "the antenna no longer than its radiating part", "assumed", _input.AntennaPath + "/total-length"));
            return radiating;
        }

        Missing.Add("antenna/total-length");
        return null;
    }

    private double? BracketHeight()
    {
        if (_mast.BracketHeightMetres is { } given)
        {
            return given;
        }

        if (_input.AntennaHeightMetres is { } antenna && AntennaLengthMetres is { } length && _input.Antenna.SideMountOffsetMetres is null)
        {
            double height = Math.Max(0, antenna.Median - (length / 2) - _mast.FreeLengthMetres);
            Assumptions.Add(new(
                "bracket-height", FormattableString.Invariant($"upper bracket {height:0.0} m above the ground, from the antenna's height down"), "assumed", _input.MastPath + "/bracket/height"));
            return height;
        }

        Missing.Add("bracket/height");
        return null;
    }
}
