using CsCheck;

namespace Graspwright.Numerics.Tests;

public sealed class Vector2DTests
{
    private const double Rounding = 1e-12; // relative to lengths of at most 100

    private static readonly Gen<Vector2D> Vectors = Gen.Select(Gen.Double[-100, 100], Gen.Double[-100, 100], (x, y) => new Vector2D(x, y));

    [Fact]
    public void Turning_keeps_the_length_and_adds_the_angle() => Gen.Select(Vectors, Gen.Double[-3, 3]).Sample((v, angle) =>
    {
        Vector2D turned = v.Rotated(angle), along = Vector2D.AtAngle(angle);
        Assert.Equal(v.Length, turned.Length, 100 * Rounding);
        Assert.Equal(v.Length * v.Length * along.X, v.Dot(turned), 1e4 * 2 * Rounding);
        Assert.Equal(v.Length * v.Length * along.Y, v.Cross(turned), 1e4 * 2 * Rounding);
    });

    [Fact]
    public void Products_obey_the_identity_of_Lagrange() => Gen.Select(Vectors, Vectors).Sample((a, b) =>
    {
        double dot = a.Dot(b), cross = a.Cross(b), lengths = a.Length * b.Length;
        Assert.Equal(lengths * lengths, dot * dot + cross * cross, 4e8 * Rounding);
        Assert.Equal(cross, a.Perpendicular.Dot(b), 1e4 * Rounding);
        Assert.Equal(0, a.Perpendicular.Dot(a), 1e4 * Rounding);
    });

    [Fact]
    public void Sums_undo_differences() => Gen.Select(Vectors, Vectors, Gen.Double[-10, 10]).Sample((a, b, factor) =>
    {
        Vector2D back = a + b - b;
        Assert.Equal(a.X, back.X, 200 * Rounding);
        Assert.Equal(a.Y, back.Y, 200 * Rounding);
        Assert.Equal(-a, -1 * a);
        Assert.Equal((factor * a).X + (factor * b).X, (factor * (a + b)).X, 4000 * Rounding);
    });

    [Fact]
    public void Prints_its_components() => Assert.Equal("(0.5, -3)", new Vector2D(0.5, -3).ToString());
}
