using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Binds the list of changes and the searches.</summary>
internal static class DecisionBinding
{
    public static Decisions Bind(Binder root, BindingRun run)
    {
        Binder weighing = root.Part("weighing");
        IReadOnlyList<Change> changes = [.. root.Part("changes").NamedParts().Select(p => Change(p.Name, p.Part))];
        Decisions decisions = new()
        {
            Measures = weighing.Words("measures"),
            Money = weighing.Word("money"),
            Changes = changes,
            Searches = [.. root.Part("search").NamedParts().Select(p => Search(p.Name, p.Part, changes))],
        };
        return decisions with { Guesses = [.. run.Guesses] };
    }

    private static Change Change(string name, Binder t)
    {
        Change change = new(name)
        {
            About = t.Word("about"),
            Evenings = t.Optional("evenings"),
            Money = t.Optional("money"),
            WithoutSeconds = t.Optional("days_without"),
            NewHand = t.Word("fits") == "new hand",
            MockUp = t.Word("mock_up"),
            Edits = [.. t.Part("edits").Entries.Select(e => new HandEdit(e.Key, Written(e.Value)))],
            Parts = [.. t.Part("parts").Entries.Select(e => new ReplacedPart(e.Key, e.Value is TextNode text ? text.Text : ""))],
        };
        foreach (Entry entry in t.Part("parts").Entries)
        {
            if (!HandPath.TrySplit(entry.Key, out IReadOnlyList<PathStep>? steps) || HandPath.Describe(steps)?.Parts is null)
            {
                t.Fault(entry.KeyPlace, "parts", $"\"{entry.Key}\"", "the path of a section, in quotes", "name a section such as \"rail\" or \"balance.first\"");
            }
        }

        if (change.Edits.Count + change.Parts.Count == 0)
        {
            t.Fault(t.Place, "edits", "a change that changes nothing", "at least one value under edits, or a section under parts", $"add [changes.{name}.edits] with \"crank.fulcrum.x\" = \"22 mm\"");
        }

        return change;
    }

    private static DesignSearch Search(string name, Binder t, IReadOnlyList<Change> changes)
    {
        DesignSearch search = new(name)
        {
            About = t.Word("about"),
            Seed = Whole(t, "seed"),
            Evaluations = Whole(t, "evaluations"),
            Changes = t.Words("changes"),
            Free = [.. t.Part("free").NamedParts().Select(p => Free(p.Name, p.Part))],
            Aims = [.. t.Part("aims").Entries.Select(e => new SearchAim(e.Key, e.Value is TextNode { Text: "more" }))],
            Limits =
            [
                .. t.Part("at_least").Entries.Select(e => new SearchLimit(e.Key, true, Written(e.Value))),
                .. t.Part("at_most").Entries.Select(e => new SearchLimit(e.Key, false, Written(e.Value))),
            ],
        };
        foreach (string wanted in search.Changes.Where(w => !changes.Any(c => c.Name == w)))
        {
            t.Fault(t.PlaceOf("changes"), "changes", $"\"{wanted}\", which is no change of this file", changes.Count > 0 ? string.Join(", ", changes.Select(c => c.Name)) : "none: the file lists no changes",
                Nearest.To(wanted, changes.Select(c => c.Name)) is { } near ? $"did you mean {near}?" : "use a name from [changes]");
        }

        if (search.Free.Count + search.Changes.Count == 0)
        {
            t.Fault(t.Place, "free", "nothing that is free", "at least one path with its range", $"add [search.{name}.free.\"crank.fulcrum.x\"] with from and to");
        }

        if (search.Aims.Count is 0 or > MostAims)
        {
            t.Fault(t.PlaceOf("aims"), "aims", search.Aims.Count == 0 ? "nothing that is aimed at" : FormattableString.Invariant($"{search.Aims.Count} aims"), FormattableString.Invariant($"1 to {MostAims} measures"),
                search.Aims.Count == 0 ? "add aims, such as \"grip_force@mug\" = \"more\"" : "turn some of them into limits under at_least or at_most");
        }

        return search;
    }

    private const int MostAims = 4;

    private static FreeValue Free(string path, Binder t)
    {
        HandKey? key = HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) ? HandPath.Describe(steps) : null;
        bool range = t.Has("from") || t.Has("to");
        if (range == t.Has("one_of") || t.Has("from") != t.Has("to"))
        {
            t.Fault(t.Place, !range ? "one_of" : t.Has("from") ? "to" : "from", range == t.Has("one_of") ? range ? "a range beside one_of" : "no range" : "one end of a range", "from and to, or one_of", "give both ends of the range, or a list of values");
        }

        if (key is { Form: not KeyForm.Quantity } && range)
        {
            t.Fault(t.Place, "from", $"a range of {path}", "one_of, as it is no single quantity", "list the values: one_of = [\"…\", \"…\"]");
        }

        FreeValue free = new(path)
        {
            Dimension = key is { Form: KeyForm.Quantity } ? key.Dimension : null,
            From = Si(t, key, "from"),
            To = Si(t, key, "to"),
            Step = Si(t, key, "step"),
            OneOf = t.Node("one_of") is ArrayNode list ? [.. list.Items.Select(Written)] : [],
        };
        if (free is { From: { } from, To: { } to } && !(to > from))
        {
            t.Fault(t.PlaceOf("to"), "to", "a range without a value between its ends", $"more than {NodeWords.Found(t.Node("from")!)}", "exchange from and to, or leave the value out of the search: nothing is free in it");
        }

        if (free is { Step: { } step, From: { } low, To: { } high } && !(step > 0 && step <= high - low))
        {
            t.Fault(t.PlaceOf("step"), "step", NodeWords.Found(t.Node("step")!), "above 0, at most the width of the range", "make the step smaller or the range wider");
        }

        if (t.Has("one_of") && free.OneOf.Count < 2)
        {
            t.Fault(t.PlaceOf("one_of"), "one_of", FormattableString.Invariant($"a list of {free.OneOf.Count}"), "two values or more", "add a value, or leave it out of the search");
        }

        return free;
    }

    private static double? Si(Binder t, HandKey? key, string name) =>
        key is { Form: KeyForm.Quantity } && t.Node(name) is { } node && ValueReading.Quantity(key with { Bounds = Bounds.Any }, node, "", null) is var si && double.IsFinite(si) ? si : null;

    private static long Whole(Binder t, string name)
    {
        double value = t.Quantity(name);
        if (double.IsFinite(value) && value != Math.Floor(value))
        {
            t.Fault(t.PlaceOf(name), name, value.ToString(CultureInfo.InvariantCulture), "a whole number", "round it");
        }

        return double.IsFinite(value) ? (long)Math.Min(value, long.MaxValue / 2) : 1;
    }

    /// <summary>A value as it is set by its path: text without quotes, the rest as TOML.</summary>
    private static string Written(Node node) => node is TextNode text ? text.Text : InToml(node);

    private static string InToml(Node node) => node switch
    {
        TextNode text => Toml.Text(text.Text),
        BareNode bare => bare.Raw,
        ArrayNode list => Toml.List(list.Items.Select(InToml)),
        _ => "",
    };
}
