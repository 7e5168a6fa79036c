using System.Text;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Log;

/// <summary>The file that holds the log of parts.</summary>
public static class LogFile
{
    private const string Name = "log";

    /// <summary>Where the log of a hand lies.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of the hand file.</param>
    /// <returns><see langword="null"/> if the hand file names none.</returns>
    public static string? Of(HandModel hand, string handFile)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return hand.Files.FirstOrDefault(f => f.Key == Name) is { } log ? Path.Combine(Path.GetDirectoryName(handFile) ?? "", log.RelativePath) : null;
    }

    /// <summary>Reads the log of a hand.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of the hand file.</param>
    /// <param name="named">Path of another log; <see langword="null"/> = as the hand file says.</param>
    /// <returns>The log, or what is wrong.</returns>
    public static (LogReading? Log, IReadOnlyList<InputError> Errors) Read(HandModel hand, string handFile, string? named = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if ((named ?? Of(hand, handFile)) is not { } file)
        {
            return (null, [new(handFile, 0, 0, $"files.{Name}", "nothing", "the name of the log of parts",
                $"Add {Name} = \"parts-log.csv\" to [files], and write into that file a line for each part: {LogReader.Header}; or name a log with --log.")]);
        }

        try
        {
            LogReading log = LogReader.Read(File.ReadAllText(file, new UTF8Encoding(false, throwOnInvalidBytes: true)), file, hand);
            return log.Errors.Count == 0 ? (log, []) : (null, log.Errors);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException or DecoderFallbackException)
        {
            string found = refusal is DecoderFallbackException ? "bytes that are no UTF-8" : File.Exists(file) ? $"the file cannot be read ({refusal.Message.TrimEnd('.')})" : Directory.Exists(file) ? "a folder" : "no such file";
            return (null, [new(file, 0, 0, named is null ? $"files.{Name}" : "--log", found, $"a CSV file with the header {LogReader.Header}", "Check its name and folder; save it as UTF-8.")]);
        }
    }
}
