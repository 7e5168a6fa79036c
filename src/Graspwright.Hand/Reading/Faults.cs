namespace Graspwright.Hand;

/// <summary>Collects what is wrong with a file, each thing once.</summary>
internal sealed class Faults(string file)
{
    private readonly HashSet<HandError> _errors = [];

    public bool Any => _errors.Count > 0;

    public void Add(Place place, string key, string found, string allowed, string fix) =>
        _errors.Add(new(file, place.Line, place.Column, key, found, allowed, fix));

    public void Add(HandError error) => _errors.Add(error);

    public IReadOnlyList<HandError> Sorted() =>
        [.. _errors.OrderBy(e => e.Line).ThenBy(e => e.Column).ThenBy(e => e.Key, StringComparer.Ordinal).ThenBy(e => e.Found, StringComparer.Ordinal)];
}
