namespace Graspwright.Hand;

/// <summary>Collects what is wrong with a file, each thing once.</summary>
internal sealed class Faults(string file)
{
    /// <summary>So many errors are told; nobody mends more at a time.</summary>
    public const int Greatest = 500;

    private readonly HashSet<HandError> _errors = [];

    public bool Full => _errors.Count > Greatest;

    public bool Any => _errors.Count > 0;

    public void Add(Place place, string key, string found, string allowed, string fix)
    {
        if (_errors.Count < Greatest)
        {
            _errors.Add(new(file, place.Line, place.Column, Clean(key), Clean(found), Clean(allowed), Clean(fix)));
        }
        else
        {
            _errors.Add(new(file, int.MaxValue, 0, "", FormattableString.Invariant($"more than {Greatest} errors"), "none", "mend these first, then read the file again"));
        }
    }

    /// <summary>What a file says may hold anything; a message holds no control characters.</summary>
    private static string Clean(string text) => text.Any(char.IsControl) ? new([.. text.Select(c => char.IsControl(c) ? '·' : c)]) : text;

    public IReadOnlyList<HandError> Sorted() =>
        [.. _errors.OrderBy(e => e.Line).ThenBy(e => e.Column).ThenBy(e => e.Key, StringComparer.Ordinal).ThenBy(e => e.Found, StringComparer.Ordinal)
            .Select(e => e.Line == int.MaxValue ? e with { Line = 0 } : e)];
}
