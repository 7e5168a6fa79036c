using System.Runtime.Intrinsics;

namespace Graspwright.Signals.Separation;

/// <summary>Features of a window of a signal.</summary>
/// <remarks><source key="hudgins-1993">B. Hudgins, P. Parker and R. Scott 1993, <i>A new strategy for multifunction myoelectric control</i>
/// (from memory); definitions as in BioMedical Engineering OnLine 12:73, table 2.</source></remarks>
public static class Features
{
    /// <summary>Mean of the magnitudes [unit].</summary>
    /// <param name="x">Window.</param>
    public static double MeanAbsolute(ReadOnlySpan<double> x)
    {
        double sum = 0;
        foreach (double v in x)
        {
            sum += Math.Abs(v);
        }

        return sum / x.Length;
    }

    /// <summary>Mean of the magnitudes [unit], summed in four lanes whatever the processor.</summary>
    /// <param name="x">Window.</param>
    public static double MeanAbsolute(ReadOnlySpan<float> x)
    {
        Vector256<double> sum = Vector256<double>.Zero;
        int i = 0;
        for (; i + 4 <= x.Length; i += 4)
        {
            sum += Vector256.Abs(Vector256.Create((double)x[i], x[i + 1], x[i + 2], x[i + 3]));
        }

        double all = Vector256.Sum(sum);
        for (; i < x.Length; i++)
        {
            all += Math.Abs(x[i]);
        }

        return all / x.Length;
    }

    /// <summary>Root of the mean square [unit].</summary>
    /// <param name="x">Window.</param>
    public static double RootMeanSquare(ReadOnlySpan<double> x)
    {
        double sum = 0;
        foreach (double v in x)
        {
            sum += v * v;
        }

        return Math.Sqrt(sum / x.Length);
    }

    /// <summary>Length of the signal's line: sum of the magnitudes of its steps [unit].</summary>
    /// <param name="x">Window.</param>
    public static double WaveformLength(ReadOnlySpan<double> x)
    {
        double sum = 0;
        for (int i = 1; i < x.Length; i++)
        {
            sum += Math.Abs(x[i] - x[i - 1]);
        }

        return sum;
    }

    /// <summary>Changes of sign between neighbours whose step exceeds a least one.</summary>
    /// <param name="x">Window.</param>
    /// <param name="least">Least step [unit].</param>
    public static int ZeroCrossings(ReadOnlySpan<double> x, double least = 0)
    {
        int n = 0;
        for (int i = 1; i < x.Length; i++)
        {
            n += x[i] * x[i - 1] < 0 && Math.Abs(x[i] - x[i - 1]) > least ? 1 : 0;
        }

        return n;
    }

    /// <summary>Changes of slope whose product of steps exceeds a least one.</summary>
    /// <param name="x">Window.</param>
    /// <param name="least">Least product [unit²].</param>
    public static int SlopeChanges(ReadOnlySpan<double> x, double least = 0)
    {
        int n = 0;
        for (int i = 1; i + 1 < x.Length; i++)
        {
            n += (x[i] - x[i - 1]) * (x[i] - x[i + 1]) > least ? 1 : 0;
        }

        return n;
    }
}
