using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>One measure of the whole hand, or of one of its jobs or fingers: what no single closing run says.</summary>
/// <param name="key">Key.</param>
/// <param name="words">Plain words.</param>
/// <param name="unit">Unit in which it is given everywhere; empty for a job's spare, which has its job's.</param>
/// <param name="better">Which way is better.</param>
/// <param name="figure">The figure with its working, for a subject; the subject is empty where <paramref name="subjects"/> is <see langword="null"/>.</param>
/// <param name="subjects">Names that it may be asked of; <see langword="null"/> = of the hand as a whole.</param>
/// <param name="value">The value alone where it comes cheaper than with its working; <see langword="null"/> = read off the figure.</param>
public sealed class HandMeasure(
    string key, string words, string unit, Better better, Func<AskedHand, string, Figure> figure,
    Func<Hand.HandModel, IEnumerable<string>>? subjects = null, Func<AskedHand, string, Reading>? value = null)
{
    /// <summary>Key.</summary>
    public string Key { get; } = key;

    /// <summary>Plain words.</summary>
    public string Words { get; } = words;

    /// <summary>Unit in which it is given everywhere.</summary>
    public string Unit { get; } = unit;

    /// <summary>Which way is better.</summary>
    public Better Better { get; } = better;

    /// <summary>Whether it is asked of one job or finger.</summary>
    public bool HasSubject => subjects is not null;

    /// <summary>A figure of this measure without a value yet.</summary>
    public Figure Blank { get; } = new(key, words, unit);

    /// <summary>Names that it may be asked of.</summary>
    /// <param name="hand">The hand.</param>
    public IEnumerable<string> Subjects(Hand.HandModel hand) => subjects?.Invoke(hand) ?? [];

    /// <summary>The value alone, as a search wants it.</summary>
    /// <param name="reading">The hand.</param>
    /// <param name="subject">Job or finger; empty for the hand as a whole.</param>
    /// <exception cref="Mechanics.Run.DriveException">The hand cannot be put together.</exception>
    public Reading Value(AskedHand reading, string subject)
    {
        if (value is not null)
        {
            return value(reading, subject);
        }

        Figure read = Figure(reading, subject);
        return read.Value is { } number ? number : Reading.None(read.Why ?? "it has no value");
    }

    /// <summary>The value with its working.</summary>
    /// <param name="reading">The hand.</param>
    /// <param name="subject">Job or finger; empty for the hand as a whole.</param>
    /// <exception cref="Mechanics.Run.DriveException">The hand cannot be put together.</exception>
    public Figure Figure(AskedHand reading, string subject) => figure(reading, subject);
}
