namespace Graspwright.Hand;

/// <summary>How much the hand is used in a day.</summary>
/// <param name="Grips">How often it grips.</param>
/// <param name="HoldSeconds">How long a grip is held, on average [s].</param>
/// <param name="WornSeconds">How long the hand is at work [s], above 0.</param>
public sealed record DayOfUse(double Grips, double HoldSeconds, double WornSeconds)
{
    /// <summary>What is assumed where a hand does not say: 600 grips of 4 s in 8 hours.</summary>
    public static DayOfUse Assumed { get; } = new(600, 4, 8 * 3600);
}
