using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tape;

/// <summary>The thumb as the tape has it.</summary>
/// <param name="Place">Place of its root along the limb [m].</param>
/// <param name="Root">Girth at the root [m].</param>
/// <param name="Largest">Largest girth beyond it [m].</param>
/// <param name="Length">Length that is covered [m].</param>
/// <param name="Angle">Angle away from the line of the arm [rad].</param>
public sealed record TapeThumb(double Place, double Root, double Largest, double Length, double Angle);

/// <summary>Closed form from tape marks.</summary>
/// <param name="Mesh">The form.</param>
/// <param name="ThumbFace">Whether a triangle belongs to the thumb.</param>
/// <param name="Axis">A point of the thumb's middle line and its direction; <see langword="null"/> = no thumb.</param>
/// <param name="ThumbEnd">Where the covered thumb ends along that line [m].</param>
public sealed record Loft(Mesh Mesh, bool[] ThumbFace, (Vector3D Foot, Vector3D Along)? Axis, double ThumbEnd)
{
    private const int Round = 120, MostFits = 8;
    private const double Step = 0.002, Fitted = 2e-5;

    /// <summary>Makes the form of marks: as <see cref="Of"/>, with the sections beside the thumb's root fitted until the tape reads every girth there too.</summary>
    /// <param name="marks">The marks.</param>
    /// <param name="thumb">The thumb; <see langword="null"/> = none.</param>
    /// <remarks>Where the thumb is set on, its root takes a piece out of the ring and its rounding fills the corner: the girth a section is made with is no more the one the tape reads.</remarks>
    public static Loft Fit(IReadOnlyList<TapeMark> marks, TapeThumb? thumb)
    {
        ArgumentNullException.ThrowIfNull(marks);
        Loft loft = Of(new(marks), thumb);
        TapeMark[] made = [.. marks];
        for (int round = 0; round < MostFits && thumb is not null; round++)
        {
            double[] off = [.. marks.Select(m => TapeGirth.Of(loft.Mesh, m.Place, loft.ThumbFace) - m.Girth)];
            if (off.All(o => !(Math.Abs(o) > Fitted)))
            {
                break;
            }

            for (int i = 0; i < made.Length; i++)
            {
                // a girth that no section of this width and depth has stays as it is
                TapeMark next = made[i] with { Girth = made[i].Girth - off[i] };
                made[i] = double.IsFinite(off[i]) && Section.Of(next.Girth, next.Width, next.Depth) is not null ? next : made[i];
            }

            loft = Of(new(made), thumb);
        }

        return loft;
    }

    /// <summary>Makes the form: rings at the marks and between, a flat end toward the elbow, a round one toward the fingertips, the thumb set on.</summary>
    /// <param name="form">The marks.</param>
    /// <param name="thumb">The thumb; <see langword="null"/> = none.</param>
    /// <param name="round">Points round each ring.</param>
    /// <param name="step">Spacing of the rings [m].</param>
    public static Loft Of(TapeForm form, TapeThumb? thumb, int round = Round, double step = Step)
    {
        ArgumentNullException.ThrowIfNull(form);
        List<double> points = [];
        List<int> corners = [];
        double first = form.Places[0], last = form.Places[^1];
        Section end = form.At(last), start = form.At(first);
        double dome = 0.6 * Math.Min(end.Across, end.Deep);
        int rings = 0;
        for (int i = 4; i >= 1; i--)
        {
            Ring(points, start, first, 1 - i / 5.0, round, form.At(first).Girth, ref rings);
        }

        foreach (double place in form.Grid(first, last, step))
        {
            Ring(points, form.At(place), place, 1, round, form.At(place).Girth, ref rings);
        }

        int caps = Math.Max(6, (int)(dome / step));
        for (int i = 1; i < caps; i++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * i / caps);
            Ring(points, end, last + dome * sin, cos, round, end.Girth, ref rings);
        }

        for (int j = 0; j + 1 < rings; j++)
        {
            for (int k = 0; k < round; k++)
            {
                int a = j * round + k, b = j * round + (k + 1) % round, c = a + round, d = b + round;
                corners.AddRange((j + k) % 2 == 0 ? [b, a, c, b, c, d] : [b, a, d, a, c, d]);
            }
        }

        int low = points.Count / 3;
        points.AddRange([0, 0, first, 0, 0, last + dome]);
        for (int k = 0; k < round; k++)
        {
            int next = (k + 1) % round, top = (rings - 1) * round;
            corners.AddRange([k, next, low, top + next, top + k, low + 1]);
        }

