using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Which way a measure is better.</summary>
public enum Better
{
    /// <summary>More is better.</summary>
    More,

    /// <summary>Less is better.</summary>
    Less,

    /// <summary>Neither: it describes.</summary>
    Neither,
}

/// <summary>A value in the measure's unit, or why there is none.</summary>
/// <param name="Value">The value; not to be read where <see cref="Why"/> is given.</param>
/// <param name="Why">Why there is none.</param>
public readonly record struct Reading(double Value, string? Why = null)
{
    /// <summary>A value.</summary>
    public static implicit operator Reading(double value) => FromDouble(value);

    /// <summary>A value; one that is not finite is none.</summary>
    /// <param name="value">Value in the measure's unit.</param>
    public static Reading FromDouble(double value) => double.IsFinite(value) ? new(value) : None("it would divide by zero");

    /// <summary>No value.</summary>
    /// <param name="why">Why.</param>
    public static Reading None(string why) => new(double.NaN, why);
}

/// <summary>One measure of a closing run. Search, findings, page and paper read this definition and no other.</summary>
/// <param name="key">Key.</param>
/// <param name="words">Plain words.</param>
/// <param name="unit">Unit in which it is given everywhere.</param>
/// <param name="better">Which way is better.</param>
public abstract class Measure(string key, string words, string unit, Better better)
{
    /// <summary>Key of what is read straight off the equilibrium path.</summary>
    protected const string Physics = "drive-model";

    /// <summary>Key.</summary>
    public string Key { get; } = key;

    /// <summary>Plain words.</summary>
    public string Words { get; } = words;

    /// <summary>Unit in which it is given everywhere.</summary>
    public string Unit { get; } = unit;

    /// <summary>Which way is better.</summary>
    public Better Better { get; } = better;

    /// <summary>Whether it needs the opening too.</summary>
    public virtual bool NeedsOpening => false;

    /// <summary>The value alone, as a search wants it.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    public Reading Value(RunReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        RunResult run = reading.Run;
        if (run.Failure is { } failure && (NeedsOpening || !failure.Opening))
        {
            string leg = failure.Opening ? "opening" : "closing";
            return Reading.None($"the path could not be followed past {Angles.Text(failure.ThetaRadians)} on {leg}");
        }

        return NeedsOpening && run.Opening.Count == 0 ? Reading.None("the run did not open the hand again") : Read(reading);
    }

    /// <summary>The value with its working.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    public Figure Figure(RunReading reading)
    {
        Reading value = Value(reading);
        Figure figure = new(Key, Words, Unit) { Why = value.Why };
        return value.Why is not null ? figure : Spread(reading, figure with { Value = value.Value, WorkedOut = () => Work(reading) });
    }

    /// <summary>How it is read from a run that was followed.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    protected abstract Reading Read(RunReading reading);

    /// <summary>Formula and inputs that give the value.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    protected abstract Working Work(RunReading reading);

    /// <summary>Adds the interval where one is known.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    /// <param name="figure">The figure without it.</param>
    protected virtual Figure Spread(RunReading reading, Figure figure) => figure;
}
