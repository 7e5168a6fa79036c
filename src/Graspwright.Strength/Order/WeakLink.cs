namespace Graspwright.Strength.Order;

/// <summary>What breaks at which force, one part of a chain.</summary>
/// <param name="Name">The part.</param>
/// <param name="Newtons">Force at which it breaks [N].</param>
public readonly record struct Link(string Name, double Newtons);

/// <summary>Sizes a part so that it breaks before the rest.</summary>
public static class WeakLink
{
    /// <summary>The size at which a rising force of breaking meets a target.</summary>
    /// <param name="breaking">Force of breaking against size, rising.</param>
    /// <param name="target">Target [N].</param>
    /// <param name="least">Least size.</param>
    /// <param name="greatest">Greatest size.</param>
    /// <returns><see langword="null"/> if no size between both meets it.</returns>
    public static double? Size(Func<double, double> breaking, double target, double least, double greatest)
    {
        ArgumentNullException.ThrowIfNull(breaking);
        if (!(breaking(least) <= target && breaking(greatest) >= target))
        {
            return null;
        }

        for (int i = 0; i < 200 && greatest - least > 1e-13 * greatest; i++)
        {
            double middle = (least + greatest) / 2;
            (least, greatest) = breaking(middle) < target ? (middle, greatest) : (least, middle);
        }

        return (least + greatest) / 2;
    }

    /// <summary>Chance that one part breaks before another, both lognormal.</summary>
    /// <param name="first">Middle force of the one meant to go first [N].</param>
    /// <param name="firstSpread">Its coefficient of variation.</param>
    /// <param name="other">Middle force of the other [N].</param>
    /// <param name="otherSpread">Its coefficient of variation.</param>
    /// <returns>0 to 1.</returns>
    public static double ChanceFirst(double first, double firstSpread, double other, double otherSpread)
    {
        double variance = Math.Log(1 + firstSpread * firstSpread) + Math.Log(1 + otherSpread * otherSpread);
        double gap = Math.Log(other / first);
        return variance <= 0 ? (gap > 0 ? 1 : 0) : Share(gap / Math.Sqrt(variance));
    }

    /// <summary>Share of a standard normal below a value.</summary>
    /// <remarks>Simpson's rule on the density in steps of at most 1/64: good to 1e-10, beyond what a chance needs.</remarks>
    private static double Share(double value)
    {
        double end = Math.Min(Math.Abs(value), 9);
        int steps = 2 * (int)Math.Ceiling(end * 32 + 1);
        double h = end / steps, sum = 1 + Math.Exp(-end * end / 2);
        for (int i = 1; i < steps; i++)
        {
            double x = i * h;
            sum += (i % 2 == 1 ? 4 : 2) * Math.Exp(-x * x / 2);
        }

        double half = sum * h / 3 / Math.Sqrt(2 * Math.PI);
        return value < 0 ? 0.5 - half : 0.5 + half;
    }
}
