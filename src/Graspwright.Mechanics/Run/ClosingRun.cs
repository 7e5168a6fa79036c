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

    /// <summary>Closes a drive, and says how the end of closing moves with parameters: by implicit differentiation of the equilibrium there.</summary>
    /// <param name="drive">The drive, SI units.</param>
    /// <param name="held">What it closes on.</param>
    /// <param name="options">How it is driven; it is not opened.</param>
    /// <param name="variations">A parameter each, as the drive a small step to both sides.</param>
    /// <returns>The run, and for each parameter the rate of every column of its last row; <see langword="null"/> where a place sticks at the end, where the path was not followed, or where the parameter changes what the drive is made of.</returns>
    /// <exception cref="DriveException">The drive cannot be assembled at rest, or the object overlaps it there.</exception>
    public static (RunResult Run, IReadOnlyList<double[]?> Rates) SolveWithRates(DriveModel drive, HeldObject held, RunOptions options, IReadOnlyList<Variation> variations)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(variations);
        RunOptions closing = options with { Opening = false };
        PathFollower follower = new(drive, held, closing);
        follower.Run();
        RunResult run = follower.Result();
        double[]?[] rates = new double[variations.Count][];
        for (int k = 0; k < rates.Length && run.Failure is null; k++)
        {
            Variation v = variations[k];
            PathFollower up = new(v.Up, v.HeldUp, closing), down = new(v.Down, v.HeldDown, closing);
            rates[k] = follower.EndTangent(up, down, v.Step);
        }

        return (run, rates);
    }
}

/// <summary>A parameter of a drive a small step to both sides.</summary>
/// <param name="Up">The drive with the parameter one step up.</param>
/// <param name="HeldUp">What it closes on then.</param>
/// <param name="Down">The drive one step down.</param>
/// <param name="HeldDown">What it closes on then.</param>
/// <param name="Step">The step, in the parameter's unit.</param>
public sealed record Variation(DriveModel Up, HeldObject HeldUp, DriveModel Down, HeldObject HeldDown, double Step);
