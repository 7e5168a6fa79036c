using System.Text;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Writes files whole or not at all: under a temporary name first, then moved.</summary>
internal static class WholeFile
{
    /// <summary>Writes a text as UTF-8.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="text">The text.</param>
    /// <param name="option">Option that named the file, for the message.</param>
    /// <exception cref="BadInputException">The file cannot be written there.</exception>
    public static void Write(string path, string text, string option) =>
        Write(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text), option);

    /// <summary>Writes bytes.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="bytes">The bytes.</param>
    /// <param name="option">Option that named the file, for the message.</param>
    /// <param name="replace">Whether a file that is there is replaced.</param>
    /// <exception cref="BadInputException">The file cannot be written there.</exception>
    public static void Write(string path, byte[] bytes, string option, bool replace = true)
    {
        string temporary = $"{path}.{Environment.ProcessId}.part";
        try
        {
            Interruption.Unfinished = temporary;
            File.WriteAllBytes(temporary, bytes);
            File.Move(temporary, path, overwrite: replace);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            if (File.Exists(temporary))
            {
                File.Delete(temporary);
            }

            bool there = !replace && File.Exists(path);
            throw new BadInputException(there
                ? new InputError(path, 0, 0, option, "the file is there already", "a name that is free", "Give another name, or move the file away: it is not overwritten.")
                : new InputError(path, 0, 0, option, Why(path, temporary, refusal), "a file in a folder you may write to", "Check the folder and its permissions."));
        }
        finally
        {
            Interruption.Unfinished = null;
        }
    }

    /// <summary>Makes a folder where it is not there.</summary>
    /// <param name="folder">Its path.</param>
    /// <param name="option">Option that named it, for the message.</param>
    /// <exception cref="BadInputException">It cannot be made.</exception>
    public static void Folder(string folder, string option)
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

    private static string Why(string path, string temporary, Exception refusal)
    {
        if (Directory.Exists(path))
        {
            return "a folder, where a file is to be written";
        }

        return Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(path)))
            ? $"the file cannot be written ({refusal.Message.Replace(temporary, path, StringComparison.Ordinal).TrimEnd('.')})"
            : "the folder of the file is not there";
    }
}
