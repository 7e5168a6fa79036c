using System.Globalization;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>One thing looked for in every run.</summary>
/// <param name="key">Key of its findings.</param>
public abstract class Rule(string key)
{
    /// <summary>Key of its findings.</summary>
    public string Key { get; } = key;

    /// <summary>Whether it still applies to a run that could not be followed to its end.</summary>
    public virtual bool ReadsLostRuns => false;

    /// <summary>Looks at a run.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    /// <returns>What it found; nothing where the rule does not apply.</returns>
    public abstract IEnumerable<Finding> Look(RunReading reading);

    /// <summary>A finding judged by its margin.</summary>
    /// <param name="subject">Which part.</param>
    /// <param name="figure">The figure.</param>
    /// <param name="limit">Its limit.</param>
    /// <param name="unit">Unit of both.</param>
    /// <param name="margin">Distance to the limit ÷ limit, positive is good.</param>
    /// <param name="reason">Why, in plain words.</param>
    /// <param name="change">What to try.</param>
    protected Finding Judge(string subject, double figure, double limit, string unit, double margin, string reason, string change) =>
        new(Key, subject, Verdicts.Of(margin), reason, change) { Figure = figure, Limit = limit, Unit = unit, Margin = margin };

    /// <summary>Margin of a figure that must stay below its limit.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="limit">Its limit, above 0.</param>
    protected static double Below(double figure, double limit) => (limit - figure) / limit;

    /// <summary>A number for a sentence.</summary>
    /// <param name="value">Value.</param>
    /// <param name="decimals">Digits behind the point.</param>
    protected static string Say(double value, int decimals = 1)
    {
        string text = value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return text.TrimStart('-').Trim('0', '.').Length == 0 ? text.TrimStart('-') : text;
    }

    /// <summary>Degrees of an angle.</summary>
    /// <param name="radians">Angle [rad].</param>
    protected static double Degrees(double radians) => radians * Angles.DegreesPerRadian;
}
