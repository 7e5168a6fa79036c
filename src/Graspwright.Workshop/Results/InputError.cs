namespace Graspwright.Workshop.Results;

/// <summary>One fault of the input, as the answer shape gives it.</summary>
/// <param name="File">File.</param>
/// <param name="Line">Line from 1; 0 = the file as a whole.</param>
/// <param name="Column">Column from 1; 0 = the file as a whole.</param>
/// <param name="Key">Key or option.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">The likely fix.</param>
public sealed record InputError(string File, int Line, int Column, string Key, string Found, string Allowed, string Fix)
{
    /// <summary>The error as one line of plain text.</summary>
    public string Text
    {
        get
        {
            string place = Line > 0 ? $"{File}:{Line}:{Column}" : File;
            string key = Key.Length > 0 ? $"{Key}: " : "";
            string allowed = Allowed.Length > 0 ? $"; allowed: {Allowed}" : "";
            string fix = Fix.Length > 0 ? $". {char.ToUpperInvariant(Fix[0])}{Fix[1..]}" : "";
            return $"{place}: {key}{Found}{allowed}{fix}";
        }
    }
}
