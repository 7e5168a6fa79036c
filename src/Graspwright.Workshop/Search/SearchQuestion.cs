using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Search;

/// <summary>Which designs are best in several aims at once and keep all limits?</summary>
/// <param name="Editor">The hand file, sound.</param>
public sealed record SearchQuestion(HandEditor Editor)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Name of the search; empty = the first of the file.</summary>
    public string Name { get; init; } = "";

    /// <summary>Another seed than the file's.</summary>
    public long? Seed { get; init; }

    /// <summary>Another number of designs than the file's.</summary>
    public long? Evaluations { get; init; }

    /// <summary>How many threads judge; the result is the same for any. 0 = one a core.</summary>
    public int Threads { get; init; }

    /// <summary>Where an earlier search stopped, as <see cref="Checkpoint.Write"/> wrote it.</summary>
    public string? ResumeFrom { get; init; }

    /// <summary>What follows the equilibrium; <see langword="null"/> = <see cref="Mechanics.Run.ClosingRun.Solve"/>.</summary>
    public Grip.Solver? Solver { get; init; }

    /// <summary>Whether the point to try first is polished along the derivatives.</summary>
    public bool Polish { get; init; }

    /// <summary>Told the state after every batch; called from the thread that searches.</summary>
    public Action<SearchState>? Watch { get; init; }

    /// <summary>Asked to stop: the batch in hand is ended, and the result is what there is so far.</summary>
    public CancellationToken Stop { get; init; }
}

/// <summary>The answer with the numbers behind it.</summary>
/// <param name="Answer">What is printed; <see langword="null"/> = bad input, see the errors.</param>
/// <param name="Study">The numbers; <see langword="null"/> with errors.</param>
/// <param name="Errors">Bad input.</param>
public sealed record SearchResult(Answer? Answer, SearchStudy? Study, IReadOnlyList<InputError> Errors);

/// <summary>The numbers of a search.</summary>
public sealed record SearchStudy
{
    /// <summary>What was looked for.</summary>
    public required DesignSearch Search { get; init; }

    /// <summary>What is free, and the way from values to hands and files.</summary>
    public required HandVariants Variants { get; init; }

    /// <summary>Aims and limits.</summary>
    public required SearchMeasures Measures { get; init; }

    /// <summary>How it was run.</summary>
    public required SearchOptions Options { get; init; }

    /// <summary>Everything the search remembers.</summary>
    public required SearchState State { get; init; }

    /// <summary>The front, the best of the first aim first.</summary>
    public required IReadOnlyList<Design> Front { get; init; }

    /// <summary>Number of the point of the front to try first; −1 = the front is empty.</summary>
    public required int Chosen { get; init; }

    /// <summary>The hand as it is, judged like any other; <see langword="null"/> = it cannot be.</summary>
    public Design? AsItIs { get; init; }

    /// <summary>Whether the search came to its end.</summary>
    public required bool Ended { get; init; }

    /// <summary>The checkpoint from which the search goes on to the same end.</summary>
    public required string Checkpoint { get; init; }

    /// <summary>The point to try first, polished in the first aim without loss in the others; <see langword="null"/> = not asked for, or no front.</summary>
    public Design? Polished { get; init; }

    /// <summary>Measures whose derivatives were differences of whole runs while polishing, and why.</summary>
    public IReadOnlyDictionary<string, string> Differenced { get; init; } = new Dictionary<string, string>();

    /// <summary>An edit of the hand file with a point of the front.</summary>
    /// <param name="point">Number of the point, from 0.</param>
    public EditResult Edit(int point) => Variants.Edited(Front[point].Values);
}

/// <summary>The aims and limits of a search as measures.</summary>
/// <param name="Aims">The aims.</param>
/// <param name="Limits">The limits.</param>
public sealed record SearchMeasures(IReadOnlyList<AskedAim> Aims, IReadOnlyList<AskedLimit> Limits);

/// <summary>An aim.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="More">Whether more is better.</param>
public sealed record AskedAim(AskedMeasure Measure, bool More);

/// <summary>A limit.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="AtLeast">At least, or else at most.</param>
/// <param name="Value">The limit in the measure's unit.</param>
public sealed record AskedLimit(AskedMeasure Measure, bool AtLeast, double Value)
{
    /// <summary>What a whole breach is measured by: the limit itself, or one unit where it is 0.</summary>
    public double Scale => Value == 0 ? 1 : Math.Abs(Value);

    /// <summary>Breach of the limit ÷ its scale; 0 or less = kept.</summary>
    /// <param name="value">Value of the measure.</param>
    public double Excess(double value) => (AtLeast ? Value - value : value - Value) / Scale;

    /// <summary>Value of the measure from a breach.</summary>
    /// <param name="excess">Breach ÷ scale.</param>
    public double From(double excess) => AtLeast ? Value - excess * Scale : Value + excess * Scale;
}
