using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace Graspwright.Hand;

/// <summary>Explains a fault of TOML syntax in the words of a maker.</summary>
internal static partial class SyntaxFault
{
    private const int GreatestLine = 300; // a longer line is no forgotten pair of quotes

    public static HandError Explain(HandText text, DiagnosticMessage fault)
    {
        int line = fault.Span.Start.Line + 1, column = fault.Span.Start.Column + 1;
        string content = LineAt(text.Text, fault.Span.Start.Offset);
        Match bare = BareValue().Match(content.Length > GreatestLine ? "" : content);
        string key = bare.Success ? bare.Groups["key"].Value : "";
        if (Duplicate().Match(fault.Message) is { Success: true } twice)
        {
            string name = twice.Groups["key"].Value;
            return new(text.Name, line, column, name, $"{name} a second time",
                "each key and each table once", $"remove one; the first is in line {twice.Groups["line"].Value}");
        }

        if (bare.Success && bare.Groups["value"].Value.Trim() is var value && value.Contains(',', StringComparison.Ordinal))
        {
            return new(text.Name, line, column, key, value, "text in quotes with a unit, decimal point",
                $"a comma is not a decimal point: write {key} = \"{value.Replace(',', '.')}\"");
        }

        if (bare.Success)
        {
            return new(text.Name, line, column, key, bare.Groups["value"].Value.Trim(), "text in quotes with a unit",
                $"put it in quotes: write {key} = \"{bare.Groups["value"].Value.Trim()}\"");
        }

        return new(text.Name, line, column, "", Printable(content), "TOML 1.0: [section] or key = value", Words(fault.Message));
    }

    private static string LineAt(string text, int offset)
    {
        int at = Math.Clamp(offset, 0, text.Length);
        int start = at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;
        int end = text.IndexOf('\n', at);
        return text[start..(end < 0 ? text.Length : end)].TrimEnd('\r');
    }

    private static string Printable(string line)
    {
        string cut = line.Length > 60 ? line[..60] + "…" : line;
        return cut.Trim().Length == 0 ? "the end of the line" : new string([.. cut.Select(c => char.IsControl(c) ? '·' : c)]);
    }

    private static string Words(string message)
    {
        string clean = new([.. message.Select(c => char.IsControl(c) ? '·' : c)]);
        return $"look here: {clean}";
    }

    [GeneratedRegex(@"^\s*(?<key>[A-Za-z0-9_.\-]+)\s*=\s*(?<value>[+-]?[0-9]+([.,][0-9]+)?(\s*[^0-9\s.,#""'\[\]{}=][^#""'\[\]{}=]*|(?<=,[0-9]+)))\s*(#.*)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BareValue();

    [GeneratedRegex(@"The key `(?<key>.+)` is already defined at \((?<line>[0-9]+),", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Duplicate();
}
