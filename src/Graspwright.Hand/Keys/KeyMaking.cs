namespace Graspwright.Hand;

/// <summary>Short ways to make keys, so that the table of keys reads as a table.</summary>
internal static class KeyMaking
{
    public static HandKey Free(string name, string words, string example) => new() { Name = name, Form = KeyForm.Text, Words = words, Example = example };

    public static HandKey Choice(string name, string words, params string[] choices) =>
        new() { Name = name, Form = KeyForm.Choice, Words = words, Choices = choices, Example = $"\"{choices[0]}\"" };

    public static HandKey Of(string name, Dimension dimension, string words, string example, Bounds bounds) =>
        new() { Name = name, Form = KeyForm.Quantity, Dimension = dimension, Words = words, Example = $"\"{example}\"", Bounds = bounds };

    public static HandKey Size(string name, string words, string example) => Of(name, Dimension.Length, words, example, Bounds.Positive);

    public static HandKey Angle(string name, string words, string example, Bounds bounds) => Of(name, Dimension.Angle, words, example, bounds);

    public static HandKey Number(string name, string words, Bounds bounds) => Of(name, Dimension.Number, words, "1", bounds);

    public static HandKey Place(string name, string words, string example) =>
        new() { Name = name, Form = KeyForm.Pair, Dimension = Dimension.Length, Words = words, Example = example };

    public static HandKey Three(string name, Dimension dimension, string words, string example, Bounds bounds) =>
        new() { Name = name, Form = KeyForm.Triple, Dimension = dimension, Words = words, Example = example, Bounds = bounds };

    public static HandKey Moments(string name, string words, string value) =>
        new() { Name = name, Form = KeyForm.MomentTable, Dimension = Dimension.Moment, Words = words, Example = value, Default = value, Bounds = Bounds.NotNegative };

    public static HandKey Outline(string name, string words, string example) =>
        new() { Name = name, Form = KeyForm.Outline, Dimension = Dimension.Length, Words = words, Example = example };

    public static HandKey Part(string name, Func<HandSection> parts) =>
        new() { Name = name, Form = KeyForm.Table, Words = "", Example = "", Parts = parts };

    public static HandKey PinPart(string name, string words) => Part(name, () => HandKeys.Pin) with { Words = words, SourceKey = "no-play" };

    public static HandKey End(string name, string words) => new()
    {
        Name = name,
        Form = KeyForm.FingerOrBar,
        Words = words,
        Example = "\"index\"",
        Required = true,
        Parts = () => HandKeys.Root.Find("balance")!.Parts!(),
    };
}
