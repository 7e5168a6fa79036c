namespace Graspwright.Deciding.Fronts;

/// <summary>Which of two points beats the other when less is better in every aim.</summary>
/// <source key="deb-2002">Non-dominated sorting in ranks.</source>
public static class Domination
{
    /// <summary>Whether one point is nowhere worse than another and somewhere better.</summary>
    /// <param name="one">Aims of the one, less is better.</param>
    /// <param name="other">Aims of the other.</param>
    public static bool Beats(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        bool better = false;
        for (int i = 0; i < one.Length; i++)
        {
            if (one[i] > other[i])
            {
                return false;
            }

            better |= one[i] < other[i];
        }

        return better;
    }

    /// <summary>Rank of every point: 0 where nothing beats it, 1 where only points of rank 0 do, and so on.</summary>
    /// <param name="points">Aims of each point, less is better.</param>
    public static int[] Ranks(IReadOnlyList<double[]> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        int n = points.Count;
        int[] order = [.. Enumerable.Range(0, n)];
        Array.Sort(order, (a, b) => Compare(points[a], points[b]) is not 0 and var c ? c : a.CompareTo(b));
        int[] ranks = new int[n];
        List<List<int>> fronts = [];
        foreach (int i in order)
        {
            // In this order a point can only be beaten by one before it; the first front without such a one is its own.
            int front = 0;
            while (front < fronts.Count && Beaten(points, fronts[front], i))
            {
                front++;
            }

            if (front == fronts.Count)
            {
                fronts.Add([]);
            }

            fronts[front].Add(i);
            ranks[i] = front;
        }

        return ranks;
    }

    private static bool Beaten(IReadOnlyList<double[]> points, List<int> front, int i)
    {
        for (int k = front.Count - 1; k >= 0; k--)
        {
            if (Beats(points[front[k]], points[i]))
            {
                return true;
            }
        }

        return false;
    }

    private static int Compare(double[] a, double[] b)
    {
        for (int k = 0; k < a.Length; k++)
        {
            int c = a[k].CompareTo(b[k]);
            if (c != 0)
            {
                return c;
            }
        }

        return 0;
    }
}
