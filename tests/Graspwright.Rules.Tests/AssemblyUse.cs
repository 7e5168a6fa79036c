using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Graspwright.Rules.Tests;

/// <summary>What a compiled assembly uses of the outside world, read from its metadata.</summary>
internal static class AssemblyUse
{
    private static readonly string[] Spaces = ["System.IO", "System.Net", "System.Data", "Microsoft.Win32"];

    private static readonly string[] Types =
    [
        "System.Console", "System.Environment", "System.AppContext", "System.TimeProvider", "System.Diagnostics.Process",
        "System.Diagnostics.ProcessStartInfo", "System.Diagnostics.Stopwatch", "System.Threading.Timer", "System.Threading.PeriodicTimer",
    ];

    private static readonly string[] Members =
    [
        "System.DateTime.get_Now", "System.DateTime.get_UtcNow", "System.DateTime.get_Today", "System.DateTimeOffset.get_Now",
        "System.DateTimeOffset.get_UtcNow", "System.Random.get_Shared", "System.Random..ctor()", "System.Guid.NewGuid",
        "System.Globalization.CultureInfo.get_CurrentCulture", "System.Globalization.CultureInfo.get_CurrentUICulture",
        "System.Threading.Thread.Sleep", "System.Threading.Thread.get_CurrentThread", "System.Threading.Tasks.Task.Delay",
    ];

    /// <summary>Uses of files, screen, clock, unseeded chance and the machine's culture.</summary>
    /// <param name="path">Path of the assembly.</param>
    public static IReadOnlyList<string> OfTheOutside(string path)
    {
        using PEReader image = new(File.OpenRead(path));
        MetadataReader reader = image.GetMetadataReader();
        List<string> found = [];
        foreach (TypeReferenceHandle handle in reader.TypeReferences)
        {
            TypeReference type = reader.GetTypeReference(handle);
            string space = reader.GetString(type.Namespace), name = Name(reader, handle);
            if (Types.Contains(name, StringComparer.Ordinal) || Spaces.Any(s => space == s || space.StartsWith(s + ".", StringComparison.Ordinal)))
            {
                found.Add(name);
            }
        }

        foreach (MemberReferenceHandle handle in reader.MemberReferences)
        {
            MemberReference member = reader.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference)
            {
                continue;
            }

            string name = $"{Name(reader, (TypeReferenceHandle)member.Parent)}.{reader.GetString(member.Name)}";
            if (name.EndsWith("..ctor", StringComparison.Ordinal) && Parameters(reader, member) == 0)
            {
                name += "()";
            }

            if (Members.Contains(name, StringComparer.Ordinal))
            {
                found.Add(name);
            }
        }

        return found;
    }

    private static string Name(MetadataReader reader, TypeReferenceHandle handle)
    {
        TypeReference type = reader.GetTypeReference(handle);
        return $"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}";
    }

    private static int Parameters(MetadataReader reader, MemberReference member)
    {
        BlobReader signature = reader.GetBlobReader(member.Signature);
        signature.ReadSignatureHeader();
        return signature.ReadCompressedInteger();
    }
}
