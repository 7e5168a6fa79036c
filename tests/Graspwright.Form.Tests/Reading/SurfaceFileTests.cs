using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using CsCheck;
using Graspwright.Form.Reading;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Reading;

public sealed class SurfaceFileTests
{
    private static readonly Mesh Cube = new([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1],
        [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 2, 3, 7, 2, 7, 6, 1, 2, 6, 1, 6, 5, 3, 0, 4, 3, 4, 7]);

    private static byte[] Stl(Mesh mesh)
    {
        byte[] file = new byte[84 + 50 * mesh.FaceCount];
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(80), mesh.FaceCount);
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            for (int d = 0; d < 3; d++)
            {
                BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(84 + 50 * (h / 3) + 12 + 12 * (h % 3) + 4 * d), (float)mesh.Points[3 * mesh.Corners[h] + d]);
            }
        }

        return file;
    }

    private static string Text(double x) => x.ToString(CultureInfo.InvariantCulture);

    private static string Point(int v) => $"{Text(Cube.Points[3 * v])} {Text(Cube.Points[3 * v + 1])} {Text(Cube.Points[3 * v + 2])}";

    private static byte[] TextStl()
    {
        StringBuilder text = new("solid cube\n");
        for (int f = 0; f < 12; f++)
        {
            text.Append("facet normal 0 0 0\nouter loop\n");
            for (int k = 0; k < 3; k++)
            {
                text.Append(CultureInfo.InvariantCulture, $"vertex {Point(Cube.Corners[3 * f + k])}\n");
            }

            text.Append("endloop\nendfacet\n");
        }

        return Encoding.ASCII.GetBytes(text.Append("endsolid\n").ToString());
    }

    private static byte[] Obj() => Encoding.ASCII.GetBytes(string.Concat(Enumerable.Range(0, 8).Select(v => $"v {Point(v)}\n")) + "vn 0 0 1\n"
        + string.Concat(Enumerable.Range(0, 12).Select(f => $"f {Cube.Corners[3 * f] + 1}//1 {Cube.Corners[3 * f + 1] + 1}/2/1 {Cube.Corners[3 * f + 2] - 8}\n")));

    private static byte[] Ply() => Encoding.ASCII.GetBytes("ply\nformat ascii 1.0\ncomment made\nelement vertex 8\nproperty float x\nproperty float y\nproperty float z\nelement face 12\nproperty list uchar int vertex_indices\nend_header\n"
        + string.Concat(Enumerable.Range(0, 8).Select(v => Point(v) + "\n")) + string.Concat(Enumerable.Range(0, 12).Select(f => $"3 {Cube.Corners[3 * f]} {Cube.Corners[3 * f + 1]} {Cube.Corners[3 * f + 2]}\n")));

    private static byte[] BinaryPly(bool big)
    {
        List<byte> file = [.. Encoding.ASCII.GetBytes($"ply\nformat binary_{(big ? "big" : "little")}_endian 1.0\nelement vertex 8\nproperty double x\nproperty double y\nproperty double z\nelement face 12\nproperty list uchar uint vertex_index\nend_header\n")];
        byte[] b = new byte[8];
        foreach (double x in Cube.Points)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(b, x);
            file.AddRange(big ? [.. b.Reverse()] : b);
        }

        for (int f = 0; f < 12; f++)
        {
            file.Add(3);
            for (int k = 0; k < 3; k++)
            {
                byte[] i = BitConverter.GetBytes(Cube.Corners[3 * f + k]);
                file.AddRange(big ? [.. i.Reverse()] : i);
            }
        }

        return [.. file];
    }

    private static byte[] Glb()
    {
        byte[] bin = [.. Cube.Points.SelectMany(x => BitConverter.GetBytes((float)x)), .. Cube.Corners.SelectMany(c => BitConverter.GetBytes((ushort)c))];
        string json = $$"""{"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0,"scale":[2,2,2]}],"meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1}]}],"accessors":[{"bufferView":0,"componentType":5126,"count":8,"type":"VEC3"},{"bufferView":1,"componentType":5123,"count":36,"type":"SCALAR"}],"bufferViews":[{"buffer":0,"byteOffset":0,"byteLength":96},{"buffer":0,"byteOffset":96,"byteLength":72}],"buffers":[{"byteLength":{{bin.Length}}}]}""";
        json = json.PadRight((json.Length + 3) / 4 * 4);
        List<byte> file = [.. "glTF"u8.ToArray(), .. BitConverter.GetBytes(2), .. BitConverter.GetBytes(28 + json.Length + bin.Length), .. BitConverter.GetBytes(json.Length), .. "JSON"u8.ToArray(), .. Encoding.ASCII.GetBytes(json), .. BitConverter.GetBytes(bin.Length), .. "BIN\0"u8.ToArray(), .. bin];
        return [.. file];
    }

    public static TheoryData<SurfaceKind, byte[], double> Cubes => new()
    {
        { SurfaceKind.Stl, Stl(Cube), 1 }, { SurfaceKind.Stl, TextStl(), 1 }, { SurfaceKind.Obj, Obj(), 1 }, { SurfaceKind.Ply, Ply(), 1 },
        { SurfaceKind.Ply, BinaryPly(big: false), 1 }, { SurfaceKind.Ply, BinaryPly(big: true), 1 }, { SurfaceKind.Glb, Glb(), 8 },
    };

    [Theory]
    [MemberData(nameof(Cubes))]
    public void A_cube_comes_out_of_every_kind_of_file(SurfaceKind kind, byte[] file, double volume)
    {
        Repaired repaired = Repairing.Of(SurfaceFile.Read(file, kind).Mesh, 0.1);
        Assert.True(repaired.Closed);
        Assert.Equal(volume, SurfaceSums.Of(repaired.Sides).Volume, 1e-9);
    }

    // Whatever is cut off or changed: a surface or an explanation, never another end.
    [Theory]
    [MemberData(nameof(Cubes))]
    public void Damage_is_explained(SurfaceKind kind, byte[] file, double volume)
    {
        _ = volume;
        Gen.Select(Gen.Int[0, file.Length - 1], Gen.Byte, Gen.Int[0, file.Length]).Sample(damage =>
        {
            byte[] broken = file[..damage.Item3];
            if (damage.Item1 < broken.Length)
            {
                broken[damage.Item1] = damage.Item2;
            }

            try
            {
                Repairing.Of(SurfaceFile.Read(broken, kind).Mesh);
            }
            catch (FormFaultException fault)
            {
                Assert.NotEmpty(fault.Fix);
                Assert.NotEmpty(fault.Place);
            }
        }, iter: 300);
    }

    [Fact]
    public void A_cut_off_and_a_lying_header_are_told_apart()
    {
        byte[] file = Stl(Cube);
        Assert.Contains("cut off", Assert.Throws<FormFaultException>(() => SurfaceFile.Read(file.AsSpan(0, 400), SurfaceKind.Stl)).Fix, StringComparison.Ordinal);
        byte[] lying = [.. file];
        lying[80] = 5;
        Assert.Contains("header is wrong", Assert.Throws<FormFaultException>(() => SurfaceFile.Read(lying, SurfaceKind.Stl)).Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coordinate_that_is_no_number_is_refused_with_its_place()
    {
        byte[] file = Stl(Cube);
        BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(84 + 50 * 3 + 12), float.NaN);
        Assert.Contains("no number", Assert.Throws<FormFaultException>(() => SurfaceFile.Read(file, SurfaceKind.Stl)).Found, StringComparison.Ordinal);
    }

    // Stated with the data: area 91 082 mm², volume 1 030 993 mm³; 76 639 and 960 953 for the partial hand. The cover over its fingers' roots lies back on
    // itself: laid anew, the surface is smaller by what lay double, and holds the same.
    [Theory]
    [InlineData("forearm-hand-male.stl", 91082, 1030993, false)]
    [InlineData("partial-hand-male.stl", 76639, 960953, true)]
    public void An_open_limb_has_the_area_and_volume_stated_with_it(string name, double area, double volume, bool folded)
    {
        string? file = Shared.File("data", "forms", name);
        Assert.SkipWhen(file is null, "The data beside the repository is not here.");
        Mesh read = SurfaceFile.Read(System.IO.File.ReadAllBytes(file), SurfaceKind.Stl).Mesh.Scaled(0.001);
        Repaired repaired = Repairing.Of(read);
        SurfaceSums sums = SurfaceSums.Of(repaired.Sides);
        Assert.True(repaired.Closed);
        Assert.Equal(area, 1e6 * SurfaceSums.Of(Neighbourhood.Of(read)).Area, 1.0);
        Assert.Equal(volume, 1e9 * sums.Volume, 1.0);
        Assert.Equal(folded, repaired.Mends.Any(m => m.What.Contains("folded", StringComparison.Ordinal)));
        Assert.InRange(area - 1e6 * sums.Area, folded ? 1.0 : -1.0, folded ? 0.005 * area : 1.0);
    }
}
