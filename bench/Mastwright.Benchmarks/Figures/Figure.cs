using System.Globalization;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks.Figures;

/// <summary>One measured figure beside its bound.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Unit">"ns", "µs", "ms" or "MB".</param>
/// <param name="Value">Median of the repetitions.</param>
/// <param name="Bound">Largest value that is accepted, in the same unit.</param>
/// <param name="Least">Smallest of the repetitions.</param>
/// <param name="Repetitions">How often it was measured.</param>
internal sealed record Figure(string Name, string Unit, double Value, double Bound, double Least, int Repetitions)
{
    /// <summary>Nanoseconds in one unit; null where the unit is no time.</summary>
    internal double? NanosecondsAUnit => Unit switch
    {
        "ns" => 1,
        "µs" => 1e3,
        "ms" => 1e6,
        _ => null,
    };

    internal bool IsOk => Value <= Bound;

    /// <summary>The value in steps of the calibration loop; null where it is no time.</summary>
    internal double? Steps(double calibrationNanoseconds) => Value * NanosecondsAUnit / calibrationNanoseconds;

    /// <summary>The bound in steps of the calibration loop, as fast as on the machine that the bounds were set on.</summary>
    internal double? StepsBound => Bound * NanosecondsAUnit / Calibration.ReferenceNanoseconds;

    /// <summary>Whether the bound holds relative to the calibration loop; true for what is no time.</summary>
    internal bool IsOkInSteps(double calibrationNanoseconds) => !(Steps(calibrationNanoseconds) > StepsBound);

    internal JsonObject ToJson(double calibrationNanoseconds) => new()
    {
        ["name"] = Name,
        ["unit"] = Unit,
        ["value"] = Round(Value),
        ["bound"] = Bound,
        ["least"] = Round(Least),
        ["repetitions"] = Repetitions,
        ["calibration_steps"] = Steps(calibrationNanoseconds) is double steps ? Round(steps) : null,
        ["calibration_steps_bound"] = StepsBound is double bound ? Round(bound) : null,
        ["ok"] = IsOk && IsOkInSteps(calibrationNanoseconds),
    };

    private static double Round(double value) => double.Parse(value.ToString("G5", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
