using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Workshop.Mould;

namespace Graspwright.Page.Mould;

/// <summary>The clock under way, kept in the same file as that of the verb <c>clock --run</c>: it goes on after a reload, a crash, or on the terminal.</summary>
/// <param name="open">The open hand.</param>
public sealed class ClockKeeping(OpenHand open)
{
    private const double LongestLead = 600;

    /// <summary>Where it is kept.</summary>
    public string File => ClockRunText.Beside(open.FullPath);

    /// <summary>The run under way.</summary>
    /// <param name="now">Now.</param>
    /// <returns><see langword="null"/> = none, or one that ended long ago.</returns>
    public ClockRun? Run(DateTimeOffset now)
    {
        if (!System.IO.File.Exists(File))
        {
            return null;
        }

        (ClockRun? run, _) = ClockRunText.Read(System.IO.File.ReadAllText(File), File);
        return run is { } kept && !kept.Done && !kept.Stale(now) ? kept : null;
    }

    /// <summary>Begins a run, says a line, or stops it.</summary>
    /// <param name="what"><c>start</c>, <c>said</c> or <c>stop</c>.</param>
    /// <param name="sent">What was sent: <c>lead</c> in seconds, <c>said</c> as a count.</param>
    /// <param name="visit">The look at the page.</param>
    public Outcome? Act(string what, Sent sent, Visit visit)
    {
        ArgumentNullException.ThrowIfNull(sent);
        ArgumentNullException.ThrowIfNull(visit);
        switch (what)
        {
            case "start" when Run(visit.Now) is not null:
                return Outcome.Done; // a second touch does not begin again
            case "start":
                if (visit.Answers.Of("clock").Result is not ClockResult plan)
                {
                    return new([new(open.Path, 0, 0, "liner", "no plan of the work", "a hand file with a liner", "fill in [form] and [liner]")]);
                }

                double lead = double.TryParse(sent["lead"], NumberStyles.Float, CultureInfo.InvariantCulture, out double given) && given >= 0 && given <= LongestLead ? given : 10;
                return Store(new(visit.Now.AddSeconds(lead), 0, plan.Lines));
            case "said" when Run(visit.Now) is { } run && int.TryParse(sent["said"], NumberStyles.None, CultureInfo.InvariantCulture, out int said) && said >= run.Said && said <= run.Lines.Count:
                return Store(run with { Said = said });
            case "said":
                return Outcome.Done;
            case "stop":
                System.IO.File.Delete(File);
                return Outcome.Done;
            default:
                return null;
        }
    }

    /// <summary>A run, or the plan before it begins, for the page's script.</summary>
    /// <param name="run">The run; <see langword="null"/> = the plan only.</param>
    /// <param name="lines">Lines of the plan.</param>
    /// <param name="now">Now.</param>
    public static string Data(ClockRun? run, IReadOnlyList<SpokenLine> lines, DateTimeOffset now)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("now", now.ToUnixTimeMilliseconds());
            if (run is not null)
            {
                json.WriteNumber("started", run.StartedUtc.ToUnixTimeMilliseconds());
                json.WriteNumber("said", run.Said);
            }

            json.WriteStartArray("lines");
            foreach (SpokenLine line in run?.Lines ?? lines)
            {
                json.WriteStartObject();
                json.WriteNumber("at", line.At);
                json.WriteString("text", line.Text);
                json.WriteString("heading", line.Heading);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private Outcome Store(ClockRun run)
    {
        try
        {
            System.IO.File.WriteAllText(File + ".part", ClockRunText.Write(run), new UTF8Encoding(false));
            System.IO.File.Move(File + ".part", File, overwrite: true);
            return Outcome.Done;
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return new([new(File, 0, 0, "", $"the clock cannot be kept ({refusal.Message.TrimEnd('.')})", "a folder you may write to", "check its permissions")]);
        }
    }
}
