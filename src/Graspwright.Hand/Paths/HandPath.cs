using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Graspwright.Hand;

/// <summary>Paths to values: <c>crank.fulcrum.x</c>, <c>fingers.index.segments[1]</c>. Lists count from 1.</summary>
public static partial class HandPath
{
    /// <summary>Joins a key to a path.</summary>
    /// <param name="path">The path; empty = the whole file.</param>
    /// <param name="key">The key, quoted in the path where TOML would want it.</param>
    public static string Join(string path, string key)
    {
        ArgumentNullException.ThrowIfNull(path);
        string plain = BareKey().IsMatch(key) ? key : Toml.Text(key);
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
            Match step = Step().Match(path, at);
            if (!step.Success || (found.Count == 0 && step.Groups["dot"].Success) || (found.Count > 0 && !step.Groups["dot"].Success && !step.Groups["index"].Success))
            {
                steps = null;
                return false;
            }

            found.Add(step.Groups["index"].Success
                ? new("", int.Parse(step.Groups["index"].Value, CultureInfo.InvariantCulture))
                : new(step.Groups["quoted"].Success ? Unquoted(step.Groups["quoted"].Value) : step.Groups["bare"].Value, 0));
            at += step.Length;
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
        string path = "";
        foreach (PathStep step in steps)
        {
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
            section = section.Find(name)!.Parts?.Invoke();
        }

        return path;
    }

    private static string Unquoted(string quoted) => quoted.Replace("\\\"", "\"", StringComparison.Ordinal).Replace("\\\\", "\\", StringComparison.Ordinal);

    [GeneratedRegex("^[A-Za-z0-9_-]+$", RegexOptions.None, 1000)]
    private static partial Regex BareKey();

    [GeneratedRegex("\\G(?:(?<dot>\\.)?(?:(?<bare>[A-Za-z0-9_-]+)|\"(?<quoted>(?:[^\"\\\\]|\\\\.)*)\")|\\[(?<index>[0-9]{1,6})\\])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Step();
}

/// <summary>One step of a path.</summary>
/// <param name="Key">The key; empty for a place in a list.</param>
/// <param name="Index">Place in a list, from 1; 0 for a key.</param>
public sealed record PathStep(string Key, int Index);
