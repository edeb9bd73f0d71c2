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

    private static bool Same(PlanNode left, PlanNode right, PlanNode? exceptLeft, PlanNode exceptRight)
    {
        if (ReferenceEquals(left, exceptLeft) || ReferenceEquals(right, exceptRight))
        {
            return ReferenceEquals(left, exceptLeft) && ReferenceEquals(right, exceptRight);
        }

        if (left.Kind != right.Kind || left.Text != right.Text || left.Quoting != right.Quoting || left.Entries.Count != right.Entries.Count || left.Items.Count != right.Items.Count)
        {
            return false;
        }

        for (int i = 0; i < left.Entries.Count; i++)
        {
            if (left.Entries[i].Key != right.Entries[i].Key || !Same(left.Entries[i].Value, right.Entries[i].Value, exceptLeft, exceptRight))
            {
                return false;
            }
        }

        for (int i = 0; i < left.Items.Count; i++)
        {
            if (!Same(left.Items[i], right.Items[i], exceptLeft, exceptRight))
            {
                return false;
            }
        }

        return true;
    }
}
