using Graspwright.Deciding.Changes;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Changes;

/// <summary>What does each item of the list of changes buy?</summary>
/// <param name="Editor">The hand file, sound.</param>
public sealed record ChangesQuestion(HandEditor Editor)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Measures asked for, as texts, the one that counts most first; empty = those of the file, else a choice.</summary>
    public IReadOnlyList<string> Measures { get; init; } = [];

    /// <summary>Items asked for, by name; empty = all.</summary>
    public IReadOnlyList<string> Only { get; init; } = [];

    /// <summary>Told after every set of changes how many of how many are judged; may be called from several threads.</summary>
    public Action<int, int>? Watch { get; init; }

    /// <summary>Asked to stop.</summary>
    public CancellationToken Stop { get; init; }
}

/// <summary>The answer with the numbers behind it.</summary>
/// <param name="Answer">What is printed; <see langword="null"/> = bad input, see the errors.</param>
/// <param name="Study">The numbers; <see langword="null"/> with errors.</param>
/// <param name="Errors">Bad input.</param>
public sealed record ChangesResult(Answer? Answer, ChangeStudy? Study, IReadOnlyList<InputError> Errors);

/// <summary>The numbers of a list of changes.</summary>
/// <param name="Items">The items.</param>
/// <param name="Measures">What each does to each measure, the one that counts most first.</param>
/// <param name="Steps">The way from the hand as it is to all changes, the item with the greatest gain per evening first.</param>
/// <param name="Values">Value of every measure for each set that was judged.</param>
/// <param name="Failed">Sets that could not be judged, with the reason.</param>
public sealed record ChangeStudy(
    IReadOnlyList<Change> Items, IReadOnlyList<MeasuredChanges> Measures, IReadOnlyList<ChangeStep> Steps,
    IReadOnlyDictionary<ChangeSet, double[]> Values, IReadOnlyList<(ChangeSet Set, string Why)> Failed)
{
    /// <summary>Value of a measure for a set, in its own unit and sense; NaN = none.</summary>
    /// <param name="set">The set.</param>
    /// <param name="measure">Number of the measure.</param>
    public double Value(ChangeSet set, int measure) => Values.TryGetValue(set, out double[]? values) ? values[measure] : double.NaN;
}

/// <summary>What the items do to one measure.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Effects">Gains, more is better: turned round where less of the measure is better.</param>
/// <param name="Small">Differences up to this count as none.</param>
public sealed record MeasuredChanges(AskedMeasure Measure, ChangeEffects Effects, double Small)
{
    /// <summary>1 where more is better, −1 where less is.</summary>
    public double Sense => Measure.Better == Better.Less ? -1 : 1;
}

/// <summary>A step of the way to all changes.</summary>
/// <param name="Item">Number of the item that this step adds; −1 = the hand as it is.</param>
/// <param name="Set">The items so far.</param>
public sealed record ChangeStep(int Item, ChangeSet Set);
