using System.Text;
using System.Text.RegularExpressions;

namespace Graspwright.Hand;

/// <summary>A table to be written, driven by its keys.</summary>
/// <remarks>A value that is still the guess the reader made is left out, so that reading guesses it again and says so.</remarks>
internal sealed partial class OutTable(string path, HandSection section, IReadOnlyDictionary<string, Guess> guesses, bool inline = false)
{
    private readonly List<string> _lines = [];
    private readonly List<OutTable> _parts = [];

    /// <summary>Whether the header is written even without keys.</summary>
    public bool Always { get; init; }

    public void Quantity(string name, double value) => Put(name, [value], Text(name, value));

    public void Optional(string name, double? value)
    {
        if (value is { } given)
        {
            Quantity(name, given);
        }
    }

    public void Point(string name, Point p) => Put(name, [p.X, p.Y], Toml.List([Text(name, p.X), Text(name, p.Y)]));

    public void Triple(string name, Triple t) =>
        Put(name, [t.First, t.Second, t.Third], Toml.List([Text(name, t.First), Text(name, t.Second), Text(name, t.Third)]));

    public void Moments(string name, MomentTable table)
    {
        var rows = table.AnglesRadians.Zip(table.MomentsNewtonMetres);
        Put(name, [.. rows.SelectMany(r => new[] { r.First, r.Second })],
            Toml.List(rows.Select(r => Toml.List([Toml.Quantity(r.First, Dimension.Angle), Toml.Quantity(r.Second, Dimension.Moment)]))));
    }

    /// <summary>Corners of a line on the limb; left out where there are none.</summary>
    public void Outline(string name, IReadOnlyList<LimbCorner> corners)
    {
        if (corners.Count > 0)
        {
            Line(name, Toml.List(corners.Select(c => Toml.List([Toml.Quantity(c.Place, Dimension.Length), Toml.Quantity(c.AngleRadians, Dimension.Angle)]))));
        }
    }

    public void Word(string name, string text) => Line(name, Toml.Text(text));

    /// <summary>A word that is left out where it is still the guess.</summary>
    public void GuessedWord(string name, string text)
    {
        if (Guessed(name)?.ValueText != text)
        {
            Word(name, text);
        }
    }

    public void Bare(string name, string toml) => Line(name, toml);

    public void Pin(string name, Pin pin)
    {
        if (pin == default && Guessed(name) is not null)
        {
            return;
        }

        OutTable part = InlinePart(name);
        part.Quantity("radius", pin.Radius);
        part.Quantity("play", pin.Play);
        part.Quantity("worn_play", pin.WornPlay);
        Close(name, part);
    }

    /// <summary>A part with a header of its own.</summary>
    public OutTable Part(string name, bool always = false)
    {
        OutTable part = new(HandPath.Join(path, name), Key(name).Parts!(), guesses) { Always = always };
        _parts.Add(part);
        return part;
    }

    /// <summary>A part in one line; give it back to <see cref="Close"/>.</summary>
    public OutTable InlinePart(string name) => new(HandPath.Join(path, name), Key(name).Parts!(), guesses, inline: true);

    public void Close(string name, OutTable part) => Line(name, part._lines.Count == 0 ? "{}" : $"{{ {string.Join(", ", part._lines)} }}");

    public void WriteTo(StringBuilder text)
    {
        if (path.Length > 0 && (_lines.Count > 0 || Always))
        {
            text.Append('\n').Append('[').Append(path).Append("]\n");
        }

        foreach (string line in _lines)
        {
            text.Append(line).Append('\n');
        }

        foreach (OutTable part in _parts)
        {
            part.WriteTo(text);
        }
    }

    public Guess? Guessed(string name)
    {
        string own = HandPath.Join(path, name);
        return guesses.GetValueOrDefault(own) ?? guesses.GetValueOrDefault(FingerName().Replace(own, $"${{part}}.{FingerBinding.Shared}."));
    }

    private void Put(string name, double[] values, string toml)
    {
        if (Guessed(name) is not { } guess || !Same(guess.ValueText, values, Key(name)))
        {
            Line(name, toml);
        }
    }

    private void Line(string name, string toml)
    {
        if (inline && toml.Contains('\n', StringComparison.Ordinal))
        {
            throw new ArgumentException("A part in one line holds single values only.", nameof(toml));
        }

        _lines.Add($"{HandPath.Join("", name)} = {toml}");
    }

    private string Text(string name, double value)
    {
        HandKey key = Key(name);
        return double.IsPositiveInfinity(value) && key.Unbounded is { } word ? Toml.Text(word) : Toml.Quantity(value, key.Dimension);
    }

    private HandKey Key(string name) => section.Find(name) ?? throw new ArgumentException($"{path} has no key {name}.", nameof(name));

    private static bool Same(string guess, double[] values, HandKey key)
    {
        double[] guessed = [.. Separators().Split(guess).Where(t => t.Length > 0).Select(t =>
            string.Equals(t, key.Unbounded, StringComparison.Ordinal) ? double.PositiveInfinity
            : key.Form == KeyForm.MomentTable && Hand.Quantity.TryParse(t, Dimension.Angle, out Quantity? angle, out _) ? angle.Si
            : Hand.Quantity.TryParse(t, key.Dimension, out Quantity? quantity, out _) ? quantity.Si : double.NaN)];
        return guessed.Length == 1 ? Array.TrueForAll(values, v => v.Equals(guessed[0])) : guessed.AsSpan().SequenceEqual(values);
    }

    [GeneratedRegex(@"[\[\],]\s*", RegexOptions.None, 1000)]
    private static partial Regex Separators();

    [GeneratedRegex(@"^(?<part>fingers|hinges)\.(?:[A-Za-z0-9_-]+|""(?:[^""\\]|\\.)*"")\.", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FingerName();
}
