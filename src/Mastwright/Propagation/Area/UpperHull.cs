using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Mastwright.Propagation.Area;

/// <summary>The upper convex hull of points that come in order of distance, and the tangents to it from beyond its last point.</summary>
/// <remarks>
/// A monotone chain on a stack. Each vertex keeps the line through its left neighbour and itself, so that adding a point and finding a
/// tangent ask the same question: does a place stand above that line? The answers change once along the stack, and the bottom never asks to
/// go on. The stack has room for every point, so no index is checked twice.
/// </remarks>
internal sealed class UpperHull(int capacity)
{
    /// <summary>So many vertices are tried one by one before halving: over hills the hull has about ten, over the sea every point.</summary>
    private const int Walk = 8;

    private readonly Vertex[] vertices = new Vertex[capacity];
    private int top = -1;

    internal void Clear() => top = -1;

    internal void Push(int point, double x, double z)
    {
        ref Vertex bottom = ref MemoryMarshal.GetArrayDataReference(vertices);
        if (top < 0)
        {
            top = 0;
            bottom = new() { Point = point, X = x, Z = z, Start = double.PositiveInfinity };
            return;
        }

        ref Vertex vertex = ref Unsafe.Add(ref bottom, top);
        while (z >= vertex.Start + (vertex.Slope * x))
        {
            vertex = ref Unsafe.Subtract(ref vertex, 1);
        }

        double slope = (z - vertex.Z) / (x - vertex.X);
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
    }

    /// <summary>The vertex seen highest from a place beyond the last point; of equals the last.</summary>
    internal int Tangent(double x, double z)
    {
        int t = top;
        for (int i = 0; i < Walk; i++)
        {
            ref Vertex vertex = ref vertices[t];
            if (!(z > vertex.Start + (vertex.Slope * x)))
            {
                return vertex.Point;
            }

            t--;
        }

        // The answer is at or below t; the bottom always answers no.
        int low = 0;
        while (low < t)
        {
            int middle = (low + t + 1) / 2;
            ref Vertex vertex = ref vertices[middle];
            if (z > vertex.Start + (vertex.Slope * x))
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

    /// <summary>A point of the hull and the line from its left neighbour through it: at x the line stands at Start + Slope·x.</summary>
    private struct Vertex
    {
        internal double Start;
        internal double Slope;
        internal double X;
        internal double Z;
        internal int Point;
    }
}
