using System.Globalization;
using System.Text;
using Graspwright.Hand;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Reads the log of parts for the verbs.</summary>
internal static class LogInput
{
    private const string Name = "log";

    /// <summary>Reads a hand and its log, both sound.</summary>
    /// <param name="path">Path of the hand file.</param>
    /// <param name="named">Path of the log; <see langword="null"/> = as the hand file says.</param>
    /// <exception cref="BadInputException">One of them is not.</exception>
    public static (HandModel Hand, LogReading Log) Read(string path, string? named)
    {
        (HandModel hand, _) = HandInput.Read(path);
        string file = named ?? Of(hand, path);
        try
        {
            LogReading log = LogReader.Read(File.ReadAllText(file, new UTF8Encoding(false, throwOnInvalidBytes: true)), file, hand);
            return log.Errors.Count == 0 ? (hand, log) : throw new BadInputException(log.Errors);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException or DecoderFallbackException)
        {
            string found = refusal is DecoderFallbackException ? "bytes that are no UTF-8" : File.Exists(file) ? $"the file cannot be read ({refusal.Message.TrimEnd('.')})" : Directory.Exists(file) ? "a folder" : "no such file";
            throw new BadInputException(new InputError(file, 0, 0, named is null ? $"files.{Name}" : "--log", found, $"a CSV file with the header {LogReader.Header}", "Check its name and folder; save it as UTF-8."));
        }
    }

    /// <summary>Reads a day.</summary>
    /// <param name="option">Option that gave it.</param>
    /// <param name="text">Its text.</param>
    /// <exception cref="BadInputException">It is none.</exception>
    public static DateOnly Day(string option, string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}', which is no day", "a day as year-month-day, such as 2026-03-09", "Write the year first."));

    private static string Of(HandModel hand, string path) => hand.Files.FirstOrDefault(f => f.Key == Name) is { } log
        ? Path.Combine(Path.GetDirectoryName(path) ?? "", log.RelativePath)
        : throw new BadInputException(new InputError(path, 0, 0, $"files.{Name}", "nothing", "the name of the log of parts",
            $"Add {Name} = \"parts-log.csv\" to [files], and write into that file a line for each part: {LogReader.Header}; or name a log with --log."));
}
