using System.Collections.Concurrent;
using Graspwright.Page.Pages;

namespace Graspwright.Page.Works;

/// <summary>The long works of one open hand, at most one of each key.</summary>
/// <param name="time">Where the time comes from.</param>
public sealed class LongWorks(TimeProvider time) : IDisposable
{
    private static readonly TimeSpan ToTheLast = TimeSpan.FromSeconds(5);
    private readonly ConcurrentDictionary<string, LongWork> _all = new(StringComparer.Ordinal);
    private readonly Lock _gate = new();

    /// <summary>Where the time comes from.</summary>
    public TimeProvider Time => time;

    /// <summary>Told how far a work is, and when it has ended.</summary>
    public event Action<LongWork>? Moved;

    /// <summary>Works that go on.</summary>
    public IReadOnlyList<LongWork> Going => [.. _all.Values.Where(w => w.Goes).OrderBy(w => w.Name.Key, StringComparer.Ordinal)];

    /// <summary>The work of a key: the one that goes on, else the last.</summary>
    /// <param name="key">The key.</param>
    public LongWork? Find(string key) => _all.GetValueOrDefault(key);

    /// <summary>Begins a work. One of the same key is asked to stop and forgotten.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="work">Does it.</param>
    public LongWork Begin(LongName name, Func<LongWork, Told> work)
    {
        ArgumentNullException.ThrowIfNull(name);
        lock (_gate)
        {
            if (_all.TryGetValue(name.Key, out LongWork? old))
            {
                old.End();
            }

            LongWork begun = LongWork.Begin(name, work, time, w => Moved?.Invoke(w));
            _all[name.Key] = begun;
            return begun;
        }
    }

    /// <summary>Asks every work to stop and waits a moment, so that what can be gone on with is kept.</summary>
    public void Dispose()
    {
        foreach (LongWork work in _all.Values)
        {
            work.End();
        }

        foreach (LongWork work in _all.Values)
        {
            _ = work.Wait(ToTheLast);
            work.Dispose();
        }
    }
}
