using System.Buffers.Binary;
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

    /// <summary>The surface at the sheet's thickness from the form, as binary STL in millimetres.</summary>
    /// <param name="sheet">The sheet on its form.</param>
    /// <param name="hand">The hand.</param>
    /// <returns>The file, and how true it is in words.</returns>
    public static (byte[] File, string Words) Offset(SheetOnForm sheet, HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(hand);
        OffsetSurface offset = Graspwright.Form.Thickness.Offset.Of(new(new(sheet.Form.Sides), sheet.Plain));
        string crossings = offset.Crossings == 0 ? "no triangle cuts another" : $"{offset.Crossings} pairs of triangles cut each other: repair it before printing";
        return (Stl(offset.Mesh, hand.Side == Side.Left), $"{Number(1000 * sheet.Plain)} mm from the form, at most {Number(1000 * offset.Own, 3)} mm off (sampled), the true one at most {Number(1000 * offset.Other, 3)} mm from it; {crossings}");
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
