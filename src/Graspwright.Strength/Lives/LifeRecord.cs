namespace Graspwright.Strength.Lives;

/// <summary>What is known of the life of one part, in any unit of time: it broke after <see cref="Low"/> and by <see cref="High"/>.</summary>
/// <param name="Low">Longest time at which it was known to be whole, 0 or more.</param>
/// <param name="High">Shortest time at which it was known to be broken; infinite = still whole; equal to <see cref="Low"/> = the break was seen.</param>
/// <param name="Count">How many parts this holds for, above 0.</param>
public readonly record struct LifeRecord(double Low, double High, double Count = 1)
{
    /// <summary>A break at a known time.</summary>
    /// <param name="time">Time, above 0.</param>
    /// <param name="count">How many.</param>
    public static LifeRecord BrokeAt(double time, double count = 1) => new(time, time, count);

    /// <summary>Still whole at a time.</summary>
    /// <param name="time">Time, 0 or more.</param>
    /// <param name="count">How many.</param>
    public static LifeRecord WholeAt(double time, double count = 1) => new(time, double.PositiveInfinity, count);

    /// <summary>Whether it broke.</summary>
    public bool Broke => High < double.PositiveInfinity;

    /// <summary>Whether the break was seen.</summary>
    public bool Seen => Low.Equals(High);

    /// <summary>One time that stands for it where a method takes no spans: the break, the middle of the span, or the last time whole.</summary>
    public double Middle => !Broke ? Low : Seen ? Low : 0.5 * (Low + High);

    /// <summary>Whether it says something possible.</summary>
    public bool Sound => Low >= 0 && High >= Low && High > 0 && double.IsFinite(Low) && Count > 0 && double.IsFinite(Count);
}
