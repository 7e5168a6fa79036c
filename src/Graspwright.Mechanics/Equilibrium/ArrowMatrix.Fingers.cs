using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>The rows and columns of up to four fingers.</content>
internal sealed partial class ArrowMatrix
{
    /// <summary>Up to four fingers, one in each lane. A finger of one unknown beside wider ones has unit rows for those it lacks.</summary>
    internal sealed class Fingers
    {
        /// <summary>Stands for a pivot of 0.</summary>
        public const double Tiny = double.Epsilon * 1e300;

        private readonly int _count, _width, _reached;
        private readonly int[] _at = new int[3 * FingerGroup.Lanes]; // unknown q of a lane: 4q + lane
        private readonly int[] _sizes;
        private readonly Lane[] _eliminated; // E = D⁻¹C: entry (q, i) at 3i + q
        private readonly bool[] _has = new bool[3 * FingerGroup.Lanes];
        private readonly Lane[] _inverse = new Lane[9], _reduced = new Lane[3];

        /// <summary>Derivatives of trunk row i (carriage, bars) by finger unknown q, at 3i + q.</summary>
        public readonly Lane[] B;

        /// <summary>Derivatives of finger row q by trunk unknown i (carriage, bars), at 3i + q.</summary>
        public readonly Lane[] C;

        /// <summary>Derivatives of finger row q by finger unknown p, at 3q + p.</summary>
        public readonly Lane[] D = new Lane[9];

        /// <summary>Lays out a block.</summary>
        public Fingers(int reached, ReadOnlySpan<int> offsets, ReadOnlySpan<int> sizes)
        {
            _count = offsets.Length;
            _reached = reached;
            _sizes = sizes.ToArray();
            foreach (int size in _sizes)
            {
                _width = Math.Max(_width, size);
            }

            for (int i = 0; i < _at.Length; i++)
            {
                int lane = Math.Min(i % FingerGroup.Lanes, _count - 1), q = i / FingerGroup.Lanes;
                _has[i] = i % FingerGroup.Lanes < _count && q < _sizes[lane];
                _at[i] = offsets[lane] + Math.Min(q, _sizes[lane] - 1);
            }

            B = new Lane[3 * reached];
            C = new Lane[3 * reached];
            _eliminated = new Lane[3 * reached];
        }

        /// <summary>Trunk row (carriage, bars) times the fingers' part of a vector.</summary>
        public double TrunkRowTimes(int row, ReadOnlySpan<double> x)
        {
            Lane sum = default;
            for (int q = 0; q < _width; q++)
            {
                sum += B[3 * row + q] * Take(x, q);
            }

            return Vector256.Sum(sum);
        }

        /// <summary>A finger's row times a vector; false where the row is none of this block's.</summary>
        public bool TryRowTimes(int row, ReadOnlySpan<double> x, out double sum)
        {
            sum = 0;
            for (int l = 0; l < _count; l++)
            {
                int q = row - _at[l];
                if (q < 0 || q >= _sizes[l])
                {
                    continue;
                }

                for (int i = 0; i < _reached; i++)
                {
                    sum += C[3 * i + q][l] * x[FirstReached + i];
                }

                for (int p = 0; p < _sizes[l]; p++)
                {
                    sum += D[3 * q + p][l] * x[_at[l] + p];
                }

                return true;
            }

            return false;
        }

        /// <summary>Eliminates the fingers from the trunk's matrix.</summary>
        /// <returns>Smallest pivot ÷ its diagonal entry.</returns>
        public double Eliminate(ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge, Span<double> schur, int size)
        {
            Lane smallest = _width == 1 ? InvertOne(held, ridge) : InvertThree(held, ridge);
            for (int i = 0; i < _reached; i++)
            {
                bool stays = held[FirstReached + i];
                Lane c0 = C[3 * i];
                if (_width == 1)
                {
                    _eliminated[3 * i] = stays ? default : _inverse[0] * c0;
                    continue;
                }

                Lane c1 = C[3 * i + 1], c2 = C[3 * i + 2];
                _eliminated[3 * i] = stays ? default : _inverse[0] * c0 + _inverse[1] * c1 + _inverse[2] * c2;
                _eliminated[3 * i + 1] = stays ? default : _inverse[3] * c0 + _inverse[4] * c1 + _inverse[5] * c2;
                _eliminated[3 * i + 2] = stays ? default : _inverse[6] * c0 + _inverse[7] * c1 + _inverse[8] * c2;
            }

            for (int i = 0; i < _reached; i++)
            {
                Span<double> row = schur.Slice((FirstReached + i) * size + FirstReached, _reached);
                Lane b0 = B[3 * i];
                if (_width == 1)
                {
                    for (int j = 0; j < row.Length; j++)
                    {
                        row[j] -= Vector256.Sum(b0 * _eliminated[3 * j]);
                    }

                    continue;
                }

                Lane b1 = B[3 * i + 1], b2 = B[3 * i + 2];
                for (int j = 0; j < row.Length; j++)
                {
                    row[j] -= Vector256.Sum(b0 * _eliminated[3 * j] + b1 * _eliminated[3 * j + 1] + b2 * _eliminated[3 * j + 2]);
                }
            }

            double least = Math.Min(smallest[0], smallest[1]);
            return Math.Min(least, Math.Min(smallest[2], smallest[3]));
        }

