using Graspwright.Drawing.Display;
using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>The form in ink: outline, contour lines across the limb, edges of the liner, seams, hollows.</summary>
public static class FormPictures
{
    private const double Gap = 14, Head = 18, Foot = 12, Contour = 0.01;
    private const double LeastSeen = 0.6; // of an outline, for its name to stand beside it

    /// <summary>The form seen from the back of the hand, from the thumb's side and from the palm, half size where it is large.</summary>
    /// <param name="result">What is told about it.</param>
    public static Picture Views(FormResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        SheetOnForm sheet = result.Sheet ?? throw new ArgumentException("There is no form to draw.", nameof(result));
        (Vector3D low, Vector3D high) = sheet.Form.Mesh.Box();
        double scale = 1000 * (high.Z - low.Z > 0.22 ? 0.4 : 0.6), width = scale * Math.Max(high.X - low.X, high.Y - low.Y), height = scale * (high.Z - low.Z);
        (string Words, Vector3D Right, Vector3D Eye)[] views = [("from the back", new(-1, 0, 0), new(0, 1, 0)), ("from the thumb", new(0, 1, 0), new(1, 0, 0)), ("from the palm", new(1, 0, 0), new(0, -1, 0))];
        (string, double[])[] patches = [.. result.Patches.Where(p => p.Kind != Hand.PatchKind.Seam).Select(p => (p.Name, SkinMap.Outline(sheet.Form.Frame, p).Values(sheet.Form.Mesh)))];
        Picture picture = new(3 * width + 4 * Gap, height + Head + Foot, "the form", result.Answer?.Sentence ?? "The form.");
        picture.OnLayer("sentence");
        int line = 0;
        foreach (string words in Lettering.Wrap(result.Answer?.Sentence ?? "", picture.WidthMm - 8, 2.3))
        {
            picture.Text(new(4, picture.HeightMm - 6 - 3.6 * line++), words, 2.3);
        }

        for (int i = 0; i < views.Length; i++)
        {
            double centre = Gap + width / 2 + i * (width + Gap);
            (string words, Vector3D right, Vector3D eye) = views[i];
            Vector3D middle = new((low.X + high.X) / 2, (low.Y + high.Y) / 2, low.Z);
            Place At(Vector3D p) => new(centre + scale * (p - middle).Dot(right), Foot + scale * (p.Z - low.Z));
            Draw(picture, sheet, patches, eye, At);
            Wires(picture, result, eye, At);
            picture.OnLayer("words").Text(new(centre, 5), words, 2.3, Across.Middle, strong: true);
        }

        return picture;
    }

    // Where the form turns its back to the eye a wire is not drawn.
    private static void Wires(Picture picture, FormResult result, Vector3D eye, Func<Vector3D, Place> at)
    {
        Mesh mesh = result.Sheet!.Form.Mesh;
        Nearest? tree = result.Wires.Count > 0 ? new(result.Sheet.Form.Sides) : null;
        picture.OnLayer("wires");
        foreach (WireOnForm wire in result.Wires.Where(w => w.Route is not null))
        {
            IReadOnlyList<Vector3D> places = LineShape.Even(wire.Route!.Places, 1e-3);
            bool[] seen = [.. places.Select(p => mesh.Cross(tree!.To(p).Face).Unit.Dot(eye) > 0.05)];
            int first = Array.IndexOf(seen, true);
            for (int i = 1; i < places.Count; i++)
            {
                if (seen[i - 1] && seen[i])
                {
                    picture.Line(at(places[i - 1]), at(places[i]), new Pen(0.5));
                }
            }

            if (first >= 0 && seen.Count(s => s) > 3)
            {
                picture.Circle(at(places[first]), 0.8, Pen.Thin, Ink.Ink);
                picture.Text(at(places[first]).Moved(1.4, 0.6), wire.Wire.Name, 1.8);
            }
        }
    }

