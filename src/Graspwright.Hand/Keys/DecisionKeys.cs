using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of the list of changes and of searches.</summary>
internal static class DecisionKeys
{
    private const string Chosen = "workshop-choice";

    /// <summary>The sections, for the root of the file.</summary>
    public static HandKey[] Sections =>
    [
        Part("weighing", () => Weighing!),
        Part("changes", () => Changes!),
        Part("search", () => Searches!),
    ];

    private static HandSection Weighing { get; } = new("By which measures changes are weighed.",
    [
        Words("measures", "Measures, the one that counts most first: `jobs_done`, `grip_force@mug/all free`, `worst(shift_cost)`; without it, a choice of the program.", "[\"jobs_done\", \"knock_margin\"]"),
        Free("money", "Currency of all prices below.", "\"EUR\"") with { Default = "\"\"" },
    ]);

    private static HandSection Changes { get; } = new("The list of changes that are being thought about, by name.", []) { AnyKey = Part("NAME", () => Change!) };

    private static HandSection Change { get; } = new("A change: what it would make of the file, and what it costs.",
    [
        Free("about", "What is done, in a line.", "\"softer pads\"") with { Default = "\"\"" },
        Number("evenings", "Evenings of work.", Bounds.NotNegative) with { Example = "3" },
        Number("money", "What is bought for it.", Bounds.NotNegative) with { Example = "18" },
        Of("days_without", Dimension.Time, "Time without the hand.", "1 day", Bounds.NotNegative),
        Choice("fits", "Whether it can be fitted to the hand as it is.", "retrofit", "new hand") with { Default = "\"retrofit\"" },
        Free("mock_up", "What could be tried first, without making it.", "\"foam taped over two fingers\"") with { Default = "\"\"" },
        Part("edits", () => Edits!),
        Part("parts", () => Parts!),
    ]);

    private static HandSection Edits { get; } = new("Values that the change sets; the key is the path of the value, in quotes.", [])
    {
        AnyKey = new() { Name = "\"PATH\"", Form = KeyForm.AsThere, Words = "The new value, written as at its path.", Example = "\"12 mm\"" },
    };

    private static HandSection Parts { get; } = new("Whole sections that the change replaces; the key is the path of the section, in quotes.", [])
    {
        AnyKey = Free("\"SECTION\"", "The new section as it would stand in the file, headers included, between triple quotes.", "\"[rail]\""),
    };

    private static HandSection Searches { get; } = new("Searches, by name.", []) { AnyKey = Part("NAME", () => Search!) };

    private static HandSection Search { get; } = new("A search: what is free, what is aimed at, what must hold.",
    [
        Free("about", "What is looked for, in a line.", "\"where the fulcrum goes\"") with { Default = "\"\"" },
        Number("seed", "Seed of all chance: the same seed gives the same designs.", Bounds.NotNegative) with { Default = "1", SourceKey = Chosen, Example = "1" },
        Number("evaluations", "How many designs are tried.", new(1, false, 1e9, "1 to a thousand million")) with { Default = "5000", SourceKey = Chosen, Example = "5000" },
        Words("changes", "Items of the list of changes that the search may take or leave.", "[\"softer pads\"]"),
        Part("free", () => Frees!),
        Part("aims", () => Aims!),
        Part("at_least", () => Limits!),
        Part("at_most", () => Limits!),
    ]);

    private static HandSection Frees { get; } = new("What is free; the key is the path of the value, in quotes.", []) { AnyKey = Part("\"PATH\"", () => FreeValue!) };

    private static HandSection FreeValue { get; } = new("What a free value may be: from and to, in steps where the stock has them; or one of several.",
    [
        Bound("from", "Least value, written as at its path."),
        Bound("to", "Greatest value."),
        Bound("step", "Step of the stock, from the least value on."),
        new() { Name = "one_of", Form = KeyForm.SeveralAsThere, Words = "The values among which is chosen, words or quantities.", Example = "[\"1 mm\", \"2 mm\"]" },
    ]);

    private static HandSection Aims { get; } = new("What is aimed at; the key is a measure, in quotes.", [])
    {
        AnyKey = Choice("\"MEASURE\"", "Whether more or less of it is better.", "more", "less"),
    };

    private static HandSection Limits { get; } = new("What must hold; the key is a measure, in quotes.", [])
    {
        AnyKey = new() { Name = "\"MEASURE\"", Form = KeyForm.AsMeasured, Words = "The limit, in a unit of the measure.", Example = "\"30 N\"" },
    };

    private static HandKey Words(string name, string words, string example) => new() { Name = name, Form = KeyForm.Words, Words = words, Example = example };

    private static HandKey Bound(string name, string words) => new() { Name = name, Form = KeyForm.AsThere, Words = words, Example = "\"12 mm\"" };
}
