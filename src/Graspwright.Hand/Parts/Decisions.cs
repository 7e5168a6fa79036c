namespace Graspwright.Hand;

/// <summary>What the maker thinks of changing: the list of changes, and searches.</summary>
public sealed record Decisions
{
    /// <summary>Measures by which changes are weighed, as texts; empty = the program's choice.</summary>
    public IReadOnlyList<string> Measures { get; init; } = [];

    /// <summary>Currency of the prices; empty = not said.</summary>
    public string Money { get; init; } = "";

    /// <summary>The list of changes.</summary>
    public IReadOnlyList<Change> Changes { get; init; } = [];

    /// <summary>The searches.</summary>
    public IReadOnlyList<DesignSearch> Searches { get; init; } = [];

    /// <summary>Defaults that stand in for a choice of the maker.</summary>
    public IReadOnlyList<Guess> Guesses { get; init; } = [];
}

/// <summary>A change that is being thought about.</summary>
/// <param name="Name">Its name.</param>
public sealed record Change(string Name)
{
    /// <summary>What is done; empty = not said.</summary>
    public string About { get; init; } = "";

    /// <summary>Evenings of work; <see langword="null"/> = not said.</summary>
    public double? Evenings { get; init; }

    /// <summary>What is bought for it, in the file's currency; <see langword="null"/> = not said.</summary>
    public double? Money { get; init; }

    /// <summary>Time without the hand [s]; <see langword="null"/> = not said.</summary>
    public double? WithoutSeconds { get; init; }

    /// <summary>Whether it takes a new hand, or else fits the hand as it is.</summary>
    public bool NewHand { get; init; }

    /// <summary>What could be tried first; empty = not said.</summary>
    public string MockUp { get; init; } = "";

    /// <summary>Values that it sets.</summary>
    public IReadOnlyList<HandEdit> Edits { get; init; } = [];

    /// <summary>Sections that it replaces.</summary>
    public IReadOnlyList<ReplacedPart> Parts { get; init; } = [];
}

/// <summary>A value to be set.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Value">The value as <see cref="HandEditor.Set"/> takes it.</param>
public sealed record HandEdit(string Path, string Value);

/// <summary>A section to be replaced.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Toml">The new section as <see cref="HandEditor.ReplacePart"/> takes it.</param>
public sealed record ReplacedPart(string Path, string Toml);

/// <summary>A search over designs.</summary>
/// <param name="Name">Its name.</param>
public sealed record DesignSearch(string Name)
{
    /// <summary>What is looked for; empty = not said.</summary>
    public string About { get; init; } = "";

    /// <summary>Seed.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>How many designs are tried.</summary>
    public long Evaluations { get; init; } = 5000;

    /// <summary>Items of the list of changes that may be taken or left.</summary>
    public IReadOnlyList<string> Changes { get; init; } = [];

    /// <summary>What is free.</summary>
    public IReadOnlyList<FreeValue> Free { get; init; } = [];

    /// <summary>What is aimed at.</summary>
    public IReadOnlyList<SearchAim> Aims { get; init; } = [];

    /// <summary>What must hold.</summary>
    public IReadOnlyList<SearchLimit> Limits { get; init; } = [];
}

/// <summary>A value that is free in a search: a range, or one of several.</summary>
/// <param name="Path">Its path.</param>
public sealed record FreeValue(string Path)
{
    /// <summary>Dimension of the value; <see langword="null"/> for words.</summary>
    public Dimension? Dimension { get; init; }

    /// <summary>Least value in SI; <see langword="null"/> = one of several.</summary>
    public double? From { get; init; }

    /// <summary>Greatest value in SI; <see langword="null"/> = one of several.</summary>
    public double? To { get; init; }

    /// <summary>Step in SI; <see langword="null"/> = every value between.</summary>
    public double? Step { get; init; }

    /// <summary>The values among which is chosen, as <see cref="HandEditor.Set"/> takes them; empty = a range.</summary>
    public IReadOnlyList<string> OneOf { get; init; } = [];
}

/// <summary>An aim of a search.</summary>
/// <param name="Measure">The measure, as text.</param>
/// <param name="More">Whether more is better, or else less.</param>
public sealed record SearchAim(string Measure, bool More);

/// <summary>A limit of a search.</summary>
/// <param name="Measure">The measure, as text.</param>
/// <param name="AtLeast">Whether the measure must be at least the limit, or else at most.</param>
/// <param name="Value">The limit as the file writes it, with its unit.</param>
public sealed record SearchLimit(string Measure, bool AtLeast, string Value);
