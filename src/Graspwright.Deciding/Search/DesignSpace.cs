namespace Graspwright.Deciding.Search;

/// <summary>One free parameter: a range, a range in steps, or one of several choices that have no order.</summary>
/// <param name="Low">Least value; 0 for choices.</param>
/// <param name="High">Greatest value; the number of choices less 1 for choices.</param>
/// <param name="Step">Step from the least value on; 0 = every value between.</param>
/// <param name="Unordered">Whether the values are numbers of choices without an order.</param>
public sealed record FreeParameter(double Low, double High, double Step = 0, bool Unordered = false)
{
    /// <summary>How many values it may take; infinite without steps.</summary>
    public double Count => Step > 0 ? Math.Floor((High - Low) / Step * (1 + 1e-12) + 1e-9) + 1 : High > Low ? double.PositiveInfinity : 1;

    /// <summary>A parameter of several choices.</summary>
    /// <param name="count">How many.</param>
    public static FreeParameter Of(int count) => new(0, count - 1, 1, Unordered: true);

    /// <summary>The nearest value that may be taken.</summary>
    /// <param name="value">Any value.</param>
    public double Nearest(double value)
    {
        double inside = Math.Clamp(value, Low, High);
        return Step > 0 ? Low + Step * Math.Min(Math.Round((inside - Low) / Step), Count - 1) : inside;
    }

    /// <summary>A value by its number, for parameters in steps.</summary>
    /// <param name="number">Number from 0.</param>
    public double At(long number) => Step > 0 ? Low + Step * number : Low;
}

/// <summary>What is free in a search.</summary>
/// <param name="Parameters">The parameters, in order.</param>
public sealed record DesignSpace(IReadOnlyList<FreeParameter> Parameters)
{
    /// <summary>How many designs there are; infinite where any parameter has no steps.</summary>
    public double Count => Parameters.Aggregate(1.0, (n, p) => n * p.Count);

    /// <summary>A design by its number, for spaces that can be counted.</summary>
    /// <param name="number">Number from 0 to below <see cref="Count"/>.</param>
    public double[] At(long number)
    {
        double[] design = new double[Parameters.Count];
        for (int i = 0; i < design.Length; i++)
        {
            long count = (long)Parameters[i].Count;
            design[i] = Parameters[i].At(number % count);
            number /= count;
        }

        return design;
    }

    /// <summary>A design by chance.</summary>
    /// <param name="chance">Stream of chance.</param>
    public double[] Any(ref Chance chance)
    {
        double[] design = new double[Parameters.Count];
        for (int i = 0; i < design.Length; i++)
        {
            FreeParameter p = Parameters[i];
            design[i] = p.Step > 0 ? p.At(chance.Below((int)Math.Min(p.Count, int.MaxValue))) : p.Low + (p.High - p.Low) * chance.Share();
        }

        return design;
    }

    /// <summary>Moves a design to the nearest that is allowed.</summary>
    /// <param name="design">The design, changed in place.</param>
    public void Settle(double[] design)
    {
        ArgumentNullException.ThrowIfNull(design);
        for (int i = 0; i < design.Length; i++)
        {
            design[i] = Parameters[i].Nearest(design[i]);
        }
    }
}
