using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Mastwright.Propagation.Area;

/// <summary>The upper convex hull of points that come in order of distance, and the tangents to it from beyond its last point.</summary>
/// <remarks>
/// <para>
/// A monotone chain on a stack. Each vertex keeps the line through its left neighbour and itself, so that adding a point and finding a
/// tangent ask the same question: does a place stand above that line? The answers change once along the stack, and the bottom never asks to
/// go on. The stack has room for every point, so no index is checked twice.
/// </para>
/// <para>
/// How far a question goes is different for every cell, and a processor that guesses wrong loses more than four answers cost: so four
/// vertices are asked at once and the yeses counted. How many vertices a new point hides follows the ground and is guessed well: one by one.
/// </para>
/// </remarks>
internal sealed class UpperHull(int capacity)
{
    /// <summary>Vertices asked at once, and as many below the bottom that always answer no.</summary>
    private const int AtOnce = 4;

    /// <summary>So many vertices are then tried one by one before halving: over hills the hull has about ten, over the sea every point.</summary>
    private const int Walk = 8;

    private readonly Vertex[] vertices = Empty(capacity + AtOnce);
    private int top = AtOnce - 1;

    /// <summary>Slope of the edge to the newest point; infinite while it is alone.</summary>
    internal double NewestSlope => vertices[top].Slope;

    internal void Clear() => top = AtOnce - 1;

    /// <summary>Adds a point.</summary>
    /// <returns>The number of the point that is now its left neighbour; −1 if it is the first.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int Push(int point, double x, double z)
    {
        ref Vertex bottom = ref MemoryMarshal.GetArrayDataReference(vertices);
        if (top < AtOnce)
        {
            return PushOnFew(point, x, z);
        }

        ref Vertex vertex = ref Unsafe.Add(ref bottom, top);
        while (z >= vertex.Start + (vertex.Slope * x))
        {
            vertex = ref Unsafe.Subtract(ref vertex, 1);
        }

        double slope = (z - vertex.Z) / (x - vertex.X);
        int left = vertex.Point;
        top = (int)(Unsafe.ByteOffset(ref bottom, ref vertex) / Unsafe.SizeOf<Vertex>()) + 1;
        if (top >= vertices.Length)
        {
            throw new InvalidOperationException("The hull has room for every point of a radial.");
        }

        vertex = ref Unsafe.Add(ref vertex, 1);
        vertex.Start = z - (slope * x);
        vertex.Slope = slope;
        vertex.X = x;
        vertex.Z = z;
        vertex.Point = point;
        return left;
    }

    /// <summary>The vertex seen highest from a place beyond the last point; of equals the last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal int Tangent(double x, double z)
    {
        ref Vertex vertex = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(vertices), top);
        int below = vertex.IsBelow(x, z) + Before(ref vertex, 1).IsBelow(x, z) + Before(ref vertex, 2).IsBelow(x, z) + Before(ref vertex, 3).IsBelow(x, z);
        return below < AtOnce ? Before(ref vertex, below).Point : TangentFrom(top - AtOnce, x, z);
    }

    /// <summary>The vertex that stands highest above a line of a slope; of equals the last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal int Highest(double slope)
    {
        ref Vertex vertex = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(vertices), top);
        int flatter = vertex.IsFlatter(slope) + Before(ref vertex, 1).IsFlatter(slope) + Before(ref vertex, 2).IsFlatter(slope) + Before(ref vertex, 3).IsFlatter(slope);
        vertex = ref Before(ref vertex, flatter);
        if (flatter == AtOnce)
        {
            while (vertex.IsFlatter(slope) != 0)
            {
                vertex = ref Before(ref vertex, 1);
            }
        }

        return vertex.Point;
    }

    private int PushOnFew(int point, double x, double z)
    {
        top = AtOnce;
        vertices[top] = new() { Point = point, X = x, Z = z, Start = double.PositiveInfinity, Slope = double.PositiveInfinity };
        return -1;
    }

    private int TangentFrom(int t, double x, double z)
    {
        for (int i = 0; i < Walk; i++)
        {
            ref Vertex vertex = ref vertices[t];
            if (vertex.IsBelow(x, z) == 0)
            {
                return vertex.Point;
            }

            t--;
        }

        // The answer is at or below t; the bottom always answers no.
        int low = AtOnce;
        while (low < t)
        {
            int middle = (low + t + 1) / 2;
            if (vertices[middle].IsBelow(x, z) != 0)
            {
                t = middle - 1;
            }
            else
            {
                low = middle;
            }
        }

        return vertices[t].Point;
    }

    private static ref Vertex Before(ref Vertex vertex, int steps) => ref Unsafe.Subtract(ref vertex, steps);

    private static Vertex[] Empty(int count)
    {
        Vertex[] all = new Vertex[count];
        all.AsSpan(0, AtOnce).Fill(new() { Start = double.PositiveInfinity, Slope = double.PositiveInfinity });
        return all;
    }

    /// <summary>A point of the hull and the line from its left neighbour through it: at x the line stands at Start + Slope·x.</summary>
    private struct Vertex
    {
        internal double Start;
        internal double Slope;
        internal double X;
        internal double Z;
        internal int Point;

        /// <summary>1 when a place stands above the line, else 0.</summary>
        internal readonly int IsBelow(double x, double z) => z > Start + (Slope * x) ? 1 : 0;

        /// <summary>1 when the line rises less than another, else 0.</summary>
        internal readonly int IsFlatter(double slope) => Slope < slope ? 1 : 0;
    }
}
