using System.Globalization;
using Graspwright.Hand;

namespace Graspwright.Page.Hands;

/// <summary>The hand file that the page works on. The file stays its maker's: it is read again before every edit, and only the bytes of the edited values change.</summary>
public sealed partial class OpenHand
{
    private readonly Lock _gate = new();
    private readonly TimeProvider _time;
    private readonly List<EditStep> _done = [], _undone = [];
    private readonly List<TwoVersions> _twoVersions = [];
    private readonly Dictionary<string, Refusal> _refused = new(StringComparer.Ordinal);
    private HandState _state;
    private byte[] _bytes;
    private int _numbers;

    /// <summary>Opens a hand file.</summary>
    /// <param name="path">Path of the file as the user gave it.</param>
    /// <param name="time">Where the time comes from.</param>
    public OpenHand(string path, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        Path = path;
        FullPath = System.IO.Path.GetFullPath(path);
        _time = time;
        HandReading reading = HandFile.Read(path);
        _bytes = reading.Source?.Text.ToBytes() ?? [];
        _state = new(1, reading, reading.Hand, time.GetLocalNow());
    }

    /// <summary>Something changed: the file, the two versions, or a file beside it.</summary>
    public event Action? Changed;

    /// <summary>Path of the file as the user gave it.</summary>
    public string Path { get; }

    /// <summary>Full path of the file.</summary>
    public string FullPath { get; }

    /// <summary>Folder of the file.</summary>
    public string Folder => System.IO.Path.GetDirectoryName(FullPath)!;

    /// <summary>Counts changes of files beside the hand file.</summary>
    public int Beside { get; private set; }

    /// <summary>The file as it stands.</summary>
    public HandState State
    {
        get
        {
            lock (_gate)
            {
                return _state;
            }
        }
    }

    /// <summary>Edits made on the page, oldest first.</summary>
    public IReadOnlyList<EditStep> Done
    {
        get
        {
            lock (_gate)
            {
                return [.. _done];
            }
        }
    }

    /// <summary>Edits taken back, the last one taken back at the end.</summary>
    public IReadOnlyList<EditStep> Undone
    {
        get
        {
            lock (_gate)
            {
                return [.. _undone];
            }
        }
    }

    /// <summary>Values of which there are two versions.</summary>
    public IReadOnlyList<TwoVersions> TwoVersions
    {
        get
        {
            lock (_gate)
            {
                return [.. _twoVersions];
            }
        }
    }

    /// <summary>The value last refused at a path, if it still is.</summary>
    /// <param name="path">The path.</param>
    public Refusal? Refused(string path)
    {
        lock (_gate)
        {
            return _refused.GetValueOrDefault(path);
        }
    }

    /// <summary>The value at a path, as the file has it or as its default.</summary>
    /// <param name="path">The path.</param>
    public HandValue? Find(string path) => Editor(State.Reading)?.Find(path);

    /// <summary>Reads the file again if its bytes changed.</summary>
    public void Refresh()
    {
        bool changed;
        lock (_gate)
        {
            changed = TakeIn();
        }

        if (changed)
        {
            Changed?.Invoke();
        }
    }

    /// <summary>Counts what was worked out while pages were looked at.</summary>
    public int WorkedOut { get; private set; }

    /// <summary>Differs whenever a page shown before may show something else now.</summary>
    public string Stamp
    {
        get
        {
            lock (_gate)
            {
                return FormattableString.Invariant($"{_state.Version}.{Beside}.{_twoVersions.Count}.{WorkedOut}");
            }
        }
    }

    /// <summary>Tells that something was worked out.</summary>
    public void Tell()
    {
        lock (_gate)
        {
            WorkedOut++;
        }

        Changed?.Invoke();
    }

    /// <summary>Tells that a file beside the hand file changed.</summary>
    public void OtherFileChanged()
    {
        lock (_gate)
        {
            Beside++;
        }

        Changed?.Invoke();
    }

    /// <summary>Puts values into the file, all or none.</summary>
    /// <param name="values">The values.</param>
    /// <param name="words">What is done, in a few words.</param>
    public Outcome Edit(IReadOnlyList<PathValue> values, string words)
    {
        ArgumentNullException.ThrowIfNull(values);
        Outcome outcome;
        lock (_gate)
        {
            TakeIn();
            outcome = Apply(values, words);
        }

        Changed?.Invoke();
        return outcome;
    }

    /// <summary>Changes the file as a whole: a section added, replaced, or filled from a sheet.</summary>
    /// <param name="change">Gives the edited file.</param>
    /// <param name="words">What is done, in a few words.</param>
    public Outcome Edit(Func<HandEditor, EditResult> change, string words)
    {
        ArgumentNullException.ThrowIfNull(change);
        Outcome outcome;
        lock (_gate)
        {
            TakeIn();
            if (Editor(_state.Reading) is not { } editor)
            {
                return new(_state.Reading.Errors);
            }

            EditResult result = change(editor);
            outcome = result.Editor is { } edited ? Store(edited, words, []) : new(result.Errors);
        }

        Changed?.Invoke();
        return outcome;
    }

    private Outcome Apply(IReadOnlyList<PathValue> values, string words, bool remember = true)
    {
        if (Editor(_state.Reading) is not { } editor)
        {
            return new(_state.Reading.Errors);
        }

        List<ChangedValue> changed = [];
        foreach (PathValue value in values)
        {
            string text = value.Text.Trim();
            string now = editor.Find(value.Path)?.Text ?? "";
            if (value.Seen is { } seen && now != seen && now != text)
            {
                TwoVersions two = new(++_numbers, value.Path, now, text, "It was changed elsewhere while it was edited here.", _time.GetLocalNow(), null);
                _twoVersions.RemoveAll(t => t.Path == two.Path);
                _twoVersions.Add(two);
                return new([], two);
            }

            EditResult result = editor.Set(value.Path, text);
            if (result.Editor is not { } edited)
            {
                _refused[value.Path] = new(text, result.Errors[0]);
                return new(result.Errors);
            }

            _refused.Remove(value.Path);
            if (now != text)
            {
                changed.Add(new(value.Path, now, text));
                editor = edited;
            }
        }

        return changed.Count == 0 ? Outcome.Done : Store(editor, words, changed, remember);
    }

    /// <summary>Writes the edited file and remembers how to take the edit back.</summary>
    private Outcome Store(HandEditor edited, string words, IReadOnlyList<ChangedValue> values, bool remember = true)
    {
        string before = _state.Reading.Source!.Text.Text;
        try
        {
            edited.Save(FullPath);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return new([new(Path, 0, 0, "", $"the file cannot be written ({refusal.Message.TrimEnd('.')})", "a file you may write to", "check its folder and permissions; the edit was not made")]);
        }

        if (remember)
        {
            _done.Add(new(++_numbers, words, values, _time.GetLocalNow(), before, edited.Source.Text.Text, _state.Hand));
            _undone.Clear();
        }

        Take(edited.Reading, edited.Source.Text.ToBytes());
        return Outcome.Done;
    }

    private void Take(HandReading reading, byte[] bytes)
    {
        _bytes = bytes;
        _state = new(_state.Version + 1, reading, reading.Hand ?? _state.Hand, _time.GetLocalNow());
    }

    private HandEditor? Editor(HandReading reading) => HandEditor.Open(reading, Folder);

    private string Clock() => _time.GetLocalNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
}
