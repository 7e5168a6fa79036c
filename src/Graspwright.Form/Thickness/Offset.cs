using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>The outside of a sheet on a form.</summary>
/// <param name="Mesh">The surface, outward.</param>
/// <param name="Own">Greatest distance of its samples from the true one [m].</param>
/// <param name="Other">Greatest distance of samples of the true one from it [m].</param>
/// <param name="Crossings">Pairs of its triangles that cut each other.</param>
/// <param name="Closed">It has no open edge and no edge of more than two triangles.</param>
public sealed record OffsetSurface(Mesh Mesh, double Own, double Other, int Crossings, bool Closed);

/// <summary>Offsets: all places at one distance from a closed form, or at one for each part of it.</summary>
public static class Offset
{
    /// <summary>How far triangles may lie from the true offset [m].</summary>
    public const double Tolerance = 0.012e-3;

    /// <summary>How far they may lie when looked at more closely, both ways; what lies farther is drawn finer [m].</summary>
    public const double Asked = 0.018e-3;

    private const double Finest = 0.02e-3; // edges of tetrahedra are not halved below this [m]
    private const double Sample = 1e-3; // greatest distance of samples on the form [m]
    private const int MostSamples = 12; // along a side
    private const int Rounds = 8;

    /// <summary>Makes an offset, as near to the true one as <see cref="Asked"/> where that can be had, and measures it both ways.</summary>
    /// <param name="field">The form and how far from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="ArgumentException">Inward, nothing is left at that distance.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static OffsetSurface Of(OffsetField field, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(field);
        (Vector3D low, Vector3D high) = field.Form.Box();
        OffsetContour contour = Contour(field, Math.Clamp(0.016 * (high - low).Length, 1.6e-3, 5e-3), Tolerance, Finest, stop);
        Vector3D[] samples = Samples(field, stop);
        for (int round = 1; ; round++)
        {
            (Mesh mesh, int[] of) = contour.Triangles();
            Neighbourhood sides = Neighbourhood.Of(mesh);
            Nearest tree = new(sides);
            double[] own = Own(field, mesh, stop), other = new double[samples.Length];
            Parallel.For(0, other.Length, i => other[i] = Away(p => tree.To(p, Finest).Distance, p => tree.To(p).Distance, samples[i]));
            if (round < Rounds && contour.Bisect(own.Select((d, f) => d > Asked ? of[f] : -1).Where(i => i >= 0).Concat(contour.Holding([.. samples.Where((_, i) => other[i] > Asked)]))))
            {
                continue;
            }

            return new(mesh, own.Max(), other.DefaultIfEmpty(0).Max(), tree.Crossings().Count, !Array.Exists(sides.Across, a => a < 0));
        }
    }

    /// <summary>Makes an offset that is not measured.</summary>
    /// <param name="field">The form and how far from it.</param>
    /// <param name="cube">Edge of the cubes to begin with [m].</param>
    /// <param name="tolerance">How far its triangles may lie from the true one [m].</param>
    /// <param name="finest">Edges below which nothing is halved [m].</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="ArgumentException">Inward, nothing is left at that distance.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Mesh Rough(OffsetField field, double cube, double tolerance, double finest, CancellationToken stop = default) => Contour(field, cube, tolerance, finest, stop).Triangles().Mesh;

    private static OffsetContour Contour(OffsetField field, double cube, double tolerance, double finest, CancellationToken stop)
    {
        OffsetContour contour = new(field, cube, Math.Max(0, (int)Math.Floor(Math.Log2(cube / finest))), tolerance, stop);
        return contour.Empty ? throw new ArgumentException($"Nothing of the form lies {1000 * Math.Abs(field.Greatest):0.#} mm deep.", nameof(field)) : contour;
    }

    // The short look first: nearly all lie near.
    private static double Away(Func<Vector3D, double> near, Func<Vector3D, double> far, Vector3D p) => Math.Abs(near(p)) is var d && double.IsFinite(d) ? d : Math.Abs(far(p));

    private static double[] Own(OffsetField field, Mesh mesh, CancellationToken stop)
    {
        double[] own = new double[mesh.FaceCount];
        Parallel.For(0, own.Length, new ParallelOptions { CancellationToken = stop }, f =>
        {
            Vector3D a = mesh.Corner(f, 0), b = mesh.Corner(f, 1), c = mesh.Corner(f, 2);
            foreach (Vector3D p in (ReadOnlySpan<Vector3D>)[a, 1.0 / 3 * (a + b + c), 0.25 * (2 * a + b + c), 0.25 * (a + 2 * b + c), 0.25 * (a + b + 2 * c)])
            {
                own[f] = Math.Max(own[f], Away(q => field.At(q, Finest).Miss, q => field.At(q).Miss, p));
            }
        });
        return own;
    }

    // Places of the true offset: over the form's triangles, sides and points, where nothing else of the form is nearer.
    private static Vector3D[] Samples(OffsetField field, CancellationToken stop)
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
