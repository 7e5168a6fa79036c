using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>form HAND</c>: how big is the form, how much sheet lies on it, and where does it trap air?</summary>
internal sealed class FormVerb() : Verb("form", "Make the limb's form from tape marks or a scan: area, volume, sheet on it, hollows that the sheet bridges.")
{
    private readonly Option<string?> _svg = new("--svg") { Description = "Write the form from three sides.", HelpName = "FILE" };
    private readonly Option<string?> _stl = new("--stl") { Description = "Write the form as binary STL in millimetres.", HelpName = "FILE" };
    private readonly Option<string?> _offset = new("--offset") { Description = "Write the outside of the sheet, the surface at its thickness from the form, as binary STL.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the hollows.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_svg);
        command.Add(_stl);
        command.Add(_offset);
        command.Add(_csv);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, HandSource source) = HandInput.Read(path);
        FormResult result = FormAnswer.Of(hand, path, say: terminal.Talk.WriteLine);
        if (result is not { Answer: { } answer, Sheet: { } sheet })
        {
            throw new BadInputException(HandInput.Placed(result.Errors, path, hand, source));
        }

        if (parsed.GetValue(_svg) is { } svg)
        {
            WholeFile.Write(svg, SvgWriter.Write(FormPictures.Views(result), "form"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        if (parsed.GetValue(_stl) is { } stl)
        {
            WholeFile.Write(stl, FormFiles.Stl(sheet, hand), "--stl");
            terminal.Talk.WriteLine($"Wrote {stl}");
        }

        if (parsed.GetValue(_offset) is { } offset)
        {
            (byte[] bytes, string words) = FormFiles.Offset(sheet, hand, terminal.Talk.WriteLine);
            WholeFile.Write(offset, bytes, "--offset");
            terminal.Talk.WriteLine($"Wrote {offset}: {words}");
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        return Reply.Of(answer);
    }
}
