using Graspwright.Form.Pattern;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>Turns flat pieces for the paper and finds what is marked on them.</summary>
internal static class PaperPieces
{
    private const double Near = 0.006;

    public static PaperPiece Make(PatternPiece piece, string name, SheetOnForm sheet, HandModel hand, IReadOnlyList<WireOnForm> wires, int darts)
    {
        Mesh mesh = piece.Piece.Sides.Mesh;
        (double upX, double upY) = Up(piece, mesh);
        double mirror = hand.Side == Side.Left ? -1 : 1;
        (double X, double Y) Turned(double x, double y) => (mirror * (x * upY - y * upX), x * upX + y * upY);
        (double X, double Y)[] line = [.. piece.CutLine.Select(p => Turned(p.X, p.Y))];
        double left = line.Min(p => p.X), low = line.Min(p => p.Y);
        (double X, double Y) Place(double x, double y) => Turned(x, y) is var p ? (p.X - left, p.Y - low) : default;
        Nearest tree = new(piece.Piece.Sides);
        List<PatternMark> marks = [];
        foreach (LimbPatch patch in hand.Form!.Patches.Where(p => p.Kind != PatchKind.Seam))
        {
            (double place, double angle) = SkinMap.Middle(sheet.Form.Frame, patch);
            Vector3D p = SheetPlaces.Outward(sheet.Form.Frame, tree, place, angle);
            Put(marks, piece, tree, p, patch.Name, patch.Kind == PatchKind.Contact ? "contact" : "skin", Place);
        }

        for (int i = 0; i < sheet.Hollows.Count; i++)
        {
            Put(marks, piece, tree, sheet.Region.Sides.Mesh.At(sheet.Hollows[i].Deepest), $"press in {i + 1}", "hollow", Place);
        }

        List<(string, IReadOnlyList<((double, double), (double, double))>)> lines = [];
        foreach (LimbPatch patch in hand.Form.Patches.Where(p => p.Kind is not (PatchKind.Seam or PatchKind.KeepOut)))
        {
            double[] values = SkinMap.Outline(sheet.Form.Frame, patch).Values(mesh);
            lines.Add((patch.Name, Level(piece, mesh, values, 0, Place)));
        }

        double[] depth = [.. piece.Piece.OldPoints.Select(v => sheet.Depth[v])];
        lines.Add(("hollow", Level(piece, mesh, depth, SheetOnForm.LeastDepth, Place)));
        return new(name, piece, Place, marks, lines, line.Max(p => p.X) - left, line.Max(p => p.Y) - low, darts) { Wires = [.. wires.Select(w => new WireOnPaper(w.Wire.Name, WireOnPaper.Lines(w, sheet, piece, tree, Place))).Where(w => w.Runs.Count > 0)] };
    }

    /// <summary>Lines on the flat piece where values of the points reach a level.</summary>
    internal static IReadOnlyList<((double X, double Y) From, (double X, double Y) To)> Level(PatternPiece piece, Mesh mesh, double[] values, double level, Func<double, double, (double X, double Y)> place)
    {
        List<((double, double), (double, double))> line = [];
        List<(double, double)> ends = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            ends.Clear();
            for (int k = 0; k < 3; k++)
            {
                int a = mesh.Corners[3 * f + k], b = mesh.Corners[3 * f + (k + 1) % 3];
                double va = values[a] - level, vb = values[b] - level;
                if (va < 0 != vb < 0)
                {
                    double t = va / (va - vb);
                    ends.Add(place(piece.Flat.X[a] + t * (piece.Flat.X[b] - piece.Flat.X[a]), piece.Flat.Y[a] + t * (piece.Flat.Y[b] - piece.Flat.Y[a])));
                }
            }

            if (ends.Count == 2)
            {
                line.Add((ends[0], ends[1]));
            }
        }

        return line;
    }

    private static void Put(List<PatternMark> marks, PatternPiece piece, Nearest tree, Vector3D p, string words, string kind, Func<double, double, (double X, double Y)> place)
    {
        Foot foot = tree.To(p);
        if (Math.Abs(foot.Distance) > Near)
        {
            return;
        }

        (double x, double y) = Flat(piece, tree.Mesh, foot, place);
        marks.Add(new(x, y, words, kind));
    }

    /// <summary>Where a foot on the curved piece lies on the paper.</summary>
    internal static (double X, double Y) Flat(PatternPiece piece, Mesh mesh, Foot foot, Func<double, double, (double X, double Y)> place)
    {
        (double a, double b, double c) = SheetPlaces.Shares(mesh, foot);
        int i = mesh.Corners[3 * foot.Face], j = mesh.Corners[3 * foot.Face + 1], k = mesh.Corners[3 * foot.Face + 2];
        return place(a * piece.Flat.X[i] + b * piece.Flat.X[j] + c * piece.Flat.X[k], a * piece.Flat.Y[i] + b * piece.Flat.Y[j] + c * piece.Flat.Y[k]);
    }

    // Direction on the flat piece in which the limb goes toward the fingertips.
    private static (double X, double Y) Up(PatternPiece piece, Mesh mesh)
    {
        double sx = 0, sy = 0, sz = 0, xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
        int n = mesh.PointCount;
        for (int v = 0; v < n; v++)
        {
            double x = piece.Flat.X[v], y = piece.Flat.Y[v], z = mesh.Points[3 * v + 2];
            (sx, sy, sz) = (sx + x / n, sy + y / n, sz + z / n);
        }

        for (int v = 0; v < n; v++)
        {
            double x = piece.Flat.X[v] - sx, y = piece.Flat.Y[v] - sy, z = mesh.Points[3 * v + 2] - sz;
            xx += x * x;
            xy += x * y;
            yy += y * y;
            xz += x * z;
            yz += y * z;
        }

        double det = xx * yy - xy * xy, gx = (xz * yy - yz * xy) / det, gy = (yz * xx - xz * xy) / det, length = double.Hypot(gx, gy);
        return length > 0 && double.IsFinite(length) ? (gx / length, gy / length) : (0, 1);
    }
}
