namespace Graspwright.Page.Hands;

/// <summary>Watches the folder of a hand file. What the system does not tell (network drives) is found by looking at the file's time twice a second.</summary>
public sealed class FileWatch : IDisposable
{
    private const int LookEveryMilliseconds = 500;
    private readonly OpenHand _hand;
    private readonly FileSystemWatcher _watcher;
    private readonly ITimer _look;
    private (DateTime, long) _seen;

    /// <summary>Begins to watch.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="time">Where the time comes from.</param>
    public FileWatch(OpenHand hand, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(time);
        _hand = hand;
        _watcher = new(hand.Folder) { IncludeSubdirectories = true, NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size };
        _watcher.Changed += (_, e) => Told(e.FullPath);
        _watcher.Created += (_, e) => Told(e.FullPath);
        _watcher.Renamed += (_, e) => Told(e.FullPath);
        _watcher.Deleted += (_, e) => Told(e.FullPath);
        _watcher.EnableRaisingEvents = true;
        _look = time.CreateTimer(_ => Look(), null, TimeSpan.FromMilliseconds(LookEveryMilliseconds), TimeSpan.FromMilliseconds(LookEveryMilliseconds));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _watcher.Dispose();
        _look.Dispose();
    }

    private void Told(string path)
    {
        if (path == _hand.FullPath)
        {
            _hand.Refresh();
        }
        else if (IsInput(path))
        {
            _hand.OtherFileChanged();
        }
    }

    private void Look()
    {
        FileInfo file = new(_hand.FullPath);
        (DateTime, long) now = file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
        if (now != _seen)
        {
            _seen = now;
            _hand.Refresh();
        }
    }

    /// <summary>Files that a hand file names are tables, recordings and scans; halves being written and kept versions are not.</summary>
    private static bool IsInput(string path) =>
        Path.GetExtension(path) is ".csv" or ".edf" or ".bdf" or ".wav" or ".stl" or ".obj" or ".ply" or ".glb" && !Path.GetFileName(path).StartsWith('.');
}
