using Graspwright.Form.Region;
using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>What a wire passes on its way.</summary>
/// <param name="Patch">The patch.</param>
/// <param name="Distance">Distance of the way from its outline on the limb rolled out; below 0 = over it [m].</param>
public readonly record struct WirePass(LimbPatch Patch, double Distance);

/// <summary>A wire as it lies over the liner.</summary>
/// <param name="Wire">The wire.</param>
/// <param name="Route">Its way over the form; <see langword="null"/> = there is none.</param>
/// <param name="Stray">Spot that lies where no wire may lie, or off the sheet: 0 = its beginning; −1 = none.</param>
/// <param name="Free">Length of the way if it heeded no skin; infinite = there is none [m].</param>
/// <param name="Outside">Length over the outside of the sheet [m].</param>
/// <param name="Bend">Radius of its sharpest bend; infinite = straight [m].</param>
/// <param name="BendAt">Where that is, on the form [m].</param>
/// <param name="Passes">Patches that it passes near, its own ends left out.</param>
/// <param name="Crossings">Where it crosses seams [m].</param>
public sealed record WireOnForm(LimbWire Wire, SurfaceRoute? Route, int Stray, double Free, double Outside, double Bend, Vector3D BendAt, IReadOnlyList<WirePass> Passes, IReadOnlyList<Vector3D> Crossings)
{
    private const double Step = 1e-3, Arm = 5e-3, PassesWithin = 0.025, OnSeam = 1e-6, Apart = 3e-3;

    /// <summary>Why no way could be sought on this surface, in words; <see langword="null"/> = it was.</summary>
    public string? Refusal { get; init; }

    /// <summary>Length over the form [m].</summary>
    public double Length => Route?.Length ?? double.PositiveInfinity;

    /// <summary>Length to cut, slack included [m].</summary>
    public double Cut => Outside * (1 + Wire.Slack);

    /// <summary>Lays all wires.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="limb">Wires and patches.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<WireOnForm> All(SheetOnForm sheet, LimbForm limb, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(limb);
        Nearest? tree = limb.Wires.Count > 0 ? new(sheet.Region.Sides) : null;
        return [.. limb.Wires.Select(w =>
        {
            try
            {
                return Of(w, sheet, limb, tree!, stop);
            }
            catch (InvalidOperationException refusal)
            {
                return None(w, -1, double.PositiveInfinity) with { Refusal = refusal.Message };
            }
        })];
    }

    /// <summary>Whether skin of a kind must not be rubbed by a wire.</summary>
    /// <param name="kind">The kind.</param>
    public static bool KeepsOff(PatchKind kind) => kind is PatchKind.Tender or PatchKind.Scar or PatchKind.Numb or PatchKind.Bony or PatchKind.KeepOut;

    /// <summary>Places of the form lifted along its normals.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="places">Places on the form [m].</param>
    /// <param name="share">By this share of the sheet's thickness.</param>
    /// <param name="more">And by this much more [m].</param>
    public static IReadOnlyList<Vector3D> Lifted(SheetOnForm sheet, IReadOnlyList<Vector3D> places, double share, double more)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Lifted(sheet, new(sheet.Region.Sides), places, share, more);
    }

    private static IReadOnlyList<Vector3D> Lifted(SheetOnForm sheet, Nearest tree, IReadOnlyList<Vector3D> places, double share, double more)
    {
        Mesh mesh = sheet.Region.Sides.Mesh;
        return [.. places.Select(p =>
        {
            Foot foot = tree.To(p);
            (double a, double b, double c) = SheetPlaces.Shares(mesh, foot);
            int i = mesh.Corners[3 * foot.Face], j = mesh.Corners[3 * foot.Face + 1], k = mesh.Corners[3 * foot.Face + 2];
            Vector3D normal = (a * sheet.Region.Normals[i] + b * sheet.Region.Normals[j] + c * sheet.Region.Normals[k]).Unit;
            return p + (share * (a * sheet.Thickness[i] + b * sheet.Thickness[j] + c * sheet.Thickness[k]) + more) * normal;
        })];
    }

    private static WireOnForm Of(LimbWire wire, SheetOnForm sheet, LimbForm limb, Nearest tree, CancellationToken stop)
    {
        Mesh mesh = sheet.Region.Sides.Mesh;
        LimbFrame frame = sheet.Form.Frame;
        Vector3D[] stations = [.. ((LimbSpot?[])[wire.From, wire.Via, wire.To]).OfType<LimbSpot>().Select(s => At(s, frame, tree, limb))];
        LimbPatch[] kept = [.. limb.Patches.Where(p => KeepsOff(p.Kind))];
        GuardedRoute guarded = RouteAround.Of(mesh, stations, [.. kept.Select(p => (Func<Mesh, double[]>)(m => [.. SkinMap.Outline(frame, p).Values(m).Select(d => d - wire.Clearance)]))], stop);
        double free = RouteAround.Of(mesh, stations, [], stop).Route?.Length ?? double.PositiveInfinity;
        if (guarded.Route is not { } route)
        {
            return None(wire, guarded.Stray, free);
        }

        IReadOnlyList<Vector3D> even = LineShape.Even(route.Places, Step), outside = Lifted(sheet, tree, even, 1, (wire.Diameter ?? 0) / 2);
        (double bend, Vector3D at) = LineShape.SharpestBend(outside, Arm);
        Mesh line = new([.. even.SelectMany(p => (double[])[p.X, p.Y, p.Z])], []);
        WirePass[] passes = [.. limb.Patches.Where(p => p.Kind != PatchKind.Seam && p.Name != wire.From.Patch && p.Name != wire.To.Patch && p.Name != wire.Via?.Patch)
            .Select(p => new WirePass(p, SkinMap.Outline(frame, p).Values(line).Min())).Where(p => p.Distance <= PassesWithin).OrderBy(p => p.Distance)];
        return new(wire, route, -1, free, LineShape.Length(outside), bend, at, passes, Seams(route, sheet));
    }

    private static WireOnForm None(LimbWire wire, int stray, double free) => new(wire, null, stray, free, double.PositiveInfinity, double.PositiveInfinity, default, [], []);

    private static Vector3D At(LimbSpot spot, LimbFrame frame, Nearest tree, LimbForm limb)
    {
        (double place, double angle) = (spot.Place, spot.AngleRadians);
        if (spot.Patch is { } name)
        {
            LimbPatch patch = limb.Patches.First(p => p.Name == name);
            (place, angle) = SkinMap.Middle(frame, patch);
        }

        Vector3D p = SheetPlaces.Outward(frame, tree, place, angle);
        Foot foot = tree.To(p);
        return Math.Abs(foot.Distance) < RouteAround.Near ? foot.Place : p;
    }

    // A way meets a seam at corners of its own, since seams run along edges.
    private static List<Vector3D> Seams(SurfaceRoute route, SheetOnForm sheet)
    {
        Mesh mesh = sheet.Region.Sides.Mesh;
        List<Vector3D> found = [];
        foreach (Vector3D p in route.Places.Skip(1).SkipLast(1))
        {
            if (sheet.Region.Seams.Any(s => OnPiece(p, mesh.At(s.A), mesh.At(s.B))) && (found.Count == 0 || (p - found[^1]).Length > Apart))
            {
                found.Add(p);
            }
        }

        return found;
    }

    private static bool OnPiece(Vector3D p, Vector3D a, Vector3D b)
    {
        Vector3D ab = b - a;
        double t = Math.Clamp((p - a).Dot(ab) / Math.Max(ab.Dot(ab), 1e-30), 0, 1);
        return (p - a - t * ab).Length < OnSeam;
    }
}
