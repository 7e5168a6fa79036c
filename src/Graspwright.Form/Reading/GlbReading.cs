using System.Buffers.Binary;
using System.Numerics;
using System.Text.Json;

namespace Graspwright.Form.Reading;

/// <summary>glTF 2.0 in one binary file: triangles of all meshes in their nodes' places, metres by the standard.</summary>
internal static class GlbReading
{
    private const uint Magic = 0x46546C67, Json = 0x4E4F534A, Bin = 0x004E4942;
    private const int DeepestNode = 64, MostNodes = 100_000;

    public static RawSurface Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 20 || Word(bytes, 0) != Magic)
        {
            throw Damaged("byte 0", "no glTF header", "a file that begins with glTF");
        }

        if (Word(bytes, 4) != 2 || Word(bytes, 8) != bytes.Length)
        {
            throw Damaged("byte 4", $"version {Word(bytes, 4)} and a length of {Word(bytes, 8)} bytes in a file of {bytes.Length}", "version 2 and the file's own length");
        }

        uint length = Word(bytes, 12);
        if (Word(bytes, 16) != Json || length > bytes.Length - 20)
        {
            throw Damaged("byte 12", "no description that fits into the file", "a JSON chunk first");
        }

        ReadOnlySpan<byte> buffer = default;
        int after = 20 + (int)length;
        if (after + 8 <= bytes.Length && Word(bytes, after + 4) == Bin && Word(bytes, after) <= bytes.Length - after - 8)
        {
            buffer = bytes.Slice(after + 8, (int)Word(bytes, after));
        }

        try
        {
            using JsonDocument json = JsonDocument.Parse(bytes.Slice(20, (int)length).ToArray());
            Gathered gathered = new(json.RootElement, buffer.ToArray());
            gathered.Scene();
            return new(new([.. gathered.Points], [.. gathered.Corners]), "GLB", Metres: true);
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or IndexOutOfRangeException)
        {
            throw Damaged("the description", $"what cannot be followed ({fault.Message.TrimEnd('.')})", "meshes, accessors and buffer views of glTF 2.0");
        }
    }

    private static uint Word(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt32LittleEndian(bytes[at..]);

    private static FormFaultException Damaged(string place, string found, string allowed) => new(place, found, allowed, "The file was cut off, packed or is no GLB: write it again, unpacked, in one file.");

    private sealed class Gathered(JsonElement root, byte[] buffer)
    {
        private int _nodes;

        public List<double> Points { get; } = [];

        public List<int> Corners { get; } = [];

        public void Scene()
        {
            if (root.TryGetProperty("scenes", out JsonElement scenes) && scenes.GetArrayLength() > 0)
            {
                int at = root.TryGetProperty("scene", out JsonElement which) ? which.GetInt32() : 0;
                foreach (JsonElement node in scenes[at].GetProperty("nodes").EnumerateArray())
                {
                    Node(node.GetInt32(), Matrix4x4.Identity, 0);
                }
            }
            else if (root.TryGetProperty("meshes", out JsonElement meshes))
            {
                for (int i = 0; i < meshes.GetArrayLength(); i++)
                {
                    OfMesh(i, Matrix4x4.Identity);
                }
            }
        }

        private void Node(int index, Matrix4x4 above, int depth)
        {
            if (depth > DeepestNode || ++_nodes > MostNodes)
            {
                throw Damaged("the description", "nodes in nodes without end", "a tree of nodes");
            }

            JsonElement node = root.GetProperty("nodes")[index];
            Matrix4x4 here = Local(node) * above;
            if (node.TryGetProperty("mesh", out JsonElement mesh))
            {
                OfMesh(mesh.GetInt32(), node.TryGetProperty("skin", out _) ? Matrix4x4.Identity : here); // a skinned mesh lies where its skeleton puts it: at rest, as stored
            }

            if (node.TryGetProperty("children", out JsonElement children))
            {
                foreach (JsonElement child in children.EnumerateArray())
                {
                    Node(child.GetInt32(), here, depth + 1);
                }
            }
        }

        private static Matrix4x4 Local(JsonElement node)
        {
            if (node.TryGetProperty("matrix", out JsonElement m))
            {
                float[] a = [.. m.EnumerateArray().Select(x => x.GetSingle())];
                return new(a[0], a[1], a[2], a[3], a[4], a[5], a[6], a[7], a[8], a[9], a[10], a[11], a[12], a[13], a[14], a[15]);
            }

            float[] s = Floats(node, "scale", [1, 1, 1]), r = Floats(node, "rotation", [0, 0, 0, 1]), t = Floats(node, "translation", [0, 0, 0]);
            return Matrix4x4.CreateScale(s[0], s[1], s[2]) * Matrix4x4.CreateFromQuaternion(new(r[0], r[1], r[2], r[3])) * Matrix4x4.CreateTranslation(t[0], t[1], t[2]);
        }

        private static float[] Floats(JsonElement node, string name, float[] otherwise) =>
            node.TryGetProperty(name, out JsonElement values) ? [.. values.EnumerateArray().Select(x => x.GetSingle())] : otherwise;

        private void OfMesh(int index, Matrix4x4 place)
        {
            foreach (JsonElement part in root.GetProperty("meshes")[index].GetProperty("primitives").EnumerateArray())
            {
                if (part.TryGetProperty("mode", out JsonElement mode) && mode.GetInt32() != 4)
                {
                    continue; // lines, points and strips hold no surface that is read
                }

                if (part.TryGetProperty("extensions", out JsonElement extensions) && extensions.TryGetProperty("KHR_draco_mesh_compression", out _))
                {
                    throw Damaged("the description", "a packed surface", "plain arrays");
                }

                (int start, int count, int stride, int type) = Accessor(part.GetProperty("attributes").GetProperty("POSITION").GetInt32(), 12);
                if (type != 5126)
                {
                    throw Damaged("the description", $"points of kind {type}", "kind 5126, four-byte numbers");
                }

                int first = Points.Count / 3;
                for (int i = 0; i < count; i++)
                {
                    ReadOnlySpan<byte> at = buffer.AsSpan(start + i * stride, 12);
                    Vector3 p = Vector3.Transform(new(BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]), BinaryPrimitives.ReadSingleLittleEndian(at[8..])), place);
                    Points.AddRange([p.X, p.Y, p.Z]);
                }

                Indices(part, first, count);
            }
        }

        private void Indices(JsonElement part, int first, int count)
        {
            if (!part.TryGetProperty("indices", out JsonElement indices))
            {
                Corners.AddRange(Enumerable.Range(first, count / 3 * 3));
                return;
            }

            (int start, int corners, int stride, int type) = Accessor(indices.GetInt32(), 0);
            for (int i = 0; i < corners / 3 * 3; i++)
            {
                ReadOnlySpan<byte> at = buffer.AsSpan(start + i * stride);
                long v = type switch { 5121 => at[0], 5123 => BinaryPrimitives.ReadUInt16LittleEndian(at), _ => BinaryPrimitives.ReadUInt32LittleEndian(at) };
                Corners.Add(v < count ? first + (int)v : throw Damaged($"triangle {Corners.Count / 3 + 1}", $"point {v} of {count}", "a point that is in the file"));
            }

            if (Corners.Count > 3 * SurfaceFile.MostFaces)
            {
                throw SurfaceFile.TooMany("the description");
            }
        }

        private (int Start, int Count, int Stride, int Type) Accessor(int index, int size)
        {
            JsonElement accessor = root.GetProperty("accessors")[index], view = root.GetProperty("bufferViews")[accessor.GetProperty("bufferView").GetInt32()];
            int type = accessor.GetProperty("componentType").GetInt32(), count = accessor.GetProperty("count").GetInt32();
            int width = size > 0 ? size : type switch { 5121 => 1, 5123 => 2, 5125 => 4, _ => throw Damaged("the description", $"numbers of kind {type}", "kinds 5121, 5123 and 5125 for corners") };
            int stride = view.TryGetProperty("byteStride", out JsonElement s) ? s.GetInt32() : width;
            long start = Offset(accessor) + Offset(view), end = start + (long)Math.Max(0, count - 1) * stride + (count > 0 ? width : 0);
            return count < 0 || stride < width || start < 0 || end > buffer.Length
                ? throw Damaged("the description", $"{count} entries that end at byte {end} of {buffer.Length}", "entries inside the file")
                : ((int)start, count, stride, type);
        }

        private static long Offset(JsonElement element) => element.TryGetProperty("byteOffset", out JsonElement offset) ? offset.GetInt64() : 0;
    }
}
