namespace Graspwright.Workshop.Grip;

/// <summary>How hard the wearer works the wrist.</summary>
public enum Effort
{
    /// <summary>What can be repeated all day.</summary>
    AllDay,

    /// <summary>A short maximum that the wearer accepts.</summary>
    Squeeze,
}

/// <summary>Words of the efforts.</summary>
public static class Efforts
{
    /// <summary>Both, the all-day effort first.</summary>
    public static IReadOnlyList<Effort> Both { get; } = [Effort.AllDay, Effort.Squeeze];

    /// <summary>The word of an effort, as options and answers give it.</summary>
    /// <param name="effort">Effort.</param>
    public static string Word(this Effort effort) => effort == Effort.AllDay ? "all-day" : "squeeze";

    /// <summary>Share of capacity.</summary>
    /// <param name="effort">Effort.</param>
    /// <param name="wrist">The wearer's wrist.</param>
    public static double Share(this Effort effort, Hand.Wrist wrist)
    {
        ArgumentNullException.ThrowIfNull(wrist);
        return effort == Effort.AllDay ? wrist.AllDayShare : wrist.SqueezeShare;
    }
}
