using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>Lines of a hand file that cannot be cut along on its form.</summary>
internal static class LineFaults
{
    /// <summary>Edges that miss the scan.</summary>
    /// <param name="mesh">The scan in the limb's frame.</param>
    /// <param name="limb">The limb.</param>
    /// <param name="file">Path of the hand file.</param>
    public static IReadOnlyList<InputError> Beside(Mesh mesh, LimbForm limb, string file)
    {
        (Vector3D low, Vector3D high) = mesh.Box();
        foreach ((string key, double plane, IReadOnlyList<LimbCorner> line) in ((string, double, IReadOnlyList<LimbCorner>)[])[("near", limb.NearEdge, limb.NearLine), ("far", limb.FarEdge, limb.FarLine)])
        {
            int i = line.Index().FirstOrDefault(c => c.Item.Place < low.Z || c.Item.Place > high.Z, (-1, default)).Index;
            if (i >= 0 || (line.Count == 0 && (plane < low.Z || plane > high.Z)))
            {
                string what = i >= 0 ? $"a corner at {Number(1000 * line[i].Place, 0)} mm, where the line misses the scan" : $"an edge at {Number(1000 * plane, 0)} mm, a plane that misses the scan";
                return [new(file, 0, 0, i >= 0 ? $"form.{key}_line[{i + 1}]" : $"form.{key}_edge", what, $"{Number(1000 * low.Z, 0)} to {Number(1000 * high.Z, 0)} mm, where the scan lies", "Check zero_at, along and the unit of [form.scan].")];
            }
        }

        return [];
    }

    /// <summary>Lines through the root of the thumb.</summary>
    /// <param name="form">The form, its thumb found.</param>
    /// <param name="limb">The limb.</param>
    /// <param name="file">Path of the hand file.</param>
    public static IReadOnlyList<InputError> Of(FormModel form, LimbForm limb, string file)
    {
        Vector3D[] root = [.. Root(form)];
        if (root.Length == 0)
        {
            return [];
        }

        bool sleeve = form.Thumb is { End: > 0 } && limb.Pattern.Thumb == "sleeve";
        (double Place, double Angle)[] at = [.. root.Select(form.Frame.Of)];
        string where = $"{Number(1000 * at.Min(a => a.Place), 0)} to {Number(1000 * at.Max(a => a.Place), 0)} mm, {Number(double.RadiansToDegrees(at.Min(a => LimbFrame.Turn(a.Angle))), 0)} to {Number(double.RadiansToDegrees(at.Max(a => LimbFrame.Turn(a.Angle))), 0)}° round";
        List<InputError> errors = [];
        if (sleeve)
        {
            Through(limb.NearLine.Count > 0 ? "form.near_line" : "form.near_edge", SkinMap.Near(form.Frame, limb));
            Through(limb.FarLine.Count > 0 ? "form.far_line" : "form.far_edge", SkinMap.Far(form.Frame, limb));
            foreach (LimbPatch patch in limb.Patches.Where(p => p.Kind == PatchKind.KeepOut))
            {
                Through(HandPath.Join("form.patches", patch.Name), SkinMap.Outline(form.Frame, patch).At);
            }
        }

        if (limb.Pattern.Opening.Count > 0 && SkinMap.Line(form.Frame, limb.Pattern.Opening) is var opening && Array.Exists(root, p => opening.At(p) >= 0))
        {
            errors.Add(new(file, 0, 0, "form.pattern.opening", "an outline through the root of the thumb, or beside it", $"an outline round all of the root, which lies at {where}", "Move its corners out, or remove it: the opening then follows the root."));
        }

        return errors;

        void Through(string key, Func<Vector3D, double> line)
        {
            double[] values = [.. root.Select(line)];
            if (values.Min() < 0 && values.Max() > 0)
            {
                errors.Add(new(file, 0, 0, key, "a line through the root of the thumb, which gets a sleeve", $"a line that passes the root, which lies at {where}", "Move the line, or write thumb = \"opening\" in [form.pattern]."));
            }
        }
    }

    // Points where the thumb joins the limb.
    private static IEnumerable<Vector3D> Root(FormModel form)
    {
        for (int h = 0; h < form.Sides.Across.Length; h++)
        {
            if (form.Sides.Across[h] >= 0 && form.IsThumb[h / 3] && !form.IsThumb[form.Sides.Across[h] / 3])
            {
                yield return form.Mesh.At(form.Sides.From(h));
            }
        }
    }
}
