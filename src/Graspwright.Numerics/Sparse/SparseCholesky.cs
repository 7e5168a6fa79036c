using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Graspwright.Numerics;

/// <summary>Cholesky factor of a sparse symmetric positive definite matrix, by fronts.</summary>
/// <remarks>
/// The multifrontal method (Duff and Reid, "The multifrontal solution of indefinite sparse symmetric linear equations",
/// ACM TOMS 9 (1983)). Fronts of one subtree are one thread's; children are added in a fixed order, so the same matrix gives the same bits.
/// </remarks>
public sealed class SparseCholesky
{
    private const int Block = 32, Deep = 3;

    private readonly Dissection _order;
    private readonly double[] _workX, _workY;

    private SparseCholesky(Dissection order)
    {
        _order = order;
        (_workX, _workY) = (new double[order.Order.Length], new double[order.Order.Length]);
    }

    /// <summary>Factorises.</summary>
    /// <param name="order">Order of elimination of the graph.</param>
    /// <param name="diagonal">Diagonal.</param>
    /// <param name="values">Value of each entry of the graph's neighbours.</param>
    /// <returns>The factor; <see langword="null"/> = the matrix is not positive definite.</returns>
    public static SparseCholesky? Factorise(Dissection order, double[] diagonal, double[] values)
    {
        ArgumentNullException.ThrowIfNull(order);
        SparseCholesky factor = new(order);
        return factor.Eliminate(order.Root, diagonal, values, 0) ? factor : null;
    }

    /// <summary>Solves for two right sides at once, in place.</summary>
    /// <param name="x">First right side, then the solution.</param>
    /// <param name="y">Second right side, then the solution.</param>
    public void Solve(double[] x, double[] y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        int[] old = _order.Order;
        for (int i = 0; i < old.Length; i++)
        {
            (_workX[i], _workY[i]) = (x[old[i]], y[old[i]]);
        }

        Forward(_order.Root, 0);
        Backward(_order.Root, 0);
        for (int i = 0; i < old.Length; i++)
        {
            (x[old[i]], y[old[i]]) = (_workX[i], _workY[i]);
        }
    }

    private bool Eliminate(Front front, double[] diagonal, double[] values, int depth)
    {
        bool fine = true;
        if (depth < Deep && front.Children.Length == 2)
        {
            bool a = false, b = false;
            Parallel.Invoke(() => a = Eliminate(front.Children[0], diagonal, values, depth + 1), () => b = Eliminate(front.Children[1], diagonal, values, depth + 1));
            fine = a && b;
        }
        else
        {
            foreach (Front child in front.Children)
            {
                fine &= Eliminate(child, diagonal, values, depth + 1);
            }
        }

        return fine && Assemble(front, diagonal, values);
    }

    private bool Assemble(Front front, double[] diagonal, double[] values)
    {
        int size = front.Size, own = front.Columns, left = size - own;
        double[] f = ArrayPool<double>.Shared.Rent(size * size);
        Array.Clear(f, 0, size * size);
        for (int j = 0; j < own; j++)
        {
            int v = _order.Order[front.First + j];
            f[j * size + j] += diagonal[v];
            for (int k = _order.Start[v]; k < _order.Start[v + 1]; k++)
            {
                int row = _order.Place[_order.Neighbours[k]], at = row - front.First;
                if (at > j)
                {
                    f[j * size + (at < own ? at : own + Array.BinarySearch(front.Rows, row))] += values[k];
                }
            }
        }

        foreach (Front child in front.Children)
        {
            Add(child, f, size);
        }

        bool fine = Partial(f, size, own);
        if (front.Factor.Length != own * size)
        {
            front.Factor = new double[own * size];
        }

        Array.Copy(f, front.Factor, own * size);
        if (left > 0)
        {
            double[] update = ArrayPool<double>.Shared.Rent(left * left);
            for (int i = 0; i < left; i++)
            {
                Array.Copy(f, (own + i) * size + own + i, update, i * left + i, left - i);
            }

            front.Update = update;
        }

        if (front.CarryX.Length != left)
        {
            (front.CarryX, front.CarryY) = (new double[left], new double[left]);
        }

        ArrayPool<double>.Shared.Return(f);
        return fine;
    }

    private static void Add(Front child, double[] f, int size)
    {
        if (child.Update is not { } update)
        {
            return;
        }

        int[] at = child.InParent;
        int left = at.Length;
        for (int i = 0; i < left; i++)
        {
            int row = at[i] * size;
            int from = i * left;
            for (int j = i; j < left; j++)
            {
                f[row + at[j]] += update[from + j];
            }
        }

        ArrayPool<double>.Shared.Return(update);
        child.Update = null;
    }

