using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>A measure as it is asked for, by its text: <c>jobs_done</c>, <c>job_margin@bucket</c>, <c>grip_force@mug/all free</c>, <c>worst(shift_cost)</c>.</summary>
/// <remarks>
/// A measure of a closing run takes an object, then a lock pattern and an effort where they are not "all free" and "all-day".
/// <c>worst(key)</c> is the worst over every object and lock pattern, or over every job or finger.
/// </remarks>
public abstract class AskedMeasure
{
    private protected AskedMeasure(string text, string words, string unit, Better better) => (Text, Words, Unit, Better) = (text, words, unit, better);

    /// <summary>The text it was asked by; also the key of its figure.</summary>
    public string Text { get; }

    /// <summary>Plain words.</summary>
    public string Words { get; }

    /// <summary>Unit.</summary>
    public string Unit { get; }

    /// <summary>Which way is better.</summary>
    public Better Better { get; }

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="hand">The hand whose objects, locks, jobs and fingers it may name.</param>
    /// <param name="why">What is wrong with it, with the nearest that is known; <see langword="null"/> where it is understood.</param>
    /// <returns><see langword="null"/> where it is not understood.</returns>
    public static AskedMeasure? Read(string text, Hand.HandModel hand, out AskedFault? why)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(hand);
        return new AskedReader(text, hand).Read(out why);
    }

    /// <summary>Says beforehand what the reading will have to run.</summary>
    /// <param name="reading">The hand.</param>
    public abstract void Expect(AskedHand reading);

    /// <summary>The value alone.</summary>
    /// <param name="reading">The hand.</param>
    /// <exception cref="Mechanics.Run.DriveException">The hand cannot be put together.</exception>
    public abstract Reading Value(AskedHand reading);

    /// <summary>The value with its working.</summary>
    /// <param name="reading">The hand.</param>
    /// <exception cref="Mechanics.Run.DriveException">The hand cannot be put together.</exception>
    public abstract Figure Figure(AskedHand reading);
}

/// <summary>What is wrong with a text that asks for a measure.</summary>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">The likely fix.</param>
public sealed record AskedFault(string Found, string Allowed, string Fix);

/// <summary>A measure of one closing run.</summary>
internal sealed class AskedOfRun(string text, Measure measure, SituationKey situation) : AskedMeasure(text, measure.Words, measure.Unit, measure.Better)
{
    public Measure Measure => measure;

    public SituationKey Situation => situation;

    public override void Expect(AskedHand reading) => reading.Expect(situation, measure.NeedsOpening);

    public override Reading Value(AskedHand reading)
    {
        Ran ran = reading.Run(situation, measure.NeedsOpening);
        return ran.Reading is { } run ? measure.Value(run) : Reading.None(JobRuns.Overlap(ran.Fault!));
    }

    public override Figure Figure(AskedHand reading)
    {
        Ran ran = reading.Run(situation, measure.NeedsOpening);
        return ran.Reading is { } run ? measure.Figure(run) with { Key = Text } : new(Text, Words, Unit) { Why = JobRuns.Overlap(ran.Fault!) };
    }
}

/// <summary>A measure of the hand, a job or a finger.</summary>
internal sealed class AskedOfHand(string text, HandMeasure measure, string subject, string unit) : AskedMeasure(text, measure.Words, unit, measure.Better)
{
    public override void Expect(AskedHand reading)
    {
    }

    public override Reading Value(AskedHand reading) => measure.Value(reading, subject);

    public override Figure Figure(AskedHand reading) => measure.Figure(reading, subject) with { Key = Text };
}

/// <summary>The worst of several.</summary>
internal sealed class WorstOf(string text, IReadOnlyList<AskedMeasure> all) : AskedMeasure(text, $"{all[0].Words}, where it is worst", all[0].Unit, all[0].Better)
{
    public override void Expect(AskedHand reading)
    {
        foreach (AskedMeasure one in all)
        {
            one.Expect(reading);
        }
    }

    public override Reading Value(AskedHand reading) => Worst(reading).Value;

    public override Figure Figure(AskedHand reading)
    {
        (AskedMeasure at, Reading value) = Worst(reading);
        return value.Why is { } why ? new(Text, Words, Unit) { Why = why } : at.Figure(reading) with { Key = Text, Words = $"{Words}: {at.Text}" };
    }

    private (AskedMeasure At, Reading Value) Worst(AskedHand reading)
    {
        (AskedMeasure, Reading) worst = default;
        double least = double.PositiveInfinity;
        foreach (AskedMeasure one in all)
        {
            Reading value = one.Value(reading);
            if (value.Why is { } why)
            {
                return (one, Reading.None($"{one.Text} has no value: {why}"));
            }

            double rank = Better == Better.More ? value.Value : -value.Value;
            if (rank < least)
            {
                (least, worst) = (rank, (one, value));
            }
        }

        return worst;
    }
}
