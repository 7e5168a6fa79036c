using System.Text;

namespace Graspwright.Hand;

/// <summary>The text of a hand file and how it was stored.</summary>
/// <param name="Name">Name of the file, for messages.</param>
/// <param name="Text">The text without byte order mark.</param>
/// <param name="HasByteOrderMark">Whether the file began with a UTF-8 byte order mark.</param>
public sealed record HandText(string Name, string Text, bool HasByteOrderMark)
{
    /// <summary>Largest file that is read [bytes].</summary>
    public const int GreatestBytes = 10_000_000;

    /// <summary>Deepest nesting of brackets, braces and dotted keys that is read.</summary>
    public const int GreatestDepth = 32;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The bytes to store.</summary>
    public byte[] ToBytes() => [.. HasByteOrderMark ? Encoding.UTF8.GetPreamble() : [], .. Strict.GetBytes(Text)];

    /// <summary>Decodes the bytes of a file.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="name">Name of the file, for messages.</param>
    /// <returns>The text, or what is wrong with the bytes.</returns>
    public static (HandText? Text, HandError? Error) Decode(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.Length > GreatestBytes)
        {
            return (null, new(name, 0, 0, "", FormattableString.Invariant($"a file of more than {GreatestBytes} bytes"),
                FormattableString.Invariant($"at most {GreatestBytes} bytes"), "give the hand file; recordings and logs are files of their own"));
        }

        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] || LooksLikeUtf16(bytes))
        {
            return (null, new(name, 1, 1, "", "UTF-16 text", "UTF-8 text", "save the file again with the encoding UTF-8"));
        }

        bool mark = bytes is [0xEF, 0xBB, 0xBF, ..];
        ReadOnlySpan<byte> body = mark ? bytes[3..] : bytes;
        int bad = FirstInvalid(body);
        if (bad >= 0)
        {
            (int line, int column) = Place(body[..bad]);
            return (null, new(name, line, column, "", $"the byte 0x{body[bad]:X2}, which is not UTF-8", "UTF-8 text",
                "save the file again with the encoding UTF-8; if it is not a text file, give the right file"));
        }

        return (new(name, Strict.GetString(body), mark), null);
    }

    /// <summary>Finds nesting that is too deep, before any parser recurses into it.</summary>
    /// <returns>Offset of the first bracket, brace or dot beyond <see cref="GreatestDepth"/>; −1 if none.</returns>
    internal static int TooDeepAt(string text)
    {
        int depth = 0, dots = 0;
        for (int i = 0; i < text.Length; i++)
        {
            switch (text[i])
            {
                case '#':
                    i = LineEnd(text, i);
                    dots = 0;
                    break;
                case '"' or '\'':
                    i = StringEnd(text, i);
                    break;
                case '[' or '{':
                    depth++;
                    break;
                case ']' or '}':
                    depth = Math.Max(0, depth - 1);
                    break;
                case '.':
                    dots++;
                    break;
                case '\n' or '=' or ',':
                    dots = 0;
                    break;
            }

            if (depth > GreatestDepth || dots > GreatestDepth)
            {
                return i;
            }
        }

        return -1;
    }

    private static int LineEnd(string text, int from)
    {
        int end = text.IndexOf('\n', from);
        return end < 0 ? text.Length : end;
    }

    private static int StringEnd(string text, int from)
    {
        char quote = text[from];
        bool longString = string.CompareOrdinal(text, from, new string(quote, 3), 0, 3) == 0;
        if (longString)
        {
            int end = text.IndexOf(new string(quote, 3), from + 3, StringComparison.Ordinal);
            return end < 0 ? text.Length : end + 2;
        }

        for (int i = from + 1; i < text.Length; i++)
        {
            if (text[i] == quote || text[i] == '\n')
            {
                return i;
            }

            if (text[i] == '\\' && quote == '"')
            {
                i++;
            }
        }

        return text.Length;
    }

    private static bool LooksLikeUtf16(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> head = bytes[..Math.Min(bytes.Length, 64)];
        int even = 0, odd = 0;
        for (int i = 0; i < head.Length; i++)
        {
            if (head[i] == 0)
            {
                _ = i % 2 == 0 ? even++ : odd++;
            }
        }

        return head.Length >= 8 && Math.Max(even, odd) >= head.Length / 4 && Math.Min(even, odd) == 0;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        int at = 0;
        while (at < bytes.Length)
        {
            if (Rune.DecodeFromUtf8(bytes[at..], out _, out int used) != System.Buffers.OperationStatus.Done)
            {
                return at;
            }

            at += used;
        }

        return -1;
    }

    private static (int Line, int Column) Place(ReadOnlySpan<byte> before)
    {
        int line = before.Count((byte)'\n') + 1;
        return (line, Strict.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1);
    }
}
