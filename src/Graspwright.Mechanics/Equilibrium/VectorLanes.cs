using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Four vectors of the plane, one in each lane.</summary>
/// <param name="x">Components along x.</param>
/// <param name="y">Components along y.</param>
internal readonly struct VectorLanes(Lane x, Lane y)
{
    public readonly Lane X = x, Y = y;

    public VectorLanes Perpendicular
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(-Y, X);
    }

    public Lane Length
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Vector256.Sqrt(X * X + Y * Y);
    }

    /// <summary>Vector of one lane.</summary>
    public Vector2D this[int lane] => new(X[lane], Y[lane]);

    public static VectorLanes All(Vector2D v) => new(Vector256.Create(v.X), Vector256.Create(v.Y));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane Dot(VectorLanes other) => X * other.X + Y * other.Y;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane Cross(VectorLanes other) => X * other.Y - Y * other.X;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static VectorLanes operator +(VectorLanes a, VectorLanes b) => new(a.X + b.X, a.Y + b.Y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static VectorLanes operator -(VectorLanes a, VectorLanes b) => new(a.X - b.X, a.Y - b.Y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static VectorLanes operator *(Lane factor, VectorLanes a) => new(factor * a.X, factor * a.Y);
}
