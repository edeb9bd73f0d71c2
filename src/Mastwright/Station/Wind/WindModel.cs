using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Wind;

/// <summary>A basic wind that a form accepts: the pressure at any height, with its ledger, and the factors on the force.</summary>
public sealed class WindModel
{
    private readonly double _basicPa;
    private readonly WindStep _basic;
    private readonly Func<double, ImmutableArray<WindStep>> _steps;

    internal WindModel(WindStep basic, Func<double, ImmutableArray<WindStep>> steps)
    {
        _basic = basic;
        _basicPa = basic.Factor;
        _steps = steps;
    }

    /// <summary>The form.</summary>
    public required WindForm Form { get; init; }

    /// <summary>The form in words: document and edition.</summary>
    public string FormName => NameOf(Form);

    /// <summary>Density in kg/m³ that gives the speed of the pressure, for Reynolds numbers.</summary>
    public required double AirDensity { get; init; }

    /// <summary>Structural factor on the force.</summary>
    public required double StructuralFactor { get; init; }

    /// <summary>Partial factor for wind on the force.</summary>
    public required double LoadFactor { get; init; }

    /// <summary>The wind without any load factor on it, in a word: "characteristic wind", or "ultimate wind", which is rare enough to have none.</summary>
    public string PlainName => Form == WindForm.Eurocode ? "characteristic wind" : "ultimate wind";

    /// <summary>Factor on weight that goes with the load factor for wind.</summary>
    public double WeightFactor => Form == WindForm.Eurocode ? WindDefaults.EurocodeWeightFactor : WindDefaults.AsceWeightFactor;

    /// <summary>Where the structural factor comes from.</summary>
    public required string StructuralSource { get; init; }

    /// <summary>Where the partial factor comes from.</summary>
    public required string LoadFactorSource { get; init; }

    /// <summary>Every value that was assumed.</summary>
    public required ImmutableArray<Assumption> Assumptions { get; init; }

    /// <summary>Greatest height in metres that the form holds for.</summary>
    public static double GreatestHeightMetres => EurocodeWind.GreatestHeightMetres;

    /// <summary>Document and edition of a form.</summary>
    public static string NameOf(WindForm form) => form == WindForm.Eurocode ? "EN 1991-1-4:2005+A1:2010" : "ASCE/SEI 7-16";

    /// <summary>Pressure in pascals at a height.</summary>
    /// <param name="heightMetres">Height above the ground in metres, 0 to 200.</param>
    public double PressurePa(double heightMetres)
    {
        double pressure = _basicPa;
        foreach (WindStep step in _steps(heightMetres))
        {
            pressure *= step.Factor;
        }

        return pressure;
    }

    /// <summary>How the pressure at a height comes about: each factor as the change that it makes.</summary>
    /// <param name="heightMetres">Height above the ground in metres, 0 to 200.</param>
    /// <param name="where">What stands at that height, for the title.</param>
    public Ledger Ledger(double heightMetres, string where)
    {
        ImmutableArray<LedgerLine>.Builder lines = ImmutableArray.CreateBuilder<LedgerLine>();
        lines.Add(new(_basic.Code, _basic.Label, _basicPa, _basic.Source, _basic.Note));
        double pressure = _basicPa;
        foreach (WindStep step in _steps(heightMetres))
        {
            lines.Add(new(step.Code, step.Label, pressure * (step.Factor - 1), step.Source, step.Note));
            pressure *= step.Factor;
        }

        string title = FormattableString.Invariant($"wind pressure at {heightMetres:0.0} m, {where}");
        return Findings.Ledger.SummingTo(pressure, title, "Pa", lines.DrainToImmutable());
    }
}
