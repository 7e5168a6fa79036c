namespace Graspwright.Hand;

/// <summary>Puts values into a text without touching any other byte.</summary>
internal static class Splice
{
    /// <summary>Replaces a range.</summary>
    public static string Replace(string text, Place place, string with) => string.Concat(text.AsSpan(0, place.Offset), with, text.AsSpan(place.End));

    /// <summary>Puts a key in that the text does not have yet: into its section, else into a new section at the end.</summary>
    /// <param name="source">The text.</param>
    /// <param name="keys">Keys from the top of the file to the value.</param>
    /// <param name="toml">The value.</param>
    public static string Insert(HandSource source, IReadOnlyList<string> keys, string toml)
    {
        string text = source.Text.Text, line = LineEnd(text);
        TableNode table = source.Root, home = source.Root;
        int depth = 0, homeDepth = 0;
        while (depth < keys.Count - 1 && table[keys[depth]] is TableNode next)
        {
            table = next;
            depth++;
            if (!table.Dotted)
            {
                (home, homeDepth) = (table, depth);
            }
        }

        string key = keys.Skip(homeDepth).Aggregate("", HandPath.Join);
        if (home.Inline)
        {
            int brace = home.Place.End - 1;
            string before = text[(home.Place.Offset + 1)..brace];
            string trimmed = before.TrimEnd();
            string comma = trimmed.Length == 0 || trimmed.EndsWith(',') ? " " : ", ";
            return Replace(text, new(brace - (before.Length - trimmed.Length), before.Length - trimmed.Length, 0, 0), $"{comma}{key} = {toml} ");
        }

        bool inSection = home.InsertAt >= 0 && (homeDepth == keys.Count - 1 || table.Dotted);
        if (inSection)
        {
            string start = home.InsertAt > 0 && text[home.InsertAt - 1] != '\n' ? line : "";
            return text.Insert(home.InsertAt, $"{start}{key} = {toml}{line}");
        }

        string header = keys.SkipLast(1).Aggregate("", HandPath.Join);
        return AtEnd(text, $"[{header}]{line}{HandPath.Join("", keys[^1])} = {toml}{line}");
    }

    /// <summary>Puts a section at the end, after an empty line.</summary>
    public static string AtEnd(string text, string section)
    {
        string line = LineEnd(text);
        string gap = text.Length == 0 ? "" : text.EndsWith('\n') ? line : line + line;
        return text + gap + section;
    }

    public static string LineEnd(string text) => text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
}
