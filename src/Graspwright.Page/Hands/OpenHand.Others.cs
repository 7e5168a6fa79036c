using Graspwright.Hand;

namespace Graspwright.Page.Hands;

/// <content>What other editors do to the file, and taking back.</content>
public sealed partial class OpenHand
{
    /// <summary>Takes the last edit of the page back.</summary>
    public Outcome Undo() => TakeBack(_done, _undone, back: true);

    /// <summary>Makes the edit last taken back again.</summary>
    public Outcome Redo() => TakeBack(_undone, _done, back: false);

    /// <summary>Chooses from two versions.</summary>
    /// <param name="number">Their number.</param>
    /// <param name="other">Whether the other value goes into the file; else the file's stays.</param>
    public Outcome Settle(int number, bool other)
    {
        Outcome outcome = Outcome.Done;
        lock (_gate)
        {
            TakeIn();
            if (_twoVersions.Find(t => t.Number == number) is { } two)
            {
                outcome = other ? Apply([new(two.Path, two.Other)], $"{two.Path}: the other version") : Outcome.Done;
                if (outcome.IsDone)
                {
                    _twoVersions.Remove(two);
                }
            }
        }

        Changed?.Invoke();
        return outcome;
    }

    private Outcome TakeBack(List<EditStep> from, List<EditStep> to, bool back)
    {
        Outcome outcome = Outcome.Done;
        lock (_gate)
        {
            TakeIn();
            if (from.Count == 0)
            {
                return outcome;
            }

            EditStep step = from[^1];
            (string wanted, string now) = back ? (step.TextBefore, step.TextAfter) : (step.TextAfter, step.TextBefore);
            if (_state.Reading.Source is { } source && source.Text.Text == now)
            {
                HandReading reading = HandFile.Parse(source.Text with { Text = wanted }, Folder);
                outcome = Editor(reading) is { } whole ? Store(whole, step.Words, step.Values, remember: false) : new(reading.Errors);
            }
            else if (step.Values.Count == 0)
            {
                outcome = new([new(Path, 0, 0, "", "the file was changed elsewhere since", "a file as this edit left it", "take the change back in your editor")]);
            }
            else
            {
                // Another editor changed the file since: only the values of this edit go back.
                outcome = Apply([.. step.Values.Select(v => back ? new PathValue(v.Path, v.Before, v.After) : new PathValue(v.Path, v.After, v.Before))], step.Words, remember: false);
            }

            if (outcome.IsDone)
            {
                from.Remove(step);
                to.Add(step);
            }
        }

        Changed?.Invoke();
        return outcome;
    }

    /// <summary>Reads the file again where its bytes are not those known. Values that the page had changed and that another editor's older text put back are kept as second versions.</summary>
    private bool TakeIn()
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(FullPath);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return false; // an editor that is just replacing the file; it is looked at again
        }

        if (bytes.AsSpan().SequenceEqual(_bytes))
        {
            return false;
        }

        HandReading before = _state.Reading, after = HandFile.Parse(bytes, Path, Folder);
        if (before.Source is { } source && Editor(before) is { } mine && Editor(after) is { } theirs)
        {
            KeepOverwritten(source.Text, mine, theirs);
        }

        Take(after, bytes);
        return true;
    }

    private void KeepOverwritten(HandText text, HandEditor mine, HandEditor theirs)
    {
        List<(ChangedValue Value, string Now)> lost = [];
        bool older = false;
        foreach (ChangedValue value in _done.SelectMany(s => s.Values).GroupBy(v => v.Path, StringComparer.Ordinal).Select(g => new ChangedValue(g.Key, g.First().Before, g.Last().After)))
        {
            string had = mine.Find(value.Path)?.Text ?? "", now = theirs.Find(value.Path)?.Text ?? "";
            if (had == value.After && now != had)
            {
                lost.Add((value, now));
                older |= now == value.Before;
            }
        }

        if (!older)
        {
            return; // nothing was put back: the other editor had seen what the page wrote
        }

        string kept = $"{System.IO.Path.GetFileNameWithoutExtension(FullPath)}.kept-{Clock()}.toml";
        File.WriteAllBytes(System.IO.Path.Combine(Folder, kept), text.ToBytes());
        foreach ((ChangedValue value, string now) in lost)
        {
            const string words = "Another program saved an older text over what this page had written.";
            _twoVersions.RemoveAll(t => t.Path == value.Path);
            _twoVersions.Add(new(++_numbers, value.Path, now, value.After, words, _time.GetLocalNow(), kept));
        }
    }
}
