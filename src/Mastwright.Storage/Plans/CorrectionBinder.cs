using System.Collections.Immutable;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the corrections of the prediction, and which of them is used.</summary>
internal static class CorrectionBinder
{
    /// <summary>The corrections; each names stations of the plan alone.</summary>
    internal static ImmutableArray<AdoptedCorrection> Bind(MappingReader plan)
    {
        ImmutableArray<PlanItem> items = plan.Keyed(PlanKeys.Corrections);
        if (items.IsEmpty)
        {
            return [];
        }

        HashSet<string> keys = [.. plan.Keyed(PlanKeys.Sites).Select(site => site.Key), .. plan.Keyed(PlanKeys.Neighbours).Select(one => one.Key)];
        return [.. items.Select(item => One(plan.Binding, item, keys)).OfType<AdoptedCorrection>()];
    }

    /// <summary>The key of the one that is used; empty for none.</summary>
    internal static string InUse(MappingReader plan)
    {
        string key = plan.Key(PlanKeys.Correction);
        ImmutableArray<PlanItem> items = plan.Keyed(PlanKeys.Corrections);
        if (key.Length > 0 && items.All(item => item.Key != key))
        {
            plan.Binding.Add(
                plan.Find(PlanKeys.Correction)!,
                plan.PathOf(PlanKeys.Correction),
                "plan-unknown-name",
                items.IsEmpty ? "The plan has no corrections." : "The plan has no correction of this key." + SiteBinder.Near(key, items.Select(item => item.Key)),
                items.IsEmpty ? "no correction" : "one of " + string.Join(", ", items.Take(20).Select(item => item.Key)));
        }

        return key;
    }

    private static AdoptedCorrection? One(PlanBinding binding, PlanItem item, HashSet<string> keys)
    {
        if (MappingReader.Open(binding, item.Node, item.Path, CorrectionKeys.Shape) is not { } reader)
        {
            return null;
        }

        KeyNameShape name = (KeyNameShape)((OneOrManyShape)CorrectionKeys.AppliesTo.Value).Item;
        ImmutableSortedDictionary<string, OwnCorrection>.Builder stations = ImmutableSortedDictionary.CreateBuilder<string, OwnCorrection>(StringComparer.Ordinal);
        foreach (PlanItem station in reader.Keyed(CorrectionKeys.Stations))
        {
            IsKnown(binding, station.Node, station.Path, station.Key, keys);
            if (MappingReader.Open(binding, station.Node, station.Path, CorrectionKeys.OwnShape) is { } own)
            {
                stations[station.Key] = new(own.Quantity(CorrectionKeys.OwnOffset) ?? default, own.Exact(CorrectionKeys.OwnSpread));
                own.Done();
            }
        }

        AdoptedCorrection correction = new()
        {
            Key = item.Key,
            Source = reader.Text(CorrectionKeys.Source),
            OffsetDb = reader.Quantity(CorrectionKeys.Offset) ?? default,
            CoverMetres = reader.Quantity(CorrectionKeys.CoverHeight),
            StationHeightMetres = reader.Quantity(CorrectionKeys.StationHeight),
            SpreadDb = reader.Exact(CorrectionKeys.Spread) ?? 0,
            AppliesTo =
            [
                .. reader.Many(CorrectionKeys.AppliesTo)
                    .Select(one => (one.Node, one.Path, Key: ScalarBinder.Key(binding, one.Node, one.Path, name)))
                    .Where(one => one.Key is not null && IsKnown(binding, one.Node, one.Path, one.Key, keys))
                    .Select(one => one.Key!),
            ],
            Stations = stations.ToImmutable(),
        };
        reader.Done();
        return correction;
    }

    private static bool IsKnown(PlanBinding binding, PlanNode node, string path, string key, HashSet<string> keys)
    {
        if (keys.Contains(key))
        {
            return true;
        }

        binding.Add(node, path, "plan-unknown-name", $"No site or neighbour has the key '{key}'.{SiteBinder.Near(key, keys)}", "the key of a site or neighbour");
        return false;
    }
}
