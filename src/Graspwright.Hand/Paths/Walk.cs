using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Follows paths through the tables of a text.</summary>
internal static class Walk
{
    /// <summary>The node at a path.</summary>
    /// <param name="root">The whole file.</param>
    /// <param name="steps">Steps of the path.</param>
    /// <returns><see langword="null"/> if the text has none. One value that stands for three answers to each of the three.</returns>
    public static Node? To(TableNode root, IReadOnlyList<PathStep> steps)
    {
        Node? node = root;
        foreach (PathStep step in steps)
        {
            node = node switch
            {
                TableNode table when step.Index == 0 => table[step.Key],
                ArrayNode list => Item(list, step),
                TextNode or BareNode when step.Index is >= 1 and <= 3 => node,
                _ => null,
            };
        }

        return node;
    }

    /// <summary>Place of a component in its list, from 0; −1 if the step is no component.</summary>
    public static int Component(PathStep step) => step switch
    {
        { Index: > 0 } => step.Index - 1,
        { Key: "x" } => 0,
        { Key: "y" } => 1,
        _ => -1,
    };

    /// <summary>Paths of all single values below a table, in the order of the text.</summary>
    public static IEnumerable<string> Leaves(TableNode table, HandSection section, string path)
    {
        foreach (Entry entry in table.Entries)
        {
            if (section.Find(entry.Key) is not { } key)
            {
                continue;
            }

            string here = HandPath.Join(path, entry.Key);
            IEnumerable<string> found = (key.Form, entry.Value) switch
            {
                (_, TableNode part) when key.Parts is not null => Leaves(part, key.Parts(), here),
                (KeyForm.Pair, _) => [here + ".x", here + ".y"],
                (KeyForm.Triple, _) => [here + "[1]", here + "[2]", here + "[3]"],
                (KeyForm.MomentTable or KeyForm.Outline, ArrayNode rows) => Enumerable.Range(1, rows.Items.Count)
                    .SelectMany(i => new[] { string.Create(CultureInfo.InvariantCulture, $"{here}[{i}][1]"), string.Create(CultureInfo.InvariantCulture, $"{here}[{i}][2]") }),
                _ => [here],
            };
            foreach (string leaf in found)
            {
                yield return leaf;
            }
        }
    }

    private static Node? Item(ArrayNode list, PathStep step) =>
        Component(step) is >= 0 and var i && i < list.Items.Count ? list.Items[i] : null;
}
