using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Reads hand files for the verbs.</summary>
internal static class HandInput
{
    /// <summary>Reads a hand file that must be sound.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="BadInputException">It is not.</exception>
    public static (HandModel Hand, HandSource Source) Read(string path)
    {
        HandReading reading = HandFile.Read(path);
        return reading is { Hand: { } hand, Source: { } source } ? (hand, source) : throw new BadInputException([.. reading.Errors.Select(Error)]);
    }

    /// <summary>Opens a sound hand file for editing by paths.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="reading">What reading it gave.</param>
    public static HandEditor Editor(string path, HandReading reading) =>
        HandEditor.Open(reading, Path.GetDirectoryName(Path.GetFullPath(path))) ?? throw new InvalidOperationException("A file that was read has a text.");

    /// <summary>Finds a value by its path.</summary>
    /// <param name="editor">The file.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="path">The path.</param>
    /// <exception cref="BadInputException">The path leads nowhere.</exception>
    public static HandValue Find(HandEditor editor, string file, string path) =>
        editor.Find(path) ?? throw new BadInputException(new InputError(file, 0, 0, path, "a path that leads nowhere", "a path such as crank.fulcrum.x",
            editor.NearestPath(path) is { } near ? $"Did you mean {near}?" : "See 'graspwright schema' for every key."));

    /// <summary>Errors that name keys of a hand file, with line and column where the file says them.</summary>
    /// <param name="errors">The errors.</param>
    /// <param name="path">Path of the file.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="source">Its text.</param>
    public static IReadOnlyList<InputError> Placed(IReadOnlyList<InputError> errors, string path, HandModel hand, HandSource source)
    {
        HandEditor editor = Editor(path, new(hand, [], source));
        return [.. errors.Select(e => e.Line == 0 && e.File == path && editor.PlaceOf(e.Key) is { } place ? e with { Line = place.Line, Column = place.Column } : e)];
    }

    /// <summary>An error of a hand file in the shape of answers.</summary>
    /// <param name="error">The error.</param>
    public static InputError Error(HandError error) => new(error.File, error.Line, error.Column, error.Key, error.Found, error.Allowed, error.Fix);
}
