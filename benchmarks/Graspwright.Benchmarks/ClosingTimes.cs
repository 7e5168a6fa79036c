using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Run;

namespace Graspwright.Benchmarks;

/// <summary>One hand closing on one object: time, storage, steps, and how far the run is from its own converged one.</summary>
internal static class ClosingTimes
{
    private const double Allowed = 0.003; // of the value, wanted of each run
    private const double Seconds = 2;
    private const int Finer = 16;

    /// <summary>Fingers that bend by fixed ratios, friction, closing and opening.</summary>
    public static Section Coupled()
    {
        DriveCase c = Repository.Case("07a");
        return Measure("Coupled fingers, closing and opening", "Reference case 07a: four coupled fingers on a 60 mm cylinder, fixed crank, friction everywhere.", c.Drive, c.Held, c.Options with { Opening = true }, 1e-3);
    }

    /// <summary>Fingers that bend as the object lets them, load-sensing crank, friction, closing and opening.</summary>
    public static Section Adaptive()
    {
        DriveCase fingers = Repository.Case("06"), slot = Repository.Case("05a"), friction = Repository.Case("07a");
        DriveModel drive = fingers.Drive with { Crank = fingers.Drive.Crank with { Slot = slot.Drive.Crank.Slot }, Friction = friction.Drive.Friction };
        return Measure("Adaptive fingers with slot and friction, closing and opening", "Reference case 06 (four adaptive fingers on a 25 mm cylinder) with the slot of case 05a and the friction of case 07a.", drive, fingers.Held, fingers.Options with { Opening = true }, 3e-3);
    }

    /// <summary>Coupled fingers without friction, closing alone.</summary>
    public static Section Frictionless()
    {
        DriveCase c = Repository.Case("02");
        return Measure("Closing alone, no friction", "Reference case 02: four coupled fingers on a 60 mm cylinder, fixed crank.", c.Drive, c.Held, c.Options with { Opening = false }, 0.5e-3);
    }

    private static Section Measure(string title, string words, DriveModel drive, HeldObject held, RunOptions options, double target)
    {
        PathFollower follower = new(drive, held, options);
        Timing time = Timing.Of(follower.Run, Seconds);
        long bytes = Allocated(follower);
        RunResult run = follower.Result();
        Refuse(run, title);
        RunResult fine = ClosingRun.Solve(drive, held, options with { OutputStepRadians = options.OutputStepRadians / Finer });
        Refuse(fine, title);
        double arithmetic = Arithmetic(drive, held, run);
        return new(title, words,
        [
            Row.AtMost("one run, best batch", time.Best, target, 1e3, "ms"),
            new("one run, median batch", $"{Row.Number(time.Median * 1e3)} ms"),
            new("allocated by a run after set-up", $"{bytes} bytes", "0 bytes", bytes == 0),
            Row.AtMost("grip at the end of closing against the converged run", Apart(run.AtEnd[TraceLayout.Grip], fine.AtEnd[TraceLayout.Grip], 0), Allowed, 100, "%"),
            Row.AtMost("moment τ at the end of closing against it", Apart(run.AtEnd[TraceLayout.Tau], fine.AtEnd[TraceLayout.Tau], 0), Allowed, 100, "%"),
            Row.AtMost("grip at every common angle, greatest difference", Worst(run, fine, TraceLayout.Grip), Allowed, 100, "%"),
            Row.AtMost("moment τ at every common angle, greatest difference", Worst(run, fine, TraceLayout.Tau), Allowed, 100, "%"),
            new("recorded states, events, jumps", $"{run.Closing.Count + run.Opening.Count}, {run.Events.Count}, {run.Jumps.Count}"),
            new("Newton steps", Row.Number(run.NewtonSteps)),
            new("factorisations", Row.Number(run.Factorisations)),
            new("share of the run that is arithmetic, about", $"{Row.Number(100 * arithmetic / time.Best)} %"),
        ]);
    }

    private static void Refuse(RunResult run, string title)
    {
        if (run.Failure is { } failure)
        {
            throw new InvalidOperationException($"{title}: the run was lost at {failure.ThetaRadians} rad. {failure.Reason}");
        }
    }

    private static long Allocated(PathFollower follower)
    {
        follower.Run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        follower.Run();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>Difference ÷ value; values under the floor count as the floor.</summary>
    private static double Apart(double value, double converged, double floor)
    {
        double size = Math.Max(Math.Abs(converged), floor);
        return size == 0 ? Math.Abs(value) : Math.Abs(value - converged) / size;
    }

    /// <summary>Greatest relative difference at the angles that both runs record as output steps.</summary>
    private static double Worst(RunResult run, RunResult fine, int column) =>
        Math.Max(Worst(run.Closing, fine.Closing, column), Worst(run.Opening, fine.Opening, column));

    private static double Worst(IReadOnlyList<double[]> coarse, IReadOnlyList<double[]> fine, int column)
    {
        double floor = 0.01 * fine.Select(r => Math.Abs(r[column])).DefaultIfEmpty().Max(), worst = 0;
        int common = 0;
        foreach (double[] row in coarse.Where(r => r[TraceLayout.OutputStep] != 0))
        {
            double[]? same = fine.FirstOrDefault(r => r[TraceLayout.OutputStep] != 0 && Math.Abs(r[TraceLayout.Theta] - row[TraceLayout.Theta]) < 1e-9);
            if (same is not null)
            {
                common++;
                worst = Math.Max(worst, Apart(row[column], same[column], floor));
            }
        }

        return coarse.Count == 0 || common >= 10 ? worst : throw new InvalidOperationException($"Only {common} angles are common to both runs.");
    }

    /// <summary>Time of evaluating, factoring and solving as often as the run factored, at the states of its closing [s].</summary>
    private static double Arithmetic(DriveModel drive, HeldObject held, RunResult run)
    {
        DriveEquations equations = new(drive, held) { ModesByValue = true };
        double[] right = new double[equations.Count];
        double total = 0;
        double[][] states = [.. run.Closing.Where(r => r[TraceLayout.OutputStep] != 0)];
        foreach (double[] row in states)
        {
            Place(equations, run.Layout, row);
            equations.Evaluate();
            foreach (ref RubbingPlace place in equations.Places.AsSpan())
            {
                place.Accept();
            }

            total += Timing.Of(() =>
            {
                equations.Evaluate();
                equations.Jacobian.Factor(equations.Frozen, equations.Ridge);
                equations.R.CopyTo(right, 0);
                equations.Jacobian.Solve(right, equations.Frozen);
            }, Seconds / states.Length).Best;
        }

        return total / states.Length * run.Factorisations;
    }

    private static void Place(DriveEquations equations, TraceLayout layout, double[] row)
    {
        equations.Theta = row[TraceLayout.Theta];
        equations.X[DriveEquations.Phi] = row[TraceLayout.Phi];
        equations.X[DriveEquations.Shift] = row[TraceLayout.Shift];
        equations.X[DriveEquations.Carriage] = row[TraceLayout.Carriage];
        for (int b = 0; b < equations.BarCount; b++)
        {
            equations.X[3 + b] = row[TraceLayout.Tilt(b)];
        }

        for (int f = 0; f < equations.FingerCount; f++)
        {
            for (int j = 0; j < equations.Sizes[f]; j++)
            {
                equations.X[equations.Offsets[f] + j] = row[layout.Joint(f, j)];
            }
        }
    }
}
