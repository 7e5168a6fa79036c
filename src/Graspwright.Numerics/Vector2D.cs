namespace Graspwright.Numerics;

/// <summary>A vector of the plane of motion, in the unit of its context (metres for places, newtons for forces).</summary>
/// <param name="X">Component along x.</param>
/// <param name="Y">Component along y.</param>
public readonly record struct Vector2D(double X, double Y)
{
    /// <summary>Length of the vector, in its own unit. Lengths of the bench: no guard against overflow.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>The vector turned by a right angle, anticlockwise.</summary>
    public Vector2D Perpendicular => new(-Y, X);

    /// <summary>The unit vector at an angle from +x, anticlockwise.</summary>
    /// <param name="radians">Angle from +x [rad].</param>
    public static Vector2D AtAngle(double radians)
    {
        (double sin, double cos) = Math.SinCos(radians);
        return new(cos, sin);
    }

    /// <summary>Scalar product.</summary>
    public double Dot(Vector2D other) => X * other.X + Y * other.Y;

    /// <summary>z component of the cross product.</summary>
    public double Cross(Vector2D other) => X * other.Y - Y * other.X;

    /// <summary>The vector turned by an angle, anticlockwise.</summary>
    /// <param name="radians">Angle [rad].</param>
    public Vector2D Rotated(double radians)
    {
        (double sin, double cos) = Math.SinCos(radians);
        return new(cos * X - sin * Y, sin * X + cos * Y);
    }

    /// <summary>Both components; the record's own text would print its turned self without end.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"({X:r}, {Y:r})");

    /// <summary>Sum.</summary>
    public static Vector2D operator +(Vector2D a, Vector2D b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference.</summary>
    public static Vector2D operator -(Vector2D a, Vector2D b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>Opposite vector.</summary>
    public static Vector2D operator -(Vector2D a) => new(-a.X, -a.Y);

    /// <summary>Scaled vector.</summary>
    public static Vector2D operator *(double factor, Vector2D a) => new(factor * a.X, factor * a.Y);
}
