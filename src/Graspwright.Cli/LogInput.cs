using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Reads the log of parts for the verbs.</summary>
internal static class LogInput
{
    /// <summary>Reads a hand and its log, both sound.</summary>
    /// <param name="path">Path of the hand file.</param>
    /// <param name="named">Path of the log; <see langword="null"/> = as the hand file says.</param>
    /// <exception cref="BadInputException">One of them is not.</exception>
    public static (HandModel Hand, LogReading Log) Read(string path, string? named)
    {
        (HandModel hand, _) = HandInput.Read(path);
        (LogReading? log, IReadOnlyList<InputError> errors) = LogFile.Read(hand, path, named);
        return log is null ? throw new BadInputException(errors) : (hand, log);
    }

    /// <summary>Reads a day.</summary>
    /// <param name="option">Option that gave it.</param>
    /// <param name="text">Its text.</param>
    /// <exception cref="BadInputException">It is none.</exception>
    public static DateOnly Day(string option, string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}', which is no day", "a day as year-month-day, such as 2026-03-09", "Write the year first."));
}
