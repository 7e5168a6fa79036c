using Tomlyn.Syntax;

namespace Graspwright.Hand;

/// <summary>A value found by its path.</summary>
/// <param name="Path">The path.</param>
/// <param name="Text">The value as text, with its unit.</param>
/// <param name="Si">The value in SI; <see langword="null"/> for words, lists and tables.</param>
/// <param name="Dimension">Its dimension; <see langword="null"/> for words, lists and tables.</param>
/// <param name="InFile">Whether the file says so itself; if not, it is a default.</param>
public sealed record HandValue(string Path, string Text, double? Si, Dimension? Dimension, bool InFile);

/// <summary>What an edit gave.</summary>
/// <param name="Editor">The edited file; <see langword="null"/> if the edit was refused.</param>
/// <param name="Errors">Why it was refused.</param>
public sealed record EditResult(HandEditor? Editor, IReadOnlyList<HandError> Errors);

/// <summary>A hand file that is read and changed by paths; comments, order, spacing and every other byte are kept.</summary>
public sealed class HandEditor
{
    private readonly HandReading _reading;
    private readonly string? _folder;
    private readonly Lazy<HandSource?> _whole;

    private HandEditor(HandReading reading, string? folder)
    {
        _reading = reading;
        _folder = folder;
        _whole = new(() => reading.Hand is { } hand ? HandFile.Parse(HandWriter.Write(hand with { Guesses = [] }), Source.Text.Name).Source : null);
    }

    /// <summary>The text with its syntax.</summary>
    public HandSource Source => _reading.Source!;

    /// <summary>What reading the text as it now stands gives.</summary>
    public HandReading Reading => _reading;

    /// <summary>Opens what was read for editing.</summary>
    /// <param name="reading">A reading whose text is TOML; it may have errors.</param>
    /// <param name="folder">Folder in which named files must lie; <see langword="null"/> = links are not followed.</param>
    /// <returns><see langword="null"/> if the text is not TOML.</returns>
    public static HandEditor? Open(HandReading reading, string? folder = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Source is null ? null : new(reading, folder);
    }

    /// <summary>Every path to a single value of this hand, defaults included.</summary>
    public IReadOnlyList<string> Paths()
    {
        TableNode root = (_whole.Value ?? Source).Root;
        return [.. Walk.Leaves(root, HandKeys.Root, "")];
    }

    /// <summary>The nearest path of this hand.</summary>
    /// <param name="path">A path that may be misspelled.</param>
    /// <returns><see langword="null"/> if none is near.</returns>
    public string? NearestPath(string path)
    {
        _ = HandPath.TryDescribe(path, out _, out string? near);
        return Nearest.To(path, Paths()) ?? near;
    }

