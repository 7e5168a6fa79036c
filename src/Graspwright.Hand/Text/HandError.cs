namespace Graspwright.Hand;

/// <summary>One thing wrong with a hand file.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line, from 1; 0 = the file as a whole.</param>
/// <param name="Column">Column, from 1; 0 = the file as a whole.</param>
/// <param name="Key">Path of the key; empty if there is none.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">The likely fix.</param>
public sealed record HandError(string File, int Line, int Column, string Key, string Found, string Allowed, string Fix)
{
    /// <summary>The whole error in one line.</summary>
    public string Message
    {
        get
        {
            string place = Line > 0 ? $"{File}({Line},{Column})" : File;
            string key = Key.Length > 0 ? $" {Key}:" : "";
            return $"{place}:{key} found {Found}; allowed: {Allowed}; fix: {Fix}";
        }
    }

    /// <inheritdoc/>
    public override string ToString() => Message;
}
