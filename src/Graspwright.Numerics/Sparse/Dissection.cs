namespace Graspwright.Numerics;

/// <summary>An order of elimination by dissection: separators of nearby points come last, so that little fills in.</summary>
/// <remarks>Nested dissection after George, "Nested dissection of a regular finite element mesh", SIAM J. Numer. Anal. 10 (1973); separators by the middle of the wider side.</remarks>
public sealed class Dissection
{
    private const int Leaf = 28;

    private readonly int[] _start, _neighbours;
    private readonly double[] _places;
    private readonly int _dimensions;
    private readonly byte[] _side;

    private Dissection(int[] start, int[] neighbours, double[] places, int dimensions)
    {
        (_start, _neighbours, _places, _dimensions) = (start, neighbours, places, dimensions);
        int n = start.Length - 1;
        _side = new byte[n];
        Order = new int[n];
        Place = new int[n];
        for (int i = 0; i < n; i++)
        {
            Order[i] = i;
        }

        Root = Split(0, n, 0);
        for (int i = 0; i < n; i++)
        {
            Place[Order[i]] = i;
        }

        Rows(Root, 0);
    }

    /// <summary>Old index at each new one.</summary>
    internal int[] Order { get; }

    /// <summary>New index of each old one.</summary>
    internal int[] Place { get; }

    internal Front Root { get; }

    internal int[] Start => _start;

    internal int[] Neighbours => _neighbours;

    /// <summary>Orders a graph of points.</summary>
    /// <param name="start">Where the neighbours of each point begin; one entry more than points.</param>
    /// <param name="neighbours">Neighbours, each pair from both sides, no point its own.</param>
    /// <param name="places">Coordinates, point after point; nearness only guides the order.</param>
    /// <param name="dimensions">Coordinates a point.</param>
    public static Dissection Of(int[] start, int[] neighbours, double[] places, int dimensions) => new(start, neighbours, places, dimensions);

    private Front Split(int low, int high, int depth)
    {
        int count = high - low;
        if (count <= Leaf)
        {
            return new(low, count, []);
        }

        int axis = Widest(low, high), middle = low + count / 2;
        Select(low, high, middle, axis);
        for (int i = low; i < high; i++)
        {
            _side[Order[i]] = (byte)(i < middle ? 1 : 2);
        }

        // The smaller of the two fringes parts the halves.
        int left = Fringe(low, middle, 2), right = Fringe(middle, high, 1);
        bool fromLeft = left <= right;
        int end;
        if (fromLeft)
        {
            end = MoveFringe(low, middle, 2, towardEnd: true);
            // separator now at [end, middle): swap it behind the right half
            Rotate(end, middle, high);
            int size = middle - end;
            return Children(low, end, end, high - size, high, depth);
        }

        end = MoveFringe(middle, high, 1, towardEnd: true);
        return Children(low, middle, middle, end, high, depth);
    }

    private Front Children(int low, int leftEnd, int rightStart, int rightEnd, int high, int depth)
    {
        for (int i = low; i < high; i++)
        {
            _side[Order[i]] = 0;
        }

        Front? a = null, b = null;
        if (depth < 2 && high - low > 4000)
        {
            Parallel.Invoke(() => a = Split(low, leftEnd, depth + 1), () => b = Split(rightStart, rightEnd, depth + 1));
        }
        else
        {
            a = Split(low, leftEnd, depth + 1);
            b = Split(rightStart, rightEnd, depth + 1);
        }

        return new(rightEnd, high - rightEnd, [a!, b!]);
    }

    private int Fringe(int low, int high, byte other)
    {
        int count = 0;
        for (int i = low; i < high; i++)
        {
            count += Touches(Order[i], other) ? 1 : 0;
        }

        return count;
    }

    private bool Touches(int v, byte other)
    {
        for (int k = _start[v]; k < _start[v + 1]; k++)
        {
            if (_side[_neighbours[k]] == other)
            {
                return true;
            }
        }

        return false;
    }

    // Moves the fringe of a half to its end; gives where it begins. The neighbours' sides stay as they are meanwhile.
    private int MoveFringe(int low, int high, byte other, bool towardEnd)
    {
        int end = high;
        for (int i = low; i < end;)
        {
            if (towardEnd && Touches(Order[i], other))
            {
                end--;
                (Order[i], Order[end]) = (Order[end], Order[i]);
            }
            else
            {
                i++;
            }
        }

        return end;
    }

