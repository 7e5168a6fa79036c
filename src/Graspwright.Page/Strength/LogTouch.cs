using System.Globalization;
using System.Text;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Workshop.Log;

namespace Graspwright.Page.Strength;

/// <summary>Writes into the log of parts by one touch: seen whole, broke, taken off. Every other line keeps its bytes.</summary>
/// <param name="open">The open hand.</param>
public sealed class LogTouch(OpenHand open)
{
    private const int LastSeen = 5, Ended = 6, How = 7, Cause = 8;

    /// <summary>Notes something of a part.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="line">Line of the part in the log, from 1.</param>
    /// <param name="seen">The line as the page showed it.</param>
    /// <param name="what"><c>whole</c>, <c>broke</c>, <c>retired</c>; with <c>broke</c> and <c>retired</c> a new one of the same kind is fitted on the same day.</param>
    /// <param name="cause">Why it ended.</param>
    /// <param name="day">The day.</param>
    public Outcome Note(HandModel hand, int line, string seen, string what, string cause, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(cause);
        return Change(hand, lines =>
        {
            if (line < 2 || line > lines.Count || lines[line - 1].TrimEnd('\r') != seen)
            {
                return "the line is not there any more as it was shown: the log was changed elsewhere";
            }

            string[] cells = lines[line - 1].TrimEnd('\r').Split(',');
            string date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), end = lines[line - 1].EndsWith('\r') ? "\r" : "";
            if (cells.Length != LogReader.Header.Split(',').Length || cells[Ended].Trim().Length > 0)
            {
                return "the line cannot be changed by one touch: it has ended, or holds quotation marks";
            }

            if (what == "whole")
            {
                cells[LastSeen] = date;
                lines[line - 1] = string.Join(',', cells) + end;
                return "";
            }

            (cells[Ended], cells[How], cells[Cause]) = (date, what, cause.Trim().ReplaceLineEndings(" ").Replace(',', ';').Replace('"', '\''));
            lines[line - 1] = string.Join(',', cells) + end;
            lines.Insert(lines.Count > 0 && lines[^1].Length == 0 ? lines.Count - 1 : lines.Count, string.Join(',', [.. cells.Take(4), date, date, "", "", ""]) + end);
            return "";
        });
    }

    /// <summary>Notes that every fitted part was seen whole.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="day">The day.</param>
    public Outcome AllWhole(HandModel hand, DateOnly day) => Change(hand, lines =>
    {
        for (int i = 1; i < lines.Count; i++)
        {
            string end = lines[i].EndsWith('\r') ? "\r" : "";
            string[] cells = lines[i].TrimEnd('\r').Split(',');
            if (cells.Length == LogReader.Header.Split(',').Length && cells[Ended].Trim().Length == 0)
            {
                cells[LastSeen] = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                lines[i] = string.Join(',', cells) + end;
            }
        }

        return "";
    });

    /// <summary>The log's text, line by line.</summary>
    /// <param name="hand">The hand.</param>
    public IReadOnlyList<string> Lines(HandModel hand) => LogFile.Of(hand, open.FullPath) is { } file && File.Exists(file) ? File.ReadAllText(file).Split('\n') : [];

    private Outcome Change(HandModel hand, Func<List<string>, string> change)
    {
        if (LogFile.Of(hand, open.FullPath) is not { } file)
        {
            return Wrong("no log", "a hand file that names its log");
        }

        try
        {
            List<string> lines = [.. File.ReadAllText(file).Split('\n')];
            if (change(lines) is { Length: > 0 } why)
            {
                return Wrong(why, "a part that is fitted");
            }

            string text = string.Join('\n', lines);
            if (LogReader.Read(text, file, hand).Errors is { Count: > 0 } errors)
            {
                return Wrong(errors[0].Found, errors[0].Allowed);
            }

            File.WriteAllText(file + ".part", text, new UTF8Encoding(false));
            File.Move(file + ".part", file, overwrite: true);
            open.OtherFileChanged();
            return Outcome.Done;
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return Wrong($"the log cannot be written ({refusal.Message.TrimEnd('.')})", "a file you may write to");
        }
    }

    private Outcome Wrong(string found, string allowed) => new([new(open.Path, 0, 0, "files.log", found, allowed, "look at the page again")]);
}
