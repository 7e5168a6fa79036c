using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Mould;

/// <summary>A clock under way as the text of a file, so that it goes on after a crash, on a terminal as on the page.</summary>
public static class ClockRunText
{
    private const int Format = 1;
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>File of the clock beside a hand file.</summary>
    /// <param name="handFile">Path of the hand file.</param>
    public static string Beside(string handFile) => Path.ChangeExtension(handFile, ".clock.json");

    /// <summary>Reads a run.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <returns>The run, or why it is none.</returns>
    public static (ClockRun? Run, InputError? Error) Read(string text, string file)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            JsonElement root = document.RootElement;
            DateTimeOffset started = DateTimeOffset.Parse(root.GetProperty("started_utc").GetString()!, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
            List<SpokenLine> lines = [.. root.GetProperty("lines").EnumerateArray().Select(l => new SpokenLine(l.GetProperty("at").GetDouble(), l.GetProperty("text").GetString()!, l.GetProperty("heading").GetString()!))];
            int said = root.GetProperty("said").GetInt32();
            bool sound = root.GetProperty("format").GetInt32() == Format && lines.Count > 0 && said >= 0 && said <= lines.Count;
            return sound ? (new(started, said, lines), null) : (null, Fault(file, "its numbers do not go together"));
        }
        catch (Exception refusal) when (refusal is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentNullException)
        {
            return (null, Fault(file, refusal.Message));
        }
    }

    /// <summary>What is told of a file that cannot be read as a clock.</summary>
    /// <param name="file">Its name.</param>
    /// <param name="why">Why not.</param>
    public static InputError Fault(string file, string why)
    {
        ArgumentNullException.ThrowIfNull(why);
        return new(file, 0, 0, "--run", $"a file that is no clock under way ({why.TrimEnd('.')})", "a file written by 'clock --run'", "Start anew with --again, or name another file with --state.");
    }

    /// <summary>The text of a run.</summary>
    /// <param name="run">The run.</param>
    public static string Write(ClockRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("format", Format);
            json.WriteString("started_utc", run.StartedUtc.UtcDateTime.ToString("O", CultureInfo.InvariantCulture));
            json.WriteNumber("said", run.Said);
            json.WriteStartArray("lines");
            foreach (SpokenLine line in run.Lines)
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

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
