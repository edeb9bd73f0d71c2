namespace Mastwright.Storage.Plans;

/// <summary>Walks the description of the format.</summary>
internal static class ShapeWalk
{
    /// <summary>A mapping and every mapping below it, each once.</summary>
    internal static List<MappingShape> Mappings(ValueShape top)
    {
        List<MappingShape> found = [];
        Collect(top, found);
        return found;
    }

    private static void Collect(ValueShape shape, List<MappingShape> found)
    {
        switch (shape)
        {
            case MappingShape mapping when !found.Any(other => ReferenceEquals(other, mapping)):
                found.Add(mapping);
                foreach (KeyShape key in mapping.Keys)
                {
                    Collect(key.Value, found);
                }

                break;
            case ListShape list:
                Collect(list.Item, found);
                break;
            case KeyedShape keyed:
                Collect(keyed.Item, found);
                break;
            case OneOrManyShape many:
                Collect(many.Item, found);
                break;
            case AlternativesShape alternatives:
                foreach (MappingShape choice in alternatives.Choices)
                {
                    Collect(choice, found);
                }

                break;
        }
    }
}
