using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Folders that files are written to.</summary>
internal static class Folders
{
    /// <summary>Makes a folder if it is not there.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="option">Option that named it, for the message.</param>
    /// <exception cref="BadInputException">It cannot be made.</exception>
    public static void Make(string folder, string option)
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
}
