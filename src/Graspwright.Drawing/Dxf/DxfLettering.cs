using System.Globalization;
using System.Text;

namespace Graspwright.Drawing.Dxf;

/// <summary>Takes the formatting off texts of drawings.</summary>
internal static class DxfLettering
{
    /// <summary>The text alone.</summary>
    /// <param name="raw">Text as in the file.</param>
    /// <param name="ofParagraph">Whether it is paragraph text (MTEXT) with backslash codes and braces.</param>
    public static string Plain(string raw, bool ofParagraph)
    {
        var text = new StringBuilder(raw.Length);
        for (int i = 0; i < raw.Length; i++)
        {
            if (raw[i] == '%' && i + 2 < raw.Length && raw[i + 1] == '%')
            {
                i += Percent(raw, i, text);
            }
            else if (raw[i] == '\\' && i + 6 < raw.Length && raw[i + 1] == 'U' && raw[i + 2] == '+'
                && int.TryParse(raw.AsSpan(i + 3, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int code))
            {
                text.Append((char)code);
                i += 6;
            }
            else if (ofParagraph && raw[i] == '\\' && i + 1 < raw.Length)
            {
                i = Backslash(raw, i + 1, text);
            }
            else if (!ofParagraph || raw[i] is not ('{' or '}'))
            {
                text.Append(raw[i]);
            }
        }

        return string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private static int Percent(string raw, int at, StringBuilder text)
    {
        string? sign = char.ToLowerInvariant(raw[at + 2]) switch { 'd' => "°", 'p' => "±", 'c' => "⌀", '%' => "%", 'u' or 'o' or 'k' => "", _ => null };
        text.Append(sign ?? "%");
        return sign is null ? 0 : 2;
    }

    // Codes with a value run to a semicolon; the others are one letter.
    private static int Backslash(string raw, int at, StringBuilder text)
    {
        switch (raw[at])
        {
            case 'P' or 'N' or '~':
                text.Append(' ');
                return at;
            case '\\' or '{' or '}':
                text.Append(raw[at]);
                return at;
            case 'L' or 'l' or 'O' or 'o' or 'K' or 'k':
                return at;
            default:
                int end = raw.IndexOf(';', at);
                return end < 0 ? at : end;
        }
    }
}
