using System.Text;

namespace Graspwright.Hand;

/// <summary>Reference of the hand file in Markdown, made from the table of keys.</summary>
public static class HandReference
{
    /// <summary>The whole document.</summary>
    public static string Markdown()
    {
        StringBuilder text = new(
            """
            # The hand file

            One text file describes one hand. It is TOML 1.0 in UTF-8. This page is made by the program from the same table of keys that reads the file.

            - A value with a dimension is text with its unit, with or without a space: `"12 mm"`, `"0.5in"`, `"38 deg"`. A bare number is refused there, and so are a decimal comma and a length beyond 10 m, since its unit is wrong.
            - Places are `[x, y]` from the wrist's bending axis with the hand open: x toward the fingertips, y toward the back of the hand. Directions count from x, toward y.
            - A value that is left out takes its default. A default with a source stands in for a measurement: it is listed as "guessed, measure it".
            - Lists count from 1: `fingers.index.segments[1]` is the proximal segment. Places have `.x` and `.y`.
            - Names in capitals are yours to choose.


            """);
        Section(text, HandKeys.Root, "", []);
        Units(text);
        Sources(text);
        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void Section(StringBuilder text, HandSection section, string path, HashSet<HandSection> done)
    {
        if (!done.Add(section))
        {
            return;
        }

        text.Append(path.Length == 0 ? "## At the top\n\n" : $"## `[{path}]`\n\n").Append(section.Words).Append("\n\n");
        HandKey[] own = [.. section.Keys.Append(section.AnyKey).OfType<HandKey>().Where(k => k.Form != KeyForm.Table)];
        if (own.Length > 0)
        {
            text.Append("| key | written as | allowed | default | meaning |\n|---|---|---|---|---|\n");
        }

        foreach (HandKey key in own)
        {
            text.Append($"| `{key.Name}` | {Form(key)} | {Allowed(key)} | {Default(key)} | {key.Words} |\n");
        }

        HandKey[] pins = [.. section.Keys.Where(IsPin)];
        text.Append(own.Length > 0 ? "\n" : "");
        if (pins.Length > 0)
        {
            text.Append($"Pins, each `{{ radius = …, play = …, worn_play = … }}`: {string.Join("; ", pins.Select(k => $"`{k.Name}` ({k.Words.TrimEnd('.')})"))}.\n\n");
        }

        foreach (HandKey key in section.Keys.Append(section.AnyKey).OfType<HandKey>().Where(k => k.Parts is not null && !IsPin(k)))
        {
            Section(text, key.Parts!(), path.Length == 0 ? key.Name : $"{path}.{key.Name}", done);
        }

        if (path.Length == 0)
        {
            Section(text, HandKeys.Pin, "PIN", done);
        }
    }

    private static bool IsPin(HandKey key) => key.Parts is { } parts && ReferenceEquals(parts(), HandKeys.Pin);

    private static string Form(HandKey key) => key.Form switch
    {
        KeyForm.Text => "text",
        KeyForm.Choice => "word",
        KeyForm.Pair => "x and y, each " + Of(key.Dimension),
        KeyForm.Triple => "three, each " + Of(key.Dimension),
        KeyForm.MomentTable => "pairs of an angle and a moment",
        KeyForm.Outline => "corners, each a length and an angle",
        KeyForm.FingerOrBar => "name of a finger, or a table",
        KeyForm.FileName => "name of a file inside the folder",
        KeyForm.Tolerance or KeyForm.AsThere => "as the value itself",
        KeyForm.SeveralAsThere => "list of values as the value itself",
        KeyForm.AsMeasured => "as the measure",
        KeyForm.Words => "list of texts",
        _ => Of(key.Dimension),
    };

    private static string Of(Dimension dimension) => dimension.Words();

    private static string Allowed(HandKey key) => key.Form switch
    {
        KeyForm.Choice => string.Join(", ", key.Choices.Select(c => $"`\"{c}\"`")),
        KeyForm.Outline => $"3 to {ValueReading.MostCorners} corners",
        KeyForm.Text or KeyForm.FileName or KeyForm.FingerOrBar or KeyForm.AsThere or KeyForm.SeveralAsThere or KeyForm.AsMeasured or KeyForm.Words => "any",
        _ => key.Bounds.Words + (key.Unbounded is { } word ? $", or `\"{word}\"`" : ""),
    };

    private static string Default(HandKey key)
    {
        string source = key.SourceKey is { } k ? $" [{k}]" : "";
        return key.Required ? "**to be given**"
            : key.DerivedDefault is { } derived ? derived + source
            : key.Default is { } value ? $"`{value}`{source}" : "none";
    }

    private static void Units(StringBuilder text)
    {
        text.Append("## Units\n\n| quantity | units |\n|---|---|\n");
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            text.Append($"| {dimension.Words()} | {Unit.Symbols(dimension)} |\n");
        }

        text.Append("\n`N·m` may be written `N m` or `Nm`, degrees `deg` or `°`, and both mu signs are read.\n\n");
    }

    private static void Sources(StringBuilder text)
    {
        text.Append("## Sources of the defaults\n\n| key | source | how sure | what was taken |\n|---|---|---|---|\n");
        foreach (Source source in Source.All)
        {
            string who = string.Join(' ', new[] { source.Authors, source.Year?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "" }.Where(s => s.Length > 0));
            text.Append($"| {source.Key} | {(who.Length > 0 ? who + ": " : "")}{source.Title} | {Standing(source.Standing)} | {source.Note} |\n");
        }
    }

    private static string Standing(SourceStanding standing) => standing switch
    {
        SourceStanding.Seen => "value seen",
        SourceStanding.SeenQuoted => "value seen quoted",
        SourceStanding.FromMemory => "from memory",
        _ => "chosen by us",
    };
}
