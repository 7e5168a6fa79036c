using System.Buffers;

namespace Graspwright.Signals.Thresholds;

/// <summary>Greatest level at which a stretch of an envelope still acts, for every hold at once.</summary>
/// <remarks>
/// A stretch acts at a level after a hold exactly if somewhere the least of the envelope over the hold reaches the
/// level. Each sample is the least of one widest run round it; the greatest of those samples whose run is at least as
/// long as the hold is the answer. One pass finds all runs.
/// </remarks>
public static class HoldLevels
{
    /// <summary>Finds the levels.</summary>
    /// <param name="stretch">Envelope.</param>
    /// <param name="levels">Level for a hold of 1, 2, … samples; negative infinity where the stretch is shorter than the hold.</param>
    public static void Of(ReadOnlySpan<float> stretch, Span<float> levels)
    {
        levels.Fill(float.NegativeInfinity);
        float[] values = ArrayPool<float>.Shared.Rent(stretch.Length + 1);
        int[] starts = ArrayPool<int>.Shared.Rent(stretch.Length + 1);
        int depth = 0;
        for (int i = 0; i <= stretch.Length; i++)
        {
            float x = i < stretch.Length ? stretch[i] : float.NegativeInfinity;
            int start = i;
            while (depth > 0 && values[depth - 1] >= x)
            {
                depth--;
                start = starts[depth];
                int width = Math.Min(i - start, levels.Length) - 1;
                levels[width] = Math.Max(levels[width], values[depth]);
            }

            (values[depth], starts[depth]) = (x, start);
            depth++;
        }

        ArrayPool<float>.Shared.Return(values);
        ArrayPool<int>.Shared.Return(starts);
        for (int hold = levels.Length - 2; hold >= 0; hold--)
        {
            levels[hold] = Math.Max(levels[hold], levels[hold + 1]);
        }
    }
}
