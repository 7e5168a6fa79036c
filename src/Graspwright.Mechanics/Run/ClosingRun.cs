using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;

namespace Graspwright.Mechanics.Run;

/// <summary>Closing and opening of a drive on an object.</summary>
public static class ClosingRun
{
    /// <summary>Follows the equilibrium of the drive as the wrist moves.</summary>
    /// <param name="drive">The drive, SI units.</param>
    /// <param name="held">What it closes on.</param>
    /// <param name="options">Effort, output step, opening, locks.</param>
    /// <returns>The run. A path that could not be followed is a result with <see cref="RunResult.Failure"/>.</returns>
    /// <exception cref="DriveException">The drive cannot be assembled at rest, or the object overlaps it there.</exception>
    public static RunResult Solve(DriveModel drive, HeldObject held, RunOptions options)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(options);
        PathFollower follower = new(drive, held, options);
        follower.Run();
        return follower.Result();
    }
}
