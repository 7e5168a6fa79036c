using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Corners of a surface in tetrahedra: where they lie, and whether what is drawn between them lies near enough.</summary>
internal sealed class ContourPlaces(OffsetField field, BisectedTetrahedra space, double tolerance, int depth)
{
    /// <summary>No corner inside is needed.</summary>
    public const int Plain = -1;

    /// <summary>The tetrahedron has to be bisected.</summary>
    public const int Off = -2;

    private const double Near = 0.2e-6; // corners lie as near to the zero as this [m]
    private const double Apart = 2e-6; // and stay this far from the edges and faces that they do not lie on, so that no triangle is too thin for single precision [m]
    private const double Enough = 0.8; // share of the tolerance up to which no further corner is set
    private const double Steepest = 0.1;
    private const double Level = 1e-4;
    private const int Steps = 12, Reach = 3;

    private readonly List<Vector3D> _place = [];
    private readonly List<Vector3D> _out = [];

    /// <summary>How many.</summary>
    public int Count => _place.Count;

    /// <summary>Where one lies [m].</summary>
    public Vector3D At(int v) => _place[v];

    /// <summary>Sets corners on edges whose ends lie on both sides.</summary>
    public void OnEdges(List<(int A, int B)> edges)
    {
        (Vector3D Place, Vector3D Out)[] found = new (Vector3D, Vector3D)[edges.Count];
        Parallel.For(0, found.Length, i => found[i] = OnEdge(edges[i].A, edges[i].B));
        foreach ((Vector3D place, Vector3D way) in found)
        {
            Put(place, way);
        }
    }

    /// <summary>Sets corners in faces where the straight line lies off.</summary>
    /// <param name="faces">The faces.</param>
    /// <param name="ends">Corners of the surface on the two edges from the corner of a face that lies alone on its side.</param>
    /// <returns>The corner in each face, or <see cref="Plain"/>, or <see cref="Off"/> where a corner more does not help either.</returns>
    public int[] OnFaces(List<(int A, int B, int C)> faces, Func<(int Lone, int One, int Two), (int, int)> ends)
    {
        (bool Off, (Vector3D Place, Vector3D Out)? At)[] found = new (bool, (Vector3D, Vector3D)?)[faces.Count];
        Parallel.For(0, found.Length, i =>
        {
            (int a, int b, int c) = faces[i];
            bool ab = space.Value(a) < 0 == space.Value(b) < 0, bc = space.Value(b) < 0 == space.Value(c) < 0;
            (int lone, int one, int two) = ab ? (c, a, b) : bc ? (a, b, c) : (b, c, a);
            (int p, int q) = ends((lone, one, two));
            found[i] = OnFace((lone, one, two), p, q);
        });
        return Put(found);
    }

    /// <summary>Sets corners inside tetrahedra where they are needed, and looks whether all lies near then.</summary>
    /// <param name="chosen">Which.</param>
    /// <param name="rim">The corners round a tetrahedron, none = a line on a face lies off; whether one of them lies in a face; and the tetrahedron.</param>
    /// <returns>The corner inside, <see cref="Plain"/> or <see cref="Off"/> each.</returns>
    public int[] Inside(List<int> chosen, Func<int, (int[] Rim, bool Folded, Tetrahedron In)> rim)
    {
        (bool Off, (Vector3D Place, Vector3D Out)? At)[] found = new (bool, (Vector3D, Vector3D)?)[chosen.Count];
        Parallel.For(0, found.Length, i =>
        {
            (int[] around, bool folded, Tetrahedron t) = rim(chosen[i]);
            if (around.Length == 0)
            {
                found[i] = (true, null);
                return;
            }

            Vector3D middle = Average(around);
            (double miss, Vector3D way) = field.At(middle, Bound(middle, around[0]));
            (Vector3D Place, Vector3D Out)? at = null;
            if (folded || Math.Abs(miss) > Enough * tolerance)
            {
                at = Pull(middle, miss, Slopes.Meet([.. around.Select(v => (_place[v], _out[v]))], middle, Level) - middle) ?? Pull(middle, miss, -miss * way) ?? (middle, way);
                if (!In(at.Value.Place, t))
                {
                    at = (middle, way);
                }
            }

            found[i] = (t.Depth < depth && TooFar(around, at), at);
        });
        return Put(found);
    }

    /// <summary>Sets a corner in the middle of others.</summary>
    public int Between(ReadOnlySpan<int> rim) => Put(Average(rim), default);

