using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Live;

/// <summary>The file in which a live clock is kept, so that it goes on after a crash. Written whole or not at all.</summary>
/// <param name="path">Path of the file.</param>
internal sealed class ClockState(string path)
{
    private const int Format = 1;
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Path of the file.</summary>
    public string Path => path;

    /// <summary>Reads the run.</summary>
    /// <returns><see langword="null"/> if there is none.</returns>
    /// <exception cref="BadInputException">The file is not one of ours.</exception>
    public ClockRun? Read()
    {
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path));
            JsonElement root = document.RootElement;
            DateTimeOffset started = DateTimeOffset.Parse(root.GetProperty("started_utc").GetString()!, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
            List<SpokenLine> lines = [.. root.GetProperty("lines").EnumerateArray().Select(l => new SpokenLine(l.GetProperty("at").GetDouble(), l.GetProperty("text").GetString()!, l.GetProperty("heading").GetString()!))];
            int said = root.GetProperty("said").GetInt32();
            bool sound = root.GetProperty("format").GetInt32() == Format && lines.Count > 0 && said >= 0 && said <= lines.Count;
            return sound ? new(started, said, lines) : throw new FormatException("its numbers do not go together");
        }
        catch (Exception refusal) when (refusal is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or IOException or UnauthorizedAccessException or ArgumentNullException)
        {
            throw new BadInputException(new InputError(path, 0, 0, "--run", $"a file that is no clock under way ({refusal.Message.TrimEnd('.')})", "a file written by 'clock --run'", "Start anew with --again, or name another file with --state."));
        }
    }

    /// <summary>Writes the run.</summary>
    /// <param name="run">The run.</param>
    public void Write(ClockRun run)
    {
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

        WholeFile.Write(path, Encoding.UTF8.GetString(stream.ToArray()) + "\n", "--state");
    }

    /// <summary>Forgets the run.</summary>
    public void Delete() => File.Delete(path);
}
