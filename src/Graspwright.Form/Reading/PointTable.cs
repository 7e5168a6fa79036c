namespace Graspwright.Form.Reading;

/// <summary>Points by their bits: equal coordinates get one index.</summary>
internal sealed class PointTable(int expected)
{
    private int[] _slots = Filled(Capacity(expected));
    private double[] _points = new double[3 * Math.Max(16, expected)];

    public int Count { get; private set; }

    /// <summary>The coordinates gathered.</summary>
    public double[] Points() => _points[..(3 * Count)];

    /// <summary>Index of a point; adds it where it is new.</summary>
    public int Index(double x, double y, double z)
    {
        (x, y, z) = (x + 0.0, y + 0.0, z + 0.0); // −0 becomes 0
        int mask = _slots.Length - 1;
        for (int slot = (int)(Hash(x, y, z) & (uint)mask); ; slot = (slot + 1) & mask)
        {
            int at = _slots[slot];
            if (at < 0)
            {
                if (2 * (Count + 1) > _slots.Length)
                {
                    Grow();
                    return Index(x, y, z);
                }

                return _slots[slot] = Add(x, y, z);
            }

            if (_points[3 * at] == x && _points[3 * at + 1] == y && _points[3 * at + 2] == z)
            {
                return at;
            }
        }
    }

    private int Add(double x, double y, double z)
    {
        if (3 * Count + 3 > _points.Length)
        {
            Array.Resize(ref _points, 2 * _points.Length);
        }

        (_points[3 * Count], _points[3 * Count + 1], _points[3 * Count + 2]) = (x, y, z);
        return Count++;
    }

    private void Grow()
    {
        _slots = Filled(2 * _slots.Length);
        int mask = _slots.Length - 1;
        for (int i = 0; i < Count; i++)
        {
            int slot = (int)(Hash(_points[3 * i], _points[3 * i + 1], _points[3 * i + 2]) & (uint)mask);
            while (_slots[slot] >= 0)
            {
                slot = (slot + 1) & mask;
            }

            _slots[slot] = i;
        }
    }

    private static int[] Filled(int size)
    {
        int[] slots = new int[size];
        Array.Fill(slots, -1);
        return slots;
    }

    private static int Capacity(int expected)
    {
        int size = 64;
        while (size < 2 * expected && size < 1 << 28)
        {
            size *= 2;
        }

        return size;
    }

    private static uint Hash(double x, double y, double z)
    {
        ulong h = BitConverter.DoubleToUInt64Bits(x) * 0x9E3779B97F4A7C15 ^ BitConverter.DoubleToUInt64Bits(y) * 0xC2B2AE3D27D4EB4F ^ BitConverter.DoubleToUInt64Bits(z) * 0x165667B19E3779F9;
        h ^= h >> 29;
        h *= 0xBF58476D1CE4E5B9;
        return (uint)(h >> 32);
    }
}
