using Graspwright.Hand;

namespace Graspwright.Page.Hands;

/// <summary>The hand file as it stands at one moment.</summary>
/// <param name="Version">Counts every change, from 1.</param>
/// <param name="Reading">What reading it gave.</param>
/// <param name="Hand">The last hand that was sound; <see langword="null"/> if none was yet.</param>
/// <param name="Read">When it was read.</param>
public sealed record HandState(int Version, HandReading Reading, HandModel? Hand, DateTimeOffset Read)
{
    /// <summary>Whether the file as it stands can be used.</summary>
    public bool Sound => Reading.Hand is not null;
}

/// <summary>A value to be put into the file.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Text">The value with its unit.</param>
/// <param name="Seen">The value that stood there when the editor looked; <see langword="null"/> = whatever stands there.</param>
public sealed record PathValue(string Path, string Text, string? Seen = null);

/// <summary>One value that an edit changed.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Before">Value before.</param>
/// <param name="After">Value after.</param>
public sealed record ChangedValue(string Path, string Before, string After);

/// <summary>One edit made on the page, which can be taken back.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Words">What was done.</param>
/// <param name="Values">What it changed; empty where the file was changed as a whole.</param>
/// <param name="At">When.</param>
/// <param name="TextBefore">Text of the file before.</param>
/// <param name="TextAfter">Text of the file after.</param>
/// <param name="HandBefore">The hand before.</param>
public sealed record EditStep(int Number, string Words, IReadOnlyList<ChangedValue> Values, DateTimeOffset At, string TextBefore, string TextAfter, HandModel? HandBefore);

/// <summary>Two values for one place, from two editors; both are kept until somebody chooses.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Path">Path of the value.</param>
/// <param name="InFile">The value that the file has.</param>
/// <param name="Other">The other value.</param>
/// <param name="Words">How it came about.</param>
/// <param name="At">When.</param>
/// <param name="Kept">Name of the file in which the other version is kept whole; <see langword="null"/> = it is one value only.</param>
public sealed record TwoVersions(int Number, string Path, string InFile, string Other, string Words, DateTimeOffset At, string? Kept);

/// <summary>A value that was refused, to be shown beside its field until it is put right.</summary>
/// <param name="Text">What was typed.</param>
/// <param name="Error">Why it was refused.</param>
public sealed record Refusal(string Text, HandError Error);

/// <summary>What an edit came to.</summary>
/// <param name="Errors">Why it was refused; empty = it was not.</param>
/// <param name="Conflict">Two versions that must be chosen from.</param>
public sealed record Outcome(IReadOnlyList<HandError> Errors, TwoVersions? Conflict = null)
{
    /// <summary>It was done.</summary>
    public static Outcome Done { get; } = new([]);

    /// <summary>Whether it was done.</summary>
    public bool IsDone => Errors.Count == 0 && Conflict is null;
}
