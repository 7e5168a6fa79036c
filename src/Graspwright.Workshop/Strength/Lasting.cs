using Graspwright.Hand;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>How long does it last?</summary>
/// <param name="Hand">The hand.</param>
public sealed record LifeQuestion(HandModel Hand)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Materials to set beside the hand's own, for fingers and base together; without any, the commonest metal and print that it is not made of already.</summary>
    public IReadOnlyList<string> Beside { get; init; } = [];

    /// <summary>Recorded moments of the wrist [N·m]; <see langword="null"/> = none.</summary>
    public IReadOnlyList<double>? History { get; init; }

    /// <summary>Samples.</summary>
    public int Samples { get; init; } = 1000;

    /// <summary>Seed of the samples.</summary>
    public ulong Seed { get; init; } = 1;
}

/// <summary>Life of one hinge over the samples.</summary>
/// <param name="Position">Hinge, as <c>index mcp</c>.</param>
/// <param name="Days">Days to its first break, sorted; infinite = never.</param>
/// <param name="First">Share of samples in which it is the first hinge of the hand to break.</param>
/// <param name="Weakest">The part that goes first in the middle of all spreads.</param>
public sealed record HingeBand(string Position, double[] Days, double First, HingeLife Weakest);

/// <summary>Lives of a hand in one choice of materials.</summary>
/// <param name="Material">Material of the fingers.</param>
/// <param name="Hinges">Hinge by hinge.</param>
/// <param name="FirstBreak">Days to the first break of any hinge, sorted.</param>
public sealed record HandBand(string Material, IReadOnlyList<HingeBand> Hinges, double[] FirstBreak);

/// <summary>The answer with what was worked out for it.</summary>
/// <param name="Answer">The answer; <see langword="null"/> with the errors.</param>
/// <param name="Bands">The hand as it is, then in each material set beside it.</param>
/// <param name="Errors">Bad input.</param>
public sealed record LifeResult(Answer? Answer, IReadOnlyList<HandBand> Bands, IReadOnlyList<InputError> Errors);

/// <summary>Says how long hinges last and what decides it.</summary>
public static class Lasting
{
    private static readonly string[] Usual = ["6061-T6", "petg-along"];

    /// <summary>Answers the question.</summary>
    /// <param name="question">The question.</param>
    public static LifeResult Answer(LifeQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        HandModel hand = question.Hand;
        Materials materials = new(hand);
        question = question.Beside.Count > 0 ? question : question with { Beside = [.. Usual.Where(m => !hand.Structure.Hinges.All(h => h.FingerMaterial == m && h.BaseMaterial == m))] };
        InputError[] errors = [.. question.Beside.Where(m => !materials.Has(m)).Select(m => Faults.Unknown(question.File, "--material", m, materials.Names))];
        if (errors.Length > 0)
        {
            return new(null, [], errors);
        }

        GripLoads loads;
        try
        {
            loads = GripLoads.Of(hand, question.History);
        }
        catch (Mechanics.Run.DriveException fault)
        {
            return new(null, [], [Faults.OfHand(question.File, fault)]);
        }

        List<HandBand> bands = [Sample(hand, loads, question.Samples, question.Seed)];
        bands.AddRange(question.Beside.Select(m => Sample(InMaterial(hand, m), loads, question.Samples, question.Seed) with { Material = m }));
        return new(LifeAnswer.Compose(question, loads, bands), bands, []);
    }

    /// <summary>A hand with fingers and base of one material.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="material">Material.</param>
    public static HandModel InMaterial(HandModel hand, string material)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return hand with { Structure = hand.Structure with { Hinges = [.. hand.Structure.Hinges.Select(h => h with { FingerMaterial = material, BaseMaterial = material })] } };
    }

    /// <summary>Samples the lives of a hand.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    /// <param name="samples">Samples.</param>
    /// <param name="seed">Seed.</param>
    public static HandBand Sample(HandModel hand, GripLoads loads, int samples, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(hand);
        IReadOnlyList<HingeLife> lives = LifeModel.Of(hand, loads);
        Use use = hand.Structure.Use;
        SampledLives sampled = HandLife.Sample([.. lives.Select(l => l.Life)], new(use.LoadSpread, use.EnergySpread, use.CountSpread), samples, seed);
        List<(string Position, double[] Days, HingeLife Weakest)> hinges = [];
        foreach (IGrouping<string, int> hinge in Enumerable.Range(0, lives.Count).GroupBy(i => lives[i].Position))
        {
            int weakest = hinge.MinBy(i => Middle(lives[i]));
            hinges.Add((hinge.Key, sampled.First([.. hinge]), lives[weakest]));
        }

        int[] won = new int[hinges.Count];
        double[] first = new double[samples];
        for (int s = 0; s < samples; s++)
        {
            int least = 0;
            for (int h = 1; h < hinges.Count; h++)
            {
                least = hinges[h].Days[s] < hinges[least].Days[s] ? h : least;
            }

            first[s] = hinges[least].Days[s];
            won[least] += double.IsFinite(first[s]) ? 1 : 0;
        }

        Array.Sort(first);
        string[] materials = [.. hand.Structure.Hinges.Select(h => h.FingerMaterial).Distinct(StringComparer.Ordinal)];
        return new(string.Join(" and ", materials), [.. hinges.Select((h, i) => new HingeBand(h.Position, Sorted(h.Days), (double)won[i] / samples, h.Weakest))], first);
    }

    private static double Middle(HingeLife life) => life.Life.Places.Min(p => p.Days(LifeDraw.Middle));

    private static double[] Sorted(double[] days)
    {
        Array.Sort(days);
        return days;
    }
}
