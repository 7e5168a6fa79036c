using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>Finds the thumb of a scan, and fingers that no sheet covers.</summary>
internal static class ScannedThumb
{
    private const double Tip = 0.85; // share of the thumb beyond which a sleeve would close over its tip
    private const double BelowWeb = 0.003; // the seam to the fingertips begins a little below the web, so that it meets the root

    /// <summary>The form of a mended scan.</summary>
    /// <param name="repaired">The scan, in the limb's frame.</param>
    /// <param name="limb">Edges and thumb.</param>
    /// <param name="from">Where it comes from, in words.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="file">Path of the hand file.</param>
    public static (FormModel? Form, IReadOnlyList<InputError> Errors) Of(Repaired repaired, LimbForm limb, string from, string unit, string file)
    {
        Mesh mesh = repaired.Mesh;
        LimbFrame whole = new(mesh);
        Func<Vector3D, double> far = SkinMap.Far(whole, limb);
        IReadOnlyList<Branch> branches = Branches.Of(repaired.Sides, mesh.Box().Low.Z + 0.005);
        Branch? thumb = branches.FirstOrDefault(b => far(mesh.At(b.Web)) < 0 && Middle(mesh, b.Points).X > Middle(mesh, b.Other).X);
        Branch[] fingers = [.. branches.Where(b => b != thumb && far(mesh.At(b.Web)) < 0)];
        if (fingers.Length > 0)
        {
            double web = fingers.Min(b => mesh.At(b.Web).Z);
            string key = limb.FarLine.Count > 0 ? "form.far_line" : "form.far_edge", edge = limb.FarLine.Count > 0 ? "an edge beyond webs" : $"an edge at {Number(1000 * limb.FarEdge, 0)} mm";
            string where = string.Join(", ", fingers.Select(b => $"{Number(1000 * mesh.At(b.Web).Z, 0)} mm, {Number(double.RadiansToDegrees(LimbFrame.Turn(whole.Of(mesh.At(b.Web)).Angle)), 0)}° round"));
            return (null, [new(file, 0, 0, key, $"{edge}, where the hand has already parted into {fingers.Length + 1} beside the thumb (webs at {where})", $"an edge before {Number(1000 * web, 0)} mm",
                "No sheet lies flat over fingers: end the liner before them, or cut them off in the scanner's program. If it is the thumb, check form.scan.back, form.scan.along and hand.side: it must lie on the thumb's side.")]);
        }

        if (thumb is null || BranchRoot.Of(repaired.Sides, thumb) is not { } root)
        {
            return (new(repaired.Sides, new bool[mesh.FaceCount], new(mesh), null, from, unit, repaired, 0), []);
        }

        LimbFrame frame = new(root.Mesh, f => !root.IsBranch[f]);
        (double place, double angle) = frame.Of(root.Web);
        double end = limb.Thumb is { } t ? Math.Min(t.Length, Tip * root.Length) : double.NaN;
        return (new(Neighbourhood.Of(root.Mesh), root.IsBranch, frame, new(root.Foot, root.Along, root.Outer, end, place - BelowWeb, angle, root.Girth), from, unit, repaired, 0), []);
    }

    private static Vector3D Middle(Mesh mesh, IReadOnlyList<int> points)
    {
        Vector3D sum = default;
        foreach (int v in points)
        {
            sum += 1.0 / points.Count * mesh.At(v);
        }

        return sum;
    }
}