    /// <summary>Reads a value.</summary>
    /// <param name="path">Its path.</param>
    /// <returns>The value, or its default; <see langword="null"/> if the path leads nowhere.</returns>
    public HandValue? Find(string path) =>
        HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) && HandPath.Describe(steps) is { } key && Locate(steps) is { Node: { } node } found
            ? Value(path, key, node, found.Source, found.InFile)
            : null;

    /// <summary>Where a value stands in the file.</summary>
    /// <param name="path">Its path.</param>
    /// <returns>Line and column from 1; <see langword="null"/> if the file does not say it.</returns>
    public (int Line, int Column)? PlaceOf(string path) =>
        HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) && Locate(steps) is { Node: { } node, InFile: true } ? (node.Place.Line, node.Place.Column) : null;

    /// <summary>Sets a value.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="value">A quantity with its unit, a word, or a TOML list for pairs, triples and moment tables.</param>
    /// <returns>The edited file, or why it was refused: path, dimension, range, or an error the edit would cause.</returns>
    public EditResult Set(string path, string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (!HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) || HandPath.Describe(steps) is not { Form: not (KeyForm.Table or KeyForm.MomentRow or KeyForm.OutlineCorner) } key)
        {
            return Refused(path, $"the path {path}", "the path of a value", NearestPath(path) is { } near ? $"did you mean {near}?" : "list the paths of this hand");
        }

        (string? toml, HandError? error) = Literal(key, path, value);
        if (toml is null)
        {
            return new(null, [error!]);
        }

        string text = Source.Text.Text;
        Node? node = Walk.To(Source.Root, steps);
        bool component = Walk.Component(steps[^1]) >= 0 && HandPath.Describe([.. steps.SkipLast(1)])?.Parts is null && steps.Count > 1;
        Node? parent = component ? Walk.To(Source.Root, [.. steps.SkipLast(1)]) : null;
        if (node is not null && (!component || parent is ArrayNode))
        {
            return Checked(Splice.Replace(text, node.Place, toml));
        }

        if (!component)
        {
            return Checked(Splice.Insert(Source, [.. steps.Select(s => s.Key)], toml));
        }

        return SetComponent(path, steps, parent, toml);
    }

    /// <summary>Replaces a whole section with those below it, or adds it.</summary>
    /// <param name="path">Path of the section, such as <c>crank</c>.</param>
    /// <param name="toml">The new sections, headers included; each begins with the path.</param>
    public EditResult ReplacePart(string path, string toml)
    {
        ArgumentNullException.ThrowIfNull(toml);
        if (!HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) || HandPath.Describe(steps)?.Parts is null)
        {
            return Refused(path, $"the path {path}", "the path of a section", NearestPath(path) is { } near ? $"did you mean {near}?" : "name a section such as crank");
        }

        (HandSource? part, IReadOnlyList<HandError> errors) = HandSource.Parse(new(Source.Text.Name, toml, HasByteOrderMark: false));
        if (part is null)
        {
            return new(null, errors);
        }

        if (part.Syntax.KeyValues.ChildrenCount > 0 || !part.Syntax.Tables.All(t => Under(t, steps)))
        {
            return Refused(path, "lines outside of the section", $"sections that begin with [{path}]", $"put [{path}] at the top of the new text");
        }

        string ends = Splice.LineEnd(Source.Text.Text);
        string wanted = toml.ReplaceLineEndings(ends);
        return Checked(Exchange(steps, wanted.EndsWith('\n') ? wanted : wanted + ends));
    }

    /// <summary>Stores the text: written beside the file, then moved over it.</summary>
    /// <param name="file">Path of the file.</param>
    public void Save(string file)
    {
        ArgumentException.ThrowIfNullOrEmpty(file);
        string full = Path.GetFullPath(file);
        string fresh = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.new");
        try
        {
            File.WriteAllBytes(fresh, Source.Text.ToBytes());
            File.Move(fresh, full, overwrite: true);
        }
        finally
        {
            File.Delete(fresh);
        }
    }

    /// <summary>Where a value stands: in the text, in the text for all fingers, or in the hand written out with its defaults.</summary>
    private (Node? Node, HandSource Source, bool InFile) Locate(IReadOnlyList<PathStep> steps)
    {
        if (Walk.To(Source.Root, steps) is { } own)
        {
            return (own, Source, true);
        }

        bool ofFinger = steps is [{ Key: "fingers" }, _, _, ..] && Walk.To(Source.Root, [.. steps.Take(2)]) is not null;
        if (ofFinger && Walk.To(Source.Root, [steps[0], new(FingerBinding.Shared, 0), .. steps.Skip(2)]) is { } shared)
        {
            return (shared, Source, true);
        }

        return _whole.Value is { } whole ? (Walk.To(whole.Root, steps), whole, false) : (null, Source, false);
    }

    private static bool Under(TableSyntaxBase section, IReadOnlyList<PathStep> steps)
    {
        List<KeyAt> keys = NodeBuilder.Keys(section.Name!);
        return keys.Count >= steps.Count && steps.Select((s, i) => s.Key == keys[i].Key).All(same => same);
    }

    /// <summary>Places of the sections at and below a path, header to last key.</summary>
    internal static List<Place> Sections(HandSource source, IReadOnlyList<PathStep> steps) =>
        [.. source.Syntax.Tables.Where(t => Under(t, steps)).Select(t => NodeBuilder.PlaceOf(t.Span) with { Length = NodeBuilder.SectionEnd(t) - t.Span.Offset })];

    private string Exchange(IReadOnlyList<PathStep> steps, string toml)
    {
        string text = Source.Text.Text;
        List<Place> old = Sections(Source, steps);
        if (old.Count == 0 && Walk.To(Source.Root, [.. steps.SkipLast(1)]) is TableNode parent && parent.Find(steps[^1].Key) is { } entry)
        {
            return Splice.AtEnd(Splice.Replace(text, entry.Whole, ""), toml);
        }

        if (old.Count == 0)
        {
            return Splice.AtEnd(text, toml);
        }

        for (int i = old.Count - 1; i > 0; i--)
        {
            text = Splice.Replace(text, old[i], "");
        }

        return Splice.Replace(text, old[0], toml);
    }

    private EditResult SetComponent(string path, IReadOnlyList<PathStep> steps, Node? parent, string toml)
    {
        PathStep[] owner = [.. steps.SkipLast(1)];
        string ownerPath = path[..path.LastIndexOfAny(['.', '['])];
        if (Locate(owner) is not { Node: { } known, Source: var from })
        {
            return Refused(path, $"a part of {ownerPath}, which this hand does not have", $"a value for {ownerPath} first", $"set {ownerPath} as a whole");
        }

        string Written(Node n) => from.Text.Text.Substring(n.Place.Offset, n.Place.Length);
        List<string> items = known is ArrayNode list ? [.. list.Items.Select(Written)] : [Written(known), Written(known), Written(known)];
        int at = Walk.Component(steps[^1]);
        if (at >= items.Count)
        {
            return Refused(path, $"the path {path}", FormattableString.Invariant($"a place from 1 to {items.Count}"), "count from 1");
        }

        items[at] = toml;
        string whole = Toml.List(items);
        return Checked(parent is null
            ? Splice.Insert(Source, [.. owner.Select(s => s.Key)], whole)
            : Splice.Replace(Source.Text.Text, parent.Place, whole));
    }

    private (string? Toml, HandError? Error) Literal(HandKey key, string path, string value)
    {
        bool list = key.Form is KeyForm.Pair or KeyForm.Triple or KeyForm.MomentTable or KeyForm.Outline or KeyForm.AsThere or KeyForm.SeveralAsThere or KeyForm.Words && value.TrimStart().StartsWith('[');
        bool plain = key.Form is KeyForm.Quantity or KeyForm.Triple or KeyForm.AsThere or KeyForm.AsMeasured && key.Dimension == Dimension.Number && double.TryParse(value, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out double number) && double.IsFinite(number);
        string toml = list ? value.Trim() : plain && !value.Trim().StartsWith('.') && !value.Trim().EndsWith('.') ? value.Trim() : Toml.Text(value.Trim());
        (HandSource? source, IReadOnlyList<HandError> errors) = HandSource.Parse(new(Source.Text.Name, "value = " + toml, HasByteOrderMark: false));
        if (source is null)
        {
            return (null, errors[0] with { Key = path, Line = 0, Column = 0 });
        }

        Faults faults = new(Source.Text.Name);
        new KeyCheck(faults, _folder).CheckValue(key, new("", default, source.Root["value"]!, default), path);
        return faults.Any ? (null, faults.Sorted()[0] with { Line = 0, Column = 0 }) : (toml, null);
    }

    private EditResult Checked(string text)
    {
        HandReading after = HandFile.Parse(Source.Text with { Text = text }, _folder);
        HashSet<(string, string)> before = [.. _reading.Errors.Select(e => (e.Key, e.Allowed))];
        List<HandError> caused = [.. after.Errors.Where(e => !before.Contains((e.Key, e.Allowed)))];
        return caused.Count > 0 || after.Source is null ? new(null, caused) : new(new(after, _folder), []);
    }

    private static HandValue Value(string path, HandKey key, Node node, HandSource source, bool inFile)
    {
        string text = node is TextNode word ? word.Text : source.Text.Text.Substring(node.Place.Offset, node.Place.Length);
        if (key.Form != KeyForm.Quantity || node is TableNode or ArrayNode)
        {
            return new(path, text, null, null, inFile);
        }

        double si = ValueReading.Quantity(key, node, path, null);
        return new(path, text, double.IsNaN(si) ? null : si, key.Dimension, inFile);
    }

    private EditResult Refused(string path, string found, string allowed, string fix) =>
        new(null, [new(Source.Text.Name, 0, 0, path, found, allowed, fix)]);
}
