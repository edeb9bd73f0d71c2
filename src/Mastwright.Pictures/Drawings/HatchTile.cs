using System.Collections.Immutable;

namespace Mastwright.Pictures.Drawings;

/// <summary>The tile that a pattern repeats: the same marks for every kind of output.</summary>
/// <param name="Width">Pixels across at scale 1.</param>
/// <param name="Height">Pixels down at scale 1.</param>
/// <param name="LineWidth">Width of the marks' lines.</param>
/// <param name="Marks">Lines through points; those of a slanted hatch run over the tile's edge so that its corners are whole.</param>
internal sealed record HatchTile(double Width, double Height, double LineWidth, ImmutableArray<ImmutableArray<Spot>> Marks)
{
    private static readonly HatchTile Rising = new(7, 7, 1.3, [Mark(-1, 8, 8, -1), Mark(-1, 1, 1, -1), Mark(6, 8, 8, 6)]);
    private static readonly HatchTile Falling = new(7, 7, 1.3, [Mark(-1, -1, 8, 8), Mark(-1, 6, 1, 8), Mark(6, -1, 8, 1)]);
    private static readonly HatchTile Crossed = new(9, 9, 0.9, [Mark(-1, 10, 10, -1), Mark(-1, -1, 10, 10)]);
    private static readonly HatchTile Waves = new(18, 10, 1, [Mark(1, 3.5, 3, 2.5, 5, 3.5, 7, 2.5), Mark(10, 8.5, 12, 7.5, 14, 8.5, 16, 7.5)]);
    private static readonly HatchTile Firs = new(9, 9, 1, [Mark(2.5, 8, 2.5, 6), Mark(0.5, 6, 2.5, 1.5, 4.5, 6, 0.5, 6)]);
    private static readonly HatchTile Gables = new(9, 9, 1, [Mark(1.5, 8, 1.5, 4.5, 4.5, 2, 7.5, 4.5, 7.5, 8, 1.5, 8)]);
    private static readonly HatchTile Blades = new(9, 6, 0.9, [Mark(1.5, 4.5, 2.2, 1.5), Mark(3.4, 4.5, 3.4, 1), Mark(5.3, 4.5, 4.6, 1.5)]);
    private static readonly HatchTile Dots = new(6, 6, 1.4, [Mark(1, 1.5, 2, 1.5), Mark(4, 4.5, 5, 4.5)]);

    /// <summary>The tile of a pattern.</summary>
    public static HatchTile Of(HatchKind kind) => kind switch
    {
        HatchKind.Rising => Rising,
        HatchKind.Falling => Falling,
        HatchKind.Crossed => Crossed,
        HatchKind.Waves => Waves,
        HatchKind.Firs => Firs,
        HatchKind.Gables => Gables,
        HatchKind.Blades => Blades,
        HatchKind.Dots => Dots,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such pattern."),
    };

    private static ImmutableArray<Spot> Mark(params ReadOnlySpan<double> numbers)
    {
        ImmutableArray<Spot>.Builder spots = ImmutableArray.CreateBuilder<Spot>(numbers.Length / 2);
        for (int i = 0; i < numbers.Length; i += 2)
        {
            spots.Add(new(numbers[i], numbers[i + 1]));
        }

        return spots.MoveToImmutable();
    }
}
