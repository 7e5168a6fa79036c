namespace Graspwright.Mechanics.Holding;

/// <content>The basis: its inverse, its exchange of one column, its values.</content>
internal sealed partial class ConeProgram
{
    private void Pivot(int leaves, int owner, double cost)
    {
        double pivot = _direction[leaves], amount = Math.Max(0, _value[leaves]) / Math.Abs(pivot);
        for (int r = 0; r < _rows; r++)
        {
            if (r == leaves)
            {
                continue;
            }

            double factor = _direction[r] / pivot;
            _value[r] -= amount * _direction[r];
            for (int i = 0; i < _rows; i++)
            {
                _inverse[r * _rows + i] -= factor * _inverse[leaves * _rows + i];
            }
        }

        for (int i = 0; i < _rows; i++)
        {
            _inverse[leaves * _rows + i] /= pivot;
            _columns[leaves * _rows + i] = _entering[i];
        }

        _value[leaves] = amount;
        _owner[leaves] = owner;
        _cost[leaves] = cost;
    }

    /// <summary>Inverts the basis afresh and finds the values again: what rounding gathered is gone.</summary>
    private void Invert()
    {
        double[] work = new double[_rows * 2 * _rows];
        int width = 2 * _rows;
        for (int r = 0; r < _rows; r++)
        {
            for (int i = 0; i < _rows; i++)
            {
                work[i * width + r] = _columns[r * _rows + i];
            }

            work[r * width + _rows + r] = 1;
        }

        for (int c = 0; c < _rows; c++)
        {
            int p = c;
            for (int r = c + 1; r < _rows; r++)
            {
                p = Math.Abs(work[r * width + c]) > Math.Abs(work[p * width + c]) ? r : p;
            }

            if (Math.Abs(work[p * width + c]) < 1e-14)
            {
                return; // two edges of one cone have come together: keep what there is
            }

            for (int i = 0; i < width; i++)
            {
                (work[p * width + i], work[c * width + i]) = (work[c * width + i], work[p * width + i]);
            }

            double inverse = 1 / work[c * width + c];
            for (int i = c; i < width; i++)
            {
                work[c * width + i] *= inverse;
            }

            for (int r = 0; r < _rows; r++)
            {
                double factor = work[r * width + c];
                if (r == c || factor == 0)
                {
                    continue;
                }

                for (int i = c; i < width; i++)
                {
                    work[r * width + i] -= factor * work[c * width + i];
                }
            }
        }

        for (int r = 0; r < _rows; r++)
        {
            for (int i = 0; i < _rows; i++)
            {
                _inverse[r * _rows + i] = work[r * width + _rows + i];
            }
        }

        Values();
    }

    private void Values()
    {
        Array.Clear(_value);
        for (int round = 0; round < 4; round++)
        {
            Refine();
        }
    }

    /// <summary>Adds to the values what the rows still lack: neighbouring edges of one cone make a basis that an inverse alone does not satisfy.</summary>
    private void Refine()
    {
        for (int i = 0; i < _rows; i++)
        {
            double left = _right[i] + _shift[i];
            for (int r = 0; r < _rows; r++)
            {
                left -= _value[r] * _columns[r * _rows + i];
            }

            _direction[i] = left;
        }

        for (int r = 0; r < _rows; r++)
        {
            double add = 0;
            for (int i = 0; i < _rows; i++)
            {
                add += _inverse[r * _rows + i] * _direction[i];
            }

            _value[r] += add;
        }
    }
}
