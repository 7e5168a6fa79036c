using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Graspwright.Drawing.Pdf;

/// <summary>The objects of a PDF file and the table that finds them.</summary>
/// <source key="pdf-1-7">Sections 7.3 (objects), 7.5 (file structure) and 14.4 (file identifiers).</source>
internal sealed class PdfFile
{
    private readonly List<byte[]?> objects = [];

    /// <summary>Sets a number aside for an object.</summary>
    public int Reserve()
    {
        objects.Add(null);
        return objects.Count;
    }

    /// <summary>Fills a number that was set aside.</summary>
    /// <param name="number">The number.</param>
    /// <param name="text">The object.</param>
    public void Set(int number, string text) => objects[number - 1] = Encoding.Latin1.GetBytes(text);

    /// <summary>Adds an object and tells its number.</summary>
    /// <param name="text">The object.</param>
    public int Add(string text)
    {
        int number = Reserve();
        Set(number, text);
        return number;
    }

    /// <summary>Adds a run of bytes with their length, uncompressed, so that no packing routine of a machine can change the file.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="entries">Further entries of its dictionary.</param>
    public int AddStream(byte[] bytes, string entries = "")
    {
        int number = Reserve();
        byte[] start = Encoding.Latin1.GetBytes(string.Create(CultureInfo.InvariantCulture, $"<< /Length {bytes.Length}{entries} >>\nstream\n"));
        objects[number - 1] = [.. start, .. bytes, .. "\nendstream"u8];
        return number;
    }

    /// <summary>The whole file.</summary>
    /// <param name="catalogue">Number of the object that the reader starts at.</param>
    /// <param name="information">Number of the object with the title.</param>
    /// <exception cref="InvalidOperationException">A number was set aside and never filled.</exception>
    public byte[] Bytes(int catalogue, int information)
    {
        var file = new MemoryStream();
        file.Write([.. "%PDF-1.7\n%"u8, 0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
        var places = new List<long>();
        for (int i = 0; i < objects.Count; i++)
        {
            byte[] body = objects[i] ?? throw new InvalidOperationException($"Object {i + 1} of the PDF file was never written.");
            places.Add(file.Length);
            Write(file, $"{i + 1} 0 obj\n");
            file.Write(body);
            Write(file, $"\nendobj\n");
        }

        // The identifier is that of the content: no clock and no chance in the file.
        string id = Convert.ToHexString(SHA256.HashData(file.ToArray()).AsSpan(0, 16));
        long table = file.Length;
        Write(file, $"xref\n0 {objects.Count + 1}\n0000000000 65535 f \n");
        foreach (long place in places)
        {
            Write(file, $"{place:D10} 00000 n \n");
        }

        Write(file, $"trailer\n<< /Size {objects.Count + 1} /Root {catalogue} 0 R /Info {information} 0 R /ID [<{id}> <{id}>] >>\nstartxref\n{table}\n%%EOF\n");
        return file.ToArray();
    }

    /// <summary>Text as PDF writes it in a dictionary: hexadecimal, two bytes a letter.</summary>
    /// <param name="text">The text.</param>
    public static string Words(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";

    private static void Write(MemoryStream file, FormattableString text) => file.Write(Encoding.Latin1.GetBytes(FormattableString.Invariant(text)));
}