    // [from, middle) goes behind [middle, high).
    private void Rotate(int from, int middle, int high)
    {
        int[] part = Order[from..middle];
        Array.Copy(Order, middle, Order, from, high - middle);
        part.CopyTo(Order, high - part.Length);
    }

    private int Widest(int low, int high)
    {
        int widest = 0;
        double best = double.NegativeInfinity;
        for (int d = 0; d < _dimensions; d++)
        {
            double least = double.PositiveInfinity, most = double.NegativeInfinity;
            for (int i = low; i < high; i++)
            {
                double x = _places[Order[i] * _dimensions + d];
                least = Math.Min(least, x);
                most = Math.Max(most, x);
            }

            if (most - least > best)
            {
                (best, widest) = (most - least, d);
            }
        }

        return widest;
    }

    // Quickselect with the index as second key, so that equal places have one order.
    private void Select(int low, int high, int target, int axis)
    {
        int a = low, b = high - 1;
        while (a < b)
        {
            int pivot = Order[a + (b - a) / 2], i = a, j = b;
            double key = _places[pivot * _dimensions + axis];
            while (i <= j)
            {
                while (Before(Order[i], pivot, key, axis))
                {
                    i++;
                }

                while (Before(pivot, Order[j], _places[Order[j] * _dimensions + axis], axis))
                {
                    j--;
                }

                if (i <= j)
                {
                    (Order[i], Order[j]) = (Order[j], Order[i]);
                    i++;
                    j--;
                }
            }

            if (target <= j)
            {
                b = j;
            }
            else if (target >= i)
            {
                a = i;
            }
            else
            {
                return;
            }
        }
    }

    private bool Before(int v, int w, double placeOfW, int axis)
    {
        double x = _places[v * _dimensions + axis];
        return x < placeOfW || (x == placeOfW && v < w);
    }

    // Rows below the own columns, from the neighbours and the children.
    private void Rows(Front front, int depth)
    {
        if (depth < 2 && front.Children.Length == 2)
        {
            Parallel.Invoke(() => Rows(front.Children[0], depth + 1), () => Rows(front.Children[1], depth + 1));
        }
        else
        {
            foreach (Front child in front.Children)
            {
                Rows(child, depth + 1);
            }
        }

        int end = front.First + front.Columns;
        List<int> rows = [];
        foreach (Front child in front.Children)
        {
            foreach (int row in child.Rows)
            {
                if (row >= end)
                {
                    rows.Add(row);
                }
            }
        }

        for (int j = front.First; j < end; j++)
        {
            int v = Order[j];
            for (int k = _start[v]; k < _start[v + 1]; k++)
            {
                int row = Place[_neighbours[k]];
                if (row >= end)
                {
                    rows.Add(row);
                }
            }
        }

        rows.Sort();
        int kept = 0;
        for (int i = 0; i < rows.Count; i++)
        {
            if (i == 0 || rows[i] != rows[i - 1])
            {
                rows[kept++] = rows[i];
            }
        }

        front.Rows = [.. rows[..kept]];
        foreach (Front child in front.Children)
        {
            child.InParent = new int[child.Rows.Length];
            int at = 0;
            for (int i = 0; i < child.Rows.Length; i++)
            {
                int row = child.Rows[i];
                if (row < end)
                {
                    child.InParent[i] = row - front.First;
                    continue;
                }

                while (front.Rows[at] != row)
                {
                    at++;
                }

                child.InParent[i] = front.Columns + at;
            }
        }
    }
}

/// <summary>A front: columns that are eliminated together, and the rows below them.</summary>
internal sealed class Front(int first, int columns, Front[] children)
{
    public int First { get; } = first;

    public int Columns { get; } = columns;

    public Front[] Children { get; } = children;

    /// <summary>Rows below the own columns, rising (new indices).</summary>
    public int[] Rows { get; set; } = [];

    /// <summary>Where each row lies in the parent's front.</summary>
    public int[] InParent { get; set; } = [];

    public int Size => Columns + Rows.Length;

    /// <summary>Upper factor: own columns × size, row after row.</summary>
    public double[] Factor { get; set; } = [];

    /// <summary>What is left for the parent, while factorising.</summary>
    public double[]? Update { get; set; }

    /// <summary>What is left for the parent, while solving: two right sides.</summary>
    public double[] CarryX { get; set; } = [];

    public double[] CarryY { get; set; } = [];
}
