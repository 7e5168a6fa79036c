namespace Graspwright.Drawing;

/// <summary>One thing wrong in a file.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Line">Line, from 1; 0 where the whole file is meant.</param>
/// <param name="Column">Column, from 1; 0 where the whole line is meant.</param>
/// <param name="Key">What the value is for: <c>x_mm</c>, <c>label</c>.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">Likely fix.</param>
public sealed record FileFault(string File, int Line, int Column, string Key, string Found, string Allowed, string Fix)
{
    /// <summary>The fault as one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{File}({Line},{Column}): {Key}: found {Found}; allowed is {Allowed}. {Fix}");
}

/// <summary>A file that can't be read, with everything found wrong in it.</summary>
/// <param name="faults">The faults, at least one.</param>
public sealed class DrawingFileException(IReadOnlyList<FileFault> faults) : Exception(string.Join('\n', faults))
{
    /// <summary>A single fault.</summary>
    /// <param name="fault">The fault.</param>
    public DrawingFileException(FileFault fault)
        : this([fault])
    {
    }

    /// <summary>The faults, at least one.</summary>
    public IReadOnlyList<FileFault> Faults { get; } = faults;

    /// <summary>A found text short enough to print, without control characters.</summary>
    /// <param name="text">The text.</param>
    internal static string Shown(string text)
    {
        string shown = text.Length <= 40 ? text : string.Concat(text.AsSpan(0, 40), "…");
        return "'" + string.Concat(shown.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c)) + "'";
    }
}
