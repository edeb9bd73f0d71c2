using Mastwright.Station.BoxClimate;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a box.</summary>
internal static class BoxBinder
{
    /// <summary>The box of a fit-out; one of which nothing is known when there is none.</summary>
    internal static BoxFit Bind(MappingReader fitOut)
    {
        if (fitOut.Find(FitOutKeys.Box) is not { } node || MappingReader.Open(fitOut.Binding, node, fitOut.PathOf(FitOutKeys.Box), BoxKeys.Shape) is not { } reader)
        {
            return new();
        }

        BoxFit box = new()
        {
            TemperatureCelsius = reader.Quantity(BoxKeys.Temperature),
            Surface = Surface(reader),
            Material = reader.Text(BoxKeys.Material),
            Colour = reader.Text(BoxKeys.Colour),
            Mounting = (BoxMounting)(reader.Choice(BoxKeys.Mounting) + 1),
            Shade = (BoxShade)(reader.Choice(BoxKeys.Sun) + 1),
            Seal = reader.Text(BoxKeys.Seal),
            OutsideCelsius = reader.Quantity(BoxKeys.Outside),
            NightHumidity = reader.Exact(BoxKeys.NightHumidity) / 100,
            HeatWatts = reader.Quantity(BoxKeys.Heat),
            HeaterWatts = reader.Exact(BoxKeys.Heater),
            Place = reader.Text(BoxKeys.Exposure),
            Code = Code(reader, BoxKeys.Ip),
            Entries = (BoxFacing)(reader.Choice(BoxKeys.Entries) + 1),
            DripLoops = reader.YesNo(BoxKeys.DripLoops),
            Connectors = (BoxFacing)(reader.Choice(BoxKeys.Connectors) + 1),
            Parts = [.. reader.Keyed(BoxKeys.Parts).Select(item => Part(fitOut.Binding, item)).OfType<BoxPart>()],
        };
        reader.Done();
        return box;
    }

    private static BoxSurface? Surface(MappingReader box)
    {
        double? width = box.Exact(BoxKeys.Width);
        double? height = box.Exact(BoxKeys.Height);
        double? depth = box.Exact(BoxKeys.Depth);
        return width is null || height is null || depth is null ? null : new(width.Value, height.Value, depth.Value);
    }

    private static BoxPart? Part(PlanBinding binding, PlanItem item)
    {
        if (MappingReader.Open(binding, item.Node, item.Path, BoxKeys.PartShape) is not { } reader)
        {
            return null;
        }

        BoxPart part = new(
            item.Path, reader.Text(BoxKeys.PartName, item.Key), reader.Quantity(BoxKeys.PartTemperature), reader.Exact(BoxKeys.PartRise), Code(reader, BoxKeys.PartIp));
        if (part.RatedCelsius is { IsExact: true })
        {
            binding.Add(reader.Find(BoxKeys.PartTemperature)!, reader.PathOf(BoxKeys.PartTemperature), "plan-range", "A part bears temperatures from a lowest to a highest.", "a range, such as -20…60 °C");
        }

        reader.Done();
        return part;
    }

    private static IngressCode? Code(MappingReader reader, KeyShape key)
    {
        if (reader.Find(key) is not { } node || ScalarBinder.Text(reader.Binding, node, reader.PathOf(key), key.Value) is not { } text)
        {
            return null;
        }

        if (!IngressCode.TryParse(text, out IngressCode? code))
        {
            reader.Binding.Add(node, reader.PathOf(key), ScalarBinder.ValueCode, "This is no IP code of IEC 60529.", key.Value.Wanted);
        }

        return code;
    }
}
