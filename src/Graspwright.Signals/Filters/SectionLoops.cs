using System.Runtime.Intrinsics;

namespace Graspwright.Signals.Filters;

/// <summary>Sections at work on a block of four channels side by side, in place (transposed direct form II).</summary>
/// <remarks>
/// A section waits for its own last sample; several of them in one loop wait side by side, and the block is read and
/// written once for all. Each does the same sums in the same order as alone, so the bits are the same. Coefficients
/// come as b0, b1, b2, a1, a2 of each section, the state as two values of each.
/// </remarks>
internal static class SectionLoops
{
    /// <summary>Four sections behind one another.</summary>
    public static void Four(ReadOnlySpan<Vector256<double>> c, Span<Vector256<double>> state, Span<Vector256<double>> block)
    {
        Vector256<double> a0 = c[0], a1 = c[1], a2 = c[2], a3 = c[3], a4 = c[4], aFirst = state[0], aSecond = state[1];
        Vector256<double> b0 = c[5], b1 = c[6], b2 = c[7], b3 = c[8], b4 = c[9], bFirst = state[2], bSecond = state[3];
        Vector256<double> c0 = c[10], c1 = c[11], c2 = c[12], c3 = c[13], c4 = c[14], cFirst = state[4], cSecond = state[5];
        Vector256<double> d0 = c[15], d1 = c[16], d2 = c[17], d3 = c[18], d4 = c[19], dFirst = state[6], dSecond = state[7];
        for (int i = 0; i < block.Length; i++)
        {
            Vector256<double> x = block[i];
            Vector256<double> p = a0 * x + aFirst;
            aFirst = a1 * x + aSecond - a3 * p;
            aSecond = a2 * x - a4 * p;
            Vector256<double> q = b0 * p + bFirst;
            bFirst = b1 * p + bSecond - b3 * q;
            bSecond = b2 * p - b4 * q;
            Vector256<double> r = c0 * q + cFirst;
            cFirst = c1 * q + cSecond - c3 * r;
            cSecond = c2 * q - c4 * r;
            Vector256<double> s = d0 * r + dFirst;
            dFirst = d1 * r + dSecond - d3 * s;
            dSecond = d2 * r - d4 * s;
            block[i] = s;
        }

        (state[0], state[1]) = (aFirst, aSecond);
        (state[2], state[3]) = (bFirst, bSecond);
        (state[4], state[5]) = (cFirst, cSecond);
        (state[6], state[7]) = (dFirst, dSecond);
    }

    /// <summary>Three sections behind one another.</summary>
    public static void Three(ReadOnlySpan<Vector256<double>> c, Span<Vector256<double>> state, Span<Vector256<double>> block)
    {
        Vector256<double> a0 = c[0], a1 = c[1], a2 = c[2], a3 = c[3], a4 = c[4], aFirst = state[0], aSecond = state[1];
        Vector256<double> b0 = c[5], b1 = c[6], b2 = c[7], b3 = c[8], b4 = c[9], bFirst = state[2], bSecond = state[3];
        Vector256<double> c0 = c[10], c1 = c[11], c2 = c[12], c3 = c[13], c4 = c[14], cFirst = state[4], cSecond = state[5];
        for (int i = 0; i < block.Length; i++)
        {
            Vector256<double> x = block[i];
            Vector256<double> p = a0 * x + aFirst;
            aFirst = a1 * x + aSecond - a3 * p;
            aSecond = a2 * x - a4 * p;
            Vector256<double> q = b0 * p + bFirst;
            bFirst = b1 * p + bSecond - b3 * q;
            bSecond = b2 * p - b4 * q;
            Vector256<double> r = c0 * q + cFirst;
            cFirst = c1 * q + cSecond - c3 * r;
            cSecond = c2 * q - c4 * r;
            block[i] = r;
        }

        (state[0], state[1]) = (aFirst, aSecond);
        (state[2], state[3]) = (bFirst, bSecond);
        (state[4], state[5]) = (cFirst, cSecond);
    }

    /// <summary>Two sections behind one another.</summary>
    public static void Two(ReadOnlySpan<Vector256<double>> c, Span<Vector256<double>> state, Span<Vector256<double>> block)
    {
        Vector256<double> a0 = c[0], a1 = c[1], a2 = c[2], a3 = c[3], a4 = c[4], aFirst = state[0], aSecond = state[1];
        Vector256<double> b0 = c[5], b1 = c[6], b2 = c[7], b3 = c[8], b4 = c[9], bFirst = state[2], bSecond = state[3];
        for (int i = 0; i < block.Length; i++)
        {
            Vector256<double> x = block[i];
            Vector256<double> p = a0 * x + aFirst;
            aFirst = a1 * x + aSecond - a3 * p;
            aSecond = a2 * x - a4 * p;
            Vector256<double> q = b0 * p + bFirst;
            bFirst = b1 * p + bSecond - b3 * q;
            bSecond = b2 * p - b4 * q;
            block[i] = q;
        }

        (state[0], state[1]) = (aFirst, aSecond);
        (state[2], state[3]) = (bFirst, bSecond);
    }

    /// <summary>One section.</summary>
    public static void One(ReadOnlySpan<Vector256<double>> c, Span<Vector256<double>> state, Span<Vector256<double>> block)
    {
        Vector256<double> a0 = c[0], a1 = c[1], a2 = c[2], a3 = c[3], a4 = c[4], aFirst = state[0], aSecond = state[1];
        for (int i = 0; i < block.Length; i++)
        {
            Vector256<double> x = block[i];
            Vector256<double> p = a0 * x + aFirst;
            aFirst = a1 * x + aSecond - a3 * p;
            aSecond = a2 * x - a4 * p;
            block[i] = p;
        }

        (state[0], state[1]) = (aFirst, aSecond);
    }
}
