using System.Globalization;
using Graspwright.Hand;
using Graspwright.Page.Hands;

namespace Graspwright.Page.Drive;

/// <summary>Keeps what was tried on the drive as an entry of the hand's change list, and puts the hand back as it was.</summary>
public static class ChangeKeeping
{
    private const string Section = "changes";

    /// <summary>Whether hand files have a change list.</summary>
    public static bool IsThere => HandKeys.Root.Find(Section) is not null;

    /// <summary>How the file differs by the page's edits from what it was before the first of them.</summary>
    /// <param name="open">The open hand.</param>
    public static IReadOnlyList<ChangedValue> Differences(OpenHand open)
    {
        ArgumentNullException.ThrowIfNull(open);
        return
        [
            .. open.Done.SelectMany(s => s.Values).GroupBy(v => v.Path, StringComparer.Ordinal)
                .Select(g => new ChangedValue(g.Key, g.First().Before, open.Find(g.Key)?.Text ?? ""))
                .Where(v => v.Before != v.After && v.Before.Length > 0),
        ];
    }

    /// <summary>Writes the change and puts its values back, in one edit.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="name">Name of the change.</param>
    public static Outcome Keep(OpenHand open, string name)
    {
        ArgumentNullException.ThrowIfNull(open);
        ArgumentNullException.ThrowIfNull(name);
        string clean = name.Trim();
        IReadOnlyList<ChangedValue> values = Differences(open);
        string path = HandPath.Join(Section, clean);
        if (clean.Length == 0 || values.Count == 0)
        {
            return new([new(open.Path, 0, 0, Section, clean.Length == 0 ? "no name" : "nothing that differs", "a name for what was tried", "say in a few words what it is")]);
        }

        return open.Edit(editor => Write(editor, path, values), $"keeping ‘{clean}’ on the list");
    }

    private static EditResult Write(HandEditor editor, string path, IReadOnlyList<ChangedValue> values)
    {
        HandEditor now = editor;
        foreach (ChangedValue value in values)
        {
            EditResult back = now.Set(value.Path, value.Before);
            if (back.Editor is null)
            {
                return back;
            }

            now = back.Editor;
        }

        IEnumerable<string> lines = values.Select(v => $"{Quoted(v.Path)} = {Written(v)}\n");
        return now.ReplacePart(path, $"[{path}.edits]\n{string.Concat(lines)}");
    }

    /// <summary>A value as it is written at its path: lists and plain numbers bare, all else in quotes.</summary>
    private static string Written(ChangedValue value)
    {
        bool plain = HandPath.TryDescribe(value.Path, out HandKey? key, out _) && key.Dimension == Dimension.Number && double.TryParse(value.After, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        return plain || value.After.StartsWith('[') ? value.After : Quoted(value.After);
    }

    private static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
