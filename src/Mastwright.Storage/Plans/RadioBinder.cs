using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Quantities;
using Mastwright.Station.Radio;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a radio.</summary>
internal static class RadioBinder
{
    /// <summary>The radio of a fit-out.</summary>
    internal static RadioUnit Bind(PlanBinding binding, PlanNode node, string path)
    {
        if (!PartLookup.Find(binding, node, path, RadioKeys.Part, binding.RadioParts, "radios", out PlanNode? part)
            || MappingReader.Open(binding, node, path, RadioKeys.Shape, part) is not { } reader)
        {
            return new();
        }

        reader.Has(RadioKeys.Part);
        RadioUnit radio = Read(reader);
        reader.Done();
        return radio;
    }

    /// <summary>Checks a radio described as a part.</summary>
    internal static void CheckPart(PlanBinding binding, PlanNode node, string path)
    {
        if (MappingReader.Open(binding, node, path, RadioKeys.PartShape) is { } reader)
        {
            Read(reader);
            reader.Done();
        }
    }

    private static RadioUnit Read(MappingReader reader) => new()
    {
        Name = reader.Text(RadioKeys.Name),
        ConductedPowerDbm = reader.Quantity(RadioKeys.Power),
        NoiseFigureDb = reader.Quantity(RadioKeys.NoiseFigure),
        MeasuredNoiseFloorDbm = reader.Quantity(RadioKeys.NoiseFloor),
        SnrLimitDb = SnrLimits(reader),
        FrequencyErrorPartsPerMillion = reader.Exact(RadioKeys.FrequencyError),
        FrequencyDriftPartsPerMillion = reader.Exact(RadioKeys.FrequencyDrift),
        DriftCelsius = DriftTemperatures(reader),
        BlockingDbm = reader.Exact(RadioKeys.Blocking),
        BlockingOffsetHz = reader.Exact(RadioKeys.BlockingOffset),
        ApprovedGainDbi = reader.Exact(RadioKeys.ApprovedGain),
        ApprovedAntenna = reader.YesNo(RadioKeys.ApprovedAntenna),
        ApprovedAmplifier = reader.YesNo(RadioKeys.ApprovedAmplifier),
    };

    private static Estimate? DriftTemperatures(MappingReader reader)
    {
        Estimate? range = reader.Quantity(RadioKeys.DriftTemperatures);
        if (range is { IsExact: true })
        {
            reader.Binding.Add(reader.Find(RadioKeys.DriftTemperatures)!, reader.PathOf(RadioKeys.DriftTemperatures), "plan-range", "A drift is stated from a lowest to a highest temperature.", "a range, such as -30…85 °C");
        }

        return range;
    }

    private static ImmutableSortedDictionary<int, double> SnrLimits(MappingReader reader)
    {
        if (!reader.Has(RadioKeys.SnrLimits))
        {
            return ImmutableSortedDictionary<int, double>.Empty;
        }

        KeyedShape shape = (KeyedShape)RadioKeys.SnrLimits.Value;
        ImmutableSortedDictionary<int, double>.Builder limits = ImmutableSortedDictionary.CreateBuilder<int, double>();
        foreach ((string key, PlanNode node, string path) in reader.Keyed(RadioKeys.SnrLimits))
        {
            if (!int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out int factor) || factor is < 5 or > 12)
            {
                reader.Binding.Add(node, path, "plan-key", $"The key '{key}' is not a spreading factor.", "a spreading factor from 5 to 12");
            }
            else if (ScalarBinder.Quantity(reader.Binding, node, path, (QuantityShape)shape.Item) is { } limit)
            {
                limits[factor] = limit.Median;
            }
        }

        return limits.ToImmutable();
    }
}
