using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Reads the value of one key as the key describes it. Faults are reported where a list is given; a value that is not there is NaN.</summary>
internal static class ValueReading
{
    /// <summary>Nothing about a hand, its wearer and its jobs is longer [m]; beyond it the unit is wrong.</summary>
    internal const double LongestLength = 10;

    public static double Quantity(HandKey key, Node node, string path, Faults? faults, Dimension? dimension = null)
    {
        Dimension wanted = dimension ?? key.Dimension;
        if (node is TextNode word && key.Unbounded is { } unbounded && string.Equals(word.Text.Trim(), unbounded, StringComparison.Ordinal))
        {
            return double.PositiveInfinity;
        }

        if (QuantityText(node, wanted) is not { } text)
        {
            faults?.Add(node.Place, path, node.Found(), Allowed(key, wanted), Fix(key, node, wanted));
            return double.NaN;
        }

        if (!Hand.Quantity.TryParse(text, wanted, out Quantity? quantity, out QuantityFault? fault))
        {
            string also = key.Unbounded is { } other ? $", or \"{other}\"" : "";
            faults?.Add(node.Place, path, node.Found(), fault.Allowed + also, fault.Fix);
            return double.NaN;
        }

        if (!key.Bounds.Hold(quantity.Si))
        {
            faults?.Add(node.Place, path, node.Found(), key.Bounds.Words, $"measure it again or check the sign and the unit, such as {key.Example}");
            return double.NaN;
        }

        if (wanted == Dimension.Length && Math.Abs(quantity.Si) > LongestLength)
        {
            faults?.Add(node.Place, path, node.Found(), "a length of at most 10 m", $"check the number and the unit, such as {key.Example}");
            return double.NaN;
        }

        return quantity.Si;
    }

    public static Point Pair(HandKey key, Node node, string path, Faults? faults)
    {
        if (node is not ArrayNode { Items: [var x, var y] })
        {
            faults?.Add(node.Place, path, node.Found(), "a list of two, x (distal) and y (dorsal)", $"write {key.Example}");
            return new(double.NaN, double.NaN);
        }

        return new(Quantity(key, x, path + ".x", faults), Quantity(key, y, path + ".y", faults));
    }

    public static Triple Triple(HandKey key, Node node, string path, Faults? faults)
    {
        if (node is ArrayNode { Items: [var first, var second, var third] })
        {
            return new(Quantity(key, first, path + "[1]", faults), Quantity(key, second, path + "[2]", faults), Quantity(key, third, path + "[3]", faults));
        }

        if (node is ArrayNode or TableNode)
        {
            faults?.Add(node.Place, path, node.Found(), "a list of three, or one value for all three", $"write {key.Example}");
            return new(double.NaN, double.NaN, double.NaN);
        }

        double all = Quantity(key, node, path, faults);
        return new(all, all, all);
    }

    public static MomentTable Moments(HandKey key, Node node, string path, Faults? faults)
    {
        List<double> angles = [], moments = [];
        if (node is not ArrayNode { Items.Count: > 0 } rows)
        {
            faults?.Add(node.Place, path, node.Found(), "a list of pairs: angle and moment", $"write {key.Example}");
            return new([double.NaN], [double.NaN]);
        }

        HandKey angleKey = key with { Dimension = Dimension.Angle, Bounds = Bounds.Posture, Example = "\"40 deg\"" };
        HandKey momentKey = key with { Example = "\"12 N·m\"" };
        for (int i = 0; i < rows.Items.Count; i++)
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"{path}[{i + 1}]");
            if (rows.Items[i] is not ArrayNode { Items: [var angle, var moment] })
            {
                faults?.Add(rows.Items[i].Place, place, rows.Items[i].Found(), "a pair: angle and moment", "write [\"40 deg\", \"12 N·m\"]");
                continue;
            }

            angles.Add(Quantity(angleKey, angle, place + "[1]", faults));
            moments.Add(Quantity(momentKey, moment, place + "[2]", faults));
            if (i > 0 && angles.Count > 1 && angles[^1] <= angles[^2])
            {
                faults?.Add(angle.Place, place + "[1]", angle.Found(), "angles that rise from pair to pair", "put the pairs in order of angle, each angle once");
            }
        }

        return new(angles, moments);
    }

    /// <summary>Most corners of a line that is drawn by hand.</summary>
    internal const int MostCorners = 200;

    public static IReadOnlyList<LimbCorner> Outline(HandKey key, Node node, string path, Faults? faults)
    {
        List<LimbCorner> corners = [];
        if (node is not ArrayNode { Items.Count: >= 3 and <= MostCorners } rows)
        {
            string found = node is ArrayNode { Items.Count: var count } ? string.Create(CultureInfo.InvariantCulture, $"a list of {count}") : node.Found();
            faults?.Add(node.Place, path, found, string.Create(CultureInfo.InvariantCulture, $"a list of 3 to {MostCorners} corners, each a place and an angle"), $"write {key.Example}");
            return [];
        }

        HandKey place = key with { Example = "\"25 mm\"" }, angle = key with { Dimension = Dimension.Angle, Bounds = Bounds.Turn, Example = "\"90 deg\"" };
        for (int i = 0; i < rows.Items.Count; i++)
        {
            string here = string.Create(CultureInfo.InvariantCulture, $"{path}[{i + 1}]");
            if (rows.Items[i] is not ArrayNode { Items: [var along, var round] })
            {
                faults?.Add(rows.Items[i].Place, here, rows.Items[i].Found(), "a corner: place and angle", "write [\"25 mm\", \"90 deg\"]");
                corners.Add(new(double.NaN, double.NaN));
                continue;
            }

            corners.Add(new(Quantity(place, along, here + "[1]", faults), Quantity(angle, round, here + "[2]", faults)));
        }

        return corners;
    }

    public static string? Word(HandKey key, Node node, string path, Faults? faults)
    {
        if (node is not TextNode text)
        {
            faults?.Add(node.Place, path, node.Found(), key.Form == KeyForm.Choice ? Choices(key) : "text in quotes", $"write {key.Example}");
            return null;
        }

        if (key.Form != KeyForm.Choice || key.Choices.Contains(text.Text, StringComparer.Ordinal))
        {
            return text.Text;
        }

        string near = Nearest.To(text.Text, key.Choices) ?? key.Choices[0];
        faults?.Add(node.Place, path, node.Found(), Choices(key), $"write \"{near}\"");
        return null;
    }

    private static string? QuantityText(Node node, Dimension wanted) => node switch
    {
        TextNode text => text.Text,
        BareNode { Kind: BareKind.Number } bare when wanted == Dimension.Number => bare.Raw.Replace("_", "", StringComparison.Ordinal),
        _ => null,
    };

    private static string Allowed(HandKey key, Dimension wanted) =>
        Hand.Quantity.Allowed(wanted) + (key.Unbounded is { } word ? $", or \"{word}\"" : "");

    private static string Fix(HandKey key, Node node, Dimension wanted) => node is BareNode { Kind: BareKind.Number } bare && bare.IsFinite()
        ? $"add the unit: write \"{bare.Raw} {Unit.Of(wanted).First().Symbol}\""
        : $"write {key.Example}";

    private static string Choices(HandKey key) => string.Join(" or ", key.Choices.Select(c => $"\"{c}\""));
}
