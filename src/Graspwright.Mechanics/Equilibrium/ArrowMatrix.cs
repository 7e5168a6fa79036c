namespace Graspwright.Mechanics.Equilibrium;

/// <summary>A square matrix whose fingers couple only through the trunk: [A B; C D] with D made of small blocks.</summary>
/// <remarks>
/// The trunk holds crank, slot, carriage and bar tilts; each finger is a block of one or three joints. Eliminating the
/// fingers first leaves a Schur complement of the trunk's size, so a factorisation costs a few hundred multiplications.
/// No pivoting: at a stable equilibrium the matrix is (near) symmetric positive definite, where elimination in any
/// order is stable; the pivots say whether it is.
/// </remarks>
internal sealed class ArrowMatrix
{
    private const int MaxBlock = 3;
    private readonly int _fingers;
    private readonly double[] _inverse;   // D⁻¹, per finger 3×3
    private readonly double[] _eliminated; // E = D⁻¹C, per finger 3×nt
    private readonly double[] _schur;

    private readonly int[][] _reached; // trunk unknowns that each finger couples to

    /// <summary>Storage for a trunk and its fingers.</summary>
    /// <param name="trunk">Size of the trunk.</param>
    /// <param name="offsets">First unknown of each finger.</param>
    /// <param name="sizes">Unknowns of each finger, 1 or 3.</param>
    /// <param name="reached">Trunk unknowns that each finger couples to; all others are 0 in its B and C.</param>
    public ArrowMatrix(int trunk, int[] offsets, int[] sizes, int[][] reached)
    {
        _reached = reached;
        Trunk = trunk;
        Offsets = offsets;
        Sizes = sizes;
        _fingers = sizes.Length;
        A = new double[trunk * trunk];
        B = new double[_fingers * trunk * MaxBlock];
        C = new double[_fingers * MaxBlock * trunk];
        D = new double[_fingers * MaxBlock * MaxBlock];
        _inverse = new double[D.Length];
        _eliminated = new double[C.Length];
        _schur = new double[A.Length];
    }

    /// <summary>Size of the trunk.</summary>
    public int Trunk { get; }

    /// <summary>First unknown of each finger.</summary>
    public int[] Offsets { get; }

    /// <summary>Unknowns of each finger, 1 or 3.</summary>
    public int[] Sizes { get; }

    /// <summary>Trunk rows × trunk columns, row by row.</summary>
    public double[] A { get; }

    /// <summary>Trunk rows × finger columns: entry (a, q) of finger f at (f·nt + a)·3 + q.</summary>
    public double[] B { get; }

    /// <summary>Finger rows × trunk columns: entry (q, a) of finger f at (f·3 + q)·nt + a.</summary>
    public double[] C { get; }

    /// <summary>Finger rows × finger columns: entry (q, p) of finger f at (f·3 + q)·3 + p.</summary>
    public double[] D { get; }

    /// <summary>Smallest pivot of the last factorisation ÷ its diagonal entry; at or below 0 = not positive definite.</summary>
    public double SmallestPivot { get; private set; }

    /// <summary>Sets every entry to 0.</summary>
    public void Clear()
    {
        Array.Clear(A);
        Array.Clear(B);
        Array.Clear(C);
        Array.Clear(D);
    }

    /// <summary>Row i of the matrix times a vector.</summary>
    public double RowTimes(int row, ReadOnlySpan<double> x)
    {
        double sum = 0;
        if (row < Trunk)
        {
            for (int a = 0; a < Trunk; a++)
            {
                sum += A[row * Trunk + a] * x[a];
            }

            for (int f = 0; f < _fingers; f++)
            {
                for (int q = 0; q < Sizes[f]; q++)
                {
                    sum += B[(f * Trunk + row) * MaxBlock + q] * x[Offsets[f] + q];
                }
            }

            return sum;
        }

        int finger = FingerOf(row);
        int local = row - Offsets[finger];
        for (int a = 0; a < Trunk; a++)
        {
            sum += C[(finger * MaxBlock + local) * Trunk + a] * x[a];
        }

        for (int p = 0; p < Sizes[finger]; p++)
        {
            sum += D[(finger * MaxBlock + local) * MaxBlock + p] * x[Offsets[finger] + p];
        }

        return sum;
    }

