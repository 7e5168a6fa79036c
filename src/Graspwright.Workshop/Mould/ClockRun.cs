namespace Graspwright.Workshop.Mould;

/// <summary>A live clock under way: when mixing began and how many lines were said. A pure record; who writes it down decides when.</summary>
/// <param name="StartedUtc">Start of mixing, in UTC.</param>
/// <param name="Said">How many lines were said.</param>
/// <param name="Lines">All lines, in order of time.</param>
public sealed record ClockRun(DateTimeOffset StartedUtc, int Said, IReadOnlyList<SpokenLine> Lines)
{
    /// <summary>Longest time after the last line for which a run is still picked up again [s].</summary>
    public const double StaleAfter = 3600;

    /// <summary>Seconds since the start of mixing; below 0 before it.</summary>
    /// <param name="now">Now.</param>
    public double Elapsed(DateTimeOffset now) => (now - StartedUtc).TotalSeconds;

    /// <summary>Whether every line was said.</summary>
    public bool Done => Said >= Lines.Count;

    /// <summary>Whether it ended so long ago that nobody is working by it.</summary>
    /// <param name="now">Now.</param>
    public bool Stale(DateTimeOffset now) => Elapsed(now) > Lines[^1].At + StaleAfter;

    /// <summary>Lines that are due and were not said.</summary>
    /// <param name="now">Now.</param>
    public IReadOnlyList<SpokenLine> Due(DateTimeOffset now)
    {
        double elapsed = Elapsed(now);
        return [.. Lines.Skip(Said).TakeWhile(l => l.At <= elapsed)];
    }

    /// <summary>Time until the next line [s], 0 or more.</summary>
    /// <param name="now">Now.</param>
    public double UntilNext(DateTimeOffset now) => Done ? 0 : Math.Max(0, Lines[Said].At - Elapsed(now));
}
