using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Surface;

public sealed class NearestTests
{
    private static Mesh Loose(Random random, int triangles)
    {
        double[] points = new double[9 * triangles];
        for (int f = 0; f < triangles; f++)
        {
            for (int k = 0; k < 9; k++)
            {
                points[9 * f + k] = (k < 3 ? 0 : points[9 * f + k % 3]) + (k < 3 ? 1 : 0.3) * random.NextDouble();
            }
        }

        return new(points, [.. Enumerable.Range(0, 3 * triangles)]);
    }

    // Least distance over a fine grid of barycentric places, which can only be too great, and by little.
    [Fact]
    public void The_nearest_place_is_no_farther_than_any_place_of_any_triangle()
    {
        Random random = new(7);
        foreach (int n in (int[])[1, 2, 3, 4, 5, 17, 60])
        {
            Mesh mesh = Loose(random, n);
            Nearest tree = new(Neighbourhood.Of(mesh));
            for (int trial = 0; trial < 20; trial++)
            {
                Vector3D p = new(1.5 * random.NextDouble(), 1.5 * random.NextDouble(), 1.5 * random.NextDouble());
                double least = double.PositiveInfinity;
                for (int f = 0; f < n; f++)
                {
                    for (int i = 0; i <= 40; i++)
                    {
                        for (int j = 0; j <= 40 - i; j++)
                        {
                            Vector3D q = i / 40.0 * mesh.Corner(f, 0) + j / 40.0 * mesh.Corner(f, 1) + (40 - i - j) / 40.0 * mesh.Corner(f, 2);
                            least = Math.Min(least, (p - q).Length);
                        }
                    }
                }

                Foot foot = tree.To(p);
                double found = Math.Abs(foot.Distance);
                Assert.InRange(least - found, -1e-12, 0.012);
                Assert.Equal(found, (p - foot.Place).Length, 1e-12);
                Assert.Equal(-1, tree.To(p, 0.999 * found).Face);
                Assert.Equal(foot.Face, tree.To(p, 1.001 * found).Face);
            }
        }
    }

    [Fact]
    public void Crossings_are_those_of_every_pair_looked_at()
    {
        Random random = new(11);
        foreach (int n in (int[])[1, 2, 5, 23, 80])
        {
            Mesh mesh = Loose(random, n);
            List<(int, int)> all = [];
            for (int f = 0; f < n; f++)
            {
                for (int g = f + 1; g < n; g++)
                {
                    if (Crossing.Cut(mesh, f, g))
                    {
                        all.Add((f, g));
                    }
                }
            }

            Assert.Equal(all, new Nearest(Neighbourhood.Of(mesh)).Crossings(100_000));
        }
    }

    [Fact]
    public void Nothing_is_near_nothing() => Assert.Equal(-1, new Nearest(Neighbourhood.Of(new([], []))).To(default).Face);
}
