using System.Collections.Immutable;

namespace Mastwright.Station.Mast;

/// <summary>A stepped tube held fast at its upper bracket and free above: moments, lean and way of the top under forces across it.</summary>
/// <remarks>
/// Linear, small angles (Bernoulli): good while the top moves by less than about a tenth of the length. The deformation between and below the brackets, the
/// give of the wall and the weight's own moment in the leaning mast are left out: the real top moves further.
/// </remarks>
public sealed class Cantilever
{
    private static readonly double GaussPoint = 1 / Math.Sqrt(3);

    private readonly ImmutableArray<MastLoad> _loads;
    private readonly double[] _breaks;
    private readonly ImmutableArray<(double TopMetres, double Stiffness)> _tubes;

    /// <summary>Makes the cantilever.</summary>
    /// <param name="tubes">Length in metres and bending stiffness E·I in N·m² of each tube, from the bracket up; all greater than zero.</param>
    /// <param name="loads">The forces.</param>
    public Cantilever(IEnumerable<(double LengthMetres, double StiffnessNewtonSquareMetres)> tubes, ImmutableArray<MastLoad> loads)
    {
        ArgumentNullException.ThrowIfNull(tubes);
        _loads = loads;
        double top = 0;
        List<(double, double)> steps = [];
        foreach ((double length, double stiffness) in tubes)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length, nameof(tubes));
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stiffness, nameof(tubes));
            top += length;
            steps.Add((top, stiffness));
        }

        _tubes = [.. steps];
        LengthMetres = top;
        _breaks = [.. steps.Select(step => step.Item1).Concat(loads.SelectMany(load => new[] { load.FromMetres, load.ToMetres })).Append(0).Where(at => at >= 0 && at <= top).Distinct().Order()];
    }

    /// <summary>Free length in metres.</summary>
    public double LengthMetres { get; }

    /// <summary>Force across the mast above a height, in newtons.</summary>
    public double ShearNewtons(double heightMetres) => _loads.Sum(load => load.Above(heightMetres));

    /// <summary>Bending moment at a height above the bracket, in N·m.</summary>
    public double MomentNewtonMetres(double heightMetres) => _loads.Sum(load => load.MomentAt(heightMetres));

    /// <summary>Lean of the mast at a height, in radians.</summary>
    public double SlopeRadians(double heightMetres) => Integral(heightMetres, (at, moment) => moment);

    /// <summary>Way of the mast across at a height, in metres.</summary>
    public double DeflectionMetres(double heightMetres) => Integral(heightMetres, (at, moment) => moment * (heightMetres - at));

    /// <summary>∫ f(x, M(x))/(E·I) from the bracket to a height: between two breaks f is at most cubic, so that two Gauss points are exact.</summary>
    private double Integral(double heightMetres, Func<double, double, double> of)
    {
        double sum = 0;
        for (int i = 0; i + 1 < _breaks.Length && _breaks[i] < heightMetres; i++)
        {
            double from = _breaks[i];
            double to = Math.Min(_breaks[i + 1], heightMetres);
            double half = (to - from) / 2;
            double middle = (from + to) / 2;
            double low = middle - (half * GaussPoint);
            double high = middle + (half * GaussPoint);
            sum += half * (of(low, MomentNewtonMetres(low)) + of(high, MomentNewtonMetres(high))) / StiffnessAt(middle);
        }

        return sum;
    }

    private double StiffnessAt(double heightMetres)
    {
        foreach ((double top, double stiffness) in _tubes)
        {
            if (heightMetres <= top)
            {
                return stiffness;
            }
        }

        return _tubes[^1].Stiffness;
    }
}