    /// <summary>Factors the matrix with the held unknowns taken out.</summary>
    /// <param name="held">Unknowns that do not move.</param>
    /// <param name="ridge">Added to each diagonal entry, so that flat directions stay where they are.</param>
    public void Factor(ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
    {
        SmallestPivot = double.PositiveInfinity;
        Array.Copy(A, _schur, A.Length);
        int nt = Trunk;
        for (int a = 0; a < nt; a++)
        {
            _schur[a * nt + a] += ridge[a];
        }

        for (int f = 0; f < _fingers; f++)
        {
            EliminateFinger(f, held, ridge);
        }

        for (int a = 0; a < nt; a++)
        {
            if (!held[a])
            {
                continue;
            }

            for (int b = 0; b < nt; b++)
            {
                _schur[a * nt + b] = 0;
                _schur[b * nt + a] = 0;
            }

            _schur[a * nt + a] = 1;
        }

        for (int k = 0; k < nt; k++)
        {
            double pivot = _schur[k * nt + k];
            if (!held[k])
            {
                NotePivot(pivot, Math.Abs(A[k * nt + k]) + ridge[k]);
            }

            pivot = Usable(pivot);
            _schur[k * nt + k] = pivot;
            for (int i = k + 1; i < nt; i++)
            {
                double factor = _schur[i * nt + k] / pivot;
                _schur[i * nt + k] = factor;
                if (factor == 0)
                {
                    continue;
                }

                for (int j = k + 1; j < nt; j++)
                {
                    _schur[i * nt + j] -= factor * _schur[k * nt + j];
                }
            }
        }
    }

    /// <summary>Solves with the last factorisation. Entries of held unknowns are ignored and come out 0.</summary>
    /// <param name="right">Right side; replaced by the solution.</param>
    /// <param name="held">The same held unknowns as in <see cref="Factor"/>.</param>
    public void Solve(Span<double> right, ReadOnlySpan<bool> held)
    {
        int nt = Trunk;
        Span<double> y = stackalloc double[MaxBlock];
        for (int i = 0; i < right.Length; i++)
        {
            if (held[i])
            {
                right[i] = 0;
            }
        }

        for (int f = 0; f < _fingers; f++)
        {
            int m = Sizes[f], o = Offsets[f];
            ApplyInverse(f, right.Slice(o, m), y);
            y[..m].CopyTo(right[o..]);
            foreach (int a in _reached[f])
            {
                if (held[a])
                {
                    continue;
                }

                for (int q = 0; q < m; q++)
                {
                    right[a] -= B[(f * nt + a) * MaxBlock + q] * right[o + q];
                }
            }
        }

        for (int i = 1; i < nt; i++)
        {
            for (int j = 0; j < i; j++)
            {
                right[i] -= _schur[i * nt + j] * right[j];
            }
        }

        for (int i = nt - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < nt; j++)
            {
                right[i] -= _schur[i * nt + j] * right[j];
            }

            right[i] /= _schur[i * nt + i];
        }

        for (int f = 0; f < _fingers; f++)
        {
            int o = Offsets[f];
            for (int q = 0; q < Sizes[f]; q++)
            {
                double sum = 0;
                foreach (int a in _reached[f])
                {
                    sum += _eliminated[(f * MaxBlock + q) * nt + a] * right[a];
                }

                right[o + q] -= sum;
            }
        }
    }

    private static double Usable(double pivot) => pivot == 0 ? double.Epsilon * 1e300 : pivot;

    private int FingerOf(int row)
    {
        int f = 0;
        while (row >= Offsets[f] + Sizes[f])
        {
            f++;
        }

        return f;
    }

    private void NotePivot(double pivot, double diagonal) =>
        SmallestPivot = Math.Min(SmallestPivot, pivot / Math.Max(diagonal, double.Epsilon * 1e300));

