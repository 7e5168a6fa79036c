namespace Graspwright.Hand;

/// <summary>Takes the values of one table, with the defaults of its keys. Faults of single values were reported by <see cref="KeyCheck"/>.</summary>
internal sealed class Binder(BindingRun run, TableNode? table, TableNode? shared, HandSection section, string path, Place place)
{
    public string Path => path;

    /// <summary>Where the table is, or the table round it.</summary>
    public Place Place => place;

    public bool Has(string name) => Node(name) is not null;

    /// <summary>Which of two ways to say one thing the file uses; what a table says itself wins over what is shared.</summary>
    /// <returns>The key that is used; <see langword="null"/> if neither is there.</returns>
    public string? OneOf(string first, string second)
    {
        foreach (TableNode? level in new[] { table, shared })
        {
            bool one = level?[first] is not null, other = level?[second] is not null;
            if (one && other)
            {
                Fault(level![first]!.Place, first, $"{first} beside {second}", "one of the two", $"remove {first}: {second} says it");
            }

            if (one || other)
            {
                return other ? second : first;
            }
        }

        return null;
    }

    public Place PlaceOf(string name) => Node(name)?.Place ?? place;

    public double Quantity(string name, string? derived = null) =>
        Value(name, derived) is { } node ? ValueReading.Quantity(Key(name), node, "", null) : double.NaN;

    public double? Optional(string name) => Has(name) ? Quantity(name) : null;

    public Point Point(string name, string? derived = null) =>
        Value(name, derived) is { } node ? ValueReading.Pair(Key(name), node, "", null) : new(double.NaN, double.NaN);

    public Triple Triple(string name, string? derived = null) =>
        Value(name, derived) is { } node ? ValueReading.Triple(Key(name), node, "", null) : new(double.NaN, double.NaN, double.NaN);

    /// <summary>A triple worked out from other values, whatever the file says under its key.</summary>
    public Triple Default(string name, string derived)
    {
        GuessFor(Key(name), derived);
        return ValueReading.Triple(Key(name), Toml.Value(derived), "", null);
    }

    public MomentTable Moments(string name) => ValueReading.Moments(Key(name), Value(name, null)!, "", null);

    /// <summary>Corners of a line on the limb; empty where the file has none, or none that can be read.</summary>
    public IReadOnlyList<LimbCorner> Outline(string name) =>
        Node(name) is { } node && ValueReading.Outline(Key(name), node, "", null) is { } corners && corners.All(c => double.IsFinite(c.Place + c.AngleRadians)) ? corners : [];

    /// <summary>A fault of one corner of such a line, from 0.</summary>
    public void Fault(string key, int corner, string found, string allowed, string fix) =>
        run.Faults.Add(Node(key) is ArrayNode list && corner < list.Items.Count ? list.Items[corner].Place : PlaceOf(key), FormattableString.Invariant($"{HandPath.Join(path, key)}[{corner + 1}]"), found, allowed, fix);

    public string Word(string name, string? derived = null) =>
        Value(name, derived) is { } node ? ValueReading.Word(Key(name), node, "", null) ?? "" : "";

    /// <summary>Texts of a list; empty where the file has none.</summary>
    public IReadOnlyList<string> Words(string name) => Node(name) is ArrayNode list ? [.. list.Items.OfType<TextNode>().Select(t => t.Text)] : [];

    public T Choice<T>(string name)
        where T : struct, Enum => Enum.TryParse(typeof(T), Word(name).Replace(" ", "", StringComparison.Ordinal), ignoreCase: true, out object? value) ? (T)value : default;

    /// <summary>A part with its defaults, whether or not the file has it.</summary>
    public Binder Part(string name)
    {
        Node? node = Node(name);
        return new(run, table?[name] as TableNode, shared?[name] as TableNode, Key(name).Parts!(), HandPath.Join(path, name), node?.Place ?? place);
    }

    /// <summary>A part that the file may leave out.</summary>
    public Binder? OptionalPart(string name) => Node(name) is TableNode ? Part(name) : null;

    public Pin Pin(string name)
    {
        if (!Has(name))
        {
            run.Guess(HandPath.Join(path, name), "no radius, no play", Key(name).SourceKey!);
            return default;
        }

        Binder pin = Part(name);
        double play = pin.Quantity("play");
        return new(pin.Quantity("radius"), play, pin.Quantity("worn_play", Toml.Quantity(play, Dimension.Length)));
    }

    /// <summary>A freely named part that the file does not have, with what is shared by all.</summary>
    public Binder Unsaid(string name, TableNode? sharedByAll) => new(run, null, sharedByAll, Key(name).Parts!(), HandPath.Join(path, name), place);

    /// <summary>The freely named parts, in order of appearance.</summary>
    public IEnumerable<NamedPart> NamedParts(TableNode? sharedByAll = null)
    {
        foreach (Entry entry in table?.Entries ?? [])
        {
            if (entry.Value is TableNode part)
            {
                yield return new(entry.Key, new(run, part, sharedByAll, Key(entry.Key).Parts!(), HandPath.Join(path, entry.Key), entry.KeyPlace));
            }
        }
    }

    public IEnumerable<Entry> Entries => table?.Entries ?? [];

    public Node? Node(string name) => table?[name] ?? shared?[name];

    public void Fault(Place at, string key, string found, string allowed, string fix) => run.Faults.Add(at, HandPath.Join(path, key), found, allowed, fix);

    public void Guess(string name, string value, string source) => run.Guess(HandPath.Join(path, name), value, source);

    private HandKey Key(string name) => section.Find(name) ?? throw new ArgumentException($"{path} has no key {name}.", nameof(name));

    private Node? Value(string name, string? derived)
    {
        if (Node(name) is { } node)
        {
            return node;
        }

        HandKey key = Key(name);
        if (key.Required)
        {
            string whole = HandPath.Join(path, name);
            run.Faults.Add(place, whole, "nothing", key.Words.TrimEnd('.'), path.Length == 0
                ? $"add {name} = {key.Example} at the top"
                : $"measure it and add {name} = {key.Example} to [{path}]");
            return null;
        }

        string? fallback = derived ?? key.Default;
        if (fallback is null)
        {
            return null;
        }

        GuessFor(key, fallback);
        return Toml.Value(fallback);
    }

    private void GuessFor(HandKey key, string toml)
    {
        if (key.SourceKey is { } source)
        {
            run.Guess(HandPath.Join(path, key.Name), toml.Replace("\"", "", StringComparison.Ordinal), source);
        }
    }
}

/// <summary>A part that the maker named.</summary>
internal sealed record NamedPart(string Name, Binder Part);

/// <summary>What is gathered while a hand is bound.</summary>
internal sealed class BindingRun(Faults faults)
{
    private readonly List<Guess> _guesses = [];

    public Faults Faults { get; } = faults;

    public IReadOnlyList<Guess> Guesses => _guesses;

    public void Guess(string path, string value, string source) => _guesses.Add(new(path, value, source));
}
