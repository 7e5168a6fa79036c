using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Page.Hands;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Views;

namespace Graspwright.Page.Drive;

/// <summary>What the drive page shows for one question: scene, curves, what acts, where the handles are.</summary>
public sealed class DriveTalk
{
    private readonly OpenHand _open;
    private readonly HandModel _hand;
    private readonly DriveRuns? _runs;

    private DriveTalk(OpenHand open, DriveAsk ask, HandModel hand, IReadOnlyList<PathValue> moved, DriveRuns? runs, string why)
    {
        _open = open;
        Ask = ask;
        _hand = hand;
        Moved = moved;
        _runs = runs;
        Why = why;
        Chosen = runs?.Chosen(ask.Thing);
        Row = Chosen is { Run: { } run } ? DriveRuns.RowAt(run, ask.AtDegrees) : null;
    }

    /// <summary>What was asked.</summary>
    public DriveAsk Ask { get; }

    /// <summary>The values that the move would put into the file.</summary>
    public IReadOnlyList<PathValue> Moved { get; }

    /// <summary>Why there is nothing to show.</summary>
    public string Why { get; }

    /// <summary>The object that is looked at.</summary>
    public Closed? Chosen { get; }

    /// <summary>The state that is looked at.</summary>
    public double[]? Row { get; }

    /// <summary>Works it out.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="ask">The question.</param>
    /// <returns><see langword="null"/> = the file holds no sound hand yet.</returns>
    public static DriveTalk? Of(OpenHand open, DriveAsk ask)
    {
        ArgumentNullException.ThrowIfNull(open);
        ArgumentNullException.ThrowIfNull(ask);
        if (open.State.Hand is not { } kept)
        {
            return null;
        }

        HandModel hand = kept;
        IReadOnlyList<PathValue> moved = [];
        if (ask.Handle.Length > 0 && Handles(open, kept).FirstOrDefault(h => h.Key == ask.Handle) is { } handle)
        {
            hand = handle.Moved(ask.To);
            moved = DriveHandles.Texts(open, handle, hand);
        }

        (DriveRuns? runs, string why) = DriveRuns.Make(hand, ask.Effort, ask.Locks);
        return new(open, ask, hand, moved, runs, why);
    }

