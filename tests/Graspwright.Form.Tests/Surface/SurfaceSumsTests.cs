using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Surface;

public sealed class SurfaceSumsTests
{
    private static SurfaceSums Of(Mesh mesh) => SurfaceSums.Of(Neighbourhood.Of(mesh));

    // Printed by CGAL 5.5.1 for the ball of an icosahedron halved three and four times.
    [Theory]
    [InlineData(3, 12.506492734, 4.15274081709)]
    [InlineData(4, 12.5513538801, 4.17973894799)]
    public void A_ball_has_the_area_and_volume_that_CGAL_prints(int level, double area, double volume)
    {
        SurfaceSums sums = Of(Shapes.Ball(level));
        Assert.Equal(area, sums.Area, 1e-9);
        Assert.Equal(volume, sums.Volume, 1e-9);
        Assert.Equal(4 * Math.PI, sums.GaussCurvature, 1e-9);
        Assert.Equal(2, sums.Euler);
    }

    [Fact]
    public void Errors_on_a_ball_fall_to_a_quarter_with_each_halving()
    {
        for (int level = 2; level < 4; level++)
        {
            SurfaceSums coarse = Of(Shapes.Ball(level)), fine = Of(Shapes.Ball(level + 1));
            Assert.InRange((4 * Math.PI - coarse.Area) / (4 * Math.PI - fine.Area), 3.7, 4.1);
            Assert.InRange((4 * Math.PI / 3 - coarse.Volume) / (4 * Math.PI / 3 - fine.Volume), 3.7, 4.1);
            Assert.Equal(4 * Math.PI, fine.MeanCurvature, 0.03 * Math.Pow(0.25, level - 2));
        }
    }

    // Torus R 30, r 10 on a grid of 48 × 24 and 96 × 48: printed by CGAL.
    [Theory]
    [InlineData(48, 24, 11788.671566005, 58376.444137220)]
    [InlineData(96, 48, 11829.791606169, 59006.509639049)]
    public void A_torus_has_the_area_and_volume_that_CGAL_prints(int m, int n, double area, double volume)
    {
        SurfaceSums sums = Of(Shapes.Torus(m, n, 30, 10));
        Assert.Equal(area, sums.Area, 1e-6);
        Assert.Equal(volume, sums.Volume, 1e-6);
        Assert.Equal(0, sums.GaussCurvature, 1e-10);
        Assert.Equal(0, sums.Euler);
    }

    [Fact]
    public void Curvature_and_turning_of_a_cut_cylinder_make_a_full_turn()
    {
        SurfaceSums sums = Of(Shapes.Grid(40, 10, (u, v) => new(0.025 * Math.Cos(2 * Math.PI * u), 0.025 * Math.Sin(2 * Math.PI * u), 0.06 * v)));
        Assert.Equal(0, sums.GaussCurvature, 1e-12);
        Assert.Equal(2 * Math.PI, sums.GaussCurvature + sums.RimTurning, 1e-11);
    }

    // Greatest errors of Gauss and mean curvature on the unit ball at level 3, recomputed by two programs: 5.50e-3 and 3.48e-5.
    [Fact]
    public void Curvature_at_the_points_of_a_ball_is_as_near_as_other_programs_find()
    {
        (double[] gauss, double[] mean, double[] area) = SurfaceSums.Curvatures(Neighbourhood.Of(Shapes.Ball(3)));
        Assert.Equal(5.50e-3, gauss.Max(k => Math.Abs(k - 1)), 2e-5);
        Assert.Equal(3.48e-5, mean.Max(h => Math.Abs(h - 1)), 1e-6);
        Assert.Equal(12.506492734, area.Sum(), 1e-9);
    }

    [Fact]
    public void The_nearest_place_is_that_of_looking_at_every_triangle()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.Torus(30, 20, 0.06, 0.025));
        Nearest tree = new(sides);
        Random random = new(1);
        for (int i = 0; i < 200; i++)
        {
            Graspwright.Numerics.Vector3D p = new(0.2 * (random.NextDouble() - 0.5), 0.2 * (random.NextDouble() - 0.5), 0.1 * (random.NextDouble() - 0.5));
            double ring = double.Hypot(p.X, p.Y) - 0.06, true0 = double.Hypot(ring, p.Z) - 0.025;
            Assert.Equal(true0, tree.To(p).Distance, 8e-4); // flat triangles lie a little inside the torus
        }
    }
}
