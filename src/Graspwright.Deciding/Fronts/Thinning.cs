namespace Graspwright.Deciding.Fronts;

/// <summary>Thins a front to a number of points that still tell all of it.</summary>
/// <remarks>
/// Two aims: time and again the point goes that adds the least volume of its own. More aims: the one that
/// another replaces at least loss, the loss being how much worse the other is where it is worse, scaled by the extent of
/// the front; the best of each aim stays. So what lies close to others goes, and what lags behind its neighbours.
/// </remarks>
/// <source key="beume-2007">Leaving out the point with the least volume of its own.</source>
/// <source key="li-2014">The loss of being replaced by a neighbour: distance with the neighbour shifted.</source>
public static class Thinning
{
    /// <summary>Indices of the points that stay, in rising order.</summary>
    /// <param name="front">Aims of points of which none beats another; less is better.</param>
    /// <param name="most">How many may stay.</param>
    public static IReadOnlyList<int> Keep(IReadOnlyList<double[]> front, int most)
    {
        ArgumentNullException.ThrowIfNull(front);
        if (front.Count <= most)
        {
            return [.. Enumerable.Range(0, front.Count)];
        }

        return front[0].Length == 2 ? ByVolume(front, most) : ByDistance(front, most);
    }

    private static int[] ByVolume(IReadOnlyList<double[]> front, int most)
    {
        List<int> left = [.. Enumerable.Range(0, front.Count).OrderBy(i => front[i][0]).ThenBy(i => front[i][1]).ThenBy(i => i)];
        while (left.Count > most)
        {
            int least = left.Count > 2 ? 1 : left.Count - 1;
            double smallest = double.PositiveInfinity;
            for (int k = 1; k < left.Count - 1; k++)
            {
                double own = (front[left[k + 1]][0] - front[left[k]][0]) * (front[left[k - 1]][1] - front[left[k]][1]);
                if (own < smallest)
                {
                    (smallest, least) = (own, k);
                }
            }

            left.RemoveAt(least);
        }

        left.Sort();
        return [.. left];
    }

    private static int[] ByDistance(IReadOnlyList<double[]> front, int most)
    {
        int n = front.Count, aims = front[0].Length;
        double[] low = new double[aims], extent = new double[aims];
        bool[] end = new bool[n], gone = new bool[n];
        for (int a = 0; a < aims; a++)
        {
            int best = 0;
            double high = double.NegativeInfinity;
            for (int i = 0; i < n; i++)
            {
                best = front[i][a] < front[best][a] ? i : best;
                high = Math.Max(high, front[i][a]);
            }

            low[a] = front[best][a];
            extent[a] = high > low[a] ? high - low[a] : 1;
            end[best] = true;
        }

        double[] nearest = new double[n];
        int[] neighbour = new int[n];
        for (int i = 0; i < n; i++)
        {
            Nearest(front, extent, gone, i, nearest, neighbour);
        }

        for (int left = n; left > most; left--)
        {
            int worst = -1;
            for (int i = 0; i < n; i++)
            {
                if (!gone[i] && (!end[i] || left <= aims) && (worst < 0 || nearest[i] < nearest[worst]))
                {
                    worst = i;
                }
            }

            worst = worst < 0 ? Array.IndexOf(gone, false) : worst;
            gone[worst] = true;
            for (int i = 0; i < n; i++)
            {
                if (!gone[i] && neighbour[i] == worst)
                {
                    Nearest(front, extent, gone, i, nearest, neighbour);
                }
            }
        }

        return [.. Enumerable.Range(0, n).Where(i => !gone[i])];
    }

    private static void Nearest(IReadOnlyList<double[]> front, double[] extent, bool[] gone, int i, double[] nearest, int[] neighbour)
    {
        (nearest[i], neighbour[i]) = (double.PositiveInfinity, -1);
        for (int j = 0; j < gone.Length; j++)
        {
            if (j == i || gone[j])
            {
                continue;
            }

            double square = 0;
            for (int a = 0; a < extent.Length && square < nearest[i]; a++)
            {
                double worse = Math.Max(front[j][a] - front[i][a], 0) / extent[a];
                square += worse * worse;
            }

            if (square < nearest[i])
            {
                (nearest[i], neighbour[i]) = (square, j);
            }
        }
    }
}
