namespace Graspwright.Workshop.Results;

/// <summary>What every verb prints, screen and paper alike.</summary>
public sealed record Answer
{
    /// <summary>The verb that answers.</summary>
    public required string Verb { get; init; }

    /// <summary>The hand's name, or the file's where it has none.</summary>
    public required string Hand { get; init; }

    /// <summary>One or two sentences.</summary>
    public required string Sentence { get; init; }

    /// <summary>Label of the headline situation; <see langword="null"/> where there is none.</summary>
    public string? Situation { get; init; }

    /// <summary>Figures of the headline situation.</summary>
    public IReadOnlyList<Figure> Figures { get; init; } = [];

    /// <summary>Findings of the headline situation.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Every situation.</summary>
    public IReadOnlyList<Situation> Situations { get; init; } = [];

    /// <summary>Tables over all situations.</summary>
    public IReadOnlyList<Table> Tables { get; init; } = [];

    /// <summary>Cautions.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <summary>One object held with one pattern of locks at one effort.</summary>
/// <param name="ObjectName">Name of the object.</param>
/// <param name="Locks">Name of the lock pattern, <c>all free</c> without one.</param>
/// <param name="Effort">Effort: <c>squeeze</c> or <c>all-day</c>.</param>
public sealed record Situation(string ObjectName, string Locks, string Effort)
{
    private IReadOnlyList<Table>? _tables;

    /// <summary>Label: object and locks.</summary>
    public string Label => $"{ObjectName}/{Locks}";

    /// <summary>Figures.</summary>
    public IReadOnlyList<Figure> Figures { get; init; } = [];

    /// <summary>Findings.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Tables.</summary>
    public IReadOnlyList<Table> Tables
    {
        get => _tables ??= TablesMade?.Invoke() ?? [];
        init => _tables = value;
    }

    /// <summary>Makes the tables when they are first asked for: a printed answer shows none of them.</summary>
    public Func<IReadOnlyList<Table>>? TablesMade { private get; init; }

    /// <summary>A figure by key, or <see langword="null"/>.</summary>
    /// <param name="key">Key of the measure.</param>
    public Figure? Find(string key)
    {
        foreach (Figure figure in Figures)
        {
            if (figure.Key == key)
            {
                return figure;
            }
        }

        return null;
    }
}

/// <summary>A table of an answer.</summary>
/// <param name="Name">Name.</param>
/// <param name="Columns">Columns.</param>
/// <param name="Rows">Rows, one cell a column.</param>
public sealed record Table(string Name, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows);

/// <summary>A column of a table.</summary>
/// <param name="Name">Name.</param>
/// <param name="Unit">Unit; empty for words and plain numbers.</param>
public sealed record Column(string Name, string Unit);

/// <summary>A cell: a number, a word, or nothing.</summary>
/// <param name="Number">The number.</param>
/// <param name="Text">The word.</param>
public readonly record struct Cell(double? Number, string? Text)
{
    /// <summary>A cell of a number; NaN is nothing.</summary>
    public static implicit operator Cell(double number) => FromDouble(number);

    /// <summary>A cell of a number that may be missing.</summary>
    public static implicit operator Cell(double? number) => number is { } n ? FromDouble(n) : default;

    /// <summary>A cell of a word.</summary>
    public static implicit operator Cell(string? text) => FromString(text);

    /// <summary>A cell of a number; NaN is nothing.</summary>
    /// <param name="number">The number.</param>
    public static Cell FromDouble(double number) => double.IsFinite(number) ? new(number, null) : default;

    /// <summary>A cell of a word.</summary>
    /// <param name="text">The word.</param>
    public static Cell FromString(string? text) => new(null, text);
}
