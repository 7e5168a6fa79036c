using System.Runtime.InteropServices;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>A square matrix whose fingers couple only through the trunk: [A B; C D] with D made of small blocks.</summary>
/// <remarks>
/// The trunk holds crank, slot, carriage and bar tilts; each finger is a block of one or three unknowns, which meets the
/// trunk in the carriage and the bars alone. Four fingers stand side by side in the lanes of one block. Eliminating the
/// fingers first leaves a Schur complement of the trunk's size, so a factorisation costs a few hundred multiplications.
/// No pivoting: at a stable equilibrium the matrix is (near) symmetric positive definite, where elimination in any
/// order is stable; the pivots say whether it is.
/// </remarks>
internal sealed partial class ArrowMatrix
{
    private const int FirstReached = DriveEquations.Carriage; // trunk unknowns from here on meet the fingers
    private readonly Lane[] _rows;      // Schur complement, then its upper factor
    private readonly double[] _lower;   // factors below the diagonal
    private readonly double[] _pivotInverse;
    private readonly int _reached;

    /// <summary>Storage for a trunk and its fingers.</summary>
    /// <param name="trunk">Size of the trunk.</param>
    /// <param name="offsets">First unknown of each finger.</param>
    /// <param name="sizes">Unknowns of each finger, 1 or 3.</param>
    public ArrowMatrix(int trunk, int[] offsets, int[] sizes)
    {
        Trunk = trunk;
        _reached = trunk - FirstReached;
        Stride = (trunk + FingerGroup.Lanes - 1) / FingerGroup.Lanes * FingerGroup.Lanes;
        A = new double[trunk * Stride];
        _rows = new Lane[A.Length / FingerGroup.Lanes];
        _lower = new double[A.Length];
        _pivotInverse = new double[trunk];
        Blocks = new Fingers[(sizes.Length + FingerGroup.Lanes - 1) / FingerGroup.Lanes];
        for (int g = 0; g < Blocks.Length; g++)
        {
            int first = g * FingerGroup.Lanes, count = Math.Min(FingerGroup.Lanes, sizes.Length - first);
            Blocks[g] = new Fingers(_reached, offsets.AsSpan(first, count), sizes.AsSpan(first, count));
        }
    }

    /// <summary>Size of the trunk.</summary>
    public int Trunk { get; }

    /// <summary>From one trunk row to the next in <see cref="A"/>: the trunk's size, filled up to whole lanes.</summary>
    public int Stride { get; }

    /// <summary>Trunk rows × trunk columns, row by row.</summary>
    public double[] A { get; }

    /// <summary>The fingers' rows and columns, four fingers a block.</summary>
    public Fingers[] Blocks { get; }

    /// <summary>Smallest pivot of the last factorisation ÷ its diagonal entry; at or below 0 = not positive definite.</summary>
    public double SmallestPivot { get; private set; }

    /// <summary>Row i of the matrix times a vector.</summary>
    public double RowTimes(int row, ReadOnlySpan<double> x)
    {
        double sum = 0;
        if (row < Trunk)
        {
            for (int a = 0; a < Trunk; a++)
            {
                sum += A[row * Stride + a] * x[a];
            }

            foreach (Fingers block in Blocks)
            {
                sum += row < FirstReached ? 0 : block.TrunkRowTimes(row - FirstReached, x);
            }

            return sum;
        }

        foreach (Fingers block in Blocks)
        {
            if (block.TryRowTimes(row, x, out sum))
            {
                return sum;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(row), row, "No such row.");
    }

    /// <summary>Factors the matrix with the held unknowns taken out.</summary>
    /// <param name="held">Unknowns that do not move.</param>
    /// <param name="ridge">Added to each diagonal entry, so that flat directions stay where they are.</param>
    public void Factor(ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
    {
        SmallestPivot = double.PositiveInfinity;
        int n = Trunk, stride = Stride;
        Span<Lane> rows = _rows;
        Span<double> s = MemoryMarshal.Cast<Lane, double>(rows);
        A.AsSpan().CopyTo(s);
        for (int a = 0; a < n; a++)
        {
            s[a * stride + a] += ridge[a];
        }

        foreach (Fingers block in Blocks)
        {
            SmallestPivot = Math.Min(SmallestPivot, block.Eliminate(held, ridge, s, stride));
        }

        for (int a = 0; a < n; a++)
        {
            if (held[a])
            {
                for (int b = 0; b < n; b++)
                {
                    s[a * stride + b] = 0;
                    s[b * stride + a] = 0;
                }

                s[a * stride + a] = 1;
            }
        }

        // Whole rows at once; what that leaves to the left of the diagonal is not read again.
        int lanes = stride / FingerGroup.Lanes;
        for (int k = 0; k < n; k++)
        {
            double pivot = s[k * stride + k];
            if (!held[k])
            {
                SmallestPivot = Math.Min(SmallestPivot, pivot / Math.Max(Math.Abs(A[k * stride + k]) + ridge[k], Fingers.Tiny));
            }

            double inverse = 1 / (pivot == 0 ? Fingers.Tiny : pivot);
            _pivotInverse[k] = inverse;
            ReadOnlySpan<Lane> pivotRow = rows.Slice(k * lanes, lanes);
            for (int i = k + 1; i < n; i++)
            {
                double factor = s[i * stride + k] * inverse;
                _lower[i * stride + k] = factor;
                Span<Lane> row = rows.Slice(i * lanes, pivotRow.Length);
                for (int l = 0; l < pivotRow.Length; l++)
                {
                    row[l] -= factor * pivotRow[l];
                }
            }
        }
    }

    /// <summary>Solves with the last factorisation. Entries of held unknowns are ignored and come out 0.</summary>
    /// <param name="right">Right side; replaced by the solution.</param>
    /// <param name="held">The same held unknowns as in <see cref="Factor"/>.</param>
    public void Solve(Span<double> right, ReadOnlySpan<bool> held)
    {
        int n = Trunk, stride = Stride;
        Span<double> x = right[..n];
        foreach (Fingers block in Blocks)
        {
            block.Reduce(right, x[FirstReached..]);
        }

        for (int a = 0; a < n; a++)
        {
            x[a] = held[a] ? 0 : x[a];
        }

        for (int i = 1; i < n; i++)
        {
            ReadOnlySpan<double> row = _lower.AsSpan(i * stride, i);
            double sum = x[i];
            for (int j = 0; j < row.Length; j++)
            {
                sum -= row[j] * x[j];
            }

            x[i] = sum;
        }

        ReadOnlySpan<double> s = MemoryMarshal.Cast<Lane, double>(_rows.AsSpan());
        for (int i = n - 1; i >= 0; i--)
        {
            ReadOnlySpan<double> row = s.Slice(i * stride, n);
            double sum = x[i];
            for (int j = i + 1; j < row.Length; j++)
            {
                sum -= row[j] * x[j];
            }

            x[i] = sum * _pivotInverse[i];
        }

        foreach (Fingers block in Blocks)
        {
            block.Complete(right, x[FirstReached..]);
        }
    }
}
