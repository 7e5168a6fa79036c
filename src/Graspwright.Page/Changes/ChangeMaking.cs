using Graspwright.Deciding.Changes;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Page.Changes;

/// <summary>Makes a change of the list in the hand file.</summary>
public static class ChangeMaking
{
    /// <summary>Makes it; it stays on the list, and undo takes it back.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="name">Name of the change.</param>
    public static Outcome Make(OpenHand open, string name)
    {
        ArgumentNullException.ThrowIfNull(open);
        if (open.State.Reading.Hand is not { } hand || hand.Decisions.Changes.FirstOrDefault(c => c.Name == name) is not { } change)
        {
            return new([new(open.Path, 0, 0, "changes", $"no change '{name}'", "a change of the list", "look at the page again: the list was changed elsewhere")]);
        }

        string words = $"making ‘{change.Name}’";
        return change.Parts.Count == 0
            ? open.Edit([.. change.Edits.Select(e => new PathValue(e.Path, e.Value))], words)
            : open.Edit(editor => Made(editor, open.Path, [change]), words);
    }

    /// <summary>A file with changes made, in their order.</summary>
    /// <param name="editor">The file.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="changes">The changes.</param>
    public static EditResult Made(HandEditor editor, string file, IReadOnlyList<Change> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        List<InputError> errors = [];
        return ChangeVariants.Of(editor, file, changes, errors) is { } variants
            ? variants.Edited(ChangeSet.Whole(changes.Count))
            : new(null, [.. errors.Select(e => new HandError(e.File, e.Line, e.Column, e.Key, e.Found, e.Allowed, e.Fix))]);
    }

    /// <summary>Whether everything that a change sets already stands so in the file.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="change">The change.</param>
    public static bool IsMade(OpenHand open, Change change)
    {
        ArgumentNullException.ThrowIfNull(open);
        ArgumentNullException.ThrowIfNull(change);
        return change.Parts.Count == 0 && change.Edits.Count > 0 && change.Edits.All(e => open.Find(e.Path)?.Text == e.Value);
    }
}
