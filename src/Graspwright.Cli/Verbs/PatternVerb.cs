using System.CommandLine;
using System.Text;
using Graspwright.Book.Pages;
using Graspwright.Book.Sheets;
using Graspwright.Drawing.Dxf;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>pattern HAND</c>: which pieces are cut from the sheet, at full size?</summary>
internal sealed class PatternVerb() : Verb("pattern", "Lay the liner flat: pieces at full size with seams, notches and marks, and how far the sheet is stretched on the form.")
{
    private readonly Option<string?> _svg = new("--svg") { Description = "Write the pieces at full size as SVG.", HelpName = "FILE" };
    private readonly Option<string?> _stretch = new("--stretch") { Description = "Write the pieces with lines of equal stretch as SVG.", HelpName = "FILE" };
    private readonly Option<string?> _dxf = new("--dxf") { Description = "Write the pieces at full size as DXF.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the pieces at full size on pages to join.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();
    private readonly Option<string?> _compare = new("--compare") { Description = "Compare with the outline of a piece that was pressed, cut, laid flat and traced (DXF).", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_svg);
        command.Add(_stretch);
        command.Add(_dxf);
        command.Add(_pdf);
        command.Add(_paper);
        command.Add(_compare);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        Paper paper = SheetFiles.Paper(parsed.GetValue(_paper)!);
        (HandModel hand, HandSource source) = HandInput.Read(path);
        PatternResult result = PatternAnswer.Of(hand, path, parsed.GetValue(_compare) is { } traced ? Traced(traced) : null, say: terminal.Talk.WriteLine);
        if (result.Answer is not { } answer)
        {
            throw new BadInputException(HandInput.Placed(result.Errors, path, hand, source));
        }

        Write(parsed.GetValue(_svg), "--svg", () => SvgWriter.Write(PatternPictures.FullSize(result), "pattern"), terminal);
        Write(parsed.GetValue(_stretch), "--stretch", () => SvgWriter.Write(PatternPictures.FullSize(result, stretch: true), "stretch"), terminal);
        Write(parsed.GetValue(_dxf), "--dxf", () => DxfWriter.Write(PatternPictures.FullSize(result)), terminal);
        if (parsed.GetValue(_pdf) is { } pdf)
        {
            SheetFiles.Write(pdf, PatternSheet.Make(result, paper), "--pdf", terminal);
            terminal.Talk.WriteLine($"Wrote {pdf}");
        }

        return Reply.Of(answer);
    }

    private static void Write(string? path, string option, Func<string> text, Terminal terminal)
    {
        if (path is not null)
        {
            WholeFile.Write(path, text(), option);
            terminal.Talk.WriteLine($"Wrote {path}");
        }
    }

    private static IReadOnlyList<(double X, double Y)> Traced(string path)
    {
        string text;
        try
        {
            text = File.ReadAllText(path, Encoding.UTF8);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(path, 0, 0, "--compare", File.Exists(path) ? $"the file cannot be read ({refusal.Message.TrimEnd('.')})" : "no such file", "a DXF drawing with the traced outline", "Check its name and folder."));
        }

        (IReadOnlyList<(double X, double Y)>? line, IReadOnlyList<InputError> errors) = TracedOutline.Read(text, path);
        return line ?? throw new BadInputException(errors);
    }
}
