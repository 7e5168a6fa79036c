namespace Graspwright.Deciding.Gradients;

/// <summary>Derivatives by central differences, for what gives none of its own.</summary>
public static class Differences
{
    /// <summary>Derivatives of several values along each parameter, error of the order of the step squared.</summary>
    /// <param name="values">The values at a point.</param>
    /// <param name="at">The point.</param>
    /// <param name="steps">Step of each parameter; 0 = it stays, its derivatives are 0.</param>
    /// <returns>One row a value, one column a parameter.</returns>
    public static double[][] Central(Func<double[], double[]> values, IReadOnlyList<double> at, IReadOnlyList<double> steps)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(steps);
        double[][] rows = [];
        for (int i = 0; i < at.Count; i++)
        {
            double[] up = [.. at], down = [.. at];
            up[i] += steps[i];
            down[i] -= steps[i];
            double[] above = steps[i] == 0 ? [] : values(up), below = steps[i] == 0 ? [] : values(down);
            rows = rows.Length > 0 || above.Length == 0 ? rows : [.. above.Select(_ => new double[at.Count])];
            for (int k = 0; k < above.Length; k++)
            {
                rows[k][i] = (above[k] - below[k]) / (2 * steps[i]);
            }
        }

        return rows;
    }
}
