namespace Graspwright.Signals.Recordings;

/// <summary>Signals that were taken together at one rate, with what was going on meanwhile.</summary>
/// <param name="RateHertz">Samples a second of each channel [1/s], above 0.</param>
/// <param name="Channels">The channels, all of one length.</param>
/// <param name="Marks">What was going on when, by start.</param>
public sealed record Recording(double RateHertz, IReadOnlyList<Channel> Channels, IReadOnlyList<Mark> Marks)
{
    /// <summary>Places where samples are missing; the last value before stands in for them.</summary>
    public IReadOnlyList<Gap> Gaps { get; init; } = [];

    /// <summary>Standard deviation of the time between samples [s]; 0 where times were not written down.</summary>
    public double JitterSeconds { get; init; }

    /// <summary>Lines or records that could not be used.</summary>
    public int Broken { get; init; }

    /// <summary>What reading it showed, in plain words.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Samples of each channel.</summary>
    public int Length => Channels.Count == 0 ? 0 : Channels[0].Counts.Length;

    /// <summary>How long it is [s].</summary>
    public double Seconds => Length / RateHertz;

    /// <summary>A channel by name, upper and lower case alike.</summary>
    /// <param name="name">Name.</param>
    /// <returns><see langword="null"/> if there is none.</returns>
    public Channel? Find(string name)
    {
        foreach (Channel channel in Channels)
        {
            if (string.Equals(channel.Name, name, StringComparison.OrdinalIgnoreCase))
            {
                return channel;
            }
        }

        return null;
    }
}

/// <summary>One signal. A value is <c>Gain·count + Offset</c>, in its unit.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Unit of the values: <c>V</c> where the file says so, else as written; empty = counts.</param>
/// <param name="Counts">Samples as stored; whole numbers of up to 24 bits are exact.</param>
/// <param name="Gain">Unit per count.</param>
/// <param name="Offset">Value of count 0.</param>
public sealed record Channel(string Name, string Unit, float[] Counts, double Gain = 1, double Offset = 0)
{
    /// <summary>Least count the converter can give; NaN = not known.</summary>
    public double LeastCount { get; init; } = double.NaN;

    /// <summary>Greatest count the converter can give; NaN = not known.</summary>
    public double GreatestCount { get; init; } = double.NaN;

    /// <summary>Values of a stretch.</summary>
    /// <param name="start">First sample.</param>
    /// <param name="values">Where they go; its length is how many.</param>
    public void Read(int start, Span<double> values)
    {
        ReadOnlySpan<float> counts = Counts.AsSpan(start, values.Length);
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Gain * counts[i] + Offset;
        }
    }

    /// <summary>All values.</summary>
    public double[] Values()
    {
        double[] values = new double[Counts.Length];
        Read(0, values);
        return values;
    }
}

/// <summary>Something that went on for a while.</summary>
/// <param name="StartSeconds">When it began [s].</param>
/// <param name="EndSeconds">When it ended [s].</param>
/// <param name="Label">What it was: a gesture, and behind a slash what else was going on, such as <c>fist/arm overhead</c>.</param>
public readonly record struct Mark(double StartSeconds, double EndSeconds, string Label)
{
    /// <summary>The gesture.</summary>
    public string Gesture => Label.Split('/', 2)[0].Trim();

    /// <summary>What else was going on: a movement, an attitude of the arm, the wrist driving; empty = nothing said.</summary>
    public string Meanwhile => Label.Split('/', 2) is [_, var rest] ? rest.Trim() : "";
}

/// <summary>Missing samples.</summary>
/// <param name="Start">Index of the first sample that stands in.</param>
/// <param name="Count">How many.</param>
public readonly record struct Gap(int Start, int Count);

/// <summary>A recording that cannot be used, and what to do.</summary>
/// <param name="line">Line from 1; 0 = the file as a whole.</param>
/// <param name="column">Column from 1; 0 = the line as a whole.</param>
/// <param name="key">Which field or column.</param>
/// <param name="found">What was found.</param>
/// <param name="allowed">What is allowed.</param>
/// <param name="fix">The likely fix.</param>
public sealed class RecordingException(int line, int column, string key, string found, string allowed, string fix) : Exception(found)
{
    /// <summary>Line from 1; 0 = the file as a whole.</summary>
    public int Line { get; } = line;

    /// <summary>Column from 1; 0 = the line as a whole.</summary>
    public int Column { get; } = column;

    /// <summary>Which field or column.</summary>
    public string Key { get; } = key;

    /// <summary>What was found.</summary>
    public string Found { get; } = found;

    /// <summary>What is allowed.</summary>
    public string Allowed { get; } = allowed;

    /// <summary>The likely fix.</summary>
    public string Fix { get; } = fix;
}
