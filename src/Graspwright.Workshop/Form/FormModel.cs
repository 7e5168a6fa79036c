using Graspwright.Form.Reading;
using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;
using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Numerics;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>The closed form of a limb, in its frame: x toward the thumb, y out of the back of the hand, z toward the fingertips. A left hand is held mirrored.</summary>
/// <param name="Sides">The form with its neighbours.</param>
/// <param name="IsThumb">Whether a triangle belongs to the thumb.</param>
/// <param name="Frame">Place and angle on it.</param>
/// <param name="Thumb">The thumb set on the limb; <see langword="null"/> = none.</param>
/// <param name="From">Where it comes from, in words.</param>
/// <param name="Unit">Unit of a scan; empty for tape marks.</param>
/// <param name="Repair">What was mended; <see langword="null"/> for tape marks.</param>
/// <param name="Raised">Volume added by relief less that carved [m³].</param>
public sealed record FormModel(
    Neighbourhood Sides, bool[] IsThumb, LimbFrame Frame, FormThumb? Thumb, string From, string Unit, Repaired? Repair, double Raised)
{
    private const double Blend = 0.006;

    /// <summary>The surface.</summary>
    public Mesh Mesh => Sides.Mesh;

    /// <summary>Makes the form of a hand: from its scan, else from its tape marks; relief added.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Path of its file.</param>
    /// <param name="say">Told how far a long thinning is.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The form, or what is wrong.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static (FormModel? Form, IReadOnlyList<InputError> Errors) Of(HandModel hand, string file, Action<string>? say = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (hand.Form is not { } limb)
        {
            return (null, MouldMapping.Missing(hand, file, form: true));
        }

        (FormModel? form, IReadOnlyList<InputError> errors) = limb.Scan is { } scan ? Scanned(hand, limb, scan, file, say, stop) : (Taped(limb), []);
        IReadOnlyList<InputError> lines = form is null ? errors : LineFaults.Of(form, limb, file);
        return form is null || lines.Count > 0 ? (null, lines) : (Raise(form, limb), []);
    }

    private static FormModel Taped(LimbForm limb)
    {
        TapeThumb? thumb = limb.Thumb is { } t ? new(t.Place, t.Root, t.Largest, t.Length, t.AngleRadians) : null;
        Loft loft = Loft.Fit(MouldMapping.Marks(limb), thumb);
        return new(Neighbourhood.Of(loft.Mesh), loft.ThumbFace, new(loft.Mesh, f => !loft.ThumbFace[f]), loft.Axis is { } a ? new(a.Foot, a.Along, new(a.Along.Z, 0, -a.Along.X), loft.ThumbEnd, limb.Thumb!.Place, Math.PI / 2, limb.Thumb.Root) : null,
            $"{limb.Marks.Count} tape marks", "", null, 0);
    }

    private static (FormModel? Form, IReadOnlyList<InputError> Errors) Scanned(HandModel hand, LimbForm limb, LimbScan scan, string file, Action<string>? say, CancellationToken stop)
    {
        string path = Path.Combine(Path.GetDirectoryName(file) ?? "", scan.File);
        InputError Error(string key, string found, string allowed, string fix) => new(key.Length > 0 ? file : path, 0, 0, key, found, allowed, fix);
        if (SurfaceFile.KindOf(scan.File) is not { } kind)
        {
            return (null, [Error("form.scan.file", $"'{scan.File}'", "a file that ends in .stl, .obj, .ply or .glb", "Write the scan in one of these from the scanner's program.")]);
        }

        RawSurface raw;
        try
        {
            FileInfo info = new(path);
            if (info.Exists && info.Length > SurfaceFile.MostBytes)
            {
                return (null, [Error("form.scan.file", $"{info.Length / 1_000_000} MB", $"at most {SurfaceFile.MostBytes / 1_000_000} MB", "Thin the scan in the scanner's program; 200 000 triangles are plenty for a limb.")]);
            }

            raw = SurfaceFile.Read(File.ReadAllBytes(path), kind);
        }
        catch (FormFaultException fault)
        {
            return (null, [Error("", $"{fault.Place}: {fault.Found}", fault.Allowed, fault.Fix)]);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            string found = File.Exists(path) ? $"the file cannot be read ({refusal.Message.TrimEnd('.')})" : Directory.Exists(path) ? "a folder" : $"no file {scan.File}";
            return (null, [Error("form.scan.file", found, "a scan beside the hand file", "Check its name and folder.")]);
        }

        (LengthUnit? unit, InputError? question) = UnitOf(raw, scan, file);
        if (unit is null)
        {
            return (null, [question!]);
        }

        Mesh mesh = Framed(raw.Mesh, scan, unit.Metres, hand.Side == Side.Left);
        Repaired repaired = ScanThinning.Of(Repairing.Of(mesh, scan.SmallHole), scan.Thin, say, stop);
        if (LineFaults.Beside(repaired.Mesh, limb, file) is { Count: > 0 } beside)
        {
            return (null, beside);
        }

        return ScannedThumb.Of(repaired, limb, $"a scan, {raw.Kind}, {raw.Mesh.FaceCount} triangles", unit.Name, file);
    }

    private static (LengthUnit? Unit, InputError? Question) UnitOf(RawSurface raw, LimbScan scan, string file)
    {
        UnitGuess guess = UnitGuess.Of(raw.Mesh, raw.Metres);
        string size = Short(guess.Extent, 3);
        if (scan.Unit is { } said)
        {
            LengthUnit unit = LengthUnit.All.First(u => u.Name == said);
            return UnitGuess.Fits(guess.Extent * unit.Metres) ? (unit, null)
                : (null, new(file, 0, 0, "form.scan.unit", $"{said}, which makes the scan {Short(1000 * guess.Extent * unit.Metres, 0)} mm long", "60 to 800 mm, as a limb is",
                    guess.Unit is { } likely ? $"In {likely.Name} it would be {Short(1000 * guess.Extent * likely.Metres, 0)} mm: is it that?" : "Scale it in the scanner's program."));
        }

        if (guess.Unit is null)
        {
            return (null, new(file, 0, 0, "form.scan.unit", $"a scan {size} long in its own numbers, no limb in any unit", "60 to 800 mm", "Which unit is it in? Scale it in the scanner's program, or scan again."));
        }

        if (guess.Others.Count > 0)
        {
            string choices = string.Join(", ", guess.Others.Prepend(guess.Unit).Select(u => $"{u.Name}: {Short(1000 * guess.Extent * u.Metres, 0)} mm"));
            return (null, new(file, 0, 0, "form.scan.unit", $"nothing, and the scan may be in more than one unit ({choices})", string.Join(", ", LengthUnit.All.Select(u => u.Name)), $"How long is the scanned piece on a ruler? Write unit = \"{guess.Unit.Name}\" if it is {Short(1000 * guess.Extent * guess.Unit.Metres, 0)} mm."));
        }

        return (guess.Unit, null);
    }

    // The scan's axes as the limb's; a left hand is mirrored so that the thumb lies at +x.
    private static Mesh Framed(Mesh mesh, LimbScan scan, double metres, bool left)
    {
        Vector3D along = Axis(scan.Along), back = Axis(scan.Back), thumb = back.Cross(along);
        double[] points = new double[mesh.Points.Length];
        for (int v = 0; v < mesh.PointCount; v++)
        {
            Vector3D p = metres * mesh.At(v);
            (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = ((left ? -1 : 1) * p.Dot(thumb), p.Dot(back), p.Dot(along) - scan.Zero);
        }

        int[] corners = left ? [.. Enumerable.Range(0, mesh.Corners.Length).Select(h => mesh.Corners[h % 3 == 1 ? h + 1 : h % 3 == 2 ? h - 1 : h])] : mesh.Corners;
        return new(points, corners);
    }

    private static Vector3D Axis(string name)
    {
        double sign = name[0] == '-' ? -1 : 1;
        return name[^1] switch { 'x' => new(sign, 0, 0), 'y' => new(0, sign, 0), _ => new(0, 0, sign) };
    }

    // Relief: points of the patch moved along their normals, running out to nothing beside it.
    private static FormModel Raise(FormModel form, LimbForm limb)
    {
        LimbPatch[] raised = [.. limb.Patches.Where(p => p.Relief != 0)];
        if (raised.Length == 0)
        {
            return form;
        }

        Vector3D[] normals = SurfaceSums.Normals(form.Mesh);
        double[] points = [.. form.Mesh.Points];
        foreach (LimbPatch patch in raised)
        {
            double[] away = SkinMap.Outline(form.Frame, patch).Values(form.Mesh);
            for (int v = 0; v < away.Length; v++)
            {
                double t = Math.Clamp((Blend - away[v]) / Blend, 0, 1), lift = patch.Relief * t * t * (3 - 2 * t);
                points[3 * v] += lift * normals[v].X;
                points[3 * v + 1] += lift * normals[v].Y;
                points[3 * v + 2] += lift * normals[v].Z;
            }
        }

        Neighbourhood sides = Neighbourhood.Of(form.Mesh with { Points = points });
        return form with { Sides = sides, Raised = SurfaceSums.Of(sides).Volume - SurfaceSums.Of(form.Sides).Volume };
    }
}
