namespace Graspwright.Hand;

/// <summary>How the value of a key is written.</summary>
public enum KeyForm
{
    /// <summary>Free text.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>One quantity.</summary>
    Quantity,

    /// <summary>Two quantities: x and y.</summary>
    Pair,

    /// <summary>Three quantities, one for each joint or segment; one alone stands for all three.</summary>
    Triple,

    /// <summary>A list of pairs: anatomical angle and moment, angles rising.</summary>
    MomentTable,

    /// <summary>One pair of such a list.</summary>
    MomentRow,

    /// <summary>A line on the limb: a list of corners, each a place and an angle.</summary>
    Outline,

    /// <summary>One corner of such a line.</summary>
    OutlineCorner,

    /// <summary>A table of keys.</summary>
    Table,

    /// <summary>The name of a finger, or a table for a further bar.</summary>
    FingerOrBar,

    /// <summary>A quantity of the dimension of the value whose path is the key.</summary>
    Tolerance,

    /// <summary>A value as it is written at the path that is the key, or the key of the table round it.</summary>
    AsThere,

    /// <summary>A list of such values.</summary>
    SeveralAsThere,

    /// <summary>A quantity in a unit of the measure that is the key.</summary>
    AsMeasured,

    /// <summary>A list of texts.</summary>
    Words,

    /// <summary>Name of another file, relative, inside the folder of the hand file.</summary>
    FileName,
}

/// <summary>A key of the hand file: what it means, how it is written, what is allowed, what stands in for it.</summary>
/// <remarks>The reader, the suggestions, the JSON Schema, the writer and the reference are all driven by these.</remarks>
public sealed record HandKey
{
    /// <summary>The key.</summary>
    public required string Name { get; init; }

    /// <summary>How its value is written.</summary>
    public required KeyForm Form { get; init; }

    /// <summary>What it means.</summary>
    public required string Words { get; init; }

    /// <summary>Dimension of its quantities.</summary>
    public Dimension Dimension { get; init; }

    /// <summary>Bounds of each of its quantities.</summary>
    public Bounds Bounds { get; init; } = Bounds.Any;

    /// <summary>The words allowed for a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>A word allowed instead of a quantity, meaning without bound; <see langword="null"/> = none.</summary>
    public string? Unbounded { get; init; }

    /// <summary>Whether the maker has to give it.</summary>
    public bool Required { get; init; }

    /// <summary>The default as TOML value; <see langword="null"/> = none, or worked out from other values.</summary>
    public string? Default { get; init; }

    /// <summary>How the default is worked out from other values, in words; <see langword="null"/> = it is not.</summary>
    public string? DerivedDefault { get; init; }

    /// <summary>Source of the default; <see langword="null"/> = the default is no guess about the wearer or the hand.</summary>
    public string? SourceKey { get; init; }

    /// <summary>An example as TOML value.</summary>
    public required string Example { get; init; }

    /// <summary>Keys of the table, where the form is one.</summary>
    public Func<HandSection>? Parts { get; init; }
}

/// <summary>A table of the hand file.</summary>
/// <param name="Words">What it describes.</param>
/// <param name="Keys">Its keys, in the order in which we write them.</param>
public sealed record HandSection(string Words, IReadOnlyList<HandKey> Keys)
{
    /// <summary>Description of every key that the maker names freely; <see langword="null"/> = only the known keys are allowed.</summary>
    public HandKey? AnyKey { get; init; }

    /// <summary>Keys that files had before, and where what they said stands now.</summary>
    public IReadOnlyDictionary<string, string> Moved { get; init; } = new Dictionary<string, string>();

    /// <summary>Finds a key.</summary>
    /// <param name="name">Its name.</param>
    /// <returns><see langword="null"/> if it is not known.</returns>
    public HandKey? Find(string name) => Keys.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.Ordinal)) ?? AnyKey;
}

/// <summary>Bounds of a quantity in SI.</summary>
/// <param name="Low">Lower bound.</param>
/// <param name="LowIsOpen">Whether the lower bound itself is excluded.</param>
/// <param name="High">Upper bound.</param>
/// <param name="Words">The bounds in words.</param>
public sealed record Bounds(double Low, bool LowIsOpen, double High, string Words)
{
    /// <summary>No bounds beyond finite.</summary>
    public static Bounds Any { get; } = new(double.NegativeInfinity, true, double.PositiveInfinity, "any");

    /// <summary>Above 0.</summary>
    public static Bounds Positive { get; } = new(0, true, double.PositiveInfinity, "above 0");

    /// <summary>0 or more.</summary>
    public static Bounds NotNegative { get; } = new(0, false, double.PositiveInfinity, "0 or more");

    /// <summary>Above 0, at most 1.</summary>
    public static Bounds Share { get; } = new(0, true, 1, "above 0, at most 100 %");

    /// <summary>0 to 1/3.</summary>
    public static Bounds Third { get; } = new(0, false, 1.0 / 3, "0 to 1/3");

    /// <summary>Angle above 0 and at most 180°.</summary>
    public static Bounds HalfTurn { get; } = new(0, true, Math.PI, "above 0, at most 180 deg");

    /// <summary>Angle from 0 to 180°.</summary>
    public static Bounds UpToHalfTurn { get; } = new(0, false, Math.PI, "0 to 180 deg");

    /// <summary>Angle from 0 to below 90°.</summary>
    public static Bounds Tilt { get; } = new(0, false, 89.999 * Math.PI / 180, "0 to below 90 deg");

    /// <summary>Angle within 360° either way.</summary>
    public static Bounds Turn { get; } = new(-2 * Math.PI, false, 2 * Math.PI, "-360 to 360 deg");

    /// <summary>Angle within 180° either way.</summary>
    public static Bounds Posture { get; } = new(-Math.PI, false, Math.PI, "-180 to 180 deg");

    /// <summary>Whether a value lies within.</summary>
    /// <param name="si">Value in SI.</param>
    public bool Hold(double si) => (LowIsOpen ? si > Low : si >= Low) && si <= High;
}
