namespace Graspwright.Moulding.Cure;

/// <summary>An input with the range within which it is stated to lie.</summary>
/// <param name="Value">Value that is used.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
public readonly record struct StatedRange(double Value, double Low, double High);

/// <summary>An output with the spread that the ranges of the inputs give it.</summary>
/// <param name="Value">Value with every input as used.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="AtLow">Value with one input alone at its low end, input by input.</param>
/// <param name="AtHigh">Value with one input alone at its high end.</param>
public sealed record SpreadOutput(double Value, double Low, double High, IReadOnlyList<double> AtLow, IReadOnlyList<double> AtHigh);

/// <summary>Carries the ranges of inputs through a calculation.</summary>
public static class Ranges
{
    /// <summary>Spread of each output: every input moved alone to both ends, the changes added as independent ones are, by their squares, up and down apart.</summary>
    /// <param name="model">The calculation.</param>
    /// <param name="inputs">Its inputs.</param>
    /// <param name="atValues">What it gives with every input as used; <see langword="null"/> = work it out.</param>
    public static IReadOnlyList<SpreadOutput> Spread(Func<double[], double[]> model, IReadOnlyList<StatedRange> inputs, double[]? atValues = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(inputs);
        double[] x = [.. inputs.Select(i => i.Value)];
        double[] centre = atValues ?? model(x);
        double[][] low = new double[inputs.Count][], high = new double[inputs.Count][];
        for (int i = 0; i < inputs.Count; i++)
        {
            low[i] = inputs[i].Low == inputs[i].Value ? centre : model(With(x, i, inputs[i].Low));
            high[i] = inputs[i].High == inputs[i].Value ? centre : model(With(x, i, inputs[i].High));
        }

        SpreadOutput[] outputs = new SpreadOutput[centre.Length];
        for (int o = 0; o < centre.Length; o++)
        {
            double down = 0, up = 0;
            for (int i = 0; i < inputs.Count; i++)
            {
                double a = low[i][o] - centre[o], b = high[i][o] - centre[o];
                up += Math.Pow(Math.Max(0, Math.Max(a, b)), 2);
                down += Math.Pow(Math.Min(0, Math.Min(a, b)), 2);
            }

            outputs[o] = new(centre[o], centre[o] - Math.Sqrt(down), centre[o] + Math.Sqrt(up), [.. low.Select(r => r[o])], [.. high.Select(r => r[o])]);
        }

        return outputs;
    }

    /// <summary>Value of one input, all others as used, with which an output meets a wanted value.</summary>
    /// <param name="model">The calculation.</param>
    /// <param name="inputs">Its inputs.</param>
    /// <param name="input">Which input is moved.</param>
    /// <param name="output">Which output is to meet the value.</param>
    /// <param name="wanted">The value.</param>
    /// <param name="spread">Spread of that output.</param>
    /// <param name="near">How near it must come, above 0.</param>
    /// <returns><see langword="null"/> if the input can't bring it there within its range.</returns>
    public static double? Meeting(Func<double[], double[]> model, IReadOnlyList<StatedRange> inputs, int input, int output, double wanted, SpreadOutput spread, double near)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(spread);
        StatedRange range = inputs[input];
        double atLow = spread.AtLow[input] - wanted, atValue = spread.Value - wanted, atHigh = spread.AtHigh[input] - wanted;
        (double a, double fa, double b, double fb) = atLow * atValue <= 0 ? (range.Low, atLow, range.Value, atValue) : (range.Value, atValue, range.High, atHigh);
        if (fa * fb > 0)
        {
            return null;
        }

        double[] x = [.. inputs.Select(i => i.Value)];
        int side = 0;
        for (int i = 0; i < 60; i++)
        {
            double c = fa == fb ? (a + b) / 2 : (fa * b - fb * a) / (fa - fb);
            double fc = model(With(x, input, c))[output] - wanted;
            if (Math.Abs(fc) <= near)
            {
                return c;
            }

            // False position, the end that stays for a second time halved (Illinois).
            if (fc * fb > 0)
            {
                (b, fb, fa, side) = (c, fc, side == -1 ? fa / 2 : fa, -1);
            }
            else
            {
                (a, fa, fb, side) = (c, fc, side == 1 ? fb / 2 : fb, 1);
            }
        }

        return null;
    }

    private static double[] With(double[] x, int at, double value)
    {
        double[] changed = [.. x];
        changed[at] = value;
        return changed;
    }
}
