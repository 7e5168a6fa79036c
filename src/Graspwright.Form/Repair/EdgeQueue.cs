namespace Graspwright.Form.Repair;

/// <summary>Edges by their cost, cheapest first to within a fifth: a heap that is exact would cost more than it gains.</summary>
/// <param name="edges">How many to make room for.</param>
internal sealed class EdgeQueue(int edges)
{
    private const int Drop = 50, Least = 400 << 2, Buckets = (1200 << 2) - Least; // exponent and two bits of the mantissa, costs of 1e-188 to 1e53

    private readonly int[] _first = Filled();
    private int[] _from = new int[edges], _to = new int[edges], _stamp = new int[edges], _next = new int[edges];
    private int _count, _free = -1, _low;

    /// <summary>Puts an edge in.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other.</param>
    /// <param name="stamp">Tells later whether its ends have changed since.</param>
    /// <param name="cost">Its cost, 0 or more.</param>
    public void Put(int from, int to, int stamp, double cost)
    {
        int slot = _free;
        if (slot >= 0)
        {
            _free = _next[slot];
        }
        else
        {
            slot = _count++;
            if (slot == _from.Length)
            {
                int room = 2 * slot + 16;
                Array.Resize(ref _from, room);
                Array.Resize(ref _to, room);
                Array.Resize(ref _stamp, room);
                Array.Resize(ref _next, room);
            }
        }

        int bucket = Math.Clamp((int)(BitConverter.DoubleToInt64Bits(cost) >> Drop) - Least, 0, Buckets - 1);
        (_from[slot], _to[slot], _stamp[slot], _next[slot]) = (from, to, stamp, _first[bucket]);
        _first[bucket] = slot;
        _low = Math.Min(_low, bucket);
    }

    /// <summary>Takes one of the cheapest out.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Take(out int from, out int to, out int stamp)
    {
        while (_low < Buckets && _first[_low] < 0)
        {
            _low++;
        }

        if (_low == Buckets)
        {
            (from, to, stamp) = (-1, -1, 0);
            return false;
        }

        int slot = _first[_low];
        _first[_low] = _next[slot];
        (from, to, stamp) = (_from[slot], _to[slot], _stamp[slot]);
        (_next[slot], _free) = (_free, slot);
        return true;
    }

    private static int[] Filled()
    {
        int[] first = new int[Buckets];
        Array.Fill(first, -1);
        return first;
    }
}
