using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Mastwright.Cli.Output;
using Mastwright.Geodesy;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Storage.Profiles;

namespace Mastwright.Cli.Commands;

/// <summary>A path without a plan: a profile from a file, everything else from the command line.</summary>
internal sealed class BarePath
{
    private readonly Option<string> profile = new("--profile") { HelpName = "FILE", Description = "Profile as CSV: distance_km,height_m,cover_m,zone." };
    private readonly Option<Estimate?> frequency = Options.Quantity("--frequency", Dimension.Frequency, "Frequency, such as '868 MHz'.");
    private readonly Option<Estimate?> transmitterHeight = Options.Quantity("--tx-height", Dimension.Length, "Height of the first antenna above ground, such as '12 m'.");
    private readonly Option<Estimate?> receiverHeight = Options.Quantity("--rx-height", Dimension.Length, "Height of the second antenna above ground.");
    private readonly Option<string> polarisation = new("--polarisation") { Description = "vertical (default) or horizontal." };
    private readonly Option<double?> time = Share("--time", "Share of time p in percent, 1 to 50 (default 50).");
    private readonly Option<double?> location = Share("--location", "Share of places pL in percent, 1 to 99 (default 50).");
    private readonly Option<Estimate?> locationSigma = Options.Quantity("--sigma-location", Dimension.Ratio, "Standard deviation over places, such as '5.5 dB' (default 0 dB).");
    private readonly Option<double?> refractivity = Options.Plain("--n0", "Sea-level surface refractivity N0 in N-units (default 325).");
    private readonly Option<double?> gradient = Options.Plain("--dn", "Fall of refractivity ΔN in N-units/km (default 45).");
    private readonly Option<string> transmitterPosition = new("--tx-position") { HelpName = "LAT,LON", Description = "Place of the first antenna: LAT,LON." };
    private readonly Option<string> receiverPosition = new("--rx-position") { HelpName = "LAT,LON", Description = "Place of the second antenna: LAT,LON." };
    private readonly Option<Estimate?> coastTransmitter = Options.Quantity("--distance-to-coast-tx", Dimension.Length, "Distance over land from the first antenna to the sea along the path (default 500 km, 0 at sea).");
    private readonly Option<Estimate?> coastReceiver = Options.Quantity("--distance-to-coast-rx", Dimension.Length, "The same for the second antenna.");

    private Option[] All =>
    [
        profile, frequency, transmitterHeight, receiverHeight, polarisation, time, location, locationSigma, refractivity, gradient,
        transmitterPosition, receiverPosition, coastTransmitter, coastReceiver,
    ];

    public BarePath() => polarisation.AcceptOnlyFromAmong("vertical", "horizontal");

