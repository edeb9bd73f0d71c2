using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>Finds the numbers of each part of a feed in the plan and the catalogue.</summary>
internal sealed class FeedStages(double frequencyHz, StationCatalogue catalogue, string planPath)
{
    internal ImmutableArray<FeedStage>.Builder Stages { get; } = ImmutableArray.CreateBuilder<FeedStage>();

    internal List<Assumption> Assumptions { get; } = [];

    internal List<Finding> Findings { get; } = [];

    internal void Add(FeedPart part)
    {
        int number = Stages.Count + 1;
        switch (part)
        {
            case FeedLine line:
                AddLine(line, number);
                break;
            case LossyPart lossy:
                AddLossy(lossy, number);
                break;
            case FeedAmplifier amplifier:
                AddAmplifier(amplifier, number);
                break;
            default:
                throw new ArgumentException($"A feed part of type {part.GetType().Name} is not known.", nameof(part));
        }
    }

    private void AddLine(FeedLine line, int number)
    {
        LineTypeRow? row = catalogue.LineType(line.LineType);
        if (row is null)
        {
            Findings.Add(FeedFindings.LineTypeUnknown(Place(line), line.LineType, catalogue));
            Stages.Add(Passive(Code("line", number), line.LineType + " line", null, line.PlanPath, ""));
            return;
        }

        if (line.TemperatureCelsius is null)
        {
            Assumptions.Add(new("line-temperature", Text($"feed line at {row.ReferenceTemperatureCelsius:0.#} °C, the temperature of its table"), "catalogue " + row.Key, line.PlanPath + "/temperature"));
        }

        if (row.Extrapolates(frequencyHz))
        {
            Assumptions.Add(new("line-attenuation-extrapolated",
                Text($"attenuation of {row.Key} at {frequencyHz / 1e6:0.###} MHz from its published points between {row.Fit.LowestHz / 1e6:0.###} and {row.Fit.HighestHz / 1e6:0.###} MHz, by k1·√f + k2·f"),
                row.Source, line.PlanPath));
        }

        if (row.Fit.WorstResidual > AttenuationFit.AllowedResidual)
        {
            Findings.Add(FeedFindings.LineTableInconsistent(Place(line), row));
        }

        double perHundred = row.DbPer100Metres(frequencyHz, line.TemperatureCelsius);
        Estimate loss = line.LengthMetres.Map(metres => Math.Max(0, metres) * perHundred / 100);
        Stages.Add(Passive(Code("line", number), row.Name, loss, "catalogue " + row.Key + ": " + row.Source,
            Text($"{line.LengthMetres} m at {perHundred:0.00} dB/100 m")));
    }

    private void AddLossy(LossyPart part, int number)
    {
        string key = PartLossRow.KeyOf(part.Kind);
        string label = part.Name.Length > 0 ? part.Name : key.Replace('-', ' ');
        Estimate? each = part.LossDb;
        string source = part.PlanPath;
        if (each is null && catalogue.Part(part.Kind) is { } row)
        {
            each = row.LossDb;
            source = "catalogue " + row.Key + ": " + row.Source;
            Assumptions.Add(new("part-loss-" + key, Text($"{label}: {row.LossDb} dB each"), row.Source, part.PlanPath + "/loss"));
        }

        if (each is null)
        {
            Findings.Add(FeedFindings.PartLossUnknown(Place(part), label));
        }

        Stages.Add(Passive(Code(key, number), label, each?.Map(db => Math.Max(0, db) * part.Count), source,
            part.Count > 1 ? Text($"{part.Count} of {each} dB") : ""));
    }

    private void AddAmplifier(FeedAmplifier amplifier, int number)
    {
        string label = amplifier.Name.Length > 0 ? amplifier.Name : "amplifier";
        Estimate? bypass = amplifier.BypassLossDb is { } given ? Estimate.Exactly(given) : null;
        if (bypass is null && (amplifier.ReceiveGainDb is null || amplifier.TransmitGainDb is null)
            && catalogue.Part(PartLossRow.AmplifierBypass) is { } row)
        {
            bypass = row.LossDb;
            Assumptions.Add(new("amplifier-bypass", Text($"{label}: {row.LossDb} dB in the direction it does not amplify"), row.Source, amplifier.PlanPath + "/bypass-loss"));
        }

        if (bypass is null && (amplifier.ReceiveGainDb is null || amplifier.TransmitGainDb is null))
        {
            Findings.Add(FeedFindings.PartLossUnknown(Place(amplifier), label));
        }

        if (amplifier is { ReceiveGainDb: not null, ReceiveNoiseFigureDb: null })
        {
            Findings.Add(FeedFindings.AmplifierNoiseUnknown(Place(amplifier), label));
        }

        if (amplifier is { TransmitGainDb: not null, TransmitMaximumDbm: null })
        {
            Findings.Add(FeedFindings.AmplifierLimitUnknown(Place(amplifier), label));
        }

        Estimate? loss = bypass?.Map(db => -Math.Max(0, db));
        Stages.Add(new()
        {
            Code = Code("amplifier", number),
            Label = label,
            TransmitGainDb = amplifier.TransmitGainDb ?? loss,
            ReceiveGainDb = amplifier.ReceiveGainDb ?? loss,
            TransmitMaximumDbm = amplifier.TransmitGainDb is null ? null : amplifier.TransmitMaximumDbm,
            AmplifiesReception = amplifier.ReceiveGainDb is not null,
            AmplifiesTransmission = amplifier.TransmitGainDb is not null,
            AmplifierNoiseFigureDb = amplifier.ReceiveNoiseFigureDb,
            Source = amplifier.PlanPath,
        });
    }

    internal static FeedStage Passive(string code, string label, Estimate? lossDb, string source, string note)
    {
        Estimate? gain = lossDb?.Map(db => -db);
        return new() { Code = code, Label = label, TransmitGainDb = gain, ReceiveGainDb = gain, Source = source, Note = note };
    }

    private string Place(FeedPart part) => part.PlanPath.Length > 0 ? part.PlanPath : planPath;

    private static string Code(string name, int number) => Text($"feed-{number}-{name}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
