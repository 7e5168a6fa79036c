using System.Globalization;

namespace Graspwright.Signals.Recordings;

/// <summary>Puts samples in their places in time: rate, gaps, jitter.</summary>
internal static class Timing
{
    private const double GapSteps = 1.5;
    private const double WrongRate = 0.10;

    public static Recording Place(TableReader table, TableHints hints)
    {
        TableLayout layout = table.Layout;
        List<string> notes = [];
        int count = table.Count;
        double rate = hints.RateHertz, jitter = 0;
        List<Gap> gaps = [];
        int timeColumn = layout.Find(ColumnUse.Time);
        if (timeColumn >= 0)
        {
            double factor = Units.Time(layout.Units[timeColumn])
                ?? throw new RecordingException(1, 0, layout.Names[timeColumn], $"the unit '{layout.Units[timeColumn]}'", "s, ms, us", "write the unit of time in brackets behind its name");
            (rate, jitter, gaps) = FromTimes(table.Times, factor, count);
            table.Times.Clear();
            if (double.IsFinite(hints.RateHertz) && Math.Abs(rate / hints.RateHertz - 1) > WrongRate)
            {
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"the times give {rate:0.#} samples a second, not the {hints.RateHertz:0.#} that were stated; the times are believed"));
            }
        }
        else if (table.Numbers?.Take() is { } numbers)
        {
            gaps = FromNumbers(numbers);
        }

        if (!(rate > 0) || !double.IsFinite(rate))
        {
            throw new RecordingException(1, 0, "time_s", "no column of times and no rate", "a column time_s, or the rate", "write rate = \"1000 Hz\" beside the recording in the hand file");
        }

        float[][] signals = table.TakeSignals();
        int[]? shift = gaps.Count > 0 ? Filled(ref signals, ref gaps, count) : null;
        List<Channel> channels = [];
        for (int c = 0, s = 0; c < layout.Uses.Count; c++)
        {
            if (layout.Uses[c] == ColumnUse.Signal)
            {
                (string unit, double factor) = Units.Of(layout.Units[c]);
                channels.Add(new(layout.Names[c], unit, signals[s++], factor));
            }
        }

        Mark[] marks = [.. table.MarksInSamples.Select(m => new Mark(At(m.StartSeconds, shift) / rate, At(m.EndSeconds, shift) / rate, m.Label))];
        return new(rate, channels, marks) { Gaps = gaps, JitterSeconds = jitter, Broken = table.Broken, Notes = notes };
    }

    /// <summary>Rate from the middle of the steps, refined by all steps that are no gaps; times may be rounded coarsely.</summary>
    private static (double Rate, double Jitter, List<Gap> Gaps) FromTimes(SampleStore<double> times, double factor, int count)
    {
        double first = times[0], whole = (times.Last - first) * factor;
        if (!(whole > 0))
        {
            throw new RecordingException(2, 0, "time_s", "times that do not rise", "times that rise from line to line", "check which column holds the times");
        }

        double coarse = Coarseness(times, factor), mean = Trimmed(times, factor), sum = 0;
        int plain = 0;
        for (int i = 1; i < count; i++)
        {
            double step = (times[i] - times[i - 1]) * factor;
            if (step < 2 * GapSteps * mean)
            {
                sum += step;
                plain++;
            }
        }

        double dt = sum / plain, square = 0;
        List<Gap> gaps = [];
        for (int i = 1; i < count; i++)
        {
            double step = (times[i] - times[i - 1]) * factor;
            if (step > GapSteps * dt + coarse)
            {
                gaps.Add(new(i, Math.Max(1, (int)Math.Round(step / dt) - 1)));
            }
            else
            {
                square += (step - dt) * (step - dt);
            }
        }

        return (1 / dt, Math.Sqrt(square / Math.Max(1, plain)), gaps);
    }

    /// <summary>Mean of the steps without the longest hundredth.</summary>
    private static double Trimmed(SampleStore<double> times, double factor)
    {
        const int most = 100_000;
        int count = times.Count - 1;
        double[] some = [.. Enumerable.Range(0, Math.Min(count, most)).Select(i => (int)((long)i * count / Math.Min(count, most))).Select(i => (times[i + 1] - times[i]) * factor)];
        Array.Sort(some);
        int keep = Math.Max(1, some.Length - some.Length / 100);
        double sum = 0;
        for (int i = 0; i < keep; i++)
        {
            sum += some[i];
        }

        return sum > 0 ? sum / keep : (times.Last - times[0]) * factor / count;
    }

    /// <summary>Smallest step above 0: what the times are rounded to, if some are alike.</summary>
    private static double Coarseness(SampleStore<double> times, double factor)
    {
        double least = double.PositiveInfinity;
        bool zero = false;
        for (int i = 1; i < times.Count; i++)
        {
            double step = (times[i] - times[i - 1]) * factor;
            if (step < 0)
            {
                throw new RecordingException(i + 2, 0, "time_s", "a time before that of the line above", "times that rise from line to line", "cut the file there: two recordings stand in it");
            }

            zero |= step == 0;
            least = step > 0 && step < least ? step : least;
        }

        return zero ? least : 0;
    }

    private static List<Gap> FromNumbers(double[] numbers)
    {
        List<Gap> gaps = [];
        for (int i = 1; i < numbers.Length; i++)
        {
            double step = numbers[i] - numbers[i - 1];
            if (step is > 1 and < 1e6)
            {
                gaps.Add(new(i, (int)step - 1));
            }
        }

        return gaps;
    }

    /// <summary>Puts the last value before a gap into it.</summary>
    /// <returns>How far each sample moved.</returns>
    private static int[] Filled(ref float[][] signals, ref List<Gap> gaps, int count)
    {
        int[] shift = new int[count + 1];
        int moved = 0;
        List<Gap> placed = [];
        for (int i = 0, g = 0; i <= count; i++)
        {
            if (g < gaps.Count && gaps[g].Start == i)
            {
                placed.Add(new(i + moved, gaps[g].Count));
                moved += gaps[g++].Count;
            }

            shift[i] = moved;
        }

        float[][] filled = [.. signals.Select(_ => new float[count + moved])];
        for (int s = 0; s < signals.Length; s++)
        {
            for (int i = 0; i < count; i++)
            {
                filled[s][i + shift[i]] = signals[s][i];
            }

            foreach (Gap gap in placed)
            {
                filled[s].AsSpan(gap.Start, gap.Count).Fill(filled[s][gap.Start - 1]);
            }
        }

        (signals, gaps) = (filled, placed);
        return shift;
    }

    private static double At(double sample, int[]? shift) => sample + (shift is null ? 0 : shift[(int)Math.Min(sample, shift.Length - 1)]);
}
