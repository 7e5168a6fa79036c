namespace Graspwright.Hand;

/// <summary>Checks every value of a file against the table of keys, whether it is used or not.</summary>
internal sealed class KeyCheck(Faults faults, string? folder)
{
    private readonly HashSet<string> _told = new(StringComparer.Ordinal); // tables whose path names nothing

    public void Check(TableNode table, HandSection section, string path)
    {
        foreach (Entry entry in table.Entries.TakeWhile(_ => !faults.Full))
        {
            string here = HandPath.Join(path, entry.Key);
            if (section.Find(entry.Key) is { } key)
            {
                CheckValue(key, entry, here);
            }
            else
            {
                Unknown(entry, section, here);
            }
        }
    }

    public void CheckValue(HandKey key, Entry entry, string path)
    {
        Node node = entry.Value;
        switch (key.Form)
        {
            case KeyForm.Quantity:
                ValueReading.Quantity(key, node, path, faults);
                break;
            case KeyForm.Pair:
                ValueReading.Pair(key, node, path, faults);
                break;
            case KeyForm.Triple:
                ValueReading.Triple(key, node, path, faults);
                break;
            case KeyForm.MomentTable:
                ValueReading.Moments(key, node, path, faults);
                break;
            case KeyForm.Outline:
                ValueReading.Outline(key, node, path, faults);
                break;
            case KeyForm.Text or KeyForm.Choice:
                ValueReading.Word(key, node, path, faults);
                break;
            case KeyForm.FileName:
                CheckFile(key, node, path);
                break;
            case KeyForm.Tolerance:
                CheckTolerance(key, entry, path);
                break;
            case KeyForm.AsThere:
                CheckAsThere(key, entry, path);
                break;
            case KeyForm.SeveralAsThere:
                CheckSeveral(key, entry, path);
                break;
            case KeyForm.AsMeasured when node is TextNode or BareNode { Kind: BareKind.Number }:
                break;
            case KeyForm.AsMeasured:
                faults.Add(node.Place, path, node.Found(), "a quantity with its unit", $"write {key.Example}");
                break;
            case KeyForm.Words:
                CheckWords(key, node, path);
                break;
            case KeyForm.FingerOrBar when node is TextNode:
                break;
            default:
                CheckTable(key, node, path);
                break;
        }
    }

    private void CheckTable(HandKey key, Node node, string path)
    {
        if (node is TableNode table)
        {
            Check(table, key.Parts!(), path);
        }
        else if (key.Form == KeyForm.FingerOrBar)
        {
            faults.Add(node.Place, path, node.Found(), "the name of a finger in quotes, or a table for a further bar", $"write {key.Example}");
        }
        else
        {
            faults.Add(node.Place, path, node.Found(), "a table", $"write the section as [{path}] with its keys below");
        }
    }

    private void CheckFile(HandKey key, Node node, string path)
    {
        if (ValueReading.Word(key, node, path, faults) is { } name && NamedFiles.Fault(name, folder) is { } fault)
        {
            faults.Add(node.Place, path, node.Found(), "a file inside the folder of the hand file", fault);
        }
    }

    private void CheckTolerance(HandKey key, Entry entry, string path)
    {
        if (HandPath.TryDescribe(entry.Key, out HandKey? target, out string? near))
        {
            ValueReading.Quantity(key, entry.Value, path, faults, target.Dimension);
            if (target.Dimension == Dimension.Temperature && entry.Value is TextNode text && !text.Text.TrimEnd().EndsWith('K'))
            {
                faults.Add(entry.Value.Place, path, entry.Value.Found(), "a difference of temperature in K", "write \"2 K\": 2 °C would be a temperature, not a difference");
            }
        }
        else
        {
            faults.Add(entry.KeyPlace, path, $"\"{entry.Key}\"", "the path of a value with a unit, in quotes",
                near is null ? "write the path in quotes, such as \"crank.fulcrum.x\"" : $"write \"{near}\"");
        }
    }

    private void CheckAsThere(HandKey key, Entry entry, string path)
    {
        // Under a key that is named in the table, the path is that of the table round it.
        bool named = key.Name[0] != '"';
        string target = named && HandPath.TrySplit(path, out IReadOnlyList<PathStep>? own) && own.Count > 1 ? own[^2].Key : entry.Key;
        HandKey? there = HandPath.TrySplit(target, out IReadOnlyList<PathStep>? steps) ? HandPath.Describe(steps) : null;
        if (there is { Form: not (KeyForm.Table or KeyForm.MomentRow) })
        {
            bool step = named && key.Name == "step";
            CheckValue(step ? there with { Bounds = Bounds.Any } : there, entry, path);
            return;
        }

        if (named && !_told.Add(path[..path.LastIndexOf('.')]))
        {
            return; // said at the first key of this table
        }

        _ = HandPath.TryDescribe(target, out _, out string? near);
        faults.Add(entry.KeyPlace, path, $"\"{target}\", which names no value", "the path of a value, in quotes", near is null ? "write the path in quotes, such as \"crank.fulcrum.x\"" : $"did you mean \"{near}\"?");
    }

    private void CheckSeveral(HandKey key, Entry entry, string path)
    {
        if (entry.Value is not ArrayNode list)
        {
            faults.Add(entry.Value.Place, path, entry.Value.Found(), "a list of values", $"write {key.Example}");
            return;
        }

        foreach (Node item in list.Items)
        {
            CheckAsThere(key, entry with { Value = item }, path);
        }
    }

    private void CheckWords(HandKey key, Node node, string path)
    {
        if (node is not ArrayNode list || !list.Items.All(i => i is TextNode))
        {
            faults.Add(node.Place, path, node.Found(), "a list of texts in quotes", $"write {key.Example}");
        }
    }

    private void Unknown(Entry entry, HandSection section, string path)
    {
        if (section.Moved.TryGetValue(entry.Key, out string? way))
        {
            faults.Add(entry.KeyPlace, path, $"{entry.Key}, which stands elsewhere now", "no such section", way);
            return;
        }

        string? near = Nearest.To(entry.Key, section.Keys.Select(k => k.Name));
        faults.Add(entry.KeyPlace, path, $"the unknown key {entry.Key}", string.Join(", ", section.Keys.Select(k => k.Name)),
            near is null ? "remove it or use one of these" : $"did you mean {near}?");
    }
}
