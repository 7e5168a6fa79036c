using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Room;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Measures;

/// <summary>A closing run with what it was run on: everything a measure or finding reads.</summary>
public sealed class RunReading
{
    private SweepResult? _swept;

    /// <summary>The run.</summary>
    public required RunResult Run { get; init; }

    /// <summary>The drive it was run on.</summary>
    public required DriveModel Drive { get; init; }

    /// <summary>The same drive with worn pins; <see langword="null"/> = wear not given.</summary>
    public DriveModel? Worn { get; init; }

    /// <summary>What it closed on.</summary>
    public required HeldObject Held { get; init; }

    /// <summary>How it was driven.</summary>
    public required RunOptions Options { get; init; }

    /// <summary>Angular speed of the wearer's wrist [rad/s]; <see langword="null"/> = not given.</summary>
    public double? AngularSpeed { get; init; }

    /// <summary>Most that the lock of each finger may carry at its pull [N]; <see langword="null"/> = not given.</summary>
    public IReadOnlyList<double?> LockLimits { get; init; } = [];

    /// <summary>Bodies of the drive and what they must pass; <see langword="null"/> = not given.</summary>
    public RoomModel? Room { get; init; }

    /// <summary>The sweep of the bodies over closing, made when it is first asked for; <see langword="null"/> without a room.</summary>
    public SweepResult? Swept => _swept ??= Room is null ? null : new RoomSweep(Room, Run.Layout).Sweep(Run.Closing);

    /// <summary>State at the end of closing.</summary>
    public double[] End => Run.AtEnd;

    /// <summary>First event of a kind while closing, or <see langword="null"/>.</summary>
    /// <param name="kind">Kind.</param>
    public RunEvent? Closing(EventKind kind)
    {
        foreach (RunEvent e in Run.Events)
        {
            if (e.Kind == kind && !e.Opening)
            {
                return e;
            }
        }

        return null;
    }

    /// <summary>The recorded closing state nearest a wrist angle; of equals the last, which is the state after a jump.</summary>
    /// <param name="theta">Wrist angle [rad].</param>
    public double[] StateAt(double theta)
    {
        double[] nearest = Run.Closing[0];
        foreach (double[] row in Run.Closing)
        {
            if (Math.Abs(row[TraceLayout.Theta] - theta) <= Math.Abs(nearest[TraceLayout.Theta] - theta))
            {
                nearest = row;
            }
        }

        return nearest;
    }
}