    /// <summary>Everything that can be moved.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<Handle> Handles(OpenHand open, HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(open);
        try
        {
            return DriveHandles.Of(hand, open.Find("crank.input_arm")?.InFile ?? false);
        }
        catch (DriveException)
        {
            return []; // what cannot be put together has no sense of turning; the page says so
        }
    }

    /// <summary>A frame for the scene, or the one in use where it still holds everything.</summary>
    /// <param name="used">The frame in use.</param>
    public BenchFrame? Frame(BenchFrame? used) => _runs is null ? used
        : used is not null && Math.Abs(used.WidthMm - Ask.WidthMm) < 0.5 && used.Near == Ask.Near && (Ask.Handle.Length > 0 || used.Holds(_runs.Drive, _runs.Ran)) ? used
        : BenchScene.Frame(_runs.Drive, _runs.Ran, Ask.WidthMm, Ask.Near);

    /// <summary>One sentence about the state that is shown.</summary>
    public string Sentence
    {
        get
        {
            if (_runs is null || Chosen is not { Run: { } run } || Row is null)
            {
                return Why;
            }

            string object_ = Chosen.Thing is NothingHeld ? "With nothing held" : $"On the {Chosen.Thing.Name}";
            string end = run.End switch { RunEnd.Effort => "the wrist’s effort ends it", RunEnd.Travel => "the wrist’s travel ends it", _ => "the motion could not be followed further" };
            RunEvent? touch = run.First(EventKind.Touch);
            string first = touch is null ? "touches nothing" : string.Create(CultureInfo.InvariantCulture, $"touches at {double.RadiansToDegrees(touch.ThetaRadians):0.0}°");
            return string.Create(CultureInfo.InvariantCulture, $"{object_} this hand {first} and grips with {run.AtEnd[TraceLayout.Grip]:0.0} N ({run.AtEnd[TraceLayout.Grip] / 9.80665:0.0} kgf) at {double.RadiansToDegrees(run.AtEnd[TraceLayout.Theta]):0.0}°; {end}.");
        }
    }

    /// <summary>What acts in the state that is shown, in words.</summary>
    public string Acting
    {
        get
        {
            if (_runs is null || Chosen is not { Run: { } run } || Row is null)
            {
                return "";
            }

            IReadOnlyList<string> acting = [.. BenchScene.Acting(_runs.Drive, run, Row).Select(a => a.Words)];
            return acting.Count == 0 ? "No limit acts here." : $"Acting here: {string.Join("; ", acting)}.";
        }
    }

    /// <summary>The marks of the scene, ghost below.</summary>
    /// <param name="frame">The frame.</param>
    public string Scene(BenchFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (_runs is null || Chosen is not { Run: { } run } || Row is null)
        {
            return "";
        }

        Workshop.Views.PalmLine palm = new(DriveMapping.ToVector(_hand.Palm.Point), _hand.Palm.DirectionRadians);
        string ghost = "";
        if (Earlier()?.Chosen(Chosen.Thing.Name) is { Run: { } before } earlier)
        {
            double[] row = DriveRuns.RowAt(before, double.IsNaN(Ask.AtDegrees) ? double.RadiansToDegrees(Row[TraceLayout.Theta]) : Ask.AtDegrees);
            ghost = $"<g class=\"ghost\">{SvgWriter.Marks(BenchScene.Ghost(frame, Earlier()!.Drive, earlier.Held, before, row))}</g>";
        }

        return ghost + SvgWriter.Marks(BenchScene.Draw(frame, _runs.Drive, Chosen.Held, run, Row, palm, Sentence));
    }

    /// <summary>The curves.</summary>
    /// <param name="widthMm">Width [mm].</param>
    public Picture? Curves(double widthMm) => _runs is null || Row is null ? null : _runs.Curves(Chosen!.Thing.Name, Earlier(), widthMm, double.RadiansToDegrees(Row[TraceLayout.Theta]));

    /// <summary>The reply to the page's script.</summary>
    /// <param name="keep">What the line keeps: the frame in use.</param>
    public string Reply(IDictionary<string, object> keep)
    {
        ArgumentNullException.ThrowIfNull(keep);
        BenchFrame? frame = Frame(keep.TryGetValue("frame", out object? used) ? (BenchFrame)used : null);
        using MemoryStream stream = new(1 << 15);
        using (Utf8JsonWriter json = new(stream, new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("say", "shown");
            json.WriteNumber("n", Ask.Number);
            json.WriteString("words", Sentence);
            json.WriteString("acting", Acting);
            json.WriteBoolean("sound", _runs is not null);
            if (frame is not null && _runs is not null && Chosen?.Run is { } run)
            {
                keep["frame"] = frame;
                json.WriteString("view", string.Create(CultureInfo.InvariantCulture, $"0 0 {frame.WidthMm:0.##} {frame.HeightMm:0.##}"));
                json.WriteString("scene", Scene(frame));
                Picture curves = Curves(Math.Min(150, Ask.WidthMm))!;
                json.WriteString("curvesView", string.Create(CultureInfo.InvariantCulture, $"0 0 {curves.WidthMm:0.##} {curves.HeightMm:0.##}"));
                json.WriteString("curves", SvgWriter.Marks(curves));
                json.WriteNumber("at", Math.Round(double.RadiansToDegrees(Row![TraceLayout.Theta]), 3));
                json.WriteNumber("end", Math.Round(double.RadiansToDegrees(run.AtEnd[TraceLayout.Theta]), 3));
                WriteHandles(json, frame);
            }

            json.WriteStartArray("moved");
            foreach (PathValue value in Moved)
            {
                json.WriteStartObject();
                json.WriteString("path", value.Path);
                json.WriteString("value", value.Text);
                json.WriteString("seen", value.Seen);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    private void WriteHandles(Utf8JsonWriter json, BenchFrame frame)
    {
        json.WriteNumber("scale", frame.Reduction);
        json.WriteStartArray("handles");
        foreach (Handle handle in Handles(_open, _hand))
        {
            (double right, double down) = frame.At(handle.At.X, handle.At.Y);
            json.WriteStartObject();
            json.WriteString("key", handle.Key);
            json.WriteString("words", string.Create(CultureInfo.InvariantCulture, $"{handle.Words}: {1000 * handle.At.X:0.0} mm distal, {1000 * handle.At.Y:0.0} mm dorsal"));
            json.WriteNumber("x", Math.Round(1000 * handle.At.X, 4));
            json.WriteNumber("y", Math.Round(1000 * handle.At.Y, 4));
            json.WriteNumber("right", Math.Round(right / frame.WidthMm, 5));
            json.WriteNumber("down", Math.Round(down / frame.HeightMm, 5));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private DriveRuns? Earlier() => _earlier ??= Ask.Ghost > 0 && _open.Done.FirstOrDefault(s => s.Number == Ask.Ghost)?.HandBefore is { } before ? DriveRuns.Make(before, Ask.Effort, Ask.Locks).Runs : null;

    private DriveRuns? _earlier;
}
