using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Grip;

/// <summary>Follows the equilibrium of a drive; <see cref="ClosingRun.Solve"/> is the one used.</summary>
/// <param name="drive">The drive.</param>
/// <param name="held">What it closes on.</param>
/// <param name="options">How it is driven.</param>
public delegate RunResult Solver(DriveModel drive, HeldObject held, RunOptions options);

/// <summary>What does this hand grip?</summary>
/// <param name="Hand">The hand.</param>
public sealed record GripQuestion(Hand.HandModel Hand)
{
    /// <summary>Name of the pattern without locks.</summary>
    public const string AllFree = "all free";

    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Objects asked for, by name; empty = every one.</summary>
    public IReadOnlyList<string> Objects { get; init; } = [];

    /// <summary>Lock patterns asked for, by name; empty = every one, all free first.</summary>
    public IReadOnlyList<string> Locks { get; init; } = [];

    /// <summary>Efforts.</summary>
    public IReadOnlyList<Effort> Efforts { get; init; } = Grip.Efforts.Both;

    /// <summary>Days of wear over which the finger hinges are worn; <see langword="null"/> = worn as the hand file says.</summary>
    public double? WornDays { get; init; }

    /// <summary>What follows the equilibrium.</summary>
    public Solver Solver { get; init; } = ClosingRun.Solve;
}
