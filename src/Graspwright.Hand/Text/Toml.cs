using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Single TOML values.</summary>
internal static class Toml
{
    /// <summary>A single value that we wrote ourselves: the reader works with hundreds, so plain ones take no parser.</summary>
    public static Node Value(string toml)
    {
        int at = 0;
        return toml.AsSpan().ContainsAny('\\', '{', '\'') ? Parsed(toml) : Plain(toml, ref at);
    }

    private static Node Plain(string toml, ref int at)
    {
        while (toml[at] is ' ' or ',')
        {
            at++;
        }

        int start = at;
        if (toml[at] == '"')
        {
            at = toml.IndexOf('"', start + 1) + 1;
            return new TextNode(default, toml[(start + 1)..(at - 1)]);
        }

        if (toml[at] != '[')
        {
            int end = toml.AsSpan(start).IndexOfAny(" ,]");
            at = end < 0 ? toml.Length : start + end;
            return new BareNode(default, toml[start..at], BareKind.Number);
        }

        List<Node> items = [];
        for (at++; toml[at] != ']';)
        {
            items.Add(Plain(toml, ref at));
        }

        at++;
        return new ArrayNode(default, items);
    }

    private static Node Parsed(string toml)
    {
        (HandSource? source, _) = HandSource.Parse(new("default", "value = " + toml, HasByteOrderMark: false));
        return source?.Root["value"] ?? throw new ArgumentException($"{toml} is no TOML value.", nameof(toml));
    }

    public static string Text(string text)
    {
        System.Text.StringBuilder quoted = new("\"");
        foreach (char c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                _ when char.IsControl(c) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>A quantity; a value that is not known stays a word that reads as not known.</summary>
    public static string Quantity(double si, Dimension dimension) =>
        double.IsFinite(si) ? dimension == Dimension.Number ? Hand.Quantity.Write(si, dimension) : Text(Hand.Quantity.Write(si, dimension)) : "\"not known\"";

    public static string List(IEnumerable<string> items) => $"[{string.Join(", ", items)}]";
}
