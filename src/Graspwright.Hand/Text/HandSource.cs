using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Graspwright.Hand;

/// <summary>The text of a hand file with its syntax.</summary>
public sealed class HandSource
{
    private const int GreatestMessages = 50;

    private HandSource(HandText text, DocumentSyntax syntax, TableNode root)
    {
        Text = text;
        Syntax = syntax;
        Root = root;
    }

    /// <summary>The text as stored.</summary>
    public HandText Text { get; }

    internal DocumentSyntax Syntax { get; }

    internal TableNode Root { get; }

    /// <summary>Parses the text as TOML.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The source, or what is wrong with the text.</returns>
    internal static (HandSource? Source, IReadOnlyList<HandError> Errors) Parse(HandText text)
    {
        int deep = HandText.TooDeepAt(text.Text);
        if (deep >= 0)
        {
            (int line, int column) = PlaceAt(text.Text, deep);
            return (null, [new(text.Name, line, column, "", "nesting deeper than any hand needs",
                FormattableString.Invariant($"at most {HandText.GreatestDepth} levels of brackets, braces or dots"), "close the brackets, or give the right file")]);
        }

        DocumentSyntax syntax;
        try
        {
            syntax = SyntaxParser.Parse(text.Text, text.Name, validate: true);
        }
        catch (TomlException refusal)
        {
            return (null, [new(text.Name, 1, 1, "", refusal.Message, "TOML 1.0", "give a hand file; a new one can be written by the program")]);
        }

        if (!syntax.HasErrors)
        {
            return (new(text, syntax, NodeBuilder.Build(syntax)), []);
        }

        // One fault often upsets the rest of its line: the first of each line is told; after open quotes nothing is.
        DiagnosticMessage[] faults = [.. syntax.Diagnostics.Where(d => d.Kind == DiagnosticMessageKind.Error).OrderBy(d => d.Span.Start.Offset).DistinctBy(d => d.Span.Start.Line)];
        int open = Array.FindIndex(faults, d => SyntaxFault.BreaksText(d.Message));
        return (null, [.. faults.Take(Math.Min(GreatestMessages, open < 0 ? GreatestMessages : open + 1)).Select(d => SyntaxFault.Explain(text, d))]);
    }

    internal static (int Line, int Column) PlaceAt(string text, int offset)
    {
        int line = text.AsSpan(0, offset).Count('\n') + 1;
        return (line, offset - (offset == 0 ? -1 : text.LastIndexOf('\n', offset - 1)));
    }
}
