using System.Globalization;
using System.Text.Json;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;
using Graspwright.Workshop.Form;

namespace Graspwright.Page.Pattern;

/// <summary>The form for the turning view: a coarse skin that hides what lies behind it, and the lines that are drawn on it. Tenths of a millimetre, x toward the thumb, y out of the back of the hand, z toward the fingertips.</summary>
public static class SolidView
{
    private const double Unit = 1e-4, CellMetres = 4.5e-3, Contour = 0.01, SameMetres = 1e-7, OffMetres = 1.5e-4;

    /// <summary>The form as JSON: whether it is <c>left</c>, <c>points</c>, <c>corners</c>, <c>lines</c> with <c>kind</c>, <c>words</c> and <c>points</c>, <c>hollows</c> with number, place and direction.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="hand">The hand.</param>
    public static byte[] Json(SheetOnForm sheet, HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(hand);
        double side = hand.Side == Side.Left ? -1 : 1;
        (List<Vector3D> points, List<int> corners) = Coarse(sheet.Form.Mesh);
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            json.WriteStartObject();
            json.WriteBoolean("left", side < 0);
            Put(json, "points", points, side);
            json.WriteStartArray("corners");
            for (int k = 0; k < corners.Count; k++)
            {
                json.WriteNumberValue(corners[side < 0 ? k / 3 * 3 + 2 - k % 3 : k]);
            }

            json.WriteEndArray();
            json.WriteStartArray("lines");
            foreach ((string kind, string words, IReadOnlyList<(Vector3D From, Vector3D To)> pieces) in Lines(sheet, hand.Form!))
            {
                foreach (IReadOnlyList<Vector3D> line in LineJoining.Join(pieces, SameMetres, OffMetres))
                {
                    json.WriteStartObject();
                    json.WriteString("kind", kind);
                    json.WriteString("words", words);
                    Put(json, "points", line, side);
                    json.WriteEndObject();
                }
            }

            json.WriteEndArray();
            json.WriteStartArray("hollows");
            for (int i = 0; i < sheet.Hollows.Count; i++)
            {
                int v = sheet.Hollows[i].Deepest;
                json.WriteStartObject();
                json.WriteString("words", (i + 1).ToString(CultureInfo.InvariantCulture));
                Put(json, "at", [sheet.Region.Sides.Mesh.At(v)], side);
                Put(json, "toward", [0.1 * sheet.Region.Normals[v]], side);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Put(Utf8JsonWriter json, string name, IReadOnlyList<Vector3D> points, double side)
    {
        json.WriteStartArray(name);
        foreach (Vector3D p in points)
        {
            json.WriteNumberValue((int)Math.Round(side * p.X / Unit));
            json.WriteNumberValue((int)Math.Round(p.Y / Unit));
            json.WriteNumberValue((int)Math.Round(p.Z / Unit));
        }

        json.WriteEndArray();
    }

    /// <summary>Points of one cell of a grid become one; triangles that vanish are left out.</summary>
    private static (List<Vector3D> Points, List<int> Corners) Coarse(Mesh mesh)
    {
        Dictionary<(int, int, int), int> cells = [];
        List<Vector3D> sums = [];
        List<int> counts = [];
        int[] cell = new int[mesh.PointCount];
        for (int v = 0; v < mesh.PointCount; v++)
        {
            Vector3D p = mesh.At(v);
            (int, int, int) key = ((int)Math.Floor(p.X / CellMetres), (int)Math.Floor(p.Y / CellMetres), (int)Math.Floor(p.Z / CellMetres));
            if (!cells.TryGetValue(key, out int c))
            {
                cells[key] = c = sums.Count;
                sums.Add(default);
                counts.Add(0);
            }

            cell[v] = c;
            sums[c] += p;
            counts[c]++;
        }

        HashSet<(int, int, int)> seen = [];
        List<int> corners = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            (int a, int b, int c) = (cell[mesh.Corners[3 * f]], cell[mesh.Corners[3 * f + 1]], cell[mesh.Corners[3 * f + 2]]);
            (a, b, c) = a <= b && a <= c ? (a, b, c) : b <= c ? (b, c, a) : (c, a, b);
            if (a != b && b != c && c != a && seen.Add((a, b, c)))
            {
                corners.AddRange([a, b, c]);
            }
        }

        return ([.. sums.Select((s, i) => 1.0 / counts[i] * s)], corners);
    }

    private static IEnumerable<(string Kind, string Words, IReadOnlyList<(Vector3D, Vector3D)> Pieces)> Lines(SheetOnForm sheet, LimbForm limb)
    {
        Mesh form = sheet.Form.Mesh, part = sheet.Region.Sides.Mesh;
        double[] along = [.. Enumerable.Range(0, form.PointCount).Select(v => form.At(v).Z)];
        double least = along.Min(), most = along.Max();
        for (double z = Math.Ceiling(least / Contour + 1e-7) * Contour; z < most; z += Contour)
        {
            yield return ("contour", "", Level(form, along, z, _ => true));
        }

        List<(Vector3D, Vector3D)> rim = [], seam = [];
        for (int h = 0; h < part.Corners.Length; h++)
        {
            (int a, int b) = (part.Corners[h], part.Corners[Neighbourhood.Next(h)]);
            if (sheet.Region.Sides.Across[h] < 0)
            {
                rim.Add((part.At(a), part.At(b)));
            }
            else if (a < b && sheet.Region.Seams.Contains(Imprint.Pair(a, b)))
            {
                seam.Add((part.At(a), part.At(b)));
            }
        }

        yield return ("edge", "edge of the liner", rim);
        yield return ("seam", "seam", seam);
        foreach (LimbPatch patch in limb.Patches)
        {
            yield return ("skin", patch.Name, Level(form, SkinMap.Outline(sheet.Form.Frame, patch).Values(form), 0, f => !sheet.Form.IsThumb[f]));
        }

        double[] depth = sheet.Depth;
        if (sheet.Hollows.Count > 0)
        {
            yield return ("hollow", "hollow", Level(part, depth, SheetOnForm.LeastDepth, _ => true));
        }
    }

    /// <summary>The line along which values at the points of a surface are at a level.</summary>
    private static List<(Vector3D, Vector3D)> Level(Mesh mesh, double[] values, double level, Func<int, bool> on)
    {
        List<(Vector3D, Vector3D)> pieces = [];
        Span<Vector3D> ends = stackalloc Vector3D[3];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            int count = 0;
            for (int k = 0; k < 3 && on(f); k++)
            {
                // from the lower point to the higher, so that both triangles of an edge find the same place
                (int a, int b) = Imprint.Pair(mesh.Corners[3 * f + k], mesh.Corners[3 * f + (k + 1) % 3]);
                if (values[a] < level != values[b] < level)
                {
                    ends[count++] = mesh.At(a) + (level - values[a]) / (values[b] - values[a]) * (mesh.At(b) - mesh.At(a));
                }
            }

            if (count == 2)
            {
                pieces.Add((ends[0], ends[1]));
            }
        }

        return pieces;
    }
}