    public void AddTo(Command command)
    {
        foreach (Option option in All)
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The first option of a bare path that was given; null when there is none.</summary>
    public string? Given(ParseResult parsed) => All.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false })?.Name;

    /// <summary>Whether the command line asks for this kind of path.</summary>
    public bool IsAsked(ParseResult parsed) => parsed.GetResult(profile) is not null;

    public int Run(ParseResult parsed, bool json)
    {
        List<string> problems = [];
        PathProfile? path = null;
        if (ProfileCsv.TryRead(parsed.GetValue(profile)!, out path, out IReadOnlyList<string> profileProblems))
        {
            P1812Input? input = Input(parsed, path!, problems);
            if (input is not null)
            {
                PathLossPrediction prediction = PathLoss.Predict(path!, input);
                Console.Out.WriteLine(json ? Json(path!, input, prediction) : BarePathText.Write(path!, input, prediction));
                return ExitCode.Fine;
            }
        }

        foreach (string problem in profileProblems.Concat(problems))
        {
            Console.Error.WriteLine(problem);
        }

        return ExitCode.BadInput;
    }

    private P1812Input? Input(ParseResult parsed, PathProfile path, List<string> problems)
    {
        double frequencyHz = Needed(parsed, frequency, "such as '868 MHz'", problems);
        double transmitter = Needed(parsed, transmitterHeight, "such as '12 m'", problems);
        double receiver = Needed(parsed, receiverHeight, "such as '12 m'", problems);
        GeoPoint? from = Place(parsed, transmitterPosition, problems);
        GeoPoint? to = Place(parsed, receiverPosition, problems);
        if (problems.Count > 0)
        {
            return null;
        }

        try
        {
            return new P1812Input
            {
                FrequencyHz = frequencyHz,
                TransmitterHeightMetres = transmitter,
                ReceiverHeightMetres = receiver,
                TimePercent = parsed.GetValue(time) ?? 50,
                LocationPercent = parsed.GetValue(location) ?? 50,
                LocationSigmaDb = parsed.GetValue(locationSigma)?.Median ?? 0,
                Polarisation = string.Equals(parsed.GetValue(polarisation), "horizontal", StringComparison.Ordinal) ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
                RefractivityGradient = parsed.GetValue(gradient) ?? EffectiveEarth.DefaultGradient,
                SurfaceRefractivity = parsed.GetValue(refractivity) ?? P1812Input.DefaultSurfaceRefractivity,
                PathCentreLatitudeDegrees = PathCentre.LatitudeDegrees(from!.Value, to!.Value, path.LengthMetres),
                DistanceToCoastTransmitterMetres = parsed.GetValue(coastTransmitter)?.Median,
                DistanceToCoastReceiverMetres = parsed.GetValue(coastReceiver)?.Median,
            };
        }
        catch (ArgumentOutOfRangeException fault)
        {
            problems.Add($"{OptionOf(fault.ParamName)}: {fault.Message.Split(" (Parameter", StringSplitOptions.None)[0].Split('\n')[0]}");
            return null;
        }
    }

    /// <summary>The option that gives a value of the prediction's input.</summary>
    private string OptionOf(string? input) => input switch
    {
        nameof(P1812Input.FrequencyHz) => frequency.Name,
        nameof(P1812Input.TransmitterHeightMetres) => transmitterHeight.Name,
        nameof(P1812Input.ReceiverHeightMetres) => receiverHeight.Name,
        nameof(P1812Input.TimePercent) => time.Name,
        nameof(P1812Input.LocationPercent) => location.Name,
        nameof(P1812Input.LocationSigmaDb) => locationSigma.Name,
        nameof(P1812Input.RefractivityGradient) or "refractivityGradient" => gradient.Name,
        nameof(P1812Input.SurfaceRefractivity) => refractivity.Name,
        nameof(P1812Input.DistanceToCoastTransmitterMetres) => coastTransmitter.Name,
        nameof(P1812Input.DistanceToCoastReceiverMetres) => coastReceiver.Name,
        _ => profile.Name,
    };

    private static string Json(PathProfile path, P1812Input input, PathLossPrediction prediction) =>
        JsonDocumentWriter.Write("path-profile", 1, writer =>
        {
            writer.Number("distance-metres", path.LengthMetres);
            writer.Number("frequency-hertz", input.FrequencyHz);
            writer.Number("basic-transmission-loss-db", prediction.LossDb);
            writer.WriteString("method", prediction.Method);
            writer.Strings("outside-range", prediction.RangeProblems.Select(problem => problem.Text));
            writer.Ledger("ledger", prediction.Ledger);
            writer.P1812("p1812", prediction.P1812Result);
        });

    private static double Needed(ParseResult parsed, Option<Estimate?> option, string example, List<string> problems)
    {
        if (parsed.GetValue(option) is { } value)
        {
            if (!value.IsExact)
            {
                problems.Add($"{option.Name}: a bare path takes one value and no range");
            }

            return value.Median;
        }

        problems.Add($"{option.Name} is missing; a bare path needs it, {example}");
        return 0;
    }

    private static GeoPoint? Place(ParseResult parsed, Option<string> option, List<string> problems)
    {
        if (parsed.GetValue(option) is not { } text)
        {
            problems.Add($"{option.Name} is missing; a bare path needs it, such as '46.40,-18.70'");
            return null;
        }

        if (PositionText.TryParse(text, out LocatedPoint position, out string problem))
        {
            return position.Point;
        }

        problems.Add($"{option.Name}: {problem}");
        return null;
    }

    private static Option<double?> Share(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "PERCENT",
        CustomParser = result =>
        {
            string text = result.Tokens[0].Value.TrimEnd('%').TrimEnd();
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value is > 0 and < 100)
            {
                return value;
            }

            result.AddError($"{name}: '{result.Tokens[0].Value}' is not a percentage between 0 and 100; write a plain number such as 50");
            return null;
        },
    };
}
