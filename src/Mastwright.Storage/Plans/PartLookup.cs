namespace Mastwright.Storage.Plans;

/// <summary>Finds the part that a mapping refers to.</summary>
internal static class PartLookup
{
    /// <summary>False with a problem when the mapping names a part that is not there; true with null when it names none.</summary>
    internal static bool Find(PlanBinding binding, PlanNode node, string path, KeyShape key, Dictionary<string, PlanNode> parts, string kind, out PlanNode? part)
    {
        part = null;
        if (node.Find(key.Name) is not { } name)
        {
            return true;
        }

        string place = $"{path}/{key.Name}";
        if (ScalarBinder.Key(binding, name, place, (KeyNameShape)key.Value) is not { } wanted)
        {
            return false;
        }

        if (parts.TryGetValue(wanted, out part))
        {
            return true;
        }

        if (binding.LacksIncludes)
        {
            // The part may stand in the file that was refused; that refusal is the one thing to mend first.
            return false;
        }

        string known = parts.Count == 0 ? $"a part under parts/{kind} in the plan or an included file" : "one of " + string.Join(", ", parts.Keys.Order(StringComparer.Ordinal).Take(20));
        binding.Add(name, place, "plan-unknown-name", $"No part of this name is under parts/{kind}.{SiteBinder.Near(wanted, parts.Keys)}", known);
        return false;
    }
}
