using Graspwright.Form.Hollows;
using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;
using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>The sheet as it lies on its part of the form: thickness, volume, hollows.</summary>
/// <param name="Form">The form.</param>
/// <param name="Region">The part that the sheet covers.</param>
/// <param name="Thickness">Thickness at each point of the part [m].</param>
/// <param name="Plain">Thickness where no patch says otherwise [m].</param>
/// <param name="Volume">Volume of the sheet.</param>
/// <param name="Rule">Which ball stands for the sheet; <see langword="null"/> = the hardness is not known.</param>
/// <param name="Hollows">Hollows in the order in which to press them in: points of the part.</param>
/// <param name="Depth">Depth at each point of the part [m].</param>
public sealed record SheetOnForm(FormModel Form, LinerRegion Region, double[] Thickness, double Plain, SheetVolume Volume, BridgingRule? Rule, IReadOnlyList<Hollow> Hollows, double[] Depth)
{
    /// <summary>Depth from which a hollow counts [m].</summary>
    public const double LeastDepth = 0.3e-3;

    private const double UsualThickness = 0.003;

    /// <summary>Depth at each point of the whole form, whatever part of it the sheet covers; empty where the hardness is not known [m].</summary>
    private double[] FormDepth { get; init; } = [];

    /// <summary>Lays the sheet on.</summary>
    /// <param name="form">The form.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static SheetOnForm Of(FormModel form, HandModel hand, CancellationToken stop = default) => Of(form, hand, false, null, stop);

    /// <summary>The same sheet, cut in two along the thumb's side: the form's hollows are known already.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public SheetOnForm Split(HandModel hand, CancellationToken stop = default) => Of(Form, hand, true, FormDepth, stop);

    private static SheetOnForm Of(FormModel form, HandModel hand, bool split, double[]? known, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(hand);
        LimbForm limb = hand.Form!;
        LinerRegion region = LinerRegion.Of(form, limb, split);
        double plain = hand.Liner?.Thickness ?? UsualThickness;
        Mesh mesh = region.Sides.Mesh;
        double[] thickness = new double[mesh.PointCount];
        Array.Fill(thickness, plain);
        foreach (LimbPatch patch in limb.Patches.Where(p => p.Thickness is not null))
        {
            double[] away = SkinMap.Outline(form.Frame, patch).Values(mesh);
            for (int v = 0; v < thickness.Length; v++)
            {
                thickness[v] = away[v] <= 0 ? patch.Thickness!.Value : thickness[v];
            }
        }

        SheetVolume volume = SheetVolume.Of(region.Sides, region.Normals, v => thickness[v], plain);
        BridgingRule? rule = hand.Liner?.Putty.ShoreA is { } shore ? new(Silicone.Modulus(shore), plain, limb.Pattern.HandPressure) : null;
        double[] depth = new double[mesh.PointCount], whole = known ?? [];
        IReadOnlyList<Hollow> hollows = [];
        if (rule is not null)
        {
            Nearest tree = new(form.Sides);
            whole = known ?? HollowSearch.Depths(form.Sides, tree, rule.Radius, stop: stop);
            Mesh own = form.Mesh;
            for (int v = 0; v < depth.Length; v++)
            {
                // points of drawn lines lie on edges of the form: the corner of their triangle that is nearest speaks for them
                int f = tree.To(mesh.At(v)).Face;
                int near = Enumerable.Range(0, 3).Select(k => own.Corners[3 * f + k]).MinBy(c => (own.At(c) - mesh.At(v)).Length);
                depth[v] = whole[near];
            }

            // from the middle of the sheet outward, so that the air finds its way to an edge
            HashSet<int> rim = [.. region.Sides.Loops().SelectMany(l => l.Select(region.Sides.From))];
            double ToRim(int v) => rim.Min(r => (mesh.At(r) - mesh.At(v)).Length);
            hollows = [.. HollowSearch.Gather(region.Sides, depth, LeastDepth).OrderByDescending(h => ToRim(h.Deepest))];
        }

        return new(form, region, thickness, plain, volume, rule, hollows, depth) { FormDepth = whole };
    }

    /// <summary>The middle of the sheet's thickness: what is laid flat.</summary>
    public Mesh Middle()
    {
        Mesh mesh = Region.Sides.Mesh;
        double[] points = [.. mesh.Points];
        Vector3D[] normals = Evened(mesh);
        for (int v = 0; v < mesh.PointCount; v++)
        {
            Vector3D lift = Thickness[v] / 2 * normals[v];
            points[3 * v] += lift.X;
            points[3 * v + 1] += lift.Y;
            points[3 * v + 2] += lift.Z;
        }

        return mesh with { Points = points };
    }

    // A sheet does not follow every crease: normals are evened out with their neighbours', a few times over.
    private Vector3D[] Evened(Mesh mesh)
    {
        Vector3D[] normals = Region.Normals;
        for (int round = 0; round < 8; round++)
        {
            Vector3D[] next = [.. normals];
            for (int h = 0; h < mesh.Corners.Length; h++)
            {
                int v = mesh.Corners[h], w = mesh.Corners[Neighbourhood.Next(h)];
                next[v] += 0.5 * normals[w];
                next[w] += 0.5 * normals[v];
            }

            normals = [.. next.Select(n => n.Unit)];
        }

        return normals;
    }
}
