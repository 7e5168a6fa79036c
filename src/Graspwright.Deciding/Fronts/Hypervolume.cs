namespace Graspwright.Deciding.Fronts;

/// <summary>How much of the space of aims a set of points beats, up to a reference point; less is better in every aim.</summary>
/// <remarks>Exact: two aims by one sweep, more by slicing along the last aim, each slice of one aim less.</remarks>
/// <source key="zitzler-1999">The measure: the volume that at least one point beats.</source>
public static class Hypervolume
{
    /// <summary>The volume.</summary>
    /// <param name="points">Aims of each point.</param>
    /// <param name="reference">Corner that bounds the volume; points not below it in every aim count for nothing.</param>
    /// <returns>Volume in the product of the aims' units.</returns>
    public static double Of(IReadOnlyList<double[]> points, IReadOnlyList<double> reference)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(reference);
        double[] corner = [.. reference];
        List<double[]> inside = [];
        foreach (double[] point in points)
        {
            bool counts = true;
            for (int i = 0; i < corner.Length; i++)
            {
                counts &= point[i] < corner[i];
            }

            if (counts)
            {
                inside.Add(point);
            }
        }

        return Slice(inside, corner, corner.Length);
    }

    /// <summary>What each point of a front with two aims adds that no other does; the two ends count without bound.</summary>
    /// <param name="front">Points of which none beats another, sorted by the first aim.</param>
    public static double[] Alone(IReadOnlyList<double[]> front)
    {
        ArgumentNullException.ThrowIfNull(front);
        double[] alone = new double[front.Count];
        for (int i = 0; i < alone.Length; i++)
        {
            alone[i] = i == 0 || i == alone.Length - 1
                ? double.PositiveInfinity
                : (front[i + 1][0] - front[i][0]) * (front[i - 1][1] - front[i][1]);
        }

        return alone;
    }

    private static double Slice(List<double[]> points, double[] corner, int aims)
    {
        if (points.Count == 0)
        {
            return 0;
        }

        if (aims == 1)
        {
            return corner[0] - points.Min(p => p[0]);
        }

        if (aims == 2)
        {
            return Sweep(points, corner);
        }

        if (aims == 3)
        {
            return Stack(points, corner);
        }

        int last = aims - 1;
        points = [.. points.OrderBy(p => p[last])];
        double volume = 0;
        List<double[]> below = [];
        for (int i = 0; i < points.Count; i++)
        {
            below.Add(points[i]);
            double top = i + 1 < points.Count ? points[i + 1][last] : corner[last];
            if (top > points[i][last])
            {
                volume += (top - points[i][last]) * Slice(below, corner, last);
            }
        }

        return volume;
    }

    private static double Sweep(List<double[]> points, double[] corner)
    {
        double area = 0, height = corner[1];
        foreach (double[] point in points.OrderBy(p => p[0]).ThenBy(p => p[1]))
        {
            if (point[1] < height)
            {
                area += (corner[0] - point[0]) * (height - point[1]);
                height = point[1];
            }
        }

        return area;
    }

    /// <summary>Three aims: layers along the third, each with the staircase of the first two kept sorted.</summary>
    private static double Stack(List<double[]> points, double[] corner)
    {
        List<double[]> stairs = []; // first aim rising, second falling
        double volume = 0, area = 0, level = 0;
        foreach (double[] point in points.OrderBy(p => p[2]))
        {
            volume += area * (point[2] - level);
            level = point[2];
            area += Add(stairs, point, corner);
        }

        return volume + area * (corner[2] - level);
    }

    /// <summary>Puts a point into the staircase; the area it adds.</summary>
    private static double Add(List<double[]> stairs, double[] point, double[] corner)
    {
        int at = 0, end = stairs.Count;
        while (at < end)
        {
            int middle = (at + end) / 2;
            if (stairs[middle][0] < point[0])
            {
                at = middle + 1;
            }
            else
            {
                end = middle;
            }
        }

        double height = at > 0 ? stairs[at - 1][1] : corner[1];
        if (height <= point[1])
        {
            return 0;
        }

        double added = 0, from = point[0];
        int gone = at;
        while (gone < stairs.Count && stairs[gone][1] >= point[1])
        {
            added += (stairs[gone][0] - from) * (height - point[1]);
            from = stairs[gone][0];
            height = stairs[gone][1];
            gone++;
        }

        double until = gone < stairs.Count ? stairs[gone][0] : corner[0];
        added += (until - from) * (height - point[1]);
        stairs.RemoveRange(at, gone - at);
        stairs.Insert(at, point);
        return added;
    }
}
