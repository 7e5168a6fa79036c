using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>Energy books of random hands.</summary>
public sealed class EnergyTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_put_in_is_stored_dissipated_or_lost_in_jumps(bool arc)
    {
        int followed = 0;
        RandomDrive.ForEachSeed(
            100,
            seed =>
            {
                if (Solve(Made(seed, arc), seed, Degree) is not { } run)
                {
                    return;
                }

                followed++;
                Assert.True(
                    Math.Abs(run.BalanceResidual) <= 1e-4 * run.WorkIn,
                    FormattableString.Invariant($"seed {seed}: work {run.WorkIn * 1e3:g9} mJ, residual {run.BalanceResidual * 1e3:g4} mJ, dissipated {run.DissipatedClosing * 1e3:g6}, lost {run.LostInJumps * 1e3:g6}"));
            });
        Assert.True(followed > 80, $"only {followed} hands could be followed");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Without_friction_the_moment_is_the_slope_of_the_stored_energy(bool arc)
    {
        int followed = 0;
        RandomDrive.ForEachSeed(40, seed => followed += Balances(Made(seed, arc), seed) ? 1 : 0);
        Assert.True(followed > 30, $"only {followed} hands could be followed");
    }

    /// <summary>A hand whose moment bends so quickly that 0.05° is too coarse a step for the quadrature.</summary>
    [Fact]
    public void Where_the_moment_bends_quickly_a_finer_step_balances_the_books() => Assert.True(Balances(Made(3580, arc: false), 3580));

    /// <summary>Work and stored energy to 1e-6; <see langword="false"/> where the hand could not be followed.</summary>
    private static bool Balances(DriveModel made, int seed)
    {
        DriveModel drive = RandomDrive.Frictionless(made);
        RunResult? run = null;
        foreach (double step in (double[])[0.05, 0.0125, 0.003, 0.0008])
        {
            // An error of the quadrature shrinks with the step; one of the moment does not.
            run = Solve(drive, seed, step * Degree);
            if (run is null || Math.Abs(run.BalanceResidual) <= 1e-6 * run.WorkIn)
            {
                break;
            }
        }

        if (run is null)
        {
            return false;
        }

        Assert.True(
            Math.Abs(run.BalanceResidual) <= 1e-6 * run.WorkIn,
            FormattableString.Invariant($"seed {seed}: work {run.WorkIn * 1e3:g9} mJ, residual {run.BalanceResidual * 1e3:g4} mJ, lost {run.LostInJumps * 1e3:g6}"));
        return true;
    }

    /// <summary>A random drive; with an arc for a slot, its shifts are looked for in <see cref="ArcSlotTests"/>.</summary>
    private static DriveModel Made(int seed, bool arc) => arc ? RandomDrive.WithArc(RandomDrive.Make(seed), seed) : RandomDrive.Make(seed);

    /// <summary>A closing run; <see langword="null"/> where the random object lies in the open hand or the path was lost.</summary>
    private static RunResult? Solve(DriveModel drive, int seed, double step)
    {
        try
        {
            RunResult run = ClosingRun.Solve(drive, RandomDrive.MakeObject(seed), new RunOptions { EffortFraction = 0.3, OutputStepRadians = step, Opening = false });
            return run.Failure is null && run.WorkIn > 1e-3 ? run : null;
        }
        catch (DriveException)
        {
            return null; // refused before it starts, by name of the fault: nothing to balance
        }
    }
}
