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
        string content = Clean(LineAt(text.Text, fault.Span.Start.Offset));
        Match bare = BareValue().Match(content.Length > GreatestLine ? "" : content);
        string key = bare.Success ? bare.Groups["key"].Value : "";
        if (Duplicate().Match(fault.Message) is { Success: true } twice)
        {
            string name = Clean(twice.Groups["key"].Value);
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

        return new(text.Name, line, column, "", Printable(content), "TOML 1.0: [section] or key = value", Words(fault.Message, content.Length > GreatestLine ? "" : content));
    }

    /// <summary>Whether quotes were left open, so that all that follows is read wrong.</summary>
    public static bool BreaksText(string message) =>
        message.Contains("newline in a string", StringComparison.Ordinal) || message.Contains("End-Of-File found on string", StringComparison.Ordinal);

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
        return cut.Trim().Length == 0 ? "the end of the line" : cut;
    }

    private static string Words(string message, string line)
    {
        string start = line.Trim();
        if (BreaksText(message))
        {
            return "close the quotes on the line where they open";
        }

        if (BareList().IsMatch(line))
        {
            return $"put each value in quotes: write {Bare().Replace(line, "\"$0\"").Trim()}";
        }

        if (message.Contains("to separate items", StringComparison.Ordinal))
        {
            return "put a comma between the values";
        }

        if (start.StartsWith('[') && !start.Contains('=', StringComparison.Ordinal) && !start.Contains(']', StringComparison.Ordinal))
        {
            return $"close the bracket: write {start}]";
        }

        if (message.StartsWith("Expecting `=`", StringComparison.Ordinal))
        {
            return "write key = value, text and quantities in quotes";
        }

        return $"mend this line, or give the right file ({Clean(message)})";
    }

    private static string Clean(string text) => new([.. text.Select(c => char.IsControl(c) && c != '\t' ? '·' : c == '\t' ? ' ' : c)]);

    [GeneratedRegex(@"^\s*(?<key>[A-Za-z0-9_.\-]+)\s*=\s*(?<value>[+-]?[0-9]+([.,][0-9]+)?(\s*[^0-9\s.,#""'\[\]{}=][^#""'\[\]{}=]*|(?<=,[0-9]+)))\s*(#.*)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BareValue();

    [GeneratedRegex(@"The key `(?<key>.+)` is already defined at \((?<line>[0-9]+),", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Duplicate();

    [GeneratedRegex(@"^\s*[A-Za-z0-9_.\-]+\s*=\s*\[\s*[+-]?[0-9.]+\s*[^\s0-9.,""'\[\]]+\s*(,\s*[+-]?[0-9.]+\s*[^\s0-9.,""'\[\]]+\s*)*\]\s*(#.*)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BareList();

    [GeneratedRegex(@"(?<=[\[,]\s*)[+-]?[0-9.]+\s*[^\s0-9.,""'\[\]]+(?=\s*[,\]])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bare();
}
