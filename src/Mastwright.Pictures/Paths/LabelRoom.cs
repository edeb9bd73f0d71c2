using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>Free places for labels on a plot: each near what it speaks of, off every mark, and with what is in the way left in sight.</summary>
internal sealed class LabelRoom
{
    private const double StepAcrossPixels = 12;
    private const double StepDownPixels = 2;
    private const double EdgePixels = 4;

    /// <summary>Nearest that a label's edge may come to the head of its mark: below it the line between them is not seen.</summary>
    private const double LeastLeaderPixels = 8;

    /// <summary>How far either side of a mark the top of the ground stays in sight.</summary>
    private const double KeptAsidePixels = 24;

    /// <summary>What a label on the other side of the ray than its mark costs, in pixels of distance.</summary>
    private const double WrongSideCost = 30;

    /// <summary>What a label costs that hides the ground or the ray over its whole width, in pixels of distance.</summary>
    private const double HidingCost = 300;

    /// <summary>What a line that crosses another costs, in pixels of distance.</summary>
    private const double CrossingCost = 60;

    /// <summary>Longest line from a lesser label to its mark: beyond it nobody would see what belongs together.</summary>
    private const double MostLeaderPixels = 260;

    private readonly Box plot;
    private readonly List<Box> full;
    private readonly IReadOnlyList<Mark> marks;
    private readonly List<(Spot From, Spot To)> leaders = [];
    private readonly List<Column> columns = [];

    /// <summary>The room of a plot whose path has a ray.</summary>
    /// <param name="frame">The plot.</param>
    /// <param name="geometry">Its curves.</param>
    /// <param name="taken">Places already taken.</param>
    /// <param name="marks">What is marked; none is hidden.</param>
    public LabelRoom(PathFrame frame, PathGeometry geometry, IEnumerable<Box> taken, IReadOnlyList<Mark> marks)
    {
        plot = frame.Plot;
        full = [.. taken];
        this.marks = marks;
        for (int i = 0; i < geometry.Distances.Length; i++)
        {
            double ray = frame.Y(geometry.Ray[i]);
            double wanted = frame.Y(geometry.Ray[i] - (RadioLayer.WantedShare * geometry.Fresnel[i]));
            double top = geometry.Missing[i] ? double.PositiveInfinity : frame.Y(geometry.Top[i]);

            // What reaches into the wanted zone is in the way as a whole: a shed down to its floor.
            double obstacleBottom = top < wanted ? Math.Max(wanted, frame.Y(geometry.RaisedGround[i])) : top;
            columns.Add(new(frame.X(geometry.Distances[i]), top, ray, obstacleBottom));
        }
    }

    /// <summary>A free place for a label, which is taken then; null where there is none.</summary>
    /// <param name="mark">What it speaks of.</param>
    /// <param name="width">Its width in pixels.</param>
    /// <param name="height">Its height in pixels.</param>
    /// <param name="isFirst">Whether it may lie far off, or over what is in the way (off the marks), when nothing better is free.</param>
    /// <param name="leader">The line from the label to the head of the mark.</param>
    public Box? Take(Mark mark, double width, double height, bool isFirst, out (Spot From, Spot To) leader)
    {
        Box? best = Best(mark, width, height, keepsObstacles: true, isFirst ? double.MaxValue : MostLeaderPixels)
            ?? (isFirst ? Best(mark, width, height, keepsObstacles: false, double.MaxValue) : null);
        leader = best is { } box ? Leader(box, mark) : default;
        if (best is { } chosen)
        {
            full.Add(chosen.Grown(3));
            leaders.Add(leader);
        }

        return best;
    }

    private Box? Best(Mark mark, double width, double height, bool keepsObstacles, double mostLeader)
    {
        Box? best = null;
        double least = double.MaxValue;
        foreach (double left in Lefts(mark, width))
        {
            for (double top = plot.Top + 2; top + height <= plot.Bottom - 2; top += StepDownPixels)
            {
                Box box = new(left, top, left + width, top + height);
                (Spot from, Spot to) = Leader(box, mark);
                double length = Math.Sqrt(Math.Pow(to.X - from.X, 2) + Math.Pow(to.Y - from.Y, 2));
                double aside = Math.Abs(((box.Left + box.Right) / 2) - mark.Head.X);
                bool above = box.Bottom <= mark.Head.Y;
                double cost = length + (0.15 * aside) + (above == mark.IsAboveRay ? 0 : WrongSideCost);
                if (cost >= least || length < LeastLeaderPixels || length > mostLeader || IsHindered(box, from, to))
                {
                    continue;
                }

                (double hidden, bool hidesObstacle) = Hidden(box);
                cost += (HidingCost * hidden) + (CrossingCost * leaders.Count(other => Cross(from, to, other.From, other.To)));
                if (cost < least && !(hidesObstacle && keepsObstacles))
                {
                    least = cost;
                    best = box;
                }
            }
        }

        return best;
    }

