using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Writes the list of changes and the searches.</summary>
internal static class DecisionWriter
{
    public static void Write(OutTable root, Decisions decisions)
    {
        OutTable weighing = root.Part("weighing");
        if (decisions.Measures.Count > 0)
        {
            weighing.Bare("measures", Words(decisions.Measures));
        }

        Said(weighing, "money", decisions.Money);
        OutTable changes = root.Part("changes");
        foreach (Change change in decisions.Changes)
        {
            Write(changes.Part(change.Name, always: true), change);
        }

        OutTable searches = root.Part("search");
        foreach (DesignSearch search in decisions.Searches)
        {
            Write(searches.Part(search.Name, always: true), search);
        }
    }

    private static void Write(OutTable t, Change change)
    {
        Said(t, "about", change.About);
        t.Optional("evenings", change.Evenings);
        t.Optional("money", change.Money);
        t.Optional("days_without", change.WithoutSeconds);
        t.Word("fits", change.NewHand ? "new hand" : "retrofit");
        Said(t, "mock_up", change.MockUp);
        OutTable edits = t.Part("edits");
        foreach (HandEdit edit in change.Edits)
        {
            edits.Bare(edit.Path, InToml(edit.Path, edit.Value));
        }

        OutTable parts = t.Part("parts");
        foreach (ReplacedPart part in change.Parts)
        {
            parts.Word(part.Path, part.Toml);
        }
    }

    private static void Write(OutTable t, DesignSearch search)
    {
        Said(t, "about", search.About);
        t.Quantity("seed", search.Seed);
        t.Quantity("evaluations", search.Evaluations);
        if (search.Changes.Count > 0)
        {
            t.Bare("changes", Words(search.Changes));
        }

        OutTable free = t.Part("free");
        foreach (FreeValue value in search.Free)
        {
            OutTable one = free.Part(value.Path, always: true);
            Si(one, "from", value.From, value.Dimension);
            Si(one, "to", value.To, value.Dimension);
            Si(one, "step", value.Step, value.Dimension);
            if (value.OneOf.Count > 0)
            {
                one.Bare("one_of", Toml.List(value.OneOf.Select(v => InToml(value.Path, v))));
            }
        }

        OutTable aims = t.Part("aims"), least = t.Part("at_least"), most = t.Part("at_most");
        foreach (SearchAim aim in search.Aims)
        {
            aims.Word(aim.Measure, aim.More ? "more" : "less");
        }

        foreach (SearchLimit limit in search.Limits)
        {
            (limit.AtLeast ? least : most).Bare(limit.Measure, IsNumber(limit.Value) ? limit.Value : Toml.Text(limit.Value));
        }
    }

    private static void Said(OutTable t, string name, string text)
    {
        if (text.Length > 0)
        {
            t.Word(name, text);
        }
    }

    private static void Si(OutTable t, string name, double? value, Dimension? dimension)
    {
        if (value is { } si)
        {
            t.Bare(name, Toml.Quantity(si, dimension ?? Dimension.Number));
        }
    }

    private static string Words(IReadOnlyList<string> words) => Toml.List(words.Select(Toml.Text));

    private static string InToml(string path, string value)
    {
        KeyForm? form = HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) ? HandPath.Describe(steps)?.Form : null;
        bool list = form is KeyForm.Pair or KeyForm.Triple or KeyForm.MomentTable or KeyForm.Outline or KeyForm.Words && value.StartsWith('[');
        return list || (form is KeyForm.Quantity or KeyForm.Triple && IsNumber(value)) ? value : Toml.Text(value);
    }

    private static bool IsNumber(string value) =>
        value.Length > 0 && char.IsAsciiDigit(value[^1]) && double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) && value[0] != '.';
}
