namespace Graspwright.Moulding.Cure;

/// <summary>What happens to the putty, in the order in which it happens.</summary>
public enum CureMoment
{
    /// <summary>Both parts must be one colour by now.</summary>
    MixedBy,

    /// <summary>The warmest of it begins to firm.</summary>
    Firming,

    /// <summary>Touching it from here on spoils it.</summary>
    HandsOff,

    /// <summary>The coldest of it may leave the mould.</summary>
    OffMould,

    /// <summary>The coldest of it is cured through.</summary>
    LeaveUntil,
}

/// <summary>How a moment was located: the last state before it, and the speed there.</summary>
/// <param name="Seconds">Time from the start of mixing [s].</param>
/// <param name="AgeWanted">Label seconds that had to pass [s].</param>
/// <param name="TimeBefore">Time of the state before it [s].</param>
/// <param name="AgeBefore">Label seconds that had passed there [s].</param>
/// <param name="Speed">Label seconds for each second from there on.</param>
public readonly record struct Located(double Seconds, double AgeWanted, double TimeBefore, double AgeBefore, double Speed);

/// <summary>A state on the way.</summary>
/// <param name="Seconds">Time from the start of mixing; below 0 before it [s].</param>
/// <param name="Inner">Temperature at the mould's side or in the middle [K].</param>
/// <param name="Middle">Mean temperature [K].</param>
/// <param name="Outer">Temperature at the free surface [K].</param>
/// <param name="InnerAge">Label seconds passed in the innermost cell [s].</param>
/// <param name="MiddleAge">Label seconds passed in the middle cell [s].</param>
/// <param name="OuterAge">Label seconds passed in the outermost cell [s].</param>
public readonly record struct CureState(double Seconds, double Inner, double Middle, double Outer, double InnerAge, double MiddleAge, double OuterAge);

/// <summary>What the clock predicts.</summary>
public sealed record CureResult
{
    /// <summary>The moments, in the order of <see cref="CureMoment"/>.</summary>
    public required IReadOnlyList<Located> Moments { get; init; }

    /// <summary>Mean temperature on leaving the freezer [K].</summary>
    public required double ChilledMean { get; init; }

    /// <summary>Surface temperature on leaving the freezer [K].</summary>
    public required double ChilledSurface { get; init; }

    /// <summary>Warmest temperature inside on leaving the freezer [K].</summary>
    public required double ChilledMiddle { get; init; }

    /// <summary>Biot number in the freezer, h·L ÷ k with half the thickness or the radius.</summary>
    public required double FreezerBiot { get; init; }

    /// <summary>Time in the room's air after the freezer until the surface is above the dew point [s]; <see langword="null"/> = it is not below it, or was not asked for.</summary>
    public required double? DryAfter { get; init; }

    /// <summary>Temperature at the start of mixing [K].</summary>
    public required double AtMixing { get; init; }

    /// <summary>Temperature at the end of mixing [K].</summary>
    public required double Mixed { get; init; }

    /// <summary>States on the way, where they were asked for.</summary>
    public required IReadOnlyList<CureState> States { get; init; }

    /// <summary>A moment.</summary>
    /// <param name="moment">Which one.</param>
    public Located this[CureMoment moment] => Moments[(int)moment];
}
