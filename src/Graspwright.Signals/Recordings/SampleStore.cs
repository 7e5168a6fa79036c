namespace Graspwright.Signals.Recordings;

/// <summary>Samples of one column while a file of unknown length is read: blocks, so that nothing is copied as it grows.</summary>
internal sealed class SampleStore<T>
    where T : struct
{
    private const int Block = 1 << 16;
    private readonly List<T[]> _full = [];
    private T[] _last = new T[Block];
    private int _used;

    public int Count => _full.Count * Block + _used;

    public T Last { get; private set; }

    public void Add(T value)
    {
        if (_used == Block)
        {
            _full.Add(_last);
            _last = new T[Block];
            _used = 0;
        }

        _last[_used++] = value;
        Last = value;
    }

    /// <summary>A sample by its place.</summary>
    public T this[int index] => (index / Block < _full.Count ? _full[index / Block] : _last)[index % Block];

    /// <summary>Everything is given up.</summary>
    public void Clear()
    {
        _full.Clear();
        _last = [];
        _used = 0;
    }

    /// <summary>Everything in one piece; the blocks are given up on the way.</summary>
    public T[] Take()
    {
        T[] all = new T[Count];
        int at = 0;
        for (int i = 0; i < _full.Count; i++)
        {
            _full[i].CopyTo(all, at);
            _full[i] = [];
            at += Block;
        }

        _last.AsSpan(0, _used).CopyTo(all.AsSpan(at));
        Clear();
        return all;
    }
}
