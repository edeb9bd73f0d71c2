using Mastwright.Quantities;
using Mastwright.Station.Feed;

namespace Mastwright.Storage.Plans;

/// <summary>Binds an item of a feed.</summary>
internal static class FeedBinder
{
    /// <summary>The item; null with a problem when it is none.</summary>
    internal static FeedPart? Bind(PlanBinding binding, PlanNode node, string path, AlternativesShape alternatives)
    {
        if (Chosen(binding, node, path, alternatives, "a feed") is not { } shape || MappingReader.Open(binding, node, path, shape) is not { } reader)
        {
            return null;
        }

        FeedPart? part = Read(reader, shape);
        reader.Done();
        return part;
    }

    /// <summary>Which of several mappings an item is, by the key that names it; null with a problem when it is none or several. The list is "a feed".</summary>
    internal static MappingShape? Chosen(PlanBinding binding, PlanNode node, string path, AlternativesShape alternatives, string list)
    {
        if (node.Kind != PlanNodeKind.Mapping)
        {
            binding.Add(node, path, ScalarBinder.ValueCode, $"An item of {list} is a key and its value.", alternatives.Wanted);
            return null;
        }

        MappingShape[] named = [.. alternatives.Choices.Where(choice => node.Find(choice.Keys[0].Name) is not null)];
        if (named.Length != 1)
        {
            string hint = named.Length == 0 && node.Entries.Count > 0
                ? SiteBinder.Near(node.Entries[0].Key, alternatives.Choices.Select(choice => choice.Keys[0].Name))
                : "";
            string message = named.Length == 0
                ? "The item does not say what it is." + hint
                : $"The item is several things at once: {string.Join(", ", named.Select(choice => choice.Keys[0].Name))}; give each its own '- '.";
            binding.Add(node, path, ScalarBinder.ValueCode, message, alternatives.Wanted);
            return null;
        }

        return named[0];
    }

    private static FeedPart? Read(MappingReader reader, MappingShape shape)
    {
        if (shape == FeedKeys.Line)
        {
            return new FeedLine(reader.Path, reader.Key(FeedKeys.LineType), reader.Quantity(FeedKeys.LineLength) ?? default, reader.Exact(FeedKeys.LineTemperature));
        }

        if (shape == FeedKeys.Connectors)
        {
            return Counted(reader, LossyPartKind.Connector, FeedKeys.ConnectorCount);
        }

        if (shape == FeedKeys.Adapters)
        {
            return Counted(reader, LossyPartKind.Adapter, FeedKeys.AdapterCount);
        }

        if (shape == FeedKeys.Arrester)
        {
            return Lossy(reader, LossyPartKind.SurgeArrester, FeedKeys.ArresterLoss);
        }

        if (shape == FeedKeys.Filter)
        {
            return Lossy(reader, LossyPartKind.Filter, FeedKeys.FilterLoss);
        }

        if (shape == FeedKeys.Splitter)
        {
            return Lossy(reader, LossyPartKind.Splitter, FeedKeys.SplitterLoss);
        }

        return shape == FeedKeys.Amplifier ? Amplifier(reader) : Part(reader);
    }

    private static LossyPart Counted(MappingReader reader, LossyPartKind kind, KeyShape count) =>
        new(reader.Path, kind, reader.Whole(count) ?? 1, reader.Quantity(FeedKeys.LossOfOne), reader.Text(FeedKeys.Name));

    private static LossyPart Lossy(MappingReader reader, LossyPartKind kind, KeyShape loss)
    {
        // A key without a value is a part whose loss nobody gave: the catalogue's figure is then used and listed.
        Estimate? given = loss.MayBeEmpty && reader.Find(loss) is { IsEmpty: true } ? null : reader.Quantity(loss);
        return new(reader.Path, kind, 1, given, reader.Text(FeedKeys.Name));
    }

    private static FeedAmplifier? Amplifier(MappingReader item)
    {
        string path = item.PathOf(FeedKeys.AmplifierKey);
        PlanNode node = item.Find(FeedKeys.AmplifierKey)!;
        if (MappingReader.Open(item.Binding, node, path, FeedKeys.AmplifierShape) is not { } reader)
        {
            return null;
        }

        FeedAmplifier amplifier = new(
            path,
            reader.Text(FeedKeys.Name),
            reader.Quantity(FeedKeys.ReceiveGain),
            reader.Exact(FeedKeys.NoiseFigure),
            reader.Quantity(FeedKeys.TransmitGain),
            reader.Quantity(FeedKeys.TransmitMaximum),
            reader.Exact(FeedKeys.BypassLoss));
        if (!reader.Has(FeedKeys.ReceiveGain) && !reader.Has(FeedKeys.TransmitGain))
        {
            item.Binding.Add(node, path, "plan-missing-key", "The amplifier amplifies neither way.", "receive-gain, transmit-gain, or both");
        }

        reader.Done();
        return amplifier;
    }

    private static FeedPart? Part(MappingReader reader)
    {
        reader.Has(FeedKeys.PartName);
        return PartLookup.Find(reader.Binding, reader.Node, reader.Path, FeedKeys.PartName, reader.Binding.FeedParts, "feed", out PlanNode? part) && part is not null
            ? Bind(reader.Binding, part, reader.Path, FeedKeys.PartItem)
            : null;
    }
}
