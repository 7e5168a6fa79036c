using Graspwright.Deciding.Search;

namespace Graspwright.Deciding.Gradients;

/// <summary>A design with the derivatives of its outcome.</summary>
/// <param name="Outcome">What it is worth.</param>
/// <param name="Aims">Derivatives of the aims: one row an aim, one column a parameter.</param>
/// <param name="Excess">Derivatives of the breaches of the limits.</param>
public sealed record Slopes(Outcome Outcome, double[][] Aims, double[][] Excess);

/// <summary>Polishes one design: makes one aim better while no other gets worse and every limit holds.</summary>
/// <remarks>
/// Sequential linear programming in a box that shrinks where the straight line proved too bold: inside the box the aim
/// falls along its gradient, and what would break a limit or worsen another aim is put back onto its straight line. Each step is
/// judged as it is; only a true gain is taken.
/// </remarks>
/// <source key="griffith-stewart-1961">Straightened problems in a box, one after another.</source>
public static class Polishing
{
    private const int MostSteps = 40, InnerSteps = 200, Passes = 6;
    private const double FirstBox = 0.05, LastBox = 1e-5;

    /// <summary>Polishes.</summary>
    /// <param name="space">What is free; choices and steps of the stock stay as they are.</param>
    /// <param name="slopes">Outcome and derivatives at a design.</param>
    /// <param name="judge">The outcome alone.</param>
    /// <param name="start">The design, inside the limits.</param>
    /// <param name="aim">Number of the aim to better.</param>
    /// <param name="free">Which parameters may move.</param>
    /// <returns>The polished design; the same where nothing could be gained.</returns>
    public static Design Polish(DesignSpace space, Func<double[], Slopes> slopes, Judge judge, Design start, int aim, IReadOnlyList<bool> free)
    {
        ArgumentNullException.ThrowIfNull(space);
        ArgumentNullException.ThrowIfNull(slopes);
        ArgumentNullException.ThrowIfNull(judge);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(free);
        double[] width = [.. space.Parameters.Select((p, i) => free[i] ? p.High - p.Low : 0)];
        Design best = start;
        double box = FirstBox;
        Slopes? here = null;
        for (int step = 0; step < MostSteps && box > LastBox; step++)
        {
            here ??= slopes(best.Values);
            double[] move = Step(space, here, best, start, aim, width, box);
            double[] values = [.. best.Values.Select((v, i) => v + move[i] * width[i])];
            space.Settle(values);
            Outcome outcome = judge(values);
            bool better = outcome.Violation == 0 && outcome.Aims[aim] < best.Outcome.Aims[aim]
                && Enumerable.Range(0, outcome.Aims.Length).All(k => k == aim || outcome.Aims[k] <= start.Outcome.Aims[k]);
            if (better)
            {
                (best, here, box) = (new(start.Number, values, outcome), null, Math.Min(1.6 * box, 0.2));
            }
            else
            {
                box *= 0.4;
            }
        }

        return best;
    }

    /// <summary>The move inside the box, in shares of the ranges: projected gradient of the straightened problem.</summary>
    private static double[] Step(DesignSpace space, Slopes here, Design best, Design start, int aim, double[] width, double box)
    {
        int n = width.Length;
        double[] along = [.. Enumerable.Range(0, n).Select(i => here.Aims[aim][i] * width[i])];
        double length = Math.Sqrt(along.Sum(g => g * g));
        List<(double[] Row, double Room)> held = [];
        for (int k = 0; k < here.Excess.Length; k++)
        {
            Hold(held, here.Excess[k], width, -best.Outcome.Excess[k]);
        }

        for (int k = 0; k < here.Aims.Length; k++)
        {
            if (k != aim)
            {
                Hold(held, here.Aims[k], width, start.Outcome.Aims[k] - best.Outcome.Aims[k]);
            }
        }

        double[] move = new double[n];
        if (length == 0)
        {
            return move;
        }

        for (int t = 0; t < InnerSteps; t++)
        {
            double rate = 0.5 * box / Math.Sqrt(t + 1.0);
            for (int i = 0; i < n; i++)
            {
                move[i] -= rate * along[i] / length;
            }

            for (int pass = 0; pass < Passes; pass++)
            {
                for (int i = 0; i < n; i++)
                {
                    FreeParameter p = space.Parameters[i];
                    double low = width[i] > 0 ? Math.Max(-box, (p.Low - best.Values[i]) / width[i]) : 0, high = width[i] > 0 ? Math.Min(box, (p.High - best.Values[i]) / width[i]) : 0;
                    move[i] = Math.Clamp(move[i], low, high);
                }

                foreach ((double[] row, double room) in held)
                {
                    double over = row.Zip(move, (r, m) => r * m).Sum() - 0.98 * room;
                    for (int i = 0; over > 0 && i < n; i++)
                    {
                        move[i] -= over * row[i];
                    }
                }
            }
        }

        return move;
    }

    /// <summary>What must not grow by more than its room, scaled so that all press alike.</summary>
    private static void Hold(List<(double[] Row, double Room)> held, double[] slope, double[] width, double room)
    {
        double[] row = [.. slope.Select((s, i) => s * width[i])];
        double length = Math.Sqrt(row.Sum(r => r * r));
        if (length > 0 && double.IsFinite(length))
        {
            held.Add(([.. row.Select(r => r / length)], Math.Max(room, 0) / length));
        }
    }
}
