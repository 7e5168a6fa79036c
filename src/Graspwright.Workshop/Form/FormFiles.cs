using System.Buffers.Binary;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;
using Graspwright.Hand;
using Graspwright.Numerics;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>Forms as files for other programs.</summary>
public static class FormFiles
{
    /// <summary>The form as binary STL in millimetres; a left hand comes out as a left one.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="hand">The hand.</param>
    public static byte[] Stl(SheetOnForm sheet, HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(hand);
        return Stl(sheet.Form.Mesh, hand.Side == Side.Left);
    }

    /// <summary>The outside of the sheet, as thick on each patch as the hand file says, as binary STL in millimetres.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="say">Told what is being done.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The file, and how true it is in words.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static (byte[] File, string Words) Offset(SheetOnForm sheet, HandModel hand, Action<string>? say = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(hand);
        say?.Invoke("Drawing the outside of the sheet; a whole hand takes half a minute …");
        OffsetSurface offset = Graspwright.Form.Thickness.Offset.Of(Outside(sheet, hand.Form!), stop);
        string crossings = offset.Crossings == 0 ? "no triangle cuts another" : $"{offset.Crossings} pairs of triangles cut each other: repair it before printing";
        string closed = offset.Closed ? "" : "; it is not closed: the form laps over itself somewhere";
        string filled = offset.Filled > 0 ? $"; valleys too narrow to draw are filled by up to {Number(1000 * offset.Filled, 2)} mm at their bottom" : "";
        double[] patches = [.. hand.Form!.Patches.Select(p => p.Thickness).OfType<double>().Distinct().Order()];
        string thickness = $"{Number(1000 * sheet.Plain)} mm{(patches.Length > 0 ? $" ({string.Join(", ", patches.Select(t => Number(1000 * t)))} mm on patches)" : "")}";
        return (Stl(offset.Mesh, hand.Side == Side.Left), $"{thickness} from the form, {offset.Mesh.FaceCount} triangles, at most {Number(1000 * offset.Own, 3)} mm off (sampled), the true one at most {Number(1000 * offset.Other, 3)} mm from it{filled}; {crossings}{closed}");
    }

    // The form cut along the patches that have a thickness of their own; where they lie over each other the later one counts.
    private static OffsetField Outside(SheetOnForm sheet, LimbForm limb)
    {
        Neighbourhood sides = sheet.Form.Sides;
        LimbPatch[] own = [.. limb.Patches.Where(p => p.Thickness is not null)];
        foreach (LimbPatch patch in own)
        {
            sides = Neighbourhood.Of(Imprint.Zero(sides, SkinMap.Outline(sheet.Form.Frame, patch).Values(sides.Mesh)).Mesh);
        }

        double[] thickness = new double[sides.Mesh.FaceCount];
        Array.Fill(thickness, sheet.Plain);
        foreach (LimbPatch patch in own)
        {
            DrawnLoop outline = SkinMap.Outline(sheet.Form.Frame, patch);
            for (int f = 0; f < thickness.Length; f++)
            {
                thickness[f] = outline.At(sides.Mesh.Middle(f)) <= 0 ? patch.Thickness!.Value : thickness[f];
            }
        }

        return new(new(sides), thickness);
    }

    private static byte[] Stl(Mesh mesh, bool mirrored)
    {
        byte[] file = new byte[84 + 50 * mesh.FaceCount];
        "form, millimetres"u8.CopyTo(file);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(80), (uint)mesh.FaceCount);
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Span<byte> at = file.AsSpan(84 + 50 * f, 50);
            Vector3D normal = mesh.Cross(f).Unit;
            Put(at, 0, normal, mirrored, 1);
            for (int k = 0; k < 3; k++)
            {
                Put(at, 12 * (k + 1), mesh.Corner(f, mirrored ? 2 - k : k), mirrored, 1000);
            }
        }

        return file;
    }

    private static void Put(Span<byte> at, int offset, Vector3D p, bool mirrored, double scale)
    {
        BinaryPrimitives.WriteSingleLittleEndian(at[offset..], (float)((mirrored ? -scale : scale) * p.X));
        BinaryPrimitives.WriteSingleLittleEndian(at[(offset + 4)..], (float)(scale * p.Y));
        BinaryPrimitives.WriteSingleLittleEndian(at[(offset + 8)..], (float)(scale * p.Z));
    }
}
