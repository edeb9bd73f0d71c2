using System.Globalization;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Prints figures, each beside its bound, and remembers whether one was missed.</summary>
internal sealed class ReachReport
{
    /// <summary>Whether every bound holds so far.</summary>
    internal bool IsOk { get; private set; } = true;

    /// <summary>What the figures are measured on.</summary>
    internal static void Head() => Console.Out.WriteLine(Text(
        $"{Machine.Processor}, {Environment.ProcessorCount} threads, vectors of {AreaSweep.VectorBits} bits, load {Machine.Load():0.0}"));

    /// <summary>Prints a heading.</summary>
    internal static void Part(string name)
    {
        Console.Out.WriteLine();
        Console.Out.WriteLine(Text($"{name} (load {Machine.Load():0.0})"));
    }

    /// <summary>Prints one figure with what it must not exceed.</summary>
    internal void Most(string name, double value, double bound, string unit, string note = "")
    {
        bool holds = value <= bound;
        IsOk &= holds;
        Line(name, value, unit, Text($"bound {Short(bound)}, {(holds ? "ok" : "MISSED")}"), note);
    }

    /// <summary>Prints one figure that has no bound.</summary>
    internal static void Plain(string name, double value, string unit, string note = "") => Line(name, value, unit, "no bound", note);

    private static void Line(string name, double value, string unit, string bound, string note) =>
        Console.Out.WriteLine(Text($"  {name,-58} {Short(value),9} {unit,-10} {bound}{(note.Length > 0 ? "; " + note : "")}"));

    private static string Short(double value) => value.ToString(
        Math.Abs(value) switch { 0 => "0", < 0.001 => "0.0e+0", < 0.1 => "0.0000", < 10 => "0.00", < 1000 => "0.0", _ => "#,0" }, CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
