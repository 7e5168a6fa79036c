using Tomlyn.Syntax;

namespace Graspwright.Hand;

/// <summary>Turns the lossless syntax tree of a validated TOML text into nested tables with places.</summary>
internal static class NodeBuilder
{
    public static TableNode Build(DocumentSyntax document)
    {
        TableNode root = new(new(0, 0, 1, 1), Inline: false) { InsertAt = 0 };
        AddAll(root, document.KeyValues);
        foreach (TableSyntaxBase section in document.Tables)
        {
            Open(root, section);
        }

        return root;
    }

    private static void Open(TableNode root, TableSyntaxBase section)
    {
        TableNode table = root;
        List<KeyAt> keys = Keys(section.Name!);
        for (int i = 0; i < keys.Count; i++)
        {
            bool newItem = section is TableArraySyntax && i == keys.Count - 1;
            table = newItem ? AddItem(table, keys[i], section) : Descend(table, keys[i], section);
        }

        table.InsertAt = SectionEnd(section);
        AddAll(table, section.Items);
    }

    /// <summary>End of the section's own lines: the header or its last key, without the comments that lead the next header.</summary>
    public static int SectionEnd(TableSyntaxBase section)
    {
        KeyValueSyntax? last = null;
        foreach (KeyValueSyntax item in section.Items)
        {
            last = item;
        }

        SourceSpan end = last?.Span ?? (section.EndOfLineToken is { } line ? line.Span : section.CloseBracket!.Span);
        return end.Offset + end.Length;
    }

    private static TableNode AddItem(TableNode parent, KeyAt key, TableSyntaxBase section)
    {
        TableNode item = new(PlaceOf(section.Name!.Span), Inline: false);
        if (parent[key.Key] is ArrayNode { Items: List<Node> items })
        {
            items.Add(item);
        }
        else
        {
            parent.Add(new(key.Key, key.Place, new ArrayNode(key.Place, new List<Node> { item }), PlaceOf(section.Span)));
        }

        return item;
    }

    private static TableNode Descend(TableNode parent, KeyAt key, SyntaxNode owner)
    {
        switch (parent[key.Key])
        {
            case TableNode table:
                return table;
            case ArrayNode { Items: [.., TableNode last] }:
                return last;
            default:
                TableNode made = new(key.Place, Inline: false) { Dotted = owner is KeyValueSyntax };
                parent.Add(new(key.Key, key.Place, made, PlaceOf(owner.Span)));
                return made;
        }
    }

    private static void AddAll(TableNode table, SyntaxList<KeyValueSyntax> items)
    {
        foreach (KeyValueSyntax item in items)
        {
            AddOne(table, item);
            if (!table.Inline && table.InsertAt >= 0)
            {
                table.InsertAt = Math.Max(table.InsertAt, item.Span.Offset + item.Span.Length);
            }
        }
    }

    private static void AddOne(TableNode table, KeyValueSyntax item)
    {
        List<KeyAt> keys = Keys(item.Key!);
        for (int i = 0; i < keys.Count - 1; i++)
        {
            table = Descend(table, keys[i], item);
        }

        table.Add(new(keys[^1].Key, keys[^1].Place, Value(item.Value!), PlaceOf(item.Span)));
    }

    private static Node Value(ValueSyntax value)
    {
        Place place = PlaceOf(value.Span);
        switch (value)
        {
            case StringValueSyntax text:
                return new TextNode(place, text.Value ?? "");
            case IntegerValueSyntax whole:
                return new BareNode(place, Raw(whole.Token, value), BareKind.Number);
            case FloatValueSyntax part:
                return new BareNode(place, Raw(part.Token, value), BareKind.Number);
            case BooleanValueSyntax truth:
                return new BareNode(place, Raw(truth.Token, value), BareKind.Truth);
            case ArraySyntax array:
                List<Node> items = [];
                foreach (ArrayItemSyntax item in array.Items)
                {
                    items.Add(Value(item.Value!));
                }

                return new ArrayNode(place, items);
            case InlineTableSyntax inline:
                TableNode table = new(place, Inline: true);
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    AddOne(table, item.KeyValue!);
                }

                return table;
            default:
                return new BareNode(place, Raw((value as DateTimeValueSyntax)?.Token, value), BareKind.Date);
        }
    }

    // The token alone: the text of the whole value carries the spaces and the comment behind it.
    private static string Raw(SyntaxToken? token, ValueSyntax value) => token?.Text ?? value.ToString()!.Trim();

    public static List<KeyAt> Keys(KeySyntax key)
    {
        List<KeyAt> keys = [new(Text(key.Key!), PlaceOf(key.Key!.Span))];
        foreach (DottedKeyItemSyntax dotted in key.DotKeys)
        {
            keys.Add(new(Text(dotted.Key!), PlaceOf(dotted.Key!.Span)));
        }

        return keys;
    }

    private static string Text(BareKeyOrStringValueSyntax key) => key switch
    {
        StringValueSyntax text => text.Value ?? "",
        BareKeySyntax bare => bare.Key!.Text ?? "",
        _ => key.ToString()!.Trim(),
    };

    public static Place PlaceOf(SourceSpan span) => new(span.Offset, span.Length, span.Start.Line + 1, span.Start.Column + 1);
}
