using Mastwright.Quantities;

namespace Mastwright.Evidence.Statistics;

/// <summary>How far the mean of a series may be off, by drawing its days again in blocks.</summary>
public static class BlockBootstrap
{
    /// <summary>Sums of a series drawn again: whole blocks from anywhere, the end joined to the beginning, until it is as long as it was.</summary>
    /// <param name="scores">The values; they sum to about zero.</param>
    /// <param name="block">Values in a block, one or more.</param>
    /// <param name="seed">What the draws belong to: same seed, same draws.</param>
    /// <param name="sums">Filled with one sum a draw.</param>
    public static void Sums(ReadOnlySpan<double> scores, int block, ulong seed, Span<double> sums)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(block);
        if (scores.IsEmpty)
        {
            sums.Clear();
            return;
        }

        int count = scores.Length;

        // Running sums over two rounds: a block is one difference.
        double[] running = new double[(2 * count) + 1];
        for (int i = 0; i < 2 * count; i++)
        {
            running[i + 1] = running[i] + scores[i % count];
        }

        int at = 0;
        for (int draw = 0; draw < sums.Length; draw++)
        {
            double sum = 0;
            for (int taken = 0; taken < count; taken += block)
            {
                int start = (int)(KeyedDraws.Uniform(seed, at++) * count);
                sum += running[start + Math.Min(block, count - taken)] - running[start];
            }

            sums[draw] = sum;
        }
    }
}