    // Upper factor of the first columns, in place; the rest gets the Schur complement. Only entries right of the diagonal count.
    private static bool Partial(double[] f, int size, int own)
    {
        ref double a = ref MemoryMarshal.GetArrayDataReference(f);
        for (int k0 = 0; k0 < own; k0 += Block)
        {
            int k1 = Math.Min(own, k0 + Block);
            for (int k = k0; k < k1; k++)
            {
                double d = f[k * size + k];
                if (!(d > 0) || !double.IsFinite(d))
                {
                    return false;
                }

                double root = 1 / Math.Sqrt(d);
                Span<double> row = f.AsSpan(k * size + k, size - k);
                for (int j = 0; j < row.Length; j++)
                {
                    row[j] *= root;
                }

                for (int i = k + 1; i < k1; i++)
                {
                    Subtract(ref Unsafe.Add(ref a, i * size + i), ref Unsafe.Add(ref a, k * size + i), f[k * size + i], size - i);
                }
            }

            Trail(ref a, size, k0, k1);
        }

        return true;
    }

    private static void Trail(ref double a, int size, int k0, int k1)
    {
        int i = k1;
        for (; i + 4 <= size; i += 4)
        {
            int j = i;
            for (; j + 8 <= size; j += 8)
            {
                Tile(ref a, size, k0, k1, i, j);
            }

            for (; j < size; j++)
            {
                for (int r = i; r < i + 4 && r <= j; r++)
                {
                    double sum = 0;
                    for (int k = k0; k < k1; k++)
                    {
                        sum += Unsafe.Add(ref a, k * size + r) * Unsafe.Add(ref a, k * size + j);
                    }

                    Unsafe.Add(ref a, r * size + j) -= sum;
                }
            }
        }

        for (; i < size; i++)
        {
            for (int k = k0; k < k1; k++)
            {
                Subtract(ref Unsafe.Add(ref a, i * size + i), ref Unsafe.Add(ref a, k * size + i), Unsafe.Add(ref a, k * size + i), size - i);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Tile(ref double a, int size, int k0, int k1, int i, int j)
    {
        Vector256<double> c00 = default, c01 = default, c10 = default, c11 = default, c20 = default, c21 = default, c30 = default, c31 = default;
        for (int k = k0; k < k1; k++)
        {
            ref double row = ref Unsafe.Add(ref a, k * size);
            Vector256<double> b0 = Vector256.LoadUnsafe(ref Unsafe.Add(ref row, j)), b1 = Vector256.LoadUnsafe(ref Unsafe.Add(ref row, j + 4));
            Vector256<double> s = Vector256.Create(Unsafe.Add(ref row, i));
            c00 = Vector256.FusedMultiplyAdd(s, b0, c00);
            c01 = Vector256.FusedMultiplyAdd(s, b1, c01);
            s = Vector256.Create(Unsafe.Add(ref row, i + 1));
            c10 = Vector256.FusedMultiplyAdd(s, b0, c10);
            c11 = Vector256.FusedMultiplyAdd(s, b1, c11);
            s = Vector256.Create(Unsafe.Add(ref row, i + 2));
            c20 = Vector256.FusedMultiplyAdd(s, b0, c20);
            c21 = Vector256.FusedMultiplyAdd(s, b1, c21);
            s = Vector256.Create(Unsafe.Add(ref row, i + 3));
            c30 = Vector256.FusedMultiplyAdd(s, b0, c30);
            c31 = Vector256.FusedMultiplyAdd(s, b1, c31);
        }

        Store(ref Unsafe.Add(ref a, i * size + j), c00, c01);
        Store(ref Unsafe.Add(ref a, (i + 1) * size + j), c10, c11);
        Store(ref Unsafe.Add(ref a, (i + 2) * size + j), c20, c21);
        Store(ref Unsafe.Add(ref a, (i + 3) * size + j), c30, c31);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double to, Vector256<double> s0, Vector256<double> s1)
    {
        (Vector256.LoadUnsafe(ref to) - s0).StoreUnsafe(ref to);
        (Vector256.LoadUnsafe(ref Unsafe.Add(ref to, 4)) - s1).StoreUnsafe(ref Unsafe.Add(ref to, 4));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Subtract(ref double to, ref double from, double factor, int count)
    {
        Vector256<double> s = Vector256.Create(-factor);
        int j = 0;
        for (; j + 4 <= count; j += 4)
        {
            Vector256.FusedMultiplyAdd(s, Vector256.LoadUnsafe(ref Unsafe.Add(ref from, j)), Vector256.LoadUnsafe(ref Unsafe.Add(ref to, j))).StoreUnsafe(ref Unsafe.Add(ref to, j));
        }

        for (; j < count; j++)
        {
            Unsafe.Add(ref to, j) -= factor * Unsafe.Add(ref from, j);
        }
    }

    private void Forward(Front front, int depth)
    {
        if (depth < Deep && front.Children.Length == 2)
        {
            Parallel.Invoke(() => Forward(front.Children[0], depth + 1), () => Forward(front.Children[1], depth + 1));
        }
        else
        {
            foreach (Front child in front.Children)
            {
                Forward(child, depth + 1);
            }
        }

        int size = front.Size, own = front.Columns, left = size - own;
        double[] tx = ArrayPool<double>.Shared.Rent(size), ty = ArrayPool<double>.Shared.Rent(size);
        Array.Copy(_workX, front.First, tx, 0, own);
        Array.Copy(_workY, front.First, ty, 0, own);
        Array.Clear(tx, own, left);
        Array.Clear(ty, own, left);
        foreach (Front child in front.Children)
        {
            for (int i = 0; i < child.InParent.Length; i++)
            {
                tx[child.InParent[i]] += child.CarryX[i];
                ty[child.InParent[i]] += child.CarryY[i];
            }
        }

        ref double u = ref MemoryMarshal.GetArrayDataReference(front.Factor);
        ref double x = ref MemoryMarshal.GetArrayDataReference(tx);
        ref double y = ref MemoryMarshal.GetArrayDataReference(ty);
        for (int k = 0; k < own; k++)
        {
            ref double row = ref Unsafe.Add(ref u, k * size);
            double d = 1 / Unsafe.Add(ref row, k), xk = Unsafe.Add(ref x, k) * d, yk = Unsafe.Add(ref y, k) * d;
            Unsafe.Add(ref x, k) = xk;
            Unsafe.Add(ref y, k) = yk;
            Subtract(ref Unsafe.Add(ref x, k + 1), ref Unsafe.Add(ref row, k + 1), xk, size - k - 1);
            Subtract(ref Unsafe.Add(ref y, k + 1), ref Unsafe.Add(ref row, k + 1), yk, size - k - 1);
        }

        Array.Copy(tx, 0, _workX, front.First, own);
        Array.Copy(ty, 0, _workY, front.First, own);
        Array.Copy(tx, own, front.CarryX, 0, left);
        Array.Copy(ty, own, front.CarryY, 0, left);
        ArrayPool<double>.Shared.Return(tx);
        ArrayPool<double>.Shared.Return(ty);
    }

    private void Backward(Front front, int depth)
    {
        int size = front.Size, own = front.Columns;
        double[] tx = ArrayPool<double>.Shared.Rent(size), ty = ArrayPool<double>.Shared.Rent(size);
        Array.Copy(_workX, front.First, tx, 0, own);
        Array.Copy(_workY, front.First, ty, 0, own);
        for (int i = 0; i < front.Rows.Length; i++)
        {
            (tx[own + i], ty[own + i]) = (_workX[front.Rows[i]], _workY[front.Rows[i]]);
        }

        ref double u = ref MemoryMarshal.GetArrayDataReference(front.Factor);
        ref double x = ref MemoryMarshal.GetArrayDataReference(tx);
        ref double y = ref MemoryMarshal.GetArrayDataReference(ty);
        for (int k = own - 1; k >= 0; k--)
        {
            ref double row = ref Unsafe.Add(ref u, k * size);
            (double sx, double sy) = Dots(ref Unsafe.Add(ref row, k + 1), ref Unsafe.Add(ref x, k + 1), ref Unsafe.Add(ref y, k + 1), size - k - 1);
            double d = 1 / Unsafe.Add(ref row, k);
            Unsafe.Add(ref x, k) = (Unsafe.Add(ref x, k) - sx) * d;
            Unsafe.Add(ref y, k) = (Unsafe.Add(ref y, k) - sy) * d;
        }

        Array.Copy(tx, 0, _workX, front.First, own);
        Array.Copy(ty, 0, _workY, front.First, own);
        ArrayPool<double>.Shared.Return(tx);
        ArrayPool<double>.Shared.Return(ty);
        if (depth < Deep && front.Children.Length == 2)
        {
            Parallel.Invoke(() => Backward(front.Children[0], depth + 1), () => Backward(front.Children[1], depth + 1));
        }
        else
        {
            foreach (Front child in front.Children)
            {
                Backward(child, depth + 1);
            }
        }
    }

    private static (double X, double Y) Dots(ref double a, ref double x, ref double y, int count)
    {
        Vector256<double> sx = default, sy = default;
        int j = 0;
        for (; j + 4 <= count; j += 4)
        {
            Vector256<double> v = Vector256.LoadUnsafe(ref Unsafe.Add(ref a, j));
            sx = Vector256.FusedMultiplyAdd(v, Vector256.LoadUnsafe(ref Unsafe.Add(ref x, j)), sx);
            sy = Vector256.FusedMultiplyAdd(v, Vector256.LoadUnsafe(ref Unsafe.Add(ref y, j)), sy);
        }

        double rx = Vector256.Sum(sx), ry = Vector256.Sum(sy);
        for (; j < count; j++)
        {
            rx += Unsafe.Add(ref a, j) * Unsafe.Add(ref x, j);
            ry += Unsafe.Add(ref a, j) * Unsafe.Add(ref y, j);
        }

        return (rx, ry);
    }
}
