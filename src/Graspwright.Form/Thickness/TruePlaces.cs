using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Places of which it is known that they lie on the true offset: what a drawn one is held against.</summary>
internal static class TruePlaces
{
    private const double Sample = 1e-3; // greatest distance of samples on the form [m]
    private const int MostSamples = 12; // along a side
    private const double Bent = 0.97; // cosine of the angle between the ways out at two corners from which a valley is looked for
    private const double Level = 1e-6, OnIt = 1e-6;

    /// <summary>Bottoms of the valleys that triangles span: where the slopes at their corners meet [m].</summary>
    /// <param name="field">The field.</param>
    /// <param name="mesh">The drawn surface.</param>
    /// <param name="stop">Stops it.</param>
    public static Vector3D[] Valleys(OffsetField field, Mesh mesh, CancellationToken stop)
    {
        ParallelOptions stopped = new() { CancellationToken = stop };
        Vector3D[] ways = new Vector3D[mesh.PointCount];
        Parallel.For(0, ways.Length, stopped, v => ways[v] = field.At(mesh.At(v), OnIt) is var near && double.IsFinite(near.Miss) ? near.Out : field.At(mesh.At(v)).Out);
        Vector3D?[] found = new Vector3D?[mesh.FaceCount];
        Parallel.For(0, found.Length, stopped, f =>
        {
            int a = mesh.Corners[3 * f], b = mesh.Corners[3 * f + 1], c = mesh.Corners[3 * f + 2];
            if (Math.Min(ways[a].Dot(ways[b]), Math.Min(ways[b].Dot(ways[c]), ways[c].Dot(ways[a]))) < Bent)
            {
                Vector3D middle = mesh.Middle(f), bottom = Slopes.Meet([(mesh.At(a), ways[a]), (mesh.At(b), ways[b]), (mesh.At(c), ways[c])], middle, Level);
                found[f] = field.At(bottom, OnIt).Miss is var miss && Math.Abs(miss) < OnIt ? bottom : null;
            }
        });
        return [.. found.OfType<Vector3D>()];
    }

    /// <summary>Places over the form's triangles, sides and points, where nothing else of the form is nearer [m].</summary>
    public static Vector3D[] OverForm(OffsetField field, CancellationToken stop)
    {
        Mesh form = field.Form;
        Vector3D[] normals = SurfaceSums.Normals(form);
        List<Vector3D>[] found = new List<Vector3D>[form.FaceCount];
        Parallel.For(0, found.Length, new ParallelOptions { CancellationToken = stop }, f =>
        {
            Vector3D a = form.Corner(f, 0), b = form.Corner(f, 1), c = form.Corner(f, 2), flat = form.Cross(f).Unit;
            int n = Math.Clamp((int)Math.Ceiling(Math.Max((a - b).Length, Math.Max((b - c).Length, (c - a).Length)) / Sample), 1, MostSamples);
            found[f] = [];
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n - i; j++)
                {
                    double u = (i + 1.0 / 3) / n, v = (j + 1.0 / 3) / n;
                    Look(a + u * (b - a) + v * (c - a), flat);
                }
            }

            Look(a, normals[form.Corners[3 * f]].Unit);
            Look(0.5 * (a + b), (normals[form.Corners[3 * f]] + normals[form.Corners[3 * f + 1]]).Unit);

            void Look(Vector3D on, Vector3D way)
            {
                Vector3D q = on - field.At(on).Miss * way;
                if (Math.Abs(field.At(q, 1e-6).Miss) < 1e-9)
                {
                    found[f].Add(q);
                }
            }
        });
        return [.. found.SelectMany(l => l)];
    }
}
