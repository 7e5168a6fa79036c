using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;

namespace Graspwright.Page.Serving;

/// <summary>The page's own style sheet and scripts. They lie inside the program, so that no folder of it is served; their address holds a sum of their bytes, so that a browser may keep them.</summary>
internal static class OwnFiles
{
    private static readonly Dictionary<string, (byte[] Plain, byte[] Brotli)> Files = Load();

    /// <summary>Sum over all of them, in hexadecimal digits.</summary>
    public static string Sum { get; } = Convert.ToHexStringLower(SHA256.HashData([.. Files.OrderBy(f => f.Key, StringComparer.Ordinal).SelectMany(f => f.Value.Plain)]))[..12];

    /// <summary>Address of a file.</summary>
    /// <param name="name">Its name.</param>
    public static string Address(string name) => Files.ContainsKey(name) ? $"/own/{Sum}/{name}" : throw new ArgumentException($"The page has no file '{name}'.", nameof(name));

    /// <summary>Sends a file.</summary>
    public static async Task Send(HttpContext context, string sum, string name)
    {
        if (sum != Sum || !Files.TryGetValue(name, out (byte[] Plain, byte[] Brotli) file))
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        context.Response.ContentType = name.EndsWith(".css", StringComparison.Ordinal) ? "text/css; charset=utf-8" : "text/javascript; charset=utf-8";
        context.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        context.Response.Headers.Vary = "Accept-Encoding";
        bool brotli = context.Request.Headers.AcceptEncoding.ToString().Split(',').Any(e => e.Trim() == "br");
        if (brotli)
        {
            context.Response.Headers.ContentEncoding = "br";
        }

        await context.Response.Body.WriteAsync(brotli ? file.Brotli : file.Plain);
    }

    private static Dictionary<string, (byte[] Plain, byte[] Brotli)> Load()
    {
        Assembly assembly = typeof(OwnFiles).Assembly;
        Dictionary<string, (byte[], byte[])> files = new(StringComparer.Ordinal);
        foreach (string name in assembly.GetManifestResourceNames().Where(n => n.EndsWith(".css", StringComparison.Ordinal) || n.EndsWith(".js", StringComparison.Ordinal)))
        {
            using Stream stream = assembly.GetManifestResourceStream(name)!;
            byte[] plain = new byte[stream.Length];
            stream.ReadExactly(plain);
            using MemoryStream packed = new();
            using (BrotliStream brotli = new(packed, CompressionLevel.Optimal))
            {
                brotli.Write(plain);
            }

            files.Add(name, (plain, packed.ToArray()));
        }

        return files;
    }
}