        Mesh mesh = new([.. points], [.. corners]);
        return thumb is null ? new(mesh, new bool[mesh.FaceCount], null, 0) : WithThumb(mesh, form, thumb);
    }

    // A ring of corners whose own girth, chord by chord, is that of the section.
    private static void Ring(List<double> points, Section section, double place, double scale, int round, double girth, ref int rings)
    {
        (double X, double Y)[] ring = [.. Enumerable.Range(0, round).Select(k => section.At(2 * Math.PI * k / round))];
        double chords = 0;
        for (int k = 0; k < round; k++)
        {
            (double X, double Y) next = ring[(k + 1) % round];
            chords += double.Hypot(next.X - ring[k].X, next.Y - ring[k].Y);
        }

        double size = scale * girth / chords;
        foreach ((double x, double y) in ring)
        {
            points.AddRange([size * x, size * y, place]);
        }

        rings++;
    }

    private static Loft WithThumb(Mesh mesh, TapeForm form, TapeThumb thumb)
    {
        double radius = thumb.Root / (2 * Math.PI), knuckle = thumb.Largest / (2 * Math.PI);
        (double sin, double cos) = Math.SinCos(Math.Max(thumb.Angle, 0.35));
        Vector3D along = new(sin, 0, cos), foot = new(form.At(thumb.Place).Across, 0, thumb.Place);
        double[] values = new double[mesh.PointCount];
        for (int v = 0; v < values.Length; v++)
        {
            Vector3D p = mesh.At(v) - foot;
            values[v] = mesh.At(v).X > 0 ? (p - p.Dot(along) * along).Length - radius : 1;
        }

        Imprinted drawn = Imprint.Zero(Neighbourhood.Of(mesh), values, share: 0.1);
        Mesh cut = drawn.Mesh;
        bool Outside(int v) => v < values.Length && values[v] > 0;
        (Mesh limb, _) = cut.Keep(f => Outside(cut.Corners[3 * f]) || Outside(cut.Corners[3 * f + 1]) || Outside(cut.Corners[3 * f + 2]));
        int[] loop = Neighbourhood.Of(limb).Loops().MaxBy(l => l.Length)!;
        int[] rim = [.. loop.Select(h => limb.Corners[h])];
        double[] s = [.. rim.Select(v => (limb.At(v) - foot).Dot(along))];
        double end = Math.Max(s.Average() + thumb.Length, s.Max() + 0.003);
        int rings = Math.Max(4, (int)((end - s.Min()) / 0.002)), n = rim.Length;
        List<double> points = [.. limb.Points];
        List<int> corners = [.. limb.Corners];
        int limbFaces = limb.FaceCount, before = -1;
        for (int j = 1; j <= rings + 5; j++)
        {
            int here = points.Count / 3;
            for (int i = 0; i < n; i++)
            {
                Vector3D p = limb.At(rim[i]) - foot, out0 = (p - p.Dot(along) * along).Unit;
                double share = Math.Min(1.0, j / (double)rings), at = s[i] + (end - s[i]) * share;
                double blend = Math.Clamp((at - Math.Max(0, s[i])) / Math.Max(1e-4, end - Math.Max(0, s[i])), 0, 1), r = radius + (knuckle - radius) * blend * blend * (3 - 2 * blend);
                if (j > rings)
                {
                    (double lift, double shrink) = Math.SinCos(Math.PI / 2 * (j - rings) / 6);
                    at += 0.6 * knuckle * lift;
                    r *= shrink;
                }

                Vector3D q = foot + at * along + r * out0;
                points.AddRange([q.X, q.Y, q.Z]);
            }

            for (int i = 0; i < n; i++)
            {
                int next = (i + 1) % n, a = before < 0 ? rim[i] : before + i, b = before < 0 ? rim[next] : before + next;
                corners.AddRange([b, a, here + i, b, here + i, here + next]);
            }

            before = here;
        }

        Vector3D tip = foot + (end + 0.6 * knuckle) * along;
        int top = points.Count / 3;
        points.AddRange([tip.X, tip.Y, tip.Z]);
        for (int i = 0; i < n; i++)
        {
            corners.AddRange([before + (i + 1) % n, before + i, top]);
        }

        Mesh whole = new(Rounded([.. points], [.. corners], rim), [.. corners]);
        bool[] isThumb = new bool[whole.FaceCount];
        Array.Fill(isThumb, true, limbFaces, whole.FaceCount - limbFaces);
        Vector3D[] normals = SurfaceSums.Normals(limb);
        (Mesh form0, bool[] beyond) = new ThumbRoot([.. rim.Select(limb.At)], [.. rim.Select(v => normals[v])], foot, along).Draw(whole, isThumb, rim);
        return new(form0, beyond, (foot, along), end);
    }

    // The crease where the thumb is set on, rounded: near it each point goes to the middle of its neighbours, some times over.
    private static double[] Rounded(double[] points, int[] corners, int[] rim)
    {
        const double wide = 0.007;
        const int rounds = 40;
        int n = points.Length / 3;
        Mesh mesh = new(points, corners);
        double[] share = new double[n];
        for (int v = 0; v < n; v++)
        {
            Vector3D p = mesh.At(v);
            double near = double.PositiveInfinity;
            foreach (int r in rim)
            {
                near = Math.Min(near, (mesh.At(r) - p).Length);
            }

            share[v] = 0.5 * Math.Clamp(1.5 - 1.5 * near / wide, 0, 1);
        }

        for (int round = 0; round < rounds; round++)
        {
            double[] sum = new double[points.Length];
            int[] count = new int[n];
            for (int h = 0; h < corners.Length; h++)
            {
                int v = corners[h], w = corners[Neighbourhood.Next(h)];
                count[v]++;
                for (int d = 0; d < 3; d++)
                {
                    sum[3 * v + d] += points[3 * w + d];
                }
            }

            double[] next = (double[])points.Clone();
            for (int v = 0; v < n; v++)
            {
                for (int d = 0; d < 3 && share[v] > 0; d++)
                {
                    next[3 * v + d] += share[v] * (sum[3 * v + d] / count[v] - points[3 * v + d]);
                }
            }

            points = next;
        }

        return points;
    }
}
