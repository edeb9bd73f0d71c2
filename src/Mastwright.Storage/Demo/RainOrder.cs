namespace Mastwright.Storage.Demo;

/// <summary>The land in the order in which water rising from the sea would reach it: lowest first, equal heights by index.</summary>
/// <remarks>A binary heap with a total order, so the order of removal does not hang on how the heap is built.</remarks>
internal sealed class RainOrder(int capacity)
{
    private readonly double[] heights = new double[capacity];
    private readonly int[] nodes = new int[capacity];
    private int count;

    public bool IsEmpty => count == 0;

    public void Add(double height, int node)
    {
        int place = count++;
        while (place > 0)
        {
            int above = (place - 1) >> 1;
            if (!Before(height, node, heights[above], nodes[above]))
            {
                break;
            }

            heights[place] = heights[above];
            nodes[place] = nodes[above];
            place = above;
        }

        heights[place] = height;
        nodes[place] = node;
    }

    public int TakeLowest(out double height)
    {
        int lowest = nodes[0];
        height = heights[0];
        count--;
        double lastHeight = heights[count];
        int lastNode = nodes[count];
        int place = 0;
        while (true)
        {
            int below = (place << 1) + 1;
            if (below >= count)
            {
                break;
            }

            if (below + 1 < count && Before(heights[below + 1], nodes[below + 1], heights[below], nodes[below]))
            {
                below++;
            }

            if (!Before(heights[below], nodes[below], lastHeight, lastNode))
            {
                break;
            }

            heights[place] = heights[below];
            nodes[place] = nodes[below];
            place = below;
        }

        heights[place] = lastHeight;
        nodes[place] = lastNode;
        return lowest;
    }

    private static bool Before(double height, int node, double otherHeight, int otherNode) =>
        height < otherHeight || (height == otherHeight && node < otherNode);
}
