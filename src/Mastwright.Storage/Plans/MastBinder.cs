using Mastwright.Station.Mast;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a mast.</summary>
internal static class MastBinder
{
    /// <summary>The mast of a fit-out; null when there is none.</summary>
    internal static MastFit? Bind(MappingReader fitOut)
    {
        if (fitOut.Find(FitOutKeys.Mast) is not { } node
            || MappingReader.Open(fitOut.Binding, node, fitOut.PathOf(FitOutKeys.Mast), MastKeys.Shape) is not { } reader)
        {
            return null;
        }

        MastFit mast = new()
        {
            Tubes = [.. reader.List(MastKeys.Tubes).Select(item => Tube(fitOut.Binding, item)).OfType<MastTube>()],
            Clamp = reader.Text(MastKeys.Clamp),
            MaterialFactor = reader.Number(MastKeys.MaterialFactor),
        };
        mast = Bracket(reader, mast);
        mast = mast with { Box = Box(reader, mast), Cable = Cable(reader, mast), Guys = Guys(reader, mast) };
        reader.Done();
        return mast;
    }

    private static MastTube? Tube(PlanBinding binding, PlanItem item)
    {
        if (MappingReader.Open(binding, item.Node, item.Path, MastKeys.TubeShape) is not { } reader)
        {
            return null;
        }

        string size = reader.Text(MastKeys.Size);
        double? diameter = reader.Exact(MastKeys.OuterDiameter);
        double? wall = reader.Exact(MastKeys.Wall);
        bool isOwn = reader.Has(MastKeys.OuterDiameter) || reader.Has(MastKeys.Wall);
        if (isOwn && reader.Has(MastKeys.Size))
        {
            binding.Add(item.Node, item.Path, "plan-contradiction", "The tube has a size of the catalogue and measures of its own; keep one of them.", "size, or outer-diameter with wall");
        }
        else if (!reader.Has(MastKeys.Size) && !(reader.Has(MastKeys.OuterDiameter) && reader.Has(MastKeys.Wall)))
        {
            binding.Add(item.Node, item.Path, "plan-missing-key", "The tube has no size.", "size: steel-48.3x3.2, or outer-diameter with wall");
        }
        else if (diameter is { } outer && wall is { } thick && TubeSection.Problem(outer, thick) is { } problem)
        {
            binding.Add(reader.Find(MastKeys.Wall)!, reader.PathOf(MastKeys.Wall), "plan-range", problem, "a wall of at most half the outer diameter");
        }

        MastTube tube = new(
            item.Path,
            size,
            diameter,
            wall,
            reader.Text(MastKeys.Grade),
            reader.Exact(MastKeys.TubeLength) ?? 0,
            reader.YesNo(MastKeys.Welded));
        reader.Done();
        return tube;
    }

    private static MastFit Bracket(MappingReader mast, MastFit bound)
    {
        if (Open(mast, MastKeys.Bracket, MastKeys.BracketShape) is not { } reader)
        {
            return bound;
        }

        bound = bound with
        {
            BracketHeightMetres = reader.Exact(MastKeys.BracketHeight),
            BracketSpacingMetres = reader.Exact(MastKeys.BracketSpacing),
            BracketCapacityNewtons = reader.Exact(MastKeys.BracketCapacity),
            FixedTo = reader.Word(MastKeys.FixedTo),
        };
        reader.Done();
        return bound;
    }

    private static MastBox? Box(MappingReader mast, MastFit bound)
    {
        if (Open(mast, MastKeys.Box, MastKeys.BoxShape) is not { } reader)
        {
            return null;
        }

        IsOnMast(reader, MastKeys.BoxCentre, reader.Exact(MastKeys.BoxCentre), bound, "The box would be above the top of the mast.", "a centre");
        MastBox box = new(
            reader.Exact(MastKeys.BoxWidth) ?? 0, reader.Exact(MastKeys.BoxHeight) ?? 0, reader.Exact(MastKeys.BoxCentre) ?? 0, reader.Exact(MastKeys.BoxMass), reader.Number(MastKeys.BoxDrag));
        reader.Done();
        return box;
    }

    private static MastCable? Cable(MappingReader mast, MastFit bound)
    {
        if (Open(mast, MastKeys.Cable, MastKeys.CableShape) is not { } reader)
        {
            return null;
        }

        IsOnMast(reader, MastKeys.CableLength, reader.Exact(MastKeys.CableLength), bound, "The cable would go up beyond the top of the mast.", "a length");
        MastCable cable = new(reader.Exact(MastKeys.CableDiameter) ?? 0, reader.Exact(MastKeys.CableLength), reader.Exact(MastKeys.CableMass));
        reader.Done();
        return cable;
    }

    private static GuyLevel? Guys(MappingReader mast, MastFit bound)
    {
        if (Open(mast, MastKeys.Guys, MastKeys.GuyShape) is not { } reader)
        {
            return null;
        }

        double? height = reader.Exact(MastKeys.GuyHeight);
        IsOnMast(reader, MastKeys.GuyHeight, height, bound, "The guys would be above the top of the mast.", "a height");
        GuyLevel guys = new(
            height ?? 1, reader.Exact(MastKeys.GuyAngle) ?? 45, reader.Exact(MastKeys.GuyDiameter) ?? 0.004, reader.Exact(MastKeys.GuyLength) ?? 1,
            reader.Exact(MastKeys.GuyBreaking), reader.Exact(MastKeys.GuyAnchor), reader.Whole(MastKeys.GuyCount));
        reader.Done();
        return guys;
    }

    /// <summary>Refuses what would be above the top of the mast.</summary>
    private static void IsOnMast(MappingReader reader, KeyShape key, double? metres, MastFit bound, string problem, string what)
    {
        // Rounding of lengths in inches must not count.
        if (metres > bound.FreeLengthMetres + 1e-9 && bound.FreeLengthMetres > 0)
        {
            reader.Binding.Add(
                reader.Find(key)!, reader.PathOf(key), "plan-range", problem,
                FormattableString.Invariant($"{what} above the upper bracket of at most the free length, {bound.FreeLengthMetres:0.##} m"));
        }
    }

    private static MappingReader? Open(MappingReader owner, KeyShape key, MappingShape shape) =>
        owner.Find(key) is { } node ? MappingReader.Open(owner.Binding, node, owner.PathOf(key), shape) : null;
}
