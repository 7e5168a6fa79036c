namespace Graspwright.Workshop.Log;

/// <summary>How the time of a part on the hand ended.</summary>
public enum Ending
{
    /// <summary>It is still fitted.</summary>
    None,

    /// <summary>It broke on that day.</summary>
    Broke,

    /// <summary>It was found broken on that day, and broke since it was last seen whole.</summary>
    FoundBroken,

    /// <summary>It was taken off whole.</summary>
    Retired,
}

/// <summary>One part that was fitted to the hand.</summary>
/// <param name="Line">Line of the file.</param>
/// <param name="Part">What it is.</param>
/// <param name="Position">Where: a finger, with a joint; empty = the part says it.</param>
/// <param name="Material">Material; empty = not said.</param>
/// <param name="Revision">Revision of its drawing; empty = not said.</param>
/// <param name="Fitted">Day it was fitted.</param>
/// <param name="LastSeenWhole">Day it was last seen whole; <see langword="null"/> = not said.</param>
/// <param name="Ended">Day it ended; <see langword="null"/> = still fitted.</param>
/// <param name="How">How it ended.</param>
/// <param name="Cause">What broke it, or why it was taken off; empty = not known.</param>
public sealed record LogEntry(int Line, string Part, string Position, string Material, string Revision, DateOnly Fitted, DateOnly? LastSeenWhole, DateOnly? Ended, Ending How, string Cause)
{
    /// <summary>Finger of the position; empty without one.</summary>
    public string Finger => Position.EndsWith(" mcp", StringComparison.Ordinal) || Position.EndsWith(" pip", StringComparison.Ordinal) || Position.EndsWith(" dip", StringComparison.Ordinal) ? Position[..^4] : Position;

    /// <summary>Whether it broke.</summary>
    public bool Broke => How is Ending.Broke or Ending.FoundBroken;

    /// <summary>Last day on which the log says anything of it.</summary>
    public DateOnly LastDay => Ended ?? LastSeenWhole ?? Fitted;

    /// <summary>Days from fitting to a day.</summary>
    /// <param name="day">The day.</param>
    public int Age(DateOnly day) => day.DayNumber - Fitted.DayNumber;

    /// <summary>What is known of its life, in days by the calendar.</summary>
    /// <remarks>A break on the day of fitting is a span of that one day.</remarks>
    public Graspwright.Strength.Lives.LifeRecord Life
    {
        get
        {
            if (!Broke)
            {
                return Graspwright.Strength.Lives.LifeRecord.WholeAt(Age(Ended ?? LastSeenWhole ?? Fitted));
            }

            int end = Age(Ended!.Value), start = How == Ending.FoundBroken ? Age(LastSeenWhole ?? Fitted) : end;
            return end == 0 ? new(0, 1) : new(start, end);
        }
    }
}