    /// <summary>Triangles between the corners round a tetrahedron.</summary>
    /// <param name="rim">The corners, anticlockwise.</param>
    /// <param name="middle">One inside; below 0 = none.</param>
    /// <param name="triangles">The triangles' corners.</param>
    /// <returns>How many of them are used.</returns>
    public int Fan(ReadOnlySpan<int> rim, int middle, Span<int> triangles)
    {
        int n = 0;
        if (middle < 0)
        {
            bool turned = rim.Length == 4 && (_place[rim[0]] - _place[rim[2]]).Length > (_place[rim[1]] - _place[rim[3]]).Length;
            int first = turned ? 1 : 0;
            for (int k = 1; k + 1 < rim.Length; k++)
            {
                (triangles[n], triangles[n + 1], triangles[n + 2]) = (rim[first], rim[first + k], rim[(first + k + 1) % rim.Length]);
                n += 3;
            }

            return n;
        }

        for (int k = 0; k < rim.Length; k++)
        {
            (triangles[n], triangles[n + 1], triangles[n + 2]) = (middle, rim[k], rim[(k + 1) % rim.Length]);
            n += 3;
        }

        return n;
    }

    private int[] Put((bool Off, (Vector3D Place, Vector3D Out)? At)[] found) => [.. found.Select(f => f.Off ? Off : f.At is { } at ? Put(at.Place, at.Out) : Plain)];

    private int Put(Vector3D place, Vector3D way)
    {
        _place.Add(place);
        _out.Add(way);
        return _place.Count - 1;
    }

    private Vector3D Average(ReadOnlySpan<int> rim)
    {
        Vector3D sum = default;
        foreach (int v in rim)
        {
            sum += _place[v];
        }

        return 1.0 / rim.Length * sum;
    }

    private double Bound(Vector3D p, int corner) => (p - _place[corner]).Length + 10 * Near + Apart + field.Step;

    // Zero on an edge: false position that does not stay at one end (Illinois).
    private (Vector3D Place, Vector3D Out) OnEdge(int a, int b)
    {
        Vector3D from = space.At(a), way = space.At(b) - from;
        double low = 0, high = 1, atLow = space.Value(a), atHigh = space.Value(b), length = way.Length, apart = Math.Min(0.25, Apart / length);
        for (int step = 0; ; step++)
        {
            double t = low + (high - low) * atLow / (atLow - atHigh);
            (double miss, Vector3D outward) = At(t);
            if (Math.Abs(miss) <= Near || step == Steps)
            {
                double placed = Math.Clamp(t, apart, 1 - apart);
                return (from + placed * way, placed == t ? outward : At(placed).Out);
            }

            if (miss < 0 == atHigh < 0)
            {
                (high, atHigh, atLow) = (t, miss, atLow / 2);
            }
            else
            {
                (low, atLow, atHigh) = (t, miss, atHigh / 2);
            }
        }

        (double Miss, Vector3D Out) At(double t) =>
            field.At(from + t * way, Math.Min(Math.Abs(space.Value(a)) + t * length, Math.Abs(space.Value(b)) + (1 - t) * length) + field.Step);
    }

    // Where the slopes at both ends of a line over a face meet in the face, and from there to the zero.
    private (bool Off, (Vector3D Place, Vector3D Out)? At) OnFace((int Lone, int One, int Two) face, int p, int q)
    {
        Vector3D from = _place[p], lone = space.At(face.Lone), one = space.At(face.One), two = space.At(face.Two);
        Vector3D flat = (one - lone).Cross(two - lone).Unit, along = _place[q] - from;
        double length = along.Length;
        along = 1 / length * along;
        Vector3D aside = flat.Cross(along);
        (double pu, double pw, double qu, double qw) = (_out[p].Dot(along), _out[p].Dot(aside), _out[q].Dot(along), _out[q].Dot(aside));
        double det = pu * qw - qu * pw, at = length / 2, height = 0;
        if (Math.Abs(det) > 1e-9)
        {
            (double u, double w) = (-pw * qu * length / det, pu * qu * length / det);
            if (u > 0.02 * length && u < 0.98 * length && Math.Abs(w) < length)
            {
                (at, height) = (u, w);
            }
        }

        Vector3D foot = from + at * along;
        (double miss, Vector3D way) = field.At(foot, Math.Min(at, length - at) + 10 * Near + Apart + field.Step);
        double steep = Steep(_out[p], _out[q]);
        if (Math.Abs(miss) <= Enough * tolerance * steep && (height == 0 || !TooFar(from + 0.5 * length * along, Enough * steep, length)))
        {
            return (false, null);
        }

        double slope = way.Dot(aside);
        Vector3D step = (height != 0 ? height : Math.Abs(slope) < 0.1 ? 0 : -miss / slope) * aside;
        if (step != default && Pull(foot, miss, step) is { } found && In(found.Place, lone, one, two, flat))
        {
            return (TooFar(_place[p], _out[p], found) || TooFar(_place[q], _out[q], found), found);
        }

        return (length > tolerance, null);
    }

