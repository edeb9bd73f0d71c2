using Mastwright.Network.Air;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds how stations pass on what they hear.</summary>
internal static class RelayingBinder
{
    private const double UsualMostSeconds = 2;

    private static readonly RelayDelay[] Delays = [RelayDelay.Fixed, RelayDelay.Random, RelayDelay.ByLevel];

    /// <summary>The rules of a plan; empty ones where it has none.</summary>
    internal static RelayRules Bind(MappingReader plan)
    {
        if (plan.Find(PlanKeys.Relaying) is not { } node || MappingReader.Open(plan.Binding, node, plan.PathOf(PlanKeys.Relaying), RelayingKeys.Shape) is not { } reader)
        {
            return new();
        }

        RelayRules rules = new()
        {
            HopLimit = reader.Whole(RelayingKeys.HopLimit),
            Delay = reader.Choice(RelayingKeys.Delay) is >= 0 and int choice ? Delays[choice] : null,
            LeastDelaySeconds = reader.Exact(RelayingKeys.LeastDelay),
            MostDelaySeconds = reader.Exact(RelayingKeys.MostDelay),
            CancelAfterCopies = reader.Whole(RelayingKeys.CancelAfter),
            Probability = reader.Exact(RelayingKeys.Share) / 100,
            ListensFirst = reader.YesNo(RelayingKeys.Listen),
            BackOffSeconds = reader.Exact(RelayingKeys.BackOff),
        };
        if (rules.LeastDelaySeconds > (rules.MostDelaySeconds ?? UsualMostSeconds))
        {
            reader.Binding.Add(reader.Find(RelayingKeys.LeastDelay)!, reader.PathOf(RelayingKeys.LeastDelay), "plan-range", "The least wait is longer than the most.", "at most 'most-delay', which is 2 s where it is not given");
        }

        reader.Done();
        return rules;
    }
}
