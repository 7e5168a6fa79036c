using System.Collections.Concurrent;
using Graspwright.Deciding.Changes;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Changes;

/// <summary>Judges the sets of a list of changes and orders the items.</summary>
internal static class ChangeStudies
{
    /// <summary>Share of a value up to which a difference counts as none: far below what a bench can read.</summary>
    private const double SmallShare = 0.005;

    /// <summary>Judges them.</summary>
    public static ChangeStudy Of(ChangeVariants variants, IReadOnlyList<AskedMeasure> measures, ChangesQuestion question)
    {
        int items = variants.Changes.Count;
        ConcurrentDictionary<ChangeSet, double[]> values = [];
        ConcurrentDictionary<ChangeSet, string> failed = [];
        IReadOnlyList<ChangeSet> sets = ChangeArithmetic.Sets(items);
        int done = 0, all = sets.Count + Math.Max(0, items - 3);
        void Judge(ChangeSet set)
        {
            question.Stop.ThrowIfCancellationRequested();
            values[set] = Values(variants, set, measures, failed);
            question.Watch?.Invoke(Interlocked.Increment(ref done), all);
        }

        Parallel.ForEach(sets, Judge);
        MeasuredChanges[] measured = [.. measures.Select((m, k) => Measured(items, m, k, values))];
        List<ChangeStep> steps = [new(-1, ChangeSet.None)];
        foreach (int item in Order(variants.Changes, measured))
        {
            steps.Add(new(item, steps[^1].Set.With(item)));
        }

        Parallel.ForEach(steps.Where(s => !values.ContainsKey(s.Set)), s => Judge(s.Set));
        return new(variants.Changes, measured, steps, values, [.. failed.OrderBy(f => f.Key.Bits).Select(f => (f.Key, f.Value))]);
    }

    /// <summary>Names of the items of a set.</summary>
    public static string Names(IReadOnlyList<Change> changes, ChangeSet set) => set.Bits == 0 ? "as it is" : string.Join(" + ", set.Items.Select(i => changes[i].Name));

    private static double[] Values(ChangeVariants variants, ChangeSet set, IReadOnlyList<AskedMeasure> measures, ConcurrentDictionary<ChangeSet, string> failed)
    {
        double[] values = new double[measures.Count];
        Array.Fill(values, double.NaN);
        try
        {
            AskedHand hand = new(variants.Hand(set), alone: true);
            foreach (AskedMeasure measure in measures)
            {
                measure.Expect(hand);
            }

            for (int k = 0; k < values.Length; k++)
            {
                Reading value = measures[k].Value(hand);
                values[k] = value.Why is null ? value.Value : double.NaN;
                if (value.Why is { } why)
                {
                    failed[set] = $"{measures[k].Text} has no value, as {why}";
                }
            }
        }
        catch (Exception fault) when (fault is DriveException or InvalidDataException)
        {
            failed[set] = fault.Message.TrimEnd('.');
        }

        return values;
    }

    private static MeasuredChanges Measured(int items, AskedMeasure measure, int k, IReadOnlyDictionary<ChangeSet, double[]> values)
    {
        double sense = measure.Better == Better.Less ? -1 : 1;
        double greatest = values.Values.Select(v => Math.Abs(v[k])).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        double small = SmallShare * greatest;
        return new(measure, ChangeArithmetic.Of(items, set => sense * values[set][k], small), small);
    }

    /// <summary>The item with the greatest gain per evening first, by the measure that counts most; where that tells nothing, by the next.</summary>
    private static IEnumerable<int> Order(IReadOnlyList<Change> changes, MeasuredChanges[] measured)
    {
        IOrderedEnumerable<int> order = Enumerable.Range(0, changes.Count).OrderByDescending(i => Gain(measured[0], i, changes[i]));
        foreach (MeasuredChanges next in measured.Skip(1))
        {
            order = order.ThenByDescending(i => Gain(next, i, changes[i]));
        }

        return order;
    }

    /// <summary>Gain per evening; what is lost is not made smaller by the evenings spent on it.</summary>
    private static double Gain(MeasuredChanges measured, int item, Change change)
    {
        double gain = measured.Effects.Alone[item];
        return double.IsNaN(gain) ? double.NegativeInfinity : Math.Abs(gain) <= measured.Small ? 0 : gain > 0 ? gain / Math.Max(change.Evenings ?? 1, 0.25) : gain;
    }
}
