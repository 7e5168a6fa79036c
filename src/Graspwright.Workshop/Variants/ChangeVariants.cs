using Graspwright.Deciding.Changes;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Variants;

/// <summary>A hand with any of a list of changes made to it.</summary>
/// <remarks>
/// Each change is made to the file once and read; sets of changes that touch different values are then put together from
/// what each changed, without the file. Where two changes touch the same value, the set is made in the file, in the order of
/// the list, so that the later one wins.
/// </remarks>
public sealed class ChangeVariants
{
    private readonly HandEditor _editor;
    private readonly HandModel _plain;
    private readonly IReadOnlyList<ModelDifference>[] _differences;
    private readonly bool[,] _meet;

    private ChangeVariants(HandEditor editor, IReadOnlyList<Change> changes, IReadOnlyList<ModelDifference>[] differences)
    {
        _editor = editor;
        _plain = editor.Reading.Hand!;
        Changes = changes;
        _differences = differences;
        _meet = new bool[changes.Count, changes.Count];
        for (int i = 0; i < changes.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                _meet[i, j] = differences[i].Any(d => differences[j].Any(d.Meets));
            }
        }
    }

    /// <summary>The changes.</summary>
    public IReadOnlyList<Change> Changes { get; }

    /// <summary>Makes every change to the file once.</summary>
    /// <param name="editor">The file, sound.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="changes">The changes.</param>
    /// <param name="errors">Takes what is wrong with a change: a path that leads nowhere, or the lines it would make wrong.</param>
    /// <returns><see langword="null"/> where anything is wrong.</returns>
    public static ChangeVariants? Of(HandEditor editor, string file, IReadOnlyList<Change> changes, List<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(editor);
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(errors);
        HandModel plain = editor.Reading.Hand!;
        var differences = new IReadOnlyList<ModelDifference>[changes.Count];
        for (int i = 0; i < changes.Count; i++)
        {
            EditResult made = Make(editor, changes[i]);
            if (made.Editor?.Reading.Hand is { } hand)
            {
                differences[i] = ModelDifferences.Between(plain, hand);
            }
            else
            {
                errors.AddRange(made.Errors.Select(e => Broken(editor, file, changes[i], e)));
            }
        }

        return errors.Count > 0 ? null : new(editor, changes, differences);
    }

    /// <summary>The hand with a set of changes.</summary>
    /// <param name="set">The set.</param>
    /// <exception cref="InvalidDataException">Changes that touch the same values cannot be made one after another.</exception>
    public HandModel Hand(ChangeSet set)
    {
        int[] items = [.. set.Items];
        bool meet = items.Any(i => items.Any(j => j < i && _meet[i, j]));
        return meet
            ? Edited(set) is { Editor.Reading.Hand: { } hand } ? hand : throw new InvalidDataException($"The changes {Names(set)} cannot be made together.")
            : ModelDifferences.With(_plain, [.. items.SelectMany(i => _differences[i])]);
    }

    /// <summary>The file with a set of changes, comments kept.</summary>
    /// <param name="set">The set.</param>
    public EditResult Edited(ChangeSet set)
    {
        HandEditor editor = _editor;
        foreach (int i in set.Items)
        {
            EditResult made = Make(editor, Changes[i]);
            if (made.Editor is null)
            {
                return made;
            }

            editor = made.Editor;
        }

        return new(editor, []);
    }

    /// <summary>Pairs of changes that set the same values, so that the later one in the list wins.</summary>
    public IEnumerable<(Change Earlier, Change Later)> SameValues() =>
        from i in Enumerable.Range(0, Changes.Count)
        from j in Enumerable.Range(0, i)
        where _meet[i, j]
        select (Changes[j], Changes[i]);

    private string Names(ChangeSet set) => string.Join(", ", set.Items.Select(i => $"‘{Changes[i].Name}’"));

    /// <summary>Makes one change to a file.</summary>
    /// <param name="editor">The file.</param>
    /// <param name="change">The change.</param>
    internal static EditResult Make(HandEditor editor, Change change)
    {
        foreach (ReplacedPart part in change.Parts)
        {
            EditResult made = editor.ReplacePart(part.Path, part.Toml);
            if (made.Editor is null)
            {
                return made;
            }

            editor = made.Editor;
        }

        foreach (HandEdit edit in change.Edits)
        {
            bool there = editor.Find(edit.Path) is not null;
            EditResult made = editor.Set(edit.Path, edit.Value);
            if (made.Editor is null)
            {
                return there || editor.NearestPath(edit.Path) is not { } near || near == edit.Path
                    ? made
                    : new(null, [new(editor.Source.Text.Name, 0, 0, edit.Path, "a path that leads to no value of this hand", "the path of a value", $"did you mean {near}?"), .. made.Errors]);
            }

            editor = made.Editor;
        }

        return new(editor, []);
    }

    private static InputError Broken(HandEditor editor, string file, Change change, HandError error)
    {
        // What is wrong with a line of the file as it would be is told by that line; a path by the line that names it.
        string here = HandPath.Join("changes", change.Name), edit = HandPath.Join(HandPath.Join(here, "edits"), error.Key);
        (int line, int column) = error.Line > 0 ? (error.Line, error.Column) : editor.PlaceOf(edit) ?? editor.PlaceOf(here) ?? (0, 0);
        return new(file, line, column, here, $"a change that breaks the file: {(error.Key.Length > 0 ? error.Key + " would be " : "it would say ")}{error.Found}", error.Allowed, error.Fix);
    }
}
