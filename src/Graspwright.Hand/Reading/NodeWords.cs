namespace Graspwright.Hand;

/// <summary>How a value of the file is called in a message.</summary>
internal static class NodeWords
{
    public static string Found(this Node node) => node switch
    {
        TextNode text => $"\"{Short(text.Text)}\"",
        BareNode { Kind: BareKind.Number } bare when !bare.IsFinite() => $"{bare.Raw}, no finite number",
        BareNode { Kind: BareKind.Number } bare => $"{Short(bare.Raw)}, a number without a unit",
        BareNode { Kind: BareKind.Truth } bare => $"{bare.Raw}, a truth value",
        BareNode bare => $"{Short(bare.Raw)}, a date or time",
        ArrayNode array => FormattableString.Invariant($"a list of {array.Items.Count}"),
        _ => "a table",
    };

    public static bool IsFinite(this BareNode bare) =>
        !bare.Raw.EndsWith("nan", StringComparison.Ordinal) && !bare.Raw.EndsWith("inf", StringComparison.Ordinal);

    private static string Short(string text)
    {
        string clean = new([.. text.Take(60).Select(c => char.IsControl(c) ? '·' : c)]);
        return text.Length > 60 ? clean + "…" : clean;
    }
}
