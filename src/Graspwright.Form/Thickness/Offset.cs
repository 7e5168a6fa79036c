using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>The outside of a sheet on a form.</summary>
/// <param name="Mesh">The surface, outward.</param>
/// <param name="Own">Greatest distance of its samples from the true one [m].</param>
/// <param name="Other">Greatest distance of samples of the true one from it, but for what is filled [m].</param>
/// <param name="Filled">How deep at most it fills valleys whose walls stand within <see cref="Offset.Narrowest"/> of their middle; 0 = none is filled by more than is asked elsewhere [m].</param>
/// <param name="Crossings">Pairs of its triangles that cut each other.</param>
/// <param name="Closed">It has no open edge and no edge of more than two triangles.</param>
public sealed record OffsetSurface(Mesh Mesh, double Own, double Other, double Filled, int Crossings, bool Closed);

/// <summary>Offsets: all places at one distance from a closed form, or at one for each part of it.</summary>
public static class Offset
{
    /// <summary>How far triangles may lie from the true offset [m].</summary>
    public const double Tolerance = 0.012e-3;

    /// <summary>How far they may lie when looked at more closely, both ways; what lies farther is drawn finer [m].</summary>
    public const double Asked = 0.018e-3;

    /// <summary>Valleys narrower than this to each side of their middle are filled near their bottom: triangles would have to be thousandths of a millimetre wide [rad].</summary>
    public const double Narrowest = 0.35;

    private const double Finest = 0.03e-3; // edges of tetrahedra are not halved below this because triangles lie off [m]
    private const int Closer = 3; // times more where samples lie off
    private const int Rounds = 6;
    private const int Along = 6; // places from one that was not reached to where the surface ends: a valley between has to be seen whole

    /// <summary>Makes an offset, as near to the true one as <see cref="Asked"/> where that can be had, and measures it both ways.</summary>
    /// <param name="field">The form and how far from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="ArgumentException">Inward, nothing is left at that distance.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static OffsetSurface Of(OffsetField field, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(field);
        (Vector3D low, Vector3D high) = field.Form.Box();
        OffsetContour contour = Contour(field, Math.Clamp(0.016 * (high - low).Length, 1.6e-3, 5e-3), Tolerance, Finest, Closer, stop);
        Vector3D[] overForm = TruePlaces.OverForm(field, stop);
        Dictionary<Tetrahedron, double> known = [];
        for (int round = 1; ; round++)
        {
            (Mesh whole, int[] all) = contour.Triangles();
            (Mesh mesh, int[] of) = Pockets.Drop(whole, all);
            Neighbourhood sides = Neighbourhood.Of(mesh);
            Nearest tree = new(sides);
            double[] own = Own(field, mesh, f => known.GetValueOrDefault(contour.Leaf(of[f]), double.NaN), stop);
            Vector3D[] samples = [.. overForm, .. TruePlaces.Valleys(field, mesh, stop)];
            Foot[] feet = new Foot[samples.Length];
            for (int f = 0; f < own.Length; f++)
            {
                Tetrahedron t = contour.Leaf(of[f]);
                known[t] = Math.Max(known.GetValueOrDefault(t), own[f]);
            }

            Parallel.For(0, feet.Length, i => feet[i] = tree.To(samples[i], Finest) is { Face: >= 0 } near ? near : tree.To(samples[i]));
            (double other, double filled) = (0, 0);
            List<Vector3D> off = [.. Enumerable.Range(0, own.Length).Where(f => own[f] > Asked).Select(mesh.Middle)];
            foreach ((Vector3D sample, Foot foot) in samples.Zip(feet))
            {
                double away = Math.Abs(foot.Distance);
                if (away > Asked && Narrow(field, sample, away))
                {
                    filled = Math.Max(filled, away);
                    continue;
                }

                other = Math.Max(other, away);
                if (away > Asked)
                {
                    off.AddRange(Enumerable.Range(0, Along + 1).Select(k => sample + (double)k / Along * (foot.Place - sample)));
                }
            }

            if (off.Count == 0 || round == Rounds || !contour.Finer(off))
            {
                return new(mesh, own.Max(), other, filled, tree.Crossings().Count, !Array.Exists(sides.Across, a => a < 0));
            }
        }
    }

    // Straight out of a narrow valley's wall lies the other wall, which looks back.
    private static bool Narrow(OffsetField field, Vector3D wall, double away)
    {
        Vector3D outward = field.At(wall).Out;
        return Math.Sqrt(Math.Max(0, (1 + outward.Dot(field.At(wall + away * outward).Out)) / 2)) < Math.Sin(Narrowest);
    }

    /// <summary>Makes an offset that is not measured.</summary>
    /// <param name="field">The form and how far from it.</param>
    /// <param name="cube">Edge of the cubes to begin with [m].</param>
    /// <param name="tolerance">How far its triangles may lie from the true one [m].</param>
    /// <param name="finest">Edges below which nothing is halved [m].</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="ArgumentException">Inward, nothing is left at that distance.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Mesh Rough(OffsetField field, double cube, double tolerance, double finest, CancellationToken stop = default) => Contour(field, cube, tolerance, finest, 0, stop).Triangles().Mesh;

    private static OffsetContour Contour(OffsetField field, double cube, double tolerance, double finest, int more, CancellationToken stop)
    {
        OffsetContour contour = new(field, cube, Math.Max(0, (int)Math.Ceiling(Math.Log2(cube / finest))), more, tolerance, stop);
        return contour.Empty ? throw new ArgumentException($"Nothing of the form lies {1000 * Math.Abs(field.Greatest):0.#} mm deep.", nameof(field)) : contour;
    }

    // Distance of each triangle's samples; what is known of its tetrahedron stands. The short look first: nearly all lie near.
    private static double[] Own(OffsetField field, Mesh mesh, Func<int, double> known, CancellationToken stop)
    {
        double[] own = new double[mesh.FaceCount];
        Parallel.For(0, own.Length, new ParallelOptions { CancellationToken = stop }, f =>
        {
            own[f] = known(f);
            if (!double.IsNaN(own[f]))
            {
                return;
            }

            own[f] = 0;
            Vector3D a = mesh.Corner(f, 0), b = mesh.Corner(f, 1), c = mesh.Corner(f, 2);
            foreach (Vector3D p in (ReadOnlySpan<Vector3D>)[a, 1.0 / 3 * (a + b + c), 0.25 * (2 * a + b + c), 0.25 * (a + 2 * b + c), 0.25 * (a + b + 2 * c)])
            {
                double near = field.At(p, Finest).Miss;
                own[f] = Math.Max(own[f], Math.Abs(double.IsFinite(near) ? near : field.At(p).Miss));
            }
        });
        return own;
    }
}