    // Along a way to the zero: false position once it lies between two places, before that straight on.
    private (Vector3D Place, Vector3D Out)? Pull(Vector3D from, double miss, Vector3D way)
    {
        double length = way.Length, t = 1, s = 0, atS = miss, within = Math.Abs(miss) + Reach * length + field.Step;
        if (!(length > 0))
        {
            return null;
        }

        for (int step = 0; step < Steps; step++)
        {
            (double atT, Vector3D outward) = field.At(from + t * way, within);
            if (Math.Abs(atT) <= Near)
            {
                return (from + t * way, outward);
            }

            double next = t - atT * (t - s) / (atT - atS);
            if (!(Math.Abs(next) <= Reach))
            {
                return null;
            }

            if (atT < 0 == atS < 0)
            {
                (s, atS) = Math.Abs(atT) < Math.Abs(atS) ? (t, atT) : (s, atS / 2);
            }
            else
            {
                (s, atS) = (t, atT);
            }

            t = next;
        }

        return null;
    }

    private bool In(Vector3D p, Tetrahedron t)
    {
        Vector3D a = space.At(t.A), b = space.At(t.B), c = space.At(t.C), d = space.At(t.D);
        return Inward(p, a, (b - a).Cross(c - a), d) && Inward(p, b, (c - b).Cross(d - b), a) && Inward(p, c, (d - c).Cross(a - c), b) && Inward(p, d, (a - d).Cross(b - d), c);
    }

    private static bool In(Vector3D p, Vector3D a, Vector3D b, Vector3D c, Vector3D flat) =>
        Inward(p, a, flat.Cross(b - a), c) && Inward(p, b, flat.Cross(c - b), a) && Inward(p, c, flat.Cross(a - c), b);

    // On the inner side of a plane through a place, and not too near to it.
    private static bool Inward(Vector3D p, Vector3D on, Vector3D across, Vector3D inner)
    {
        Vector3D n = across.Unit;
        double all = n.Dot(inner - on);
        return n.Dot(p - on) * Math.Sign(all) > Math.Min(Apart, 0.02 * Math.Abs(all));
    }

    // Lines and triangles inside a tetrahedron; those on its faces were looked at with the faces.
    private bool TooFar(ReadOnlySpan<int> rim, (Vector3D Place, Vector3D Out)? middle)
    {
        if (middle is { } m)
        {
            for (int k = 0; k < rim.Length; k++)
            {
                int v = rim[k], w = rim[(k + 1) % rim.Length];
                if (TooFar(_place[v], _out[v], m) || TooFar(m.Place, _place[v], _place[w], m.Out, _out[v], _out[w]))
                {
                    return true;
                }
            }

            return false;
        }

        Span<int> fan = stackalloc int[6];
        int n = Fan(rim, Plain, fan);
        if (n == 6 && TooFar(_place[fan[0]], _out[fan[0]], (_place[fan[2]], _out[fan[2]])))
        {
            return true;
        }

        for (int k = 0; k < n; k += 3)
        {
            (int a, int b, int c) = (fan[k], fan[k + 1], fan[k + 2]);
            if (TooFar(_place[a], _place[b], _place[c], _out[a], _out[b], _out[c]))
            {
                return true;
            }
        }

        return false;
    }

    private bool TooFar(Vector3D p, Vector3D outP, (Vector3D Place, Vector3D Out) q) => TooFar(0.5 * (p + q.Place), Steep(outP, q.Out), (p - q.Place).Length);

    private bool TooFar(Vector3D p, Vector3D q, Vector3D r, Vector3D outP, Vector3D outQ, Vector3D outR) =>
        TooFar(1.0 / 3 * (p + q + r), Math.Min(Steep(outP, outQ), Math.Min(Steep(outQ, outR), Steep(outR, outP))), Math.Max((p - q).Length, Math.Max((q - r).Length, (r - p).Length)));

    private bool TooFar(Vector3D p, double steep, double within) => within > tolerance && Math.Abs(field.At(p, within + 10 * Near + Apart + field.Step).Miss) > tolerance * steep;

    // Between two slopes the bottom lies deeper than the nearest place of a slope, by the cosine of half their angle.
    private static double Steep(Vector3D a, Vector3D b) => Math.Max(Steepest, Math.Sqrt(Math.Max(0, (1 + a.Dot(b)) / 2)));
}
