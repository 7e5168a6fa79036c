using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Form;

/// <summary>The part of the form that the liner covers, its seams drawn in.</summary>
/// <param name="Sides">The part with its neighbours.</param>
/// <param name="Normals">Normals at its points, as the whole form has them.</param>
/// <param name="IsThumb">Whether a triangle covers the thumb.</param>
/// <param name="Seams">Edges of the seams, the lower point first.</param>
public sealed record LinerRegion(Neighbourhood Sides, Vector3D[] Normals, bool[] IsThumb, IReadOnlySet<(int A, int B)> Seams)
{
    private const int MostTurns = 8;
    private const double TurnStep = 5 * Math.PI / 180;

    /// <summary>Cuts the part out of a form.</summary>
    /// <param name="form">The form.</param>
    /// <param name="limb">Edges, thumb, patches, seam.</param>
    /// <param name="split">With a second seam from edge to edge, along the thumb's side, so that the sheet falls into a back and a palm.</param>
    public static LinerRegion Of(FormModel form, LimbForm limb, bool split = false)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(limb);
        Drawing d = new(form);
        bool sleeve = form.Thumb is { End: > 0 } && limb.Pattern.Thumb == "sleeve";
        d.Draw(SkinMap.Near(form.Frame, limb), f => !d.IsThumb[f], keep: 1);
        d.Draw(SkinMap.Far(form.Frame, limb), f => !d.IsThumb[f], keep: -1);
        foreach (LimbPatch patch in limb.Patches.Where(p => p.Kind == PatchKind.KeepOut))
        {
            d.Draw(SkinMap.Outline(form.Frame, patch).Values(d.Mesh), f => !d.IsThumb[f], keep: 1);
        }

        DrawnLoop? opening = limb.Pattern.Opening.Count > 0 ? SkinMap.Line(form.Frame, limb.Pattern.Opening)
            : form.Thumb is null && limb.Thumb is { } t ? new(form.Frame, Round(t.Place, t.Root / (2 * Math.PI), form.Frame.Radius(t.Place))) : null;
        if (opening is not null)
        {
            d.Draw(opening.Values(d.Mesh), f => !d.IsThumb[f], keep: 1);
        }

        HashSet<(int, int)> seams = [.. d.Draw(p => Beside(form.Frame, p, limb.Pattern.SeamRadians), f => !d.IsThumb[f] && Toward(form.Frame, d.Mesh.Middle(f), limb.Pattern.SeamRadians))];
        if (split || form.Thumb is not null || limb.Thumb is not null)
        {
            // from the thumb's opening to the edge at the fingertips
            (double from, double web) = form.Thumb is { } set ? (set.WebPlace, set.WebAngle) : limb.Thumb is { } taped ? (taped.Place, Math.PI / 2) : (limb.NearEdge, limb.Pattern.SeamRadians + Math.PI);
            double angle = Clear(form.Frame, limb, split ? double.NegativeInfinity : from, web);
            seams.UnionWith(d.Draw(p => Beside(form.Frame, p, angle), f => !d.IsThumb[f] && Toward(form.Frame, d.Mesh.Middle(f), angle) && (split || d.Mesh.Middle(f).Z > from)));
        }

        if (sleeve && form.Thumb is { } thumb)
        {
            d.Draw(p => (p - thumb.Foot).Dot(thumb.Along) - thumb.End, f => d.IsThumb[f], keep: -1);
            Vector3D across = thumb.Along.Cross(thumb.Outer);
            seams.UnionWith(d.Draw(p => (p - thumb.Foot).Dot(across), f => d.IsThumb[f] && (d.Mesh.Middle(f) - thumb.Foot).Dot(thumb.Outer) > 0));
        }

        Mesh whole = d.Mesh;
        Vector3D[] normals = SurfaceSums.Normals(whole);
        bool[] kept = [.. d.Kept.Select((k, f) => k && (sleeve || !d.IsThumb[f]))];
        kept = Largest(whole, kept);
        (Mesh part, int[] old) = whole.Keep(f => kept[f]);
        Dictionary<int, int> place0 = [];
        for (int v = 0; v < old.Length; v++)
        {
            place0[old[v]] = v;
        }

