using Graspwright.Deciding.Search;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Search;

/// <summary>Judges a design: makes the hand, reads the measures of the aims and limits, and nothing else.</summary>
/// <remarks>
/// Less is better in every aim. What has no value is NaN. After the breaches of the limits comes one more: how many measures had no value, so that a
/// design of which something cannot be said is never inside. A design that cannot be put together has failed; so has one
/// whose open fingers an object of the aims or limits already lies in.
/// </remarks>
internal sealed class DesignJudge(HandVariants variants, SearchMeasures measures, Grip.Solver? solver = null)
{
    public Outcome Judge(double[] design)
    {
        double[] aims = new double[measures.Aims.Count], excess = new double[measures.Limits.Count + 1];
        try
        {
            AskedHand hand = new(variants.Hand(design), solver: solver, alone: true);
            foreach (AskedLimit limit in measures.Limits)
            {
                limit.Measure.Expect(hand);
            }

            foreach (AskedAim aim in measures.Aims)
            {
                aim.Measure.Expect(hand);
            }

            int missing = 0;
            for (int k = 0; k < aims.Length; k++)
            {
                Reading value = measures.Aims[k].Measure.Value(hand);
                missing += value.Why is null ? 0 : 1;
                aims[k] = value.Why is not null ? double.NaN : measures.Aims[k].More ? -value.Value : value.Value;
            }

            for (int k = 0; k < measures.Limits.Count; k++)
            {
                Reading value = measures.Limits[k].Measure.Value(hand);
                missing += value.Why is null ? 0 : 1;
                excess[k] = value.Why is null ? measures.Limits[k].Excess(value.Value) : double.NaN;
            }

            excess[^1] = missing;
            return hand.Overlap is null ? new(aims, excess) : Failed(aims, excess);
        }
        catch (Exception fault) when (fault is DriveException or InvalidDataException)
        {
            return Failed(aims, excess);
        }
    }

    private static Outcome Failed(double[] aims, double[] excess)
    {
        Array.Fill(aims, double.NaN);
        return new(aims, excess, Failed: true);
    }
}
