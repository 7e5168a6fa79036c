using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Tests.Drive;

namespace Graspwright.Mechanics.Tests.Equilibrium;

public sealed class DriveEquationsTests
{

    private const double Agree = 2e-6; // relative to the greatest entry of the row: central differences over 1e-6

    private const double StickingNoise = 100;  // N·m/rad: a sticking pin's 1e5 N·m/rad times the rounding of its angle over the step

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Residual_is_the_slope_of_the_stored_energy(bool arc) => RandomDrive.ForEachSeed(200, seed =>
    {
        DriveEquations eq = Placed(seed, friction: false, arc);
        double[] residual = [.. eq.R];
        double moment = eq.WristMoment;
        for (int i = 0; i < eq.Count; i++)
        {
            double slope = Difference(eq, i, () => eq.Stored);
            Close(slope, residual[i], Math.Max(residual.Max(Math.Abs), 1), seed, $"energy by unknown {i}");
        }

        Close(Difference(eq, -1, () => eq.Stored), moment, Math.Max(Math.Abs(moment), 1), seed, "energy by wrist angle");
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Jacobian_is_the_slope_of_the_residual_with_friction_sliding_and_sticking(bool arc) => RandomDrive.ForEachSeed(200, seed =>
    {
        DriveEquations eq = Placed(seed, friction: true, arc);
        double[] unit = new double[eq.Count];
        double[][] analytic = new double[eq.Count][];
        for (int column = 0; column < eq.Count; column++)
        {
            Array.Clear(unit);
            unit[column] = 1;
            analytic[column] = [.. Enumerable.Range(0, eq.Count).Select(row => eq.Jacobian.RowTimes(row, unit))];
        }

        double[] byTheta = [.. eq.ThetaDerivative];
        for (int row = 0; row < eq.Count; row++)
        {
            double scale = Math.Max(analytic.Max(c => Math.Abs(c[row])), 1);
            for (int column = 0; column < eq.Count; column++)
            {
                int r = row;
                Close(Difference(eq, column, () => eq.R[r]), analytic[column][row], scale, seed, $"row {row} by unknown {column}");
            }

            int at = row;
            Close(Difference(eq, -1, () => eq.R[at]), byTheta[row], Math.Max(scale, Math.Abs(byTheta[row])), seed, $"row {row} by wrist angle");
        }
    });

    [Fact]
    public void Rate_of_the_wrist_moment_is_its_slope() => RandomDrive.ForEachSeed(200, seed =>
    {
        DriveEquations eq = Placed(seed, friction: true, arc: false);
        double byPhi = eq.WristMomentRate(1, 0), byTheta = eq.WristMomentRate(0, 1);
        Close(Difference(eq, DriveEquations.Phi, () => eq.WristMoment), byPhi, Math.Abs(byPhi) + StickingNoise, seed, "moment by crank angle");
        Close(Difference(eq, -1, () => eq.WristMoment), byTheta, Math.Abs(byTheta) + StickingNoise, seed, "moment by wrist angle");
    });

    /// <summary>A drive somewhere on its way, every place that rubs told to slide or stick.</summary>
    private static DriveEquations Placed(int seed, bool friction, bool arc)
    {
        DriveModel drive = RandomDrive.Make(seed, friction);
        drive = arc ? RandomDrive.WithArc(drive, seed) : drive;
        if (!friction)
        {
            drive = RandomDrive.Frictionless(drive);
        }

        HeldObject held = RandomDrive.MakeObject(seed);
        DriveEquations eq = new(drive, held);
        Random r = new(seed);
        eq.Theta = 0.05 + 0.3 * r.NextDouble();
        for (int i = 0; i < eq.Count; i++)
        {
            double low = Math.Max(eq.Low[i], -0.3), high = Math.Min(eq.High[i], 1);
            eq.X[i] = low + (high - low) * (0.1 + 0.6 * r.NextDouble());
        }

        // Contacts and cords as they fall; then every place that rubs is told to slide or stick.
        eq.ModesByValue = true;
        eq.Evaluate();
        eq.ModesByValue = false;
        for (int c = 0; c < eq.Overlap.Length; c++)
        {
            eq.Touching[c] = eq.HasObject && eq.Overlap[c] > 0;
        }

        for (int f = 0; f < eq.FingerCount; f++)
        {
            eq.Taut[f] = eq.PullElongations[f] > 0;
        }

        foreach (ref RubbingPlace p in eq.Places.AsSpan())
        {
            p.Mode = r.Next(3) - 1;
        }

        eq.Evaluate();
        return eq;
    }

    private static double Difference(DriveEquations eq, int unknown, Func<double> value)
    {
        const double step = 1e-7;
        double before = unknown < 0 ? eq.Theta : eq.X[unknown];
        double At(double x)
        {
            if (unknown < 0)
            {
                eq.Theta = x;
            }
            else
            {
                eq.X[unknown] = x;
            }

            eq.Evaluate();
            return value();
        }

        double slope = (At(before + step) - At(before - step)) / (2 * step);
        At(before);
        return slope;
    }

    private static void Close(double numeric, double analytic, double scale, int seed, string what) =>
        Assert.True(Math.Abs(numeric - analytic) <= Agree * scale, $"seed {seed}, {what}: differences {numeric:g9}, analytic {analytic:g9}, scale {scale:g3}");
}
