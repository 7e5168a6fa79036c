using Graspwright.Deciding.Gradients;
using Graspwright.Deciding.Search;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Search;

/// <summary>Derivatives of a design's aims and limits along what is free.</summary>
/// <remarks>
/// What is read off the state at the end of closing is differentiated through the equilibrium itself
/// (<see cref="ClosingRun.SolveWithRates"/>), where no place sticks there. The rest (events, opening, jobs, strength) is
/// differenced, and said to be.
/// </remarks>
internal sealed class DesignSlopes(HandVariants variants, SearchMeasures measures, DesignJudge judge, IReadOnlyList<bool> free)
{
    private const double StepShare = 1e-4, WideShare = 2e-3; // of a range: for the residual, and for whole runs

    /// <summary>Measures that are functions of the drive and of the last state of closing alone.</summary>
    private static readonly string[] OfTheEnd =
        ["grip_force", "object_resultant_x", "object_resultant_y", "output_arm", "mechanical_advantage", "wrist_left", "degrees_lost_to_give", "effort_share", "carriage_left", "slot_left"];

    private const string MoreThanTheEnd = "it is read off more than the end of closing";

    private readonly SortedDictionary<string, string> _differenced = new(StringComparer.Ordinal);

    /// <summary>Measures whose derivatives came from differences of whole runs, and why they did.</summary>
    public IReadOnlyDictionary<string, string> Differenced => _differenced;

    /// <summary>Outcome and derivatives at a design.</summary>
    public Slopes At(double[] design)
    {
        Outcome here = judge.Judge(design);
        int n = design.Length, aims = measures.Aims.Count, limits = measures.Limits.Count;
        AskedMeasure[] all = [.. measures.Aims.Select(a => a.Measure), .. measures.Limits.Select(l => l.Measure)];
        double[][] slopes = [.. all.Select(_ => new double[n])];
        int[] moving = [.. Enumerable.Range(0, n).Where(i => free[i])];
        (double[] Up, double[] Down)[] near = [.. moving.Select(i => Beside(design, i, StepShare))];
        string?[] why = [.. all.Select(_ => MoreThanTheEnd)]; // it has no derivative of its own; null = it has
        foreach (IGrouping<SituationKey, int> situation in Enumerable.Range(0, all.Length).Where(k => all[k] is AskedOfRun run && OfTheEnd.Contains(run.Measure.Key)).GroupBy(k => ((AskedOfRun)all[k]).Situation))
        {
            string? none = Exact(design, situation.Key, near, moving, [.. situation], all, slopes);
            foreach (int k in situation)
            {
                why[k] = none;
            }
        }

        if (why.Any(w => w is not null))
        {
            for (int k = 0; k < all.Length; k++)
            {
                if (why[k] is { } reason)
                {
                    _differenced[all[k].Text] = reason;
                }
            }

            foreach (int i in moving)
            {
                (double[] up, double[] down) = Beside(design, i, WideShare);
                Outcome above = judge.Judge(up), below = judge.Judge(down);
                for (int k = 0; k < all.Length; k++)
                {
                    double rise = k < aims ? (measures.Aims[k].More ? -1 : 1) * (above.Aims[k] - below.Aims[k]) : measures.Limits[k - aims].From(above.Excess[k - aims]) - measures.Limits[k - aims].From(below.Excess[k - aims]);
                    slopes[k][i] = why[k] is null ? slopes[k][i] : double.IsFinite(rise) ? rise / (up[i] - down[i]) : 0;
                }
            }
        }

        return new(
            here,
            [.. Enumerable.Range(0, aims).Select(k => Scaled(slopes[k], measures.Aims[k].More ? -1 : 1))],
            [.. Enumerable.Range(0, limits).Select(k => Scaled(slopes[aims + k], (measures.Limits[k].AtLeast ? -1 : 1) / measures.Limits[k].Scale)), new double[n]]);
    }

