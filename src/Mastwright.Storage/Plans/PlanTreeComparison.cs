namespace Mastwright.Storage.Plans;

/// <summary>Compares two trees.</summary>
internal static class PlanTreeComparison
{
    /// <summary>Whether two trees hold the same but for one value, which is now the given text.</summary>
    internal static bool SameBut(PlanNode before, PlanNode after, string path, string value)
    {
        PlanNode? changed = PlanPath.Find(after, path);
        return changed is { Kind: PlanNodeKind.Scalar } && changed.Text == value && !(changed.IsEmpty && value.Length > 0)
            && Same(before, after, PlanPath.Find(before, path), changed);
    }

    /// <summary>Whether two trees hold the same but for one key, which a mapping now has after its others.</summary>
    internal static bool SameButAdded(PlanNode before, PlanNode after, PlanNode mapping, string path, string value)
    {
        PlanNode? added = PlanPath.Find(after, path);
        return added is { Kind: PlanNodeKind.Scalar } && added.Text == value && !(added.IsEmpty && value.Length > 0) && Same(before, after, null, added, mapping);
    }

    private static bool Same(PlanNode left, PlanNode right, PlanNode? exceptLeft, PlanNode exceptRight, PlanNode? grown = null)
    {
        if (ReferenceEquals(left, exceptLeft) || ReferenceEquals(right, exceptRight))
        {
            return ReferenceEquals(left, exceptLeft) && ReferenceEquals(right, exceptRight);
        }

        int more = ReferenceEquals(left, grown) ? 1 : 0;
        if (left.Kind != right.Kind || left.Text != right.Text || left.Quoting != right.Quoting || left.Entries.Count + more != right.Entries.Count || left.Items.Count != right.Items.Count)
        {
            return false;
        }

        if (more == 1 && !ReferenceEquals(right.Entries[^1].Value, exceptRight))
        {
            return false;
        }

        for (int i = 0; i < left.Entries.Count; i++)
        {
            if (left.Entries[i].Key != right.Entries[i].Key || !Same(left.Entries[i].Value, right.Entries[i].Value, exceptLeft, exceptRight, grown))
            {
                return false;
            }
        }

        for (int i = 0; i < left.Items.Count; i++)
        {
            if (!Same(left.Items[i], right.Items[i], exceptLeft, exceptRight, grown))
            {
                return false;
            }
        }

        return true;
    }
}
