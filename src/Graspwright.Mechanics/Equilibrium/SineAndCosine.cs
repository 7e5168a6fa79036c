using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Sine and cosine of four angles at once.</summary>
/// <remarks>
/// The library's routine for vectors cannot be compiled ahead of time into this assembly, and until the run time has
/// compiled it a closing run waits for it. Range reduction by Cody and Waite with π/2 in two parts, polynomials of fdlibm
/// (|r| ≤ π/4): within 1.2 units in the last place, or 1e-16, for |angle| up to 1000 rad.
/// </remarks>
internal static class SineAndCosine
{
    // fdlibm 5.3, e_rem_pio2.c: π/2 in a part of 33 bits and the rest; k_sin.c and k_cos.c: polynomials.
    private const double QuarterTurns = 6.36619772367581382433e-01, HalfPi = 1.57079632673412561417, HalfPiRest = 6.07710050650619224932e-11;
    private const double RoundingShift = 6755399441055744; // 1.5·2⁵²: adding it leaves the nearest whole number in the last bits

    /// <summary>Finds sines and cosines.</summary>
    /// <param name="angle">Angles [rad], each within ±1000.</param>
    /// <param name="sine">Their sines.</param>
    /// <param name="cosine">Their cosines.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Of(Lane angle, out Lane sine, out Lane cosine)
    {
        Lane shifted = QuarterTurns * angle + Vector256.Create(RoundingShift), turns = shifted - Vector256.Create(RoundingShift);
        Lane r = angle - turns * HalfPi - turns * HalfPiRest, z = r * r;
        Lane s = Vector256.Create(1.58969099521155010221e-10);
        s = s * z - Vector256.Create(2.50507602534068634195e-08);
        s = s * z + Vector256.Create(2.75573137070700676789e-06);
        s = s * z - Vector256.Create(1.98412698298579493134e-04);
        s = s * z + Vector256.Create(8.33333333332248946124e-03);
        s = s * z - Vector256.Create(1.66666666666666324348e-01);
        s = r + r * z * s;
        Lane c = Vector256.Create(-1.13596475577881948265e-11);
        c = c * z + Vector256.Create(2.08757232129817482790e-09);
        c = c * z - Vector256.Create(2.75573143513906633035e-07);
        c = c * z + Vector256.Create(2.48015872894767294178e-05);
        c = c * z - Vector256.Create(1.38888888888741095749e-03);
        c = c * z + Vector256.Create(4.16666666666666019037e-02);
        Lane half = z * 0.5, near = Lane.One - half;
        c = near + (Lane.One - near - half + z * z * c);

        // Odd quarter turns swap the two; the second bit turns the signs.
        Vector256<long> quarter = shifted.AsInt64();
        Lane swap = Vector256.Equals(quarter & Vector256<long>.One, Vector256<long>.One).AsDouble();
        Vector256<long> second = Vector256.Create(2L);
        Lane minus = Vector256.Create(-0.0);
        Lane signOfSine = minus & Vector256.Equals(quarter & second, second).AsDouble();
        Lane signOfCosine = minus & Vector256.Equals((quarter + Vector256<long>.One) & second, second).AsDouble();
        sine = Vector256.ConditionalSelect(swap, c, s) ^ signOfSine;
        cosine = Vector256.ConditionalSelect(swap, s, c) ^ signOfCosine;
    }
}