        bool[] thumbPart = [.. Enumerable.Range(0, whole.FaceCount).Where(f => kept[f]).Select(f => d.IsThumb[f])];
        Neighbourhood sides = Neighbourhood.Of(part);
        HashSet<(int, int)> own = [.. seams.Where(s => place0.ContainsKey(s.Item1) && place0.ContainsKey(s.Item2)).Select(s => Imprint.Pair(place0[s.Item1], place0[s.Item2]))];
        for (int h = 0; h < sides.Across.Length; h++)
        {
            if (sides.Across[h] >= 0 && thumbPart[h / 3] != thumbPart[sides.Across[h] / 3])
            {
                own.Add(Imprint.Pair(sides.From(h), sides.To(h)));
            }
        }

        return new(sides, [.. old.Select(v => normals[v])], thumbPart, own);
    }

    private static bool[] Largest(Mesh mesh, bool[] kept)
    {
        (Mesh part, _) = mesh.Keep(f => kept[f]);
        (int[] parts, int count) = Neighbourhood.Of(part).Parts();
        if (count <= 1)
        {
            return kept;
        }

        int largest = Enumerable.Range(0, count).MaxBy(i => parts.Count(p => p == i)), at = 0;
        return [.. kept.Select(k => k && parts[at++] == largest)];
    }

    // The angle of the thumb's seam: that of the web, else the nearest one at which it runs over nothing that a seam must not rub.
    private static double Clear(LimbFrame frame, LimbForm limb, double from, double web)
    {
        double low = limb.NearLine.Select(c => c.Place).Append(limb.NearEdge).Min(), high = limb.FarLine.Select(c => c.Place).Append(limb.FarEdge).Max();
        DrawnLoop[] sore = [.. limb.Patches.Where(p => p.Kind is PatchKind.Tender or PatchKind.Scar or PatchKind.Bony or PatchKind.Numb or PatchKind.Contact).Select(p => SkinMap.Outline(frame, p))];
        for (int i = 0; i <= 2 * MostTurns; i++)
        {
            double angle = web + (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * TurnStep;
            if (!Array.Exists(sore, p => SkinMap.Crosses(p, angle, Math.Max(from, low), high)))
            {
                return angle;
            }
        }

        return web;
    }

    private static double Beside(LimbFrame frame, Vector3D p, double angle)
    {
        (double x, double y) = frame.Middle(p.Z);
        (double sin, double cos) = Math.SinCos(angle);
        return (p.X - x) * cos - (p.Y - y) * sin;
    }

    private static bool Toward(LimbFrame frame, Vector3D p, double angle)
    {
        (double x, double y) = frame.Middle(p.Z);
        (double sin, double cos) = Math.SinCos(angle);
        return (p.X - x) * sin + (p.Y - y) * cos > 0;
    }

    private static IReadOnlyList<(double Place, double Angle)> Round(double place, double radius, double limb) =>
        [.. Enumerable.Range(0, 32).Select(i => (place + radius * Math.Cos(2 * Math.PI * i / 32), Math.PI / 2 + radius / limb * Math.Sin(2 * Math.PI * i / 32)))];

    // The form with the lines drawn so far; thumb flags follow the cuts.
    private sealed class Drawing(FormModel form)
    {
        public Mesh Mesh { get; private set; } = form.Mesh;

        public bool[] IsThumb { get; private set; } = form.IsThumb;

        /// <summary>Triangles that no line has cut off so far.</summary>
        public bool[] Kept { get; private set; } = [.. Enumerable.Repeat(true, form.Mesh.FaceCount)];

        public HashSet<(int A, int B)> Draw(Func<Vector3D, double> value, Func<int, bool> where, int keep = 0) => Draw([.. Enumerable.Range(0, Mesh.PointCount).Select(v => value(Mesh.At(v)))], where, keep);

        // keep: the side that stays, by the sign of the values; 0 = both.
        public HashSet<(int A, int B)> Draw(double[] values, Func<int, bool> where, int keep = 0)
        {
            bool[] on = [.. Enumerable.Range(0, Mesh.FaceCount).Select(where)], thumb = IsThumb, kept = Kept;
            Imprinted drawn = Imprint.Zero(Neighbourhood.Of(Mesh), values, f => on[f]);
            Mesh = drawn.Mesh;
            IsThumb = [.. drawn.OldFace.Select(f => thumb[f])];
            double Value(int v) => v < values.Length ? values[v] : 0; // the line's own points
            Kept = [.. drawn.OldFace.Select((old, f) => kept[old] && (keep == 0 || !on[old] || keep * (Value(Mesh.Corners[3 * f]) + Value(Mesh.Corners[3 * f + 1]) + Value(Mesh.Corners[3 * f + 2])) > 0))];
            return drawn.Line;
        }
    }
}
