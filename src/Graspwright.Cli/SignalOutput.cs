using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>What the verbs about signals write beside their answers.</summary>
internal static class SignalOutput
{
    /// <summary>Tells what is wrong with some of the input, or refuses where there is no answer.</summary>
    /// <param name="answered">Whether there is an answer.</param>
    /// <param name="errors">What is wrong.</param>
    /// <param name="handFile">The hand file, in which keys are looked up.</param>
    /// <param name="terminal">Where to say so.</param>
    /// <exception cref="BadInputException">There is no answer.</exception>
    public static void Tell(bool answered, IReadOnlyList<InputError> errors, string handFile, Terminal terminal)
    {
        InputError[] placed = errors.Count > 0 ? Placed(errors, handFile) : [];
        if (!answered)
        {
            throw new BadInputException(placed);
        }

        foreach (InputError error in placed)
        {
            terminal.Talk.WriteLine(error.Text);
        }
    }

    /// <summary>Errors with the line of the hand file that their key stands on.</summary>
    private static InputError[] Placed(IReadOnlyList<InputError> errors, string handFile)
    {
        HandEditor editor = HandInput.Editor(handFile, HandFile.Read(handFile));
        return [.. errors.Select(e => e.Line == 0 && e.File == handFile && editor.PlaceOf(e.Key) is (int line, int column) ? e with { Line = line, Column = column } : e)];
    }

    /// <summary>Writes pictures to a folder.</summary>
    /// <param name="folder">Folder; <see langword="null"/> = none were asked for.</param>
    /// <param name="pictures">The pictures by name.</param>
    /// <param name="terminal">Where to say so.</param>
    /// <exception cref="BadInputException">They cannot be written.</exception>
    public static void Pictures(string? folder, IEnumerable<(string Name, Picture Picture)> pictures, Terminal terminal)
    {
        if (folder is null)
        {
            return;
        }

        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(folder, 0, 0, "--svg", File.Exists(folder) ? "a file, where a folder is wanted" : $"the folder cannot be made ({refusal.Message.TrimEnd('.')})", "a folder you may write to", "Check its name."));
        }

        int count = 0;
        foreach ((string name, Picture picture) in pictures)
        {
            string file = string.Concat(name.Select(c => char.IsLetterOrDigit(c) ? c : '-'));
            WholeFile.Write(Path.Combine(folder, $"{file}.svg"), SvgWriter.Write(picture, file), "--svg");
            count++;
        }

        terminal.Talk.WriteLine($"Wrote {count} {(count == 1 ? "picture" : "pictures")} to {folder}");
    }
}
