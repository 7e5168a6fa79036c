using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Graspwright.Hand;

/// <summary>Paths to values: <c>crank.fulcrum.x</c>, <c>fingers.index.segments[1]</c>. Lists count from 1.</summary>
public static class HandPath
{
    /// <summary>Joins a key to a path.</summary>
    /// <param name="path">The path; empty = the whole file.</param>
    /// <param name="key">The key, quoted in the path where TOML would want it.</param>
    public static string Join(string path, string key)
    {
        ArgumentNullException.ThrowIfNull(path);
        string plain = key.Length > 0 && BareEnd(key, 0) == key.Length ? key : Toml.Text(key);
        return path.Length == 0 ? plain : $"{path}.{plain}";
    }

    /// <summary>Splits a path into keys and list places.</summary>
    /// <param name="path">The path.</param>
    /// <param name="steps">Its steps.</param>
    /// <returns>Whether it is a path at all.</returns>
    public static bool TrySplit(string path, [NotNullWhen(true)] out IReadOnlyList<PathStep>? steps)
    {
        ArgumentNullException.ThrowIfNull(path);
        List<PathStep> found = [];
        int at = 0;
        while (at < path.Length)
        {
            bool dot = path[at] == '.';
            int from = dot ? at + 1 : at;
            bool joined = from < path.Length && path[from] == '[' ? !dot : dot == found.Count > 0;
            if (!joined || Step(path, from, out int end) is not { } step)
            {
                steps = null;
                return false;
            }

            found.Add(step);
            at = end;
        }

        steps = found.Count == 0 || found[0].Index > 0 ? null : found;
        return steps is not null;
    }

    /// <summary>Finds what a path to a single value means, whether or not the file has it.</summary>
    /// <param name="path">The path.</param>
    /// <param name="key">The description of the value, with its dimension.</param>
    /// <param name="near">The nearest path that means something; <see langword="null"/> if none is near.</param>
    /// <returns>Whether the path leads to a value with a dimension.</returns>
    public static bool TryDescribe(string path, [NotNullWhen(true)] out HandKey? key, out string? near)
    {
        near = null;
        key = TrySplit(path, out IReadOnlyList<PathStep>? steps) ? Describe(steps) : null;
        if (key is { Form: KeyForm.Quantity })
        {
            return true;
        }

        near = key is { Form: KeyForm.Pair } ? path + ".x"
            : key is { Form: KeyForm.Triple } ? path + "[1]"
            : steps is null ? null : NearestPath(steps);
        key = null;
        return false;
    }

    /// <summary>The key at the end of the steps; pairs, triples and moment tables are taken apart.</summary>
    internal static HandKey? Describe(IReadOnlyList<PathStep> steps)
    {
        HandSection? section = HandKeys.Root;
        HandKey? key = null;
        foreach (PathStep step in steps)
        {
            if (section is not null)
            {
                key = step.Index > 0 ? null : section.Find(step.Key);
                if (key is { Form: KeyForm.Tolerance })
                {
                    key = TryDescribe(step.Key, out HandKey? target, out _) ? key with { Form = KeyForm.Quantity, Dimension = target.Dimension } : null;
                }

                section = key?.Parts?.Invoke();
            }
            else
            {
                key = key is null ? null : Component(key, step);
            }

            if (key is null)
            {
                return null;
            }
        }

        return key;
    }

    private static HandKey? Component(HandKey key, PathStep step) => key.Form switch
    {
        KeyForm.Pair when step is { Key: "x" or "y" } or { Index: 1 or 2 } => One(key, key.Dimension),
        KeyForm.Triple when step.Index is >= 1 and <= 3 => One(key, key.Dimension),
        KeyForm.MomentTable when step.Index >= 1 => key with { Form = KeyForm.MomentRow },
        KeyForm.MomentRow when step.Index == 1 => One(key with { Bounds = Bounds.Posture }, Dimension.Angle),
        KeyForm.MomentRow when step.Index == 2 => One(key, Dimension.Moment),
        KeyForm.Outline when step.Index >= 1 => key with { Form = KeyForm.OutlineCorner },
        KeyForm.OutlineCorner when step.Index == 1 => One(key, Dimension.Length),
        KeyForm.OutlineCorner when step.Index == 2 => One(key with { Bounds = Bounds.Turn }, Dimension.Angle),
        _ => null,
    };

    private static HandKey One(HandKey key, Dimension dimension) => key with
    {
        Form = KeyForm.Quantity,
        Dimension = dimension,
        Example = Toml.Text($"12 {Unit.Of(dimension).First().Symbol}"),
    };

    private static string? NearestPath(IReadOnlyList<PathStep> steps)
    {
        HandSection? section = HandKeys.Root;
        HandKey? last = null; // a value, whose components may follow
        string path = "";
        foreach (PathStep step in steps)
        {
            last = section is null && last is not null ? Component(last, step) : null;
            if (last is not null)
            {
                path = step.Index > 0 ? string.Create(CultureInfo.InvariantCulture, $"{path}[{step.Index}]") : Join(path, step.Key);
                continue;
            }

            if (section is null || step.Index > 0)
            {
                return path.Length == 0 ? null : path;
            }

            string? name = section.Find(step.Key) is not null ? step.Key : Nearest.To(step.Key, section.Keys.Select(k => k.Name));
            if (name is null)
            {
                return path.Length == 0 ? null : path;
            }

            path = Join(path, name);
            last = section.Find(name);
            section = last!.Parts?.Invoke();
        }

        return path;
    }

    private static string Unquoted(string quoted) => quoted.Replace("\\\"", "\"", StringComparison.Ordinal).Replace("\\\\", "\\", StringComparison.Ordinal);

    private static int BareEnd(string text, int at)
    {
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '_' or '-'))
        {
            at++;
        }

        return at;
    }

    /// <summary>The key or list place that starts at a character; <see langword="null"/> if neither does.</summary>
    private static PathStep? Step(string path, int at, out int end)
    {
        end = BareEnd(path, at);
        if (end > at)
        {
            return new(path[at..end], 0);
        }

        if (at < path.Length && path[at] == '"')
        {
            for (end = at + 1; end < path.Length && path[end] != '"'; end++)
            {
                end += path[end] == '\\' ? 1 : 0;
            }

            return end++ < path.Length ? new(Unquoted(path[(at + 1)..(end - 1)]), 0) : null;
        }

        end = at + 1;
        while (end < path.Length && char.IsAsciiDigit(path[end]))
        {
            end++;
        }

        int digits = end - at - 1;
        return at < path.Length && path[at] == '[' && digits is > 0 and <= GreatestDigits && end < path.Length && path[end++] == ']'
            ? new("", int.Parse(path.AsSpan(at + 1, digits), NumberStyles.None, CultureInfo.InvariantCulture))
            : null;
    }

    private const int GreatestDigits = 6;
}

/// <summary>One step of a path.</summary>
/// <param name="Key">The key; empty for a place in a list.</param>
/// <param name="Index">Place in a list, from 1; 0 for a key.</param>
public sealed record PathStep(string Key, int Index);