    private IEnumerable<double> Lefts(Mark mark, double width)
    {
        double first = plot.Left + EdgePixels;
        double last = plot.Right - EdgePixels - width;
        double middle = mark.Head.X - (width / 2);
        if (last < first)
        {
            yield break;
        }

        yield return Math.Clamp(middle, first, last);
        for (double left = middle - (Math.Floor((middle - first) / StepAcrossPixels) * StepAcrossPixels); left <= last; left += StepAcrossPixels)
        {
            yield return left;
        }
    }

    /// <summary>Whether a label or its line would lie over a mark, a label or a line.</summary>
    private bool IsHindered(Box box, Spot from, Spot to) =>
        full.Exists(other => other.Overlaps(box) || Meets(from, to, other))
        || marks.Any(mark => mark.Around.Overlaps(box))
        || leaders.Exists(leader => Meets(leader.From, leader.To, box.Grown(2)));

    /// <summary>Over which share of its width a label hides the ground's top or the ray, and whether it hides what is in the way.</summary>
    private (double Share, bool HidesObstacle) Hidden(Box box)
    {
        int across = 0;
        int hidden = 0;
        bool hidesObstacle = false;
        foreach (Column column in columns)
        {
            if (column.X < box.Left || column.X > box.Right)
            {
                continue;
            }

            across++;
            bool hidesTop = Inside(column.Top);
            hidden += hidesTop || Inside(column.Ray) ? 1 : 0;
            hidesObstacle |= (column.Top < column.ObstacleBottom && box.Bottom > column.Top && box.Top < column.ObstacleBottom)
                || (hidesTop && marks.Any(mark => Math.Abs(mark.Head.X - column.X) < KeptAsidePixels));
        }

        return (across == 0 ? 0 : (double)hidden / across, hidesObstacle);

        bool Inside(double y) => y > box.Top - 2 && y < box.Bottom + 2;
    }

    private static (Spot From, Spot To) Leader(Box box, Mark mark)
    {
        const double Inset = 6;
        bool isBeside = mark.Head.Y > box.Top && mark.Head.Y < box.Bottom;
        double x = isBeside
            ? Math.Clamp(mark.Head.X, box.Left, box.Right)
            : Math.Clamp(mark.Head.X, box.Left + Inset, box.Right - Inset);
        return (new(x, Math.Clamp(mark.Head.Y, box.Top, box.Bottom)), mark.Head);
    }

    /// <summary>Whether a line meets a box (clipping it to the box's four edges, one after the other).</summary>
    private static bool Meets(Spot from, Spot to, Box box)
    {
        double enter = 0;
        double leave = 1;
        return Clip(from.X - box.Left, to.X - from.X) && Clip(box.Right - from.X, from.X - to.X)
            && Clip(from.Y - box.Top, to.Y - from.Y) && Clip(box.Bottom - from.Y, from.Y - to.Y);

        bool Clip(double inside, double towards)
        {
            if (towards == 0)
            {
                return inside > 0;
            }

            double share = -inside / towards;
            enter = towards > 0 ? Math.Max(enter, share) : enter;
            leave = towards > 0 ? leave : Math.Min(leave, share);
            return enter < leave;
        }
    }

    private static bool Cross(Spot a, Spot b, Spot c, Spot d)
    {
        return Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

        static double Side(Spot from, Spot to, Spot point) => ((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X));
    }

    /// <summary>What is marked on the plot: the top of an obstruction and the ray there.</summary>
    /// <param name="Head">Top of the obstruction.</param>
    /// <param name="OnRay">The ray there.</param>
    internal readonly record struct Mark(Spot Head, Spot OnRay)
    {
        /// <summary>Whether the top stands above the ray.</summary>
        public bool IsAboveRay => Head.Y < OnRay.Y;

        /// <summary>The measuring line with a little air around it.</summary>
        public Box Around => new Box(Head.X, Math.Min(Head.Y, OnRay.Y), Head.X, Math.Max(Head.Y, OnRay.Y)).Grown(6);
    }

    /// <summary>The curves at one place, in pixels down; what is in the way reaches from the top to its bottom.</summary>
    private readonly record struct Column(double X, double Top, double Ray, double ObstacleBottom);
}
