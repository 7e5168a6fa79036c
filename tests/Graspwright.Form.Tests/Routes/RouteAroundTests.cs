using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Routes;

public sealed class RouteAroundTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // Round a disc of radius 20 in a plane, worked out by hand: two tangents and the arc between them.
    [Fact]
    public void A_string_round_a_disc()
    {
        const double r = 0.02, d = 0.05;
        Mesh plane = Shapes.Grid(120, 120, (u, v) => new(0.12 * (u - 0.5), 0.12 * (v - 0.5), 0));
        GuardedRoute way = RouteAround.Of(plane, [new(-d, 0, 0), new(d, 0, 0)], [m => [.. Enumerable.Range(0, m.PointCount).Select(p => m.At(p).Length - r)]], Stop);
        double byHand = 2 * Math.Sqrt(d * d - r * r) + r * (Math.PI - 2 * Math.Acos(r / d));
        Assert.Equal(byHand, way.Route!.Length, 2e-4 * byHand);
        Assert.All(way.Route.Places, p => Assert.True(p.Length > r - 5e-5));
        Assert.Equal(2 * d, RouteAround.Of(plane, [new(-d, 0, 0), new(d, 0, 0)], [], Stop).Route!.Length, 1e-7);
    }

    // A helix on a cylinder is straight when it is rolled out.
    [Theory]
    [InlineData(0.7, 0.04)]
    [InlineData(2.1, 0.11)]
    public void A_helix_on_a_cylinder(double turn, double rise)
    {
        const double r = 0.03;
        Mesh tube = Shapes.Grid(240, 40, (u, v) => new(r * Math.Cos(2 * Math.PI * u), r * Math.Sin(2 * Math.PI * u), 0.15 * v));
        Vector3D At(double a, double z) => new(r * Math.Cos(a), r * Math.Sin(a), z);
        double length = RouteAround.Of(tube, [At(0.3, 0.02), At(0.3 + turn, 0.02 + rise)], [], Stop).Route!.Length;
        Assert.Equal(double.Hypot(r * turn, rise), length, 2e-4 * length);
    }

    // A cone of half angle β rolled out: an angle a round it becomes a·sin β, the sides stay.
    [Fact]
    public void A_way_on_a_cone()
    {
        const double beta = 0.3, near = 0.1, far = 0.22, turn = 2;
        Vector3D At(double a, double s) => new(s * Math.Sin(beta) * Math.Cos(a), s * Math.Sin(beta) * Math.Sin(a), s * Math.Cos(beta));
        Mesh cone = Shapes.Grid(240, 60, (u, v) => At(2 * Math.PI * u, 0.05 + 0.25 * v));
        double length = RouteAround.Of(cone, [At(1, near), At(1 + turn, far)], [], Stop).Route!.Length;
        Assert.Equal(Math.Sqrt(near * near + far * far - 2 * near * far * Math.Cos(turn * Math.Sin(beta))), length, 2e-4 * length);
    }

    [Fact]
    public void A_great_circle_on_a_ball_of_places_between_its_points()
    {
        Mesh ball = Shapes.Ball(5, 0.04);
        Vector3D a = 0.04 * new Vector3D(0.3, 0.5, 0.8).Unit, b = 0.04 * new Vector3D(-0.7, 0.6, -0.2).Unit;
        double length = RouteAround.Of(ball, [a, b], [], Stop).Route!.Length;
        Assert.Equal(0.04 * Math.Acos(a.Unit.Dot(b.Unit)), length, 1e-3 * length);
    }

    [Fact]
    public void A_station_in_an_area_and_a_wall_without_a_gap_are_told()
    {
        Mesh plane = Shapes.Grid(40, 40, (u, v) => new(0.1 * u, 0.1 * v, 0));
        double[] Wall(Mesh m) => [.. Enumerable.Range(0, m.PointCount).Select(p => Math.Abs(m.At(p).X - 0.05) - 0.01)];
        GuardedRoute none = RouteAround.Of(plane, [new(0.01, 0.05, 0), new(0.09, 0.05, 0)], [Wall], Stop);
        Assert.Equal((null, -1), (none.Route, none.Stray));
        Assert.Equal(1, RouteAround.Of(plane, [new(0.01, 0.05, 0), new(0.052, 0.05, 0)], [Wall], Stop).Stray);
        Assert.Equal(0, RouteAround.Of(plane, [new(0.01, 0.05, 0), new(0.09, 0.05, 0)], [m => [.. Enumerable.Repeat(-1.0, m.PointCount)]], Stop).Stray);
        Assert.Throws<ArgumentException>(() => RouteAround.Of(plane, [new(0.01, 0.05, 0)], [], Stop));
    }

    [Fact]
    public void A_way_by_a_station_has_both_legs()
    {
        Mesh plane = Shapes.Grid(10, 10, (u, v) => new(u, v, 0));
        SurfaceRoute way = RouteAround.Of(plane, [new(0.13, 0.11, 0), new(0.52, 0.87, 0), new(0.91, 0.13, 0)], [], Stop).Route!;
        Assert.Equal(double.Hypot(0.39, 0.76) + double.Hypot(0.39, 0.74), way.Length, 1e-3);
        Assert.Equal(way.Places.Count - 1, way.Faces.Count);
    }
}
