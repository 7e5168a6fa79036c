using System.Globalization;
using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Tests.Separation;

public sealed class DiscriminantTests
{
    /// <summary>Values of R's MASS::lda and of the pooled covariance on Fisher's iris data.</summary>
    [Fact]
    public void Iris_comes_out_as_in_R()
    {
        (double[][] rows, int[] classes) = Iris();
        LinearDiscriminant fit = LinearDiscriminant.Fit(rows, classes, equalPriors: false);

        int[] wrong = [.. Enumerable.Range(0, 150).Where(i => fit.Classify(rows[i]) != classes[i]).Select(i => i + 1)];
        Assert.Equal([71, 84, 134], wrong);
        Assert.Equal(89.8641856, fit.Between(0, 1), 1e-6);
        Assert.Equal(179.384713, fit.Between(0, 2), 1e-6);
        Assert.Equal(17.2010664, fit.Between(1, 2), 1e-6);
        double[] p = fit.Probabilities(rows[83]);
        Assert.Equal(0.143391908, p[1], 1e-9);
        Assert.Equal(0.856608092, p[2], 1e-9);
    }

    [Fact]
    public void Iris_leaves_three_wrong_when_each_is_held_back()
    {
        (double[][] rows, int[] classes) = Iris();
        int wrong = Enumerable.Range(0, 150).Count(i =>
            LinearDiscriminant.Fit([.. rows.Where((_, k) => k != i)], [.. classes.Where((_, k) => k != i)], equalPriors: false).Classify(rows[i]) != classes[i]);
        Assert.Equal(3, wrong);
    }

    /// <summary>A worked example of a lecture; pooled squared distance recomputed.</summary>
    [Fact]
    public void The_worked_example_comes_out()
    {
        double[][] rows = [[4, 1], [2, 4], [2, 3], [3, 6], [4, 4], [9, 10], [6, 8], [9, 5], [8, 7], [10, 8]];
        LinearDiscriminant fit = LinearDiscriminant.Fit(rows, [0, 0, 0, 0, 0, 1, 1, 1, 1, 1], equalPriors: true);
        Assert.Equal([3, 3.6], fit.Means[0]);
        Assert.Equal([8.4, 7.6], fit.Means[1]);
        Assert.Equal(25.050960307, fit.Between(0, 1), 1e-8);
    }

    [Fact]
    public void Refuses_an_empty_class()
    {
        Assert.Throws<ArgumentException>(() => LinearDiscriminant.Fit([[1], [2], [3], [4]], [0, 0, 2, 2], equalPriors: true));
        Assert.Throws<ArgumentException>(() => LinearDiscriminant.Fit([[1], [2]], [0, 0], equalPriors: true));
    }

    private static (double[][] Rows, int[] Classes) Iris()
    {
        string[][] lines = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Separation", "Files", "iris.csv")).Skip(1).Select(l => l.Split(','))];
        string[] names = ["setosa", "versicolor", "virginica"];
        return ([.. lines.Select(l => l.Take(4).Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())], [.. lines.Select(l => Array.IndexOf(names, l[4]))]);
    }
}
