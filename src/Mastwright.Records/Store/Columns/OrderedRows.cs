using System.Buffers;
using System.Runtime.InteropServices;

namespace Mastwright.Records.Store.Columns;

/// <summary>Puts rows that come nearly in order into the order of their times, keeping back only those that a later one may come before.</summary>
internal sealed class OrderedRows(string[] addresses, Action<PeriodRow[], int> emit)
{
    private const int Worth = 32_768;

    private List<ColumnRow> pending = new(2 * Worth);
    private List<ColumnRow> kept = new(Worth);
    private long[] times = [];
    private int[] order = [];

    internal void Add(ColumnRow row) => pending.Add(row);

    /// <summary>Hands on what no later row can come before, once it is worth it.</summary>
    /// <param name="nextMicroseconds">No later row is earlier than this; the greatest number at the end.</param>
    internal void Advance(long nextMicroseconds)
    {
        int count = pending.Count;
        if (count == 0 || (count < Worth && nextMicroseconds != long.MaxValue))
        {
            return;
        }

        Sort(count);
        int ready = Array.BinarySearch(times, 0, count, nextMicroseconds);
        ready = ready < 0 ? ~ready : FirstOf(ready);
        if (nextMicroseconds == long.MaxValue)
        {
            ready = count;
        }

        if (ready == 0)
        {
            return;
        }

        Span<ColumnRow> rows = CollectionsMarshal.AsSpan(pending);
        PeriodRow[] batch = ArrayPool<PeriodRow>.Shared.Rent(ready);
        for (int place = 0; place < ready; place++)
        {
            batch[place] = rows[order[place]].ToPeriodRow(addresses);
        }

        kept.Clear();
        for (int place = ready; place < count; place++)
        {
            kept.Add(rows[order[place]]);
        }

        (pending, kept) = (kept, pending);
        emit(batch, ready);
    }

    /// <summary>The places of the rows by time, those of one time in the order in which they came.</summary>
    private void Sort(int count)
    {
        if (times.Length < count)
        {
            times = new long[2 * count];
            order = new int[2 * count];
        }

        Span<ColumnRow> rows = CollectionsMarshal.AsSpan(pending);
        bool isInOrder = true;
        for (int row = 0; row < count; row++)
        {
            order[row] = row;
            times[row] = rows[row].TimeMicroseconds;
            isInOrder &= row == 0 || times[row] >= times[row - 1];
        }

        if (isInOrder)
        {
            return;
        }

        Array.Sort(times, order, 0, count);
        for (int start = 0; start < count;)
        {
            int end = start + 1;
            while (end < count && times[end] == times[start])
            {
                end++;
            }

            order.AsSpan(start, end - start).Sort();
            start = end;
        }
    }

    private int FirstOf(int place)
    {
        while (place > 0 && times[place - 1] == times[place])
        {
            place--;
        }

        return place;
    }
}
