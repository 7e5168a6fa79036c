using Graspwright.Form.Routes;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Routes;

public sealed class LineShapeTests
{
    [Fact]
    public void Even_steps_keep_the_ends_and_the_line()
    {
        IReadOnlyList<Vector3D> even = LineShape.Even([new(0, 0, 0), new(3, 0, 0), new(3, 0, 0), new(3, 4, 0)], 0.5);
        Assert.Equal(15, even.Count);
        Assert.Equal(new(3, 4, 0), even[^1]);
        Assert.Equal(0, (even[7] - new Vector3D(3, 0.5, 0)).Length, 1e-12);
        Assert.Equal(7, LineShape.Length(even), 1e-12);
    }

    // A circle of 30 mm has its own radius everywhere; a helix has r·(1 + (p ÷ r)²).
    [Theory]
    [InlineData(0, 0.03)]
    [InlineData(0.02, 0.03 * (1 + 0.02 * 0.02 / (0.03 * 0.03)))]
    public void The_bend_of_circle_and_helix(double pitch, double radius)
    {
        Vector3D[] line = [.. Enumerable.Range(0, 400).Select(i => 0.01 * i).Select(t => new Vector3D(0.03 * Math.Cos(t), 0.03 * Math.Sin(t), pitch * t))];
        Assert.Equal(radius, LineShape.SharpestBend(line, 0.005).Radius, 0.005 * radius);
    }

    // A corner between two straight arms of 5 mm: the circle through its three places.
    [Fact]
    public void The_sharpest_place_is_the_corner()
    {
        (double radius, Vector3D place) = LineShape.SharpestBend([new(0, 0, 0), new(0.05, 0, 0), new(0.05, 0.05, 0)], 0.005);
        Assert.Equal(0.005 / Math.Sqrt(2), radius, 1e-9);
        Assert.Equal(0, (place - new Vector3D(0.05, 0, 0)).Length, 1e-9);
        Assert.Equal(double.PositiveInfinity, LineShape.SharpestBend([new(0, 0, 0), new(0.1, 0, 0)], 0.005).Radius);
    }
}
