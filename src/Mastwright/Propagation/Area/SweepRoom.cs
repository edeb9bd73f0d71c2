namespace Mastwright.Propagation.Area;

/// <summary>Arrays for the ground and the map of one sector, taken over by the next of the same length: memory that was never touched costs more than the sums.</summary>
/// <remarks>For one thread at a time.</remarks>
internal sealed class SweepRoom
{
    private float[] heights = [];
    private byte[] cover = [];
    private byte[] zones = [];
    private SweepResult? result;

    /// <summary>Heights, all of them missing.</summary>
    internal float[] Heights(int length)
    {
        heights = heights.Length == length ? heights : new float[length];
        Array.Fill(heights, float.NaN);
        return heights;
    }

    /// <summary>Cover codes, all of them unknown.</summary>
    internal byte[] Cover(int length) => cover = Cleared(cover, length);

    /// <summary>Zones, all of them inland.</summary>
    internal byte[] Zones(int length) => zones = Cleared(zones, length);

    /// <summary>A map that holds whatever was there.</summary>
    internal SweepResult Result(SweepLayout layout) => result = result?.Losses.Length == layout.Length && result.Side == layout.Side ? result : new(layout);

    private static byte[] Cleared(byte[] values, int length)
    {
        if (values.Length != length)
        {
            return new byte[length];
        }

        Array.Clear(values);
        return values;
    }
}
