using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Lives;

/// <summary>The computed life of a part that a log speaks of, to be corrected by the log.</summary>
/// <remarks>
/// What the hand file says under <c>computed_lives</c> comes first. Where it says nothing and few of the part broke, a part
/// that is a finger takes its life from the hinges of those fingers, as <c>lasts</c> samples them, in the material that
/// most entries have: the first break of any hinge of a finger, all fingers of the log together. A day of wear counts as a
/// day by the calendar.
/// </remarks>
public static class ComputedPart
{
    private const int Samples = 1000;
    private const ulong Seed = 1;
    private const double SecondsADay = 86400;

    /// <summary>Finds the computed life.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="part">Name of the part in the log.</param>
    /// <param name="entries">Its entries.</param>
    /// <returns><see langword="null"/> where nothing is computed for it.</returns>
    public static ComputedLife? Of(HandModel hand, string part, IReadOnlyList<LogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(entries);
        return hand.Drawer.ComputedLives.FirstOrDefault(c => c.Part == part)
            ?? (entries.Count(e => e.Broke) < PartStudy.EnoughBreaks ? FromHinges(hand, part, entries) : null);
    }

    private static ComputedLife? FromHinges(HandModel hand, string part, IReadOnlyList<LogEntry> entries)
    {
        string[] fingers = [.. entries.Select(e => e.Position).Distinct(StringComparer.Ordinal)];
        string? material = entries.GroupBy(e => e.Material).OrderByDescending(g => g.Count()).FirstOrDefault()?.Key;
        if (fingers.Length == 0 || !fingers.All(f => hand.Fingers.Any(h => h.Name == f)) || material is null || !new Materials(hand).Has(material))
        {
            return null;
        }

        GripLoads loads;
        try
        {
            loads = GripLoads.Of(hand);
        }
        catch (DriveException)
        {
            return null; // the hand cannot be put together: `check` and `grip` say why, the log is read all the same
        }

        HandModel made = Lasting.InMaterial(hand, material);
        IReadOnlyList<HingeLife> hinges = LifeModel.Of(made, loads);
        Use use = hand.Structure.Use;
        SampledLives sampled = HandLife.Sample([.. hinges.Select(h => h.Life)], new(use.LoadSpread, use.EnergySpread, use.CountSpread), Samples, Seed);
        double[] days = [.. fingers.SelectMany(f => sampled.First([.. Enumerable.Range(0, hinges.Count).Where(i => hinges[i].Position.StartsWith(f + " ", StringComparison.Ordinal))]))];
        Array.Sort(days);
        double low = SampledLives.Quantile(days, 0.1), median = SampledLives.Quantile(days, 0.5), high = SampledLives.Quantile(days, 0.9);
        return double.IsFinite(high) && 0 < low && low < median && median < high
            ? new(part, median * SecondsADay, low * SecondsADay, high * SecondsADay)
            : null;
    }
}
