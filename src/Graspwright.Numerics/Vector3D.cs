namespace Graspwright.Numerics;

/// <summary>A vector of space, in the unit of its context.</summary>
/// <param name="X">Component along x.</param>
/// <param name="Y">Component along y.</param>
/// <param name="Z">Component along z.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>Length of the vector, in its own unit. Lengths of the bench: no guard against overflow.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y + Z * Z);

    /// <summary>The part in the plane of motion.</summary>
    public Vector2D InPlane => new(X, Y);

    /// <summary>The vector of length 1 along this one; the null vector stays.</summary>
    public Vector3D Unit => Length is > 0 and var length ? 1 / length * this : this;

    /// <summary>Scalar product.</summary>
    public double Dot(Vector3D other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>Cross product.</summary>
    public Vector3D Cross(Vector3D other) => new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>The components as text.</summary>
    public override string ToString() => FormattableString.Invariant($"({X:R}, {Y:R}, {Z:R})");

    /// <summary>Sum.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Opposite vector.</summary>
    public static Vector3D operator -(Vector3D a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaled vector.</summary>
    public static Vector3D operator *(double factor, Vector3D a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
