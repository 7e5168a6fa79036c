using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>A surface of triangles as plain arrays.</summary>
/// <param name="Points">Coordinates, three a point [m].</param>
/// <param name="Corners">Points of the triangles, three a triangle, anticlockwise seen from outside.</param>
public sealed record Mesh(double[] Points, int[] Corners)
{
    /// <summary>How many points.</summary>
    public int PointCount => Points.Length / 3;

    /// <summary>How many triangles.</summary>
    public int FaceCount => Corners.Length / 3;

    /// <summary>A point [m].</summary>
    /// <param name="v">Its index.</param>
    public Vector3D At(int v) => new(Points[3 * v], Points[3 * v + 1], Points[3 * v + 2]);

    /// <summary>Corner of a triangle [m].</summary>
    /// <param name="face">The triangle.</param>
    /// <param name="corner">0, 1 or 2.</param>
    public Vector3D Corner(int face, int corner) => At(Corners[3 * face + corner]);

    /// <summary>Twice the area of a triangle along its outward normal [m²].</summary>
    /// <param name="face">The triangle.</param>
    public Vector3D Cross(int face)
    {
        Vector3D a = Corner(face, 0);
        return (Corner(face, 1) - a).Cross(Corner(face, 2) - a);
    }

    /// <summary>Middle of a triangle [m].</summary>
    /// <param name="face">The triangle.</param>
    public Vector3D Middle(int face) => 1.0 / 3 * (Corner(face, 0) + Corner(face, 1) + Corner(face, 2));

    /// <summary>The surface scaled about the origin.</summary>
    /// <param name="factor">How many times as large, above 0.</param>
    public Mesh Scaled(double factor)
    {
        double[] points = new double[Points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            points[i] = factor * Points[i];
        }

        return this with { Points = points };
    }

    /// <summary>The triangles chosen, with only the points that they use.</summary>
    /// <param name="keep">Whether a triangle is kept.</param>
    /// <returns>The surface and the old index of each of its points.</returns>
    public (Mesh Part, int[] OldPoints) Keep(Func<int, bool> keep)
    {
        ArgumentNullException.ThrowIfNull(keep);
        int[] place = new int[PointCount];
        Array.Fill(place, -1);
        List<int> corners = [], old = [];
        for (int f = 0; f < FaceCount; f++)
        {
            if (!keep(f))
            {
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                int v = Corners[3 * f + k];
                if (place[v] < 0)
                {
                    place[v] = old.Count;
                    old.Add(v);
                }

                corners.Add(place[v]);
            }
        }

        double[] points = new double[3 * old.Count];
        for (int i = 0; i < old.Count; i++)
        {
            Array.Copy(Points, 3 * old[i], points, 3 * i, 3);
        }

        return (new(points, [.. corners]), [.. old]);
    }

    /// <summary>Least and greatest coordinates [m].</summary>
    public (Vector3D Low, Vector3D High) Box()
    {
        double[] low = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity], high = [double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity];
        for (int i = 0; i < Points.Length; i++)
        {
            low[i % 3] = Math.Min(low[i % 3], Points[i]);
            high[i % 3] = Math.Max(high[i % 3], Points[i]);
        }

        return (new(low[0], low[1], low[2]), new(high[0], high[1], high[2]));
    }
}
