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

    /// <summary>An error of a hand file in the shape of answers.</summary>
    /// <param name="error">The error.</param>
    public static InputError Error(HandError error) => new(error.File, error.Line, error.Column, error.Key, error.Found, error.Allowed, error.Fix);
}
