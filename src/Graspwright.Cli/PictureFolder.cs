using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>A folder that pictures are written to.</summary>
internal static class PictureFolder
{
    /// <summary>Makes it if it is not there.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="option">Option that named it, for the message.</param>
    /// <exception cref="BadInputException">It cannot be made.</exception>
    public static void Make(string folder, string option = "--svg")
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(folder, 0, 0, option, File.Exists(folder) ? "a file, where a folder is wanted" : $"the folder cannot be made ({refusal.Message.TrimEnd('.')})", "a folder you may write to", "Check its name."));
        }
    }

    /// <summary>A name fit for a file.</summary>
    /// <param name="words">Words.</param>
    public static string Stem(string words) => string.Concat(words.Select(c => char.IsLetterOrDigit(c) || c == '-' ? char.ToLowerInvariant(c) : '-'));
}