    /// <summary>Derivatives through the equilibrium at the end; or why there are none.</summary>
    private string? Exact(double[] design, SituationKey situation, (double[] Up, double[] Down)[] near, int[] moving, int[] which, AskedMeasure[] all, double[][] slopes)
    {
        Ends at = Ends.Of(variants.Hand(design), situation);
        Ends[] ups = [.. near.Select(v => Ends.Of(variants.Hand(v.Up), situation))], downs = [.. near.Select(v => Ends.Of(variants.Hand(v.Down), situation))];
        Variation[] variations = [.. near.Select((v, j) => new Variation(ups[j].Drive, ups[j].Held, downs[j].Drive, downs[j].Held, 0.5 * (v.Up[moving[j]] - v.Down[moving[j]])))];
        (RunResult run, IReadOnlyList<double[]?> rates) = ClosingRun.SolveWithRates(at.Drive, at.Held, at.Options, variations);
        if (run.Failure is not null)
        {
            return "its path could not be followed to the end";
        }

        if (rates.Contains(null))
        {
            return $"{Sticking(run)} at the end of closing, and what it carries there depends on the way";
        }

        for (int j = 0; j < moving.Length; j++)
        {
            double step = variations[j].Step;
            RunReading above = Moved(run, ups[j], rates[j]!, step), below = Moved(run, downs[j], rates[j]!, -step);
            foreach (int k in which)
            {
                Measure measure = ((AskedOfRun)all[k]).Measure;
                slopes[k][moving[j]] = (measure.Value(above).Value - measure.Value(below).Value) / (2 * step);
            }
        }

        return null;
    }

    /// <summary>What sticks at the end of a run.</summary>
    private static string Sticking(RunResult run)
    {
        long bits = (long)run.AtEnd[TraceLayout.StickingPlaces];
        string[] names = [.. run.Layout.PlaceNames.Where((_, i) => i < 53 && (bits & (1L << i)) != 0)];
        return names.Length switch
        {
            0 => "a place sticks",
            1 => $"one place sticks ({names[0]})",
            _ => FormattableString.Invariant($"{names.Length} places stick ({names[0]} and others)"),
        };
    }

    /// <summary>The run with its last state moved along the tangent, as the measures of the end read it.</summary>
    private static RunReading Moved(RunResult run, Ends at, double[] rate, double step) => new()
    {
        Run = new()
        {
            Layout = run.Layout,
            Closing = [[.. run.AtEnd.Zip(rate, (v, r) => v + step * r)]],
            Opening = [],
            Events = run.Events,
            Jumps = run.Jumps,
            Peaks = run.Peaks,
            End = run.End,
            WorkIn = run.WorkIn,
        },
        Drive = at.Drive,
        Held = at.Held,
        Options = at.Options,
    };

    private (double[] Up, double[] Down) Beside(double[] design, int i, double share)
    {
        FreeParameter p = variants.Space.Parameters[i];
        double step = Math.Max(p.Step, share * (p.High - p.Low));
        double[] up = [.. design], down = [.. design];
        up[i] = p.Nearest(design[i] + step);
        down[i] = p.Nearest(design[i] - step);
        return (up, down);
    }

    private static double[] Scaled(double[] row, double factor) => [.. row.Select(r => factor * r)];

    /// <summary>What a situation closes, on what, and how.</summary>
    private sealed record Ends(DriveModel Drive, HeldObject Held, RunOptions Options)
    {
        public static Ends Of(Hand.HandModel hand, SituationKey situation)
        {
            Hand.LockPattern? pattern = situation.Locks == GripQuestion.AllFree ? null : hand.Locks.First(l => l.Name == situation.Locks);
            return new(DriveMapping.ToDrive(hand), HoldMapping.ToHeld(hand, hand.Objects.First(o => o.Name == situation.ObjectName)),
                new() { EffortFraction = situation.Effort.Share(hand.Wrist), Locks = HoldMapping.ToLocks(hand, pattern), Opening = false });
        }
    }
}