        /// <summary>Solves for the fingers with the trunk at rest, and takes what that does off the trunk's right side.</summary>
        public void Reduce(ReadOnlySpan<double> right, Span<double> trunk)
        {
            Lane r0 = Take(right, 0);
            if (_width == 1)
            {
                Lane y = _inverse[0] * r0;
                _reduced[0] = y;
                for (int i = 0; i < trunk.Length; i++)
                {
                    trunk[i] -= Vector256.Sum(B[3 * i] * y);
                }

                return;
            }

            Lane r1 = Take(right, 1), r2 = Take(right, 2);
            Lane y0 = _inverse[0] * r0 + _inverse[1] * r1 + _inverse[2] * r2;
            Lane y1 = _inverse[3] * r0 + _inverse[4] * r1 + _inverse[5] * r2;
            Lane y2 = _inverse[6] * r0 + _inverse[7] * r1 + _inverse[8] * r2;
            (_reduced[0], _reduced[1], _reduced[2]) = (y0, y1, y2);
            for (int i = 0; i < trunk.Length; i++)
            {
                trunk[i] -= Vector256.Sum(B[3 * i] * y0 + B[3 * i + 1] * y1 + B[3 * i + 2] * y2);
            }
        }

        /// <summary>Completes the fingers' solution from the trunk's.</summary>
        public void Complete(Span<double> right, ReadOnlySpan<double> trunk)
        {
            for (int q = 0; q < _width; q++)
            {
                Lane sum = _reduced[q];
                for (int i = 0; i < trunk.Length; i++)
                {
                    sum -= _eliminated[3 * i + q] * trunk[i];
                }

                for (int l = 0; l < _count; l++)
                {
                    if (_has[4 * q + l])
                    {
                        right[_at[4 * q + l]] = sum[l];
                    }
                }
            }
        }

        /// <summary>Entries of a vector at unknown q of each finger, 0 where a finger has none.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private Lane Take(ReadOnlySpan<double> x, int q) => Vector256.Create(
            _has[4 * q] ? x[_at[4 * q]] : 0,
            _has[4 * q + 1] ? x[_at[4 * q + 1]] : 0,
            _has[4 * q + 2] ? x[_at[4 * q + 2]] : 0,
            _has[4 * q + 3] ? x[_at[4 * q + 3]] : 0);

        /// <summary>All bits set where unknown q is held or there is none.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private Lane Held(ReadOnlySpan<bool> held, int q) => Vector256.Create(
            !_has[4 * q] || held[_at[4 * q]] ? -1 : 0,
            !_has[4 * q + 1] || held[_at[4 * q + 1]] ? -1 : 0,
            !_has[4 * q + 2] || held[_at[4 * q + 2]] ? -1 : 0,
            !_has[4 * q + 3] || held[_at[4 * q + 3]] ? -1L : 0).AsDouble();

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private Lane InvertOne(ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
        {
            Lane h = Held(held, 0), added = Take(ridge, 0), d = D[0] + added;
            _inverse[0] = Vector256.AndNot(Lane.One / Usable(d), h);
            return Pivot(h, d, Vector256.Abs(D[0]) + added);
        }

        /// <summary>D⁻¹ of each finger, held rows and columns 0; pivots from the leading minors.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private Lane InvertThree(ReadOnlySpan<bool> held, ReadOnlySpan<double> ridge)
        {
            Lane h0 = Held(held, 0), h1 = Held(held, 1), h2 = Held(held, 2);
            Lane h01 = h0 | h1, h02 = h0 | h2, h12 = h1 | h2;
            Lane a = Diagonal(D[0] + Take(ridge, 0), h0), e = Diagonal(D[4] + Take(ridge, 1), h1), k = Diagonal(D[8] + Take(ridge, 2), h2);
            Lane b = Vector256.AndNot(D[1], h01), d = Vector256.AndNot(D[3], h01);
            Lane c = Vector256.AndNot(D[2], h02), h = Vector256.AndNot(D[6], h02);
            Lane g = Vector256.AndNot(D[5], h12), i = Vector256.AndNot(D[7], h12);
            Lane minor = a * e - b * d;
            Lane c00 = e * k - g * i, c01 = g * h - d * k, c02 = d * i - e * h;
            Lane determinant = Usable(a * c00 + b * c01 + c * c02);
            Lane scale = Lane.One / determinant;
            _inverse[0] = Vector256.AndNot(c00 * scale, h0);
            _inverse[1] = Vector256.AndNot((c * i - b * k) * scale, h01);
            _inverse[2] = Vector256.AndNot((b * g - c * e) * scale, h02);
            _inverse[3] = Vector256.AndNot(c01 * scale, h01);
            _inverse[4] = Vector256.AndNot((a * k - c * h) * scale, h1);
            _inverse[5] = Vector256.AndNot((c * d - a * g) * scale, h12);
            _inverse[6] = Vector256.AndNot(c02 * scale, h02);
            _inverse[7] = Vector256.AndNot((b * h - a * i) * scale, h12);
            _inverse[8] = Vector256.AndNot(minor * scale, h2);
            Lane first = Pivot(h0, a, Vector256.Abs(a)), second = Pivot(h1, minor / Usable(a), Vector256.Abs(e));
            return Vector256.Min(Vector256.Min(first, second), Pivot(h2, determinant / Usable(minor), Vector256.Abs(k)));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Lane Diagonal(Lane entry, Lane held) => Vector256.ConditionalSelect(held, Lane.One, entry);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Lane Usable(Lane pivot) => Vector256.ConditionalSelect(Vector256.Equals(pivot, Lane.Zero), Vector256.Create(Tiny), pivot);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Lane Pivot(Lane held, Lane pivot, Lane diagonal) => Vector256.ConditionalSelect(
            held, Vector256.Create(double.PositiveInfinity), pivot / Vector256.Max(diagonal, Vector256.Create(Tiny)));
    }
}
