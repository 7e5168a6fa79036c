namespace Graspwright.Hand;

/// <summary>What the maker wants of the drawer of spares, and what was computed of lives.</summary>
public sealed record Drawer
{
    /// <summary>From one filling to the next [s].</summary>
    public double PeriodSeconds { get; init; } = 90 * 86400.0;

    /// <summary>From order to arrival [s].</summary>
    public double SupplySeconds { get; init; } = 10 * 86400.0;

    /// <summary>Greatest chance of a stand-still for want of a part.</summary>
    public double Chance { get; init; } = 0.05;

    /// <summary>Greatest chance of a break unseen between two looks.</summary>
    public double Unseen { get; init; } = 0.10;

    /// <summary>Lives that were computed.</summary>
    public IReadOnlyList<ComputedLife> ComputedLives { get; init; } = [];

    /// <summary>Defaults that stand in for a choice of the maker.</summary>
    public IReadOnlyList<Guess> Guesses { get; init; } = [];
}

/// <summary>A life that was computed, by the calendar.</summary>
/// <param name="Part">Name of the part, as the log has it.</param>
/// <param name="MedianSeconds">Life that half of the parts outlive [s].</param>
/// <param name="LowSeconds">Lower end of its 80 % band [s].</param>
/// <param name="HighSeconds">Upper end of its 80 % band [s].</param>
public sealed record ComputedLife(string Part, double MedianSeconds, double LowSeconds, double HighSeconds);
