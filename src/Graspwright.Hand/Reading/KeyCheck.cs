namespace Graspwright.Hand;

/// <summary>Checks every value of a file against the table of keys, whether it is used or not.</summary>
internal sealed class KeyCheck(Faults faults, string? folder)
{
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
            case KeyForm.Text or KeyForm.Choice:
                ValueReading.Word(key, node, path, faults);
                break;
            case KeyForm.FileName:
                CheckFile(key, node, path);
                break;
            case KeyForm.Tolerance:
                CheckTolerance(key, entry, path);
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