    private void ApplyInverse(int f, ReadOnlySpan<double> v, Span<double> result)
    {
        int m = v.Length;
        for (int q = 0; q < m; q++)
        {
            double sum = 0;
            for (int p = 0; p < m; p++)
            {
                sum += _inverse[(f * MaxBlock + q) * MaxBlock + p] * v[p];
            }

            result[q] = sum;
        }
    }

    private void EliminateFinger(int f, ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
    {
        int m = Sizes[f], o = Offsets[f], nt = Trunk, d0 = f * MaxBlock * MaxBlock;
        int[] reached = _reached[f];
        InvertBlock(f, held.Slice(o, m), ridge.Slice(o, m));
        for (int q = 0; q < m; q++)
        {
            foreach (int a in reached)
            {
                double sum = 0;
                if (!held[a])
                {
                    for (int p = 0; p < m; p++)
                    {
                        sum += _inverse[d0 + q * MaxBlock + p] * C[(f * MaxBlock + p) * nt + a];
                    }
                }

                _eliminated[(f * MaxBlock + q) * nt + a] = sum;
            }
        }

        foreach (int a in reached)
        {
            for (int q = 0; q < m; q++)
            {
                double entry = B[(f * nt + a) * MaxBlock + q];
                foreach (int b in reached)
                {
                    _schur[a * nt + b] -= entry * _eliminated[(f * MaxBlock + q) * nt + b];
                }
            }
        }
    }

    /// <summary>D⁻¹ of a finger, held rows and columns 0; pivots from the leading minors.</summary>
    private void InvertBlock(int f, ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
    {
        int d0 = f * MaxBlock * MaxBlock;
        if (held.Length == 1)
        {
            double only = D[d0] + ridge[0];
            if (!held[0])
            {
                NotePivot(only, Math.Abs(D[d0]) + ridge[0]);
            }

            _inverse[d0] = held[0] ? 0 : 1 / Usable(only);
            return;
        }

        bool h0 = held[0], h1 = held[1], h2 = held[2];
        double a = h0 ? 1 : D[d0] + ridge[0], b = h0 || h1 ? 0 : D[d0 + 1], c = h0 || h2 ? 0 : D[d0 + 2];
        double d = h0 || h1 ? 0 : D[d0 + 3], e = h1 ? 1 : D[d0 + 4] + ridge[1], g = h1 || h2 ? 0 : D[d0 + 5];
        double h = h0 || h2 ? 0 : D[d0 + 6], i = h1 || h2 ? 0 : D[d0 + 7], k = h2 ? 1 : D[d0 + 8] + ridge[2];
        double minor2 = a * e - b * d;
        double c00 = e * k - g * i, c01 = g * h - d * k, c02 = d * i - e * h;
        double determinant = Usable(a * c00 + b * c01 + c * c02);
        NoteMinor(h0, a, Math.Abs(a));
        NoteMinor(h1, minor2 / Usable(a), Math.Abs(e));
        NoteMinor(h2, determinant / Usable(minor2), Math.Abs(k));
        double scale = 1 / determinant;
        Span<double> inverse = _inverse.AsSpan(d0, 9);
        inverse[0] = h0 ? 0 : c00 * scale;
        inverse[1] = h0 || h1 ? 0 : (c * i - b * k) * scale;
        inverse[2] = h0 || h2 ? 0 : (b * g - c * e) * scale;
        inverse[3] = h0 || h1 ? 0 : c01 * scale;
        inverse[4] = h1 ? 0 : (a * k - c * h) * scale;
        inverse[5] = h1 || h2 ? 0 : (c * d - a * g) * scale;
        inverse[6] = h0 || h2 ? 0 : c02 * scale;
        inverse[7] = h1 || h2 ? 0 : (b * h - a * i) * scale;
        inverse[8] = h2 ? 0 : minor2 * scale;
    }

    private void NoteMinor(bool held, double pivot, double diagonal)
    {
        if (!held)
        {
            NotePivot(pivot, diagonal);
        }
    }
}
