using System.CommandLine;
using System.Text;
using Graspwright.Drawing;
using Graspwright.Drawing.Points;
using Graspwright.Hand;
using Graspwright.Workshop.Points;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>points HAND</c>: the named points of a hand, out to a table or drawing and back.</summary>
internal sealed class PointsVerb() : Verb("points", "Write the named points of the hand to a CSV or DXF file, or read them back from one.")
{
    private readonly Option<string?> _write = new("--write") { Description = "Write them, as CSV or DXF by the file's ending.", HelpName = "FILE" };
    private readonly Option<string?> _read = new("--read") { Description = "Read them into the hand file; its comments are kept.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_write);
        command.Add(_read);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (string? write, string? read) = (parsed.GetValue(_write), parsed.GetValue(_read));
        if (write is null == read is null)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "", write is null ? "neither --write nor --read" : "both --write and --read", "one of them", "Write first, draw, then read back."));
        }

        (HandModel hand, HandSource source) = HandInput.Read(path);
        return write is not null ? Write(hand, write) : Read(path, new(hand, [], source), read!);
    }

    private static Reply Write(HandModel hand, string file)
    {
        IReadOnlyList<NamedPoint> points = HandPoints.Of(hand);
        WholeFile.Write(file, IsDrawing(file, "--write") ? PointDrawing.Write(points) : PointTable.Write(points), "--write");
        return Reply.Of(PointsAnswer.Written(hand, file, points));
    }

    private static Reply Read(string path, HandReading reading, string file)
    {
        bool drawing = IsDrawing(file, "--read");
        try
        {
            string text = File.ReadAllText(file, Encoding.UTF8);
            IReadOnlyList<NamedPoint> drawn = drawing ? PointDrawing.Read(text, file).Points : PointTable.Read(text, file);
            (HandEditor? edited, IReadOnlyList<PointMove> moves, IReadOnlyList<HandError> errors) = HandPoints.Read(HandInput.Editor(path, reading), reading.Hand!, drawn, file);
            if (edited is null)
            {
                throw new BadInputException([.. errors.Select(HandInput.Error)]);
            }

            if (moves.Count > 0)
            {
                WholeFile.Write(path, edited.Source.Text.ToBytes(), "HAND");
            }

            return Reply.Of(PointsAnswer.Moved(reading.Hand!, file, moves));
        }
        catch (DrawingFileException bad)
        {
            throw new BadInputException([.. bad.Faults.Select(f => new InputError(f.File, f.Line, f.Column, f.Key, f.Found, f.Allowed, f.Fix))]);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(file, 0, 0, "--read", $"the file cannot be read ({refusal.Message})", "a CSV or DXF file of named points", "Check its name and folder."));
        }
    }

    private static bool IsDrawing(string file, string option) => Path.GetExtension(file).ToLowerInvariant() switch
    {
        ".dxf" => true,
        ".csv" => false,
        var other => throw new BadInputException(new InputError("command line", 0, 0, option, $"the ending '{other}'", ".csv or .dxf", "Name the file points.csv or points.dxf.")),
    };
}
