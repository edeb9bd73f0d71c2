using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Exposure;
using Mastwright.Station.Feed;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a fit-out.</summary>
internal static class FitOutBinder
{
    private static readonly AntennaFit NoAntenna = new() { Height = new(Estimate.Exactly(0), HeightAbove.Ground) };

    /// <summary>The fit-out; null when it is no mapping.</summary>
    /// <param name="binding">What the plan shares.</param>
    /// <param name="node">The fit-out.</param>
    /// <param name="path">Its path in the plan.</param>
    /// <param name="key">Its key.</param>
    /// <param name="siteHazards">The site's hazards, whose keys stand in for the fit-out's; null for none.</param>
    internal static FitOut? Bind(PlanBinding binding, PlanNode node, string path, string key, PlanNode? siteHazards)
    {
        if (MappingReader.Open(binding, node, path, FitOutKeys.Shape) is not { } reader)
        {
            return null;
        }

        FitOut fitOut = new()
        {
            Key = key,
            Name = reader.Text(FitOutKeys.Name, key),
            Antenna = reader.Find(FitOutKeys.Antenna) is { } antenna ? AntennaBinder.Bind(binding, antenna, reader.PathOf(FitOutKeys.Antenna)) ?? NoAntenna : NoAntenna,
            Feed = [.. reader.List(FitOutKeys.Feed).Select(item => FeedBinder.Bind(binding, item.Node, item.Path, FeedKeys.Item)).OfType<FeedPart>()],
            Mismatch = Mismatch(reader),
            Radio = reader.Find(FitOutKeys.Radio) is { } radio ? RadioBinder.Bind(binding, radio, reader.PathOf(FitOutKeys.Radio)) : new(),
            People = People(reader),
            NearbyTransmitters = [.. reader.Keyed(FitOutKeys.NearbyTransmitters).Select(item => Nearby(binding, item.Node, item.Path, item.Key)).OfType<NearbyTransmitter>()],
            Supply = SupplyBinder.Bind(reader, FitOutKeys.Supply),
            Solar = SolarBinder.Bind(reader),
            Box = BoxBinder.Bind(reader),
            Mast = MastBinder.Bind(reader),
            Hazards = HazardBinder.Bind(reader, FitOutKeys.Hazards, siteHazards),
            Earthing = EarthingBinder.Bind(reader),
        };
        reader.Done();
        return fitOut;
    }

    private static PeopleNear People(MappingReader fitOut)
    {
        if (fitOut.Find(FitOutKeys.People) is not { } node
            || MappingReader.Open(fitOut.Binding, node, fitOut.PathOf(FitOutKeys.People), PeopleKeys.Shape) is not { } reader)
        {
            return new();
        }

        PeopleNear people = new(reader.Exact(PeopleKeys.Public), reader.Exact(PeopleKeys.Workers));
        reader.Done();
        return people;
    }

    private static NearbyTransmitter? Nearby(PlanBinding binding, PlanNode node, string path, string key)
    {
        if (MappingReader.Open(binding, node, path, NearbyKeys.Shape) is not { } reader)
        {
            return null;
        }

        // What is held against it is whether the receiver bears it, so that the worst of each range counts.
        NearbyTransmitter transmitter = new(
            key, reader.Exact(NearbyKeys.Frequency) ?? 0, reader.Quantity(NearbyKeys.Eirp)?.High ?? 0, reader.Quantity(NearbyKeys.Distance)?.Low ?? 0);
        reader.Done();
        return transmitter;
    }

    private static MismatchReading? Mismatch(MappingReader reader)
    {
        PlanNode? loss = reader.Find(FitOutKeys.ReturnLoss);
        PlanNode? ratio = reader.Find(FitOutKeys.Vswr);
        if (loss is not null && ratio is not null)
        {
            reader.Binding.Add(ratio, reader.PathOf(FitOutKeys.Vswr), "plan-contradiction", "return-loss and vswr say the same thing; keep one of them.");
            return null;
        }

        return loss is not null ? ReturnLoss(reader, loss) : ratio is not null ? Vswr(reader, ratio) : null;
    }

    private static MismatchReading? ReturnLoss(MappingReader reader, PlanNode node)
    {
        KeyShape key = FitOutKeys.ReturnLoss;
        if (ScalarBinder.Text(reader.Binding, node, reader.PathOf(key), key.Value) is not { } text)
        {
            return null;
        }

        if (Place(text, out string value) is { } atAntenna
            && Quantity.TryParse(value, Dimension.Ratio, out Estimate loss, out _) && loss.IsExact && loss.Median is > 0 and <= 60)
        {
            return new(loss.Median, atAntenna);
        }

        reader.Binding.Add(node, reader.PathOf(key), ScalarBinder.ValueCode, "This is not a return loss (above 0 dB, at most 60 dB) with its place.", key.Value.Wanted);
        return null;
    }

    private static MismatchReading? Vswr(MappingReader reader, PlanNode node)
    {
        KeyShape key = FitOutKeys.Vswr;
        if (ScalarBinder.Text(reader.Binding, node, reader.PathOf(key), key.Value) is not { } text)
        {
            return null;
        }

        if (Place(text, out string value) is { } atAntenna
            && double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double ratio) && ratio is >= 1.002 and <= 1000)
        {
            // The magnitude of the reflection is (S - 1)/(S + 1); return loss is its level below full reflection.
            return new(-20 * Math.Log10((ratio - 1) / (ratio + 1)), atAntenna);
        }

        reader.Binding.Add(node, reader.PathOf(key), ScalarBinder.ValueCode, "This is not a standing-wave ratio (1.002 to 1000) with its place.", key.Value.Wanted);
        return null;
    }

    private static bool? Place(string text, out string value)
    {
        string[] words = text.Split(" at ", StringSplitOptions.TrimEntries);
        value = words[0];
        return words is [_, "radio"] ? false : words is [_, "antenna"] ? true : null;
    }
}
