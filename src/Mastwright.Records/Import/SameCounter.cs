using Mastwright.Evidence;

namespace Mastwright.Records.Import;

/// <summary>Counts, within one source, records that are told apart by level, and are alike in all of their identity.</summary>
/// <remarks>
/// It remembers at least the last 65,536 keys and never more than twice as many, so memory stays flat; what it forgets depends only
/// on the order of the source, so the same file counts the same every time.
/// </remarks>
/// <param name="antennasShareAddress">Whether the level tells records apart beside a packet number too.</param>
internal sealed class SameCounter(bool antennasShareAddress)
{
    private const int Generation = 65_536;

    private Dictionary<RecordKey, int> young = [];
    private Dictionary<RecordKey, int> old = [];

    /// <summary>The key of a record with its count.</summary>
    internal RecordKey KeyOf(ReceptionRecord record)
    {
        RecordKey first = RecordKey.Of(record, 0, antennasShareAddress);
        if (record.PacketId is not null && !antennasShareAddress)
        {
            return first;
        }

        if (!young.TryGetValue(first, out int before))
        {
            old.TryGetValue(first, out before);
            if (young.Count == Generation)
            {
                (old, young) = (young, old);
                young.Clear();
            }
        }

        young[first] = before + 1;
        return before == 0 ? first : RecordKey.Of(record, before, antennasShareAddress);
    }
}
