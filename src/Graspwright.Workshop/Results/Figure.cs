namespace Graspwright.Workshop.Results;

/// <summary>One number of an answer, with its unit, its spread and its working.</summary>
/// <param name="Key">Key of the measure.</param>
/// <param name="Words">What it is, in plain words.</param>
/// <param name="Unit">Unit of the value; fixed for each measure.</param>
public sealed record Figure(string Key, string Words, string Unit)
{
    private Working? _working;

    /// <summary>The value; <see langword="null"/> = there is none, see <see cref="Why"/>.</summary>
    public double? Value { get; init; }

    /// <summary>Lower end of the 95 % interval, where one is known.</summary>
    public double? Low { get; init; }

    /// <summary>Upper end of the 95 % interval, where one is known.</summary>
    public double? High { get; init; }

    /// <summary>How the value comes about; <see langword="null"/> without a value.</summary>
    public Working? Working
    {
        get => _working ??= WorkedOut?.Invoke();
        init => _working = value;
    }

    /// <summary>Works out how the value comes about when that is first asked for: most readers of a figure want the value alone.</summary>
    public Func<Working>? WorkedOut { private get; init; }

    /// <summary>Why there is no value.</summary>
    public string? Why { get; init; }
}

/// <summary>A formula with the inputs that give the printed value when put into it.</summary>
/// <param name="Formula">Formula text on the names of the inputs; <c>·</c> and <c>/</c> multiply and divide, <c>^</c> is a power, π is itself.</param>
/// <param name="Inputs">Inputs in the order of the formula.</param>
/// <param name="Source">Key in the register of sources.</param>
public sealed record Working(string Formula, IReadOnlyList<WorkingInput> Inputs, string Source);

/// <summary>One input of a working.</summary>
/// <param name="Name">Name in the formula: letters, digits, underscores.</param>
/// <param name="Value">Value in its unit.</param>
/// <param name="Unit">Unit; empty for a plain number.</param>
public sealed record WorkingInput(string Name, double Value, string Unit);
