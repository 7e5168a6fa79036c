using Graspwright.Hand;
using Graspwright.Moulding.Batch;
using Graspwright.Moulding.Cure;

namespace Graspwright.Workshop.Mould;

/// <summary>The work on one of several equal batches beside the clock.</summary>
internal sealed record WorkPlan
{
    /// <summary>Into how many batches the sheet is divided.</summary>
    public required int Batches { get; init; }

    /// <summary>The sheet.</summary>
    public required LinerSheet Sheet { get; init; }

    /// <summary>One batch.</summary>
    public required BatchSum Batch { get; init; }

    /// <summary>What the clock was told.</summary>
    public required CureInputs Inputs { get; init; }

    /// <summary>What the clock says.</summary>
    public required CureResult Cure { get; init; }

    /// <summary>The steps.</summary>
    public required IReadOnlyList<WorkStep> Steps { get; init; }

    /// <summary>End of mixing [s].</summary>
    public double MixEnd => Steps[0].End;

    /// <summary>End of shaping: all but smoothing [s].</summary>
    public double ShapeEnd => Steps[^1].Start;

    /// <summary>End of the work [s].</summary>
    public double End => Steps[^1].End;

    /// <summary>Whether mixing ends in time, shaping before it firms, and all before hands off.</summary>
    public bool Fits => MixEnd <= Cure[CureMoment.MixedBy].Seconds && ShapeEnd <= Cure[CureMoment.Firming].Seconds && End <= Cure[CureMoment.HandsOff].Seconds;

    /// <summary>Whether the batch goes into the tub, filled to two thirds.</summary>
    public bool FitsTub(Liner liner) => liner.Bench.Tub is not { } tub || Batch.Volume <= TubFill * tub;

    /// <summary>How full a tub is filled at most, so that it can be stirred.</summary>
    public const double TubFill = 2.0 / 3;

    private const int MostBatches = 12;

    /// <summary>Plans one of a number of batches.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="batches">How many.</param>
    /// <param name="sheet">The sheet, laid out once for every plan that has the same.</param>
    public static WorkPlan Of(HandModel hand, int batches, LinerSheet sheet)
    {
        Liner liner = hand.Liner!;
        double area = sheet.Area / batches, seam = sheet.Seam / batches + (batches > 1 ? sheet.Girth : 0);
        BatchSum batch = BatchSums.Of(MouldMapping.Batch(liner, area));
        CureInputs inputs = MouldMapping.Cure(liner, batch);
        int hollows = (liner.Work.Hollows + batches - 1) / batches;
        return new()
        {
            Batches = batches,
            Sheet = sheet,
            Batch = batch,
            Inputs = inputs,
            Cure = CureClock.Run(inputs),
            Steps = Splitting.Steps(MouldMapping.Rates(liner.Work), area, seam, hollows, 1 + liner.Bench.Helpers),
        };
    }

    /// <summary>The fewest batches that can be worked in time and go into the tub.</summary>
    /// <param name="hand">The hand.</param>
    /// <returns>The plan with the fewest that fits; the one with the most time to spare if none does.</returns>
    public static WorkPlan Fewest(HandModel hand)
    {
        WorkPlan? best = null;
        LinerSheet sheet = MouldMapping.Sheet(hand);
        for (int n = 1; n <= MostBatches; n++)
        {
            WorkPlan plan = Of(hand, n, sheet);
            if (plan.Fits && plan.FitsTub(hand.Liner!))
            {
                return plan;
            }

            best = best is null || plan.Late < best.Late ? plan : best;
        }

        return best!;
    }

    /// <summary>By how much the latest of the three deadlines is missed; below 0 = to spare [s].</summary>
    public double Late => Math.Max(MixEnd - Cure[CureMoment.MixedBy].Seconds, Math.Max(ShapeEnd - Cure[CureMoment.Firming].Seconds, End - Cure[CureMoment.HandsOff].Seconds));
}