    private static void Draw(Picture picture, SheetOnForm sheet, IReadOnlyList<(string Name, double[] Away)> patches, Vector3D eye, Func<Vector3D, Place> at)
    {
        Mesh mesh = sheet.Form.Mesh;
        bool[] seen = [.. Enumerable.Range(0, mesh.FaceCount).Select(f => mesh.Cross(f).Dot(eye) > 0)];
        picture.OnLayer("contours");
        List<Vector3D> ends = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            if (!seen[f])
            {
                continue;
            }

            double least = Math.Min(mesh.Corner(f, 0).Z, Math.Min(mesh.Corner(f, 1).Z, mesh.Corner(f, 2).Z)), most = Math.Max(mesh.Corner(f, 0).Z, Math.Max(mesh.Corner(f, 1).Z, mesh.Corner(f, 2).Z));
            for (double z = Math.Ceiling(least / Contour + 1e-7) * Contour; z <= most; z += Contour)
            {
                ends.Clear();
                for (int k = 0; k < 3; k++)
                {
                    Vector3D a = mesh.Corner(f, k), b = mesh.Corner(f, (k + 1) % 3);
                    if (a.Z < z != b.Z < z)
                    {
                        ends.Add(a + (z - a.Z) / (b.Z - a.Z) * (b - a));
                    }
                }

                if (ends.Count == 2)
                {
                    picture.Line(at(ends[0]), at(ends[1]), Pen.Pale);
                }
            }
        }

        picture.OnLayer("outline");
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            int other = sheet.Form.Sides.Across[h];
            if (seen[h / 3] && (other < 0 || !seen[other / 3]))
            {
                picture.Line(at(mesh.At(mesh.Corners[h])), at(mesh.At(mesh.Corners[Neighbourhood.Next(h)])), Pen.Thin);
            }
        }

        Mesh part = sheet.Region.Sides.Mesh;
        picture.OnLayer("skin map");
        foreach ((string name, double[] away) in patches)
        {
            (double middle, double lowest, int visible, int all) = (0, double.PositiveInfinity, 0, 0);
            for (int f = 0; f < mesh.FaceCount; f++)
            {
                ends.Clear();
                for (int k = 0; k < 3 && !sheet.Form.IsThumb[f]; k++)
                {
                    int a = mesh.Corners[3 * f + k], b = mesh.Corners[3 * f + (k + 1) % 3];
                    if (away[a] < 0 != away[b] < 0)
                    {
                        ends.Add(mesh.At(a) + away[a] / (away[a] - away[b]) * (mesh.At(b) - mesh.At(a)));
                    }
                }

                all += ends.Count == 2 ? 1 : 0;
                if (ends.Count == 2 && seen[f])
                {
                    Place from = at(ends[0]), to = at(ends[1]);
                    picture.Line(from, to, new Pen(0.3, Ink.Pale));
                    (middle, lowest, visible) = (middle + from.X, Math.Min(lowest, from.Y), visible + 1);
                }
            }

            if (visible > LeastSeen * all)
            {
                picture.Text(new(middle / visible, lowest - 2.4), name, 1.9, Across.Middle);
            }
        }

        picture.OnLayer("edges and seams");
        for (int h = 0; h < part.Corners.Length; h++)
        {
            int a = part.Corners[h], b = part.Corners[Neighbourhood.Next(h)];
            bool rim = sheet.Region.Sides.Across[h] < 0, seam = sheet.Region.Seams.Contains(Graspwright.Form.Region.Imprint.Pair(a, b));
            if ((rim || seam) && part.Cross(h / 3).Dot(eye) > 0)
            {
                picture.Line(at(part.At(a)), at(part.At(b)), rim ? new Pen(0.45) : new Pen(0.4, Ink.Accent));
            }
        }

        picture.OnLayer("hollows");
        for (int i = 0; i < sheet.Hollows.Count; i++)
        {
            int v = sheet.Hollows[i].Deepest;
            if (sheet.Region.Normals[v].Dot(eye) > 0.15)
            {
                picture.Circle(at(part.At(v)), 1.8, new Pen(0.3, Ink.Accent), Ink.Paper);
                picture.Text(at(part.At(v)), $"{i + 1}", 1.8, Across.Middle, Level.Middle);
            }
        }
    }
}
