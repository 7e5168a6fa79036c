namespace Graspwright.Hand;

/// <summary>A place in the text.</summary>
/// <param name="Offset">Offset of the first character, from 0.</param>
/// <param name="Length">Number of characters.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
internal readonly record struct Place(int Offset, int Length, int Line, int Column)
{
    public int End => Offset + Length;
}

/// <summary>A value in the file, with its place.</summary>
internal abstract record Node(Place Place);

internal sealed record TextNode(Place Place, string Text) : Node(Place);

/// <summary>A number, a truth value or a date; <paramref name="Raw"/> as written.</summary>
internal sealed record BareNode(Place Place, string Raw, BareKind Kind) : Node(Place);

internal enum BareKind
{
    Number,
    Truth,
    Date,
}

internal sealed record ArrayNode(Place Place, IReadOnlyList<Node> Items) : Node(Place);

/// <summary>A table of whatever spelling: header, inline, dotted, or only implied by a deeper one.</summary>
internal sealed record TableNode(Place Place, bool Inline) : Node(Place)
{
    private readonly List<Entry> _entries = [];
    private readonly Dictionary<string, Entry> _byKey = new(StringComparer.Ordinal);

    public IReadOnlyList<Entry> Entries => _entries;

    /// <summary>Where the next key may be put in: after the last line of the table's own section; −1 if it has no section.</summary>
    public int InsertAt { get; set; } = -1;

    /// <summary>Whether dotted keys made it, so that it can have no header.</summary>
    public bool Dotted { get; init; }

    public Node? this[string key] => Find(key)?.Value;

    public Entry? Find(string key) => _byKey.GetValueOrDefault(key);

    public void Add(Entry entry)
    {
        _entries.Add(entry);
        _byKey.Add(entry.Key, entry);
    }
}

/// <summary>One key of a dotted key, and where it stands.</summary>
internal sealed record KeyAt(string Key, Place Place);

/// <summary>A key and its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="KeyPlace">Place of the key.</param>
/// <param name="Value">The value.</param>
/// <param name="Whole">Place of the whole entry, line end included; the header's section for tables.</param>
internal sealed record Entry(string Key, Place KeyPlace, Node Value, Place Whole);
