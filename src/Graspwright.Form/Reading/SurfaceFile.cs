using Graspwright.Form.Surface;

namespace Graspwright.Form.Reading;

/// <summary>Kinds of files that hold surfaces.</summary>
public enum SurfaceKind
{
    /// <summary>STL, binary or text.</summary>
    Stl,

    /// <summary>Wavefront OBJ.</summary>
    Obj,

    /// <summary>PLY, binary or text.</summary>
    Ply,

    /// <summary>glTF 2.0 in one binary file.</summary>
    Glb,
}

/// <summary>A surface as its file holds it.</summary>
/// <param name="Mesh">The surface, in the file's own unit.</param>
/// <param name="Kind">Kind of the file, in words.</param>
/// <param name="Metres">The kind of file says metres by its standard.</param>
public sealed record RawSurface(Mesh Mesh, string Kind, bool Metres);

/// <summary>Reads surfaces from the bytes of a file.</summary>
public static class SurfaceFile
{
    /// <summary>Most triangles that are read.</summary>
    public const int MostFaces = 6_000_000;

    /// <summary>Most bytes that are read.</summary>
    public const long MostBytes = 1L << 30;

    /// <summary>The kind of a file by the ending of its name; <see langword="null"/> = none that is read.</summary>
    /// <param name="name">Name of the file.</param>
    public static SurfaceKind? KindOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        int dot = name.LastIndexOf('.');
        return (dot < 0 ? "" : name[(dot + 1)..].ToLowerInvariant()) switch
        {
            "stl" => SurfaceKind.Stl,
            "obj" => SurfaceKind.Obj,
            "ply" => SurfaceKind.Ply,
            "glb" => SurfaceKind.Glb,
            _ => null,
        };
    }

    /// <summary>Reads.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="kind">Its kind.</param>
    /// <exception cref="FormFaultException">It cannot be used.</exception>
    public static RawSurface Read(ReadOnlySpan<byte> bytes, SurfaceKind kind)
    {
        if (bytes.Length == 0)
        {
            throw new FormFaultException("byte 0", "an empty file", "a surface of triangles", "Write it again from the scanner's program.");
        }

        RawSurface raw = kind switch
        {
            SurfaceKind.Stl => StlReading.Read(bytes),
            SurfaceKind.Obj => ObjReading.Read(bytes),
            SurfaceKind.Ply => PlyReading.Read(bytes),
            _ => GlbReading.Read(bytes),
        };
        Check(raw.Mesh);
        return raw;
    }

    internal static FormFaultException TooMany(string place) =>
        new(place, "more triangles than can be worked with", $"at most {MostFaces / 1_000_000} million", "Thin the scan in the scanner's program; 200 000 triangles are plenty for a limb.");

    private static void Check(Mesh mesh)
    {
        if (mesh.FaceCount == 0)
        {
            throw new FormFaultException("the whole file", "no triangle", "a surface of triangles", "A cloud of points has to be meshed in the scanner's program first.");
        }

        for (int i = 0; i < mesh.Points.Length; i++)
        {
            if (!(Math.Abs(mesh.Points[i]) < 1e9))
            {
                int v = i / 3, h = Array.IndexOf(mesh.Corners, v);
                throw new FormFaultException(h < 0 ? $"point {v + 1}" : $"triangle {h / 3 + 1}, corner {h % 3 + 1}", double.IsFinite(mesh.Points[i]) ? "a coordinate beyond all measure" : "a coordinate that is no number", "finite coordinates", "Repair the file in the scanner's program, or scan again.");
            }
        }
    }
}
