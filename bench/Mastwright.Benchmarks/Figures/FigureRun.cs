using System.Globalization;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks.Figures;

/// <summary>Measures every figure, prints it beside its bound and writes the result.</summary>
internal static class FigureRun
{
    /// <summary>Runs to the end, whatever is found.</summary>
    /// <returns>Whether every bound holds.</returns>
    internal static bool Run(string demoFolder, string? program, string? resultsFolder, string commit)
    {
        Calibration calibration = new();
        calibration.Time();
        List<Figure> figures = [];
        IEnumerable<Figure> all = P1812Figures.Measure().Concat(GroundFigures.Measure(demoFolder)).Concat(NetworkFigures.Measure(demoFolder)).Concat(NetworkFigures.MeasureAir()).Concat(RecordFigures.Measure());
        if (program is not null)
        {
            all = all.Concat(ProcessFigures.Measure(program, demoFolder));
        }

        foreach (Figure figure in all)
        {
            calibration.Time();
            figures.Add(figure);
        }

        double step = calibration.Nanoseconds;
        Print(figures, step);
        bool isOk = figures.TrueForAll(figure => figure.IsOk && figure.IsOkInSteps(step));
        if (resultsFolder is not null)
        {
            ResultFile.Write(Path.Combine(resultsFolder, Machine.Date() + ".json"), new()
            {
                ["version"] = 1,
                ["date"] = Machine.Date(),
                ["machine"] = Machine.ToJson(commit),
                ["calibration_ns_a_step"] = Math.Round(step, 3),
                ["calibration_reference_ns_a_step"] = Calibration.ReferenceNanoseconds,
                ["ok"] = isOk,
                ["figures"] = new JsonArray([.. figures.Select(figure => (JsonNode)figure.ToJson(step))]),
            });
        }

        return isOk;
    }

    private static void Print(List<Figure> figures, double step)
    {
        Console.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Machine.Processor}, {Environment.ProcessorCount} threads, vectors of {Machine.VectorBits} bits, load {Machine.Load():0.0}"));
        Console.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"Calibration: {step:0.00} ns a step (bounds were set at {Calibration.ReferenceNanoseconds:0.00}). In brackets: steps."));
        Console.Out.WriteLine();
        Console.Out.WriteLine($"{"figure",-50}{"median",12}{"bound",12}{"least",10}");
        foreach (Figure figure in figures)
        {
            string verdict = (figure.IsOk, figure.IsOkInSteps(step)) switch
            {
                (true, true) => "ok",
                (false, true) => "MISSED in time, holds in steps: a slow or busy machine",
                (true, false) => "MISSED in steps, holds in time: a fast machine",
                _ => "MISSED",
            };
            Console.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{figure.Name,-50}{Short(figure.Value) + " " + figure.Unit,12}{Short(figure.Bound) + " " + figure.Unit,12}{Short(figure.Least),10}  {verdict}{Steps(figure, step)}"));
        }

        Console.Out.WriteLine();
    }

    private static string Steps(Figure figure, double step) => figure.Steps(step) is double steps
        ? $" ({Short(steps)} of {Short(figure.StepsBound!.Value)})"
        : "";

    private static string Short(double value) => value.ToString(value < 10 ? "0.00" : value < 100 ? "0.0" : "#,0", CultureInfo.InvariantCulture);
}
