namespace Graspwright.Moulding.ComingOff;

/// <summary>Girths along a limb, straight between the marks.</summary>
public sealed class Girths
{
    private readonly double[] _places, _girths;

    /// <summary>Girths at marks.</summary>
    /// <param name="places">Places along the limb, rising toward the end over which the piece comes off [m].</param>
    /// <param name="girths">Girth at each [m], above 0.</param>
    /// <exception cref="ArgumentException">Fewer than two marks, places that do not rise, or a girth not above 0.</exception>
    public Girths(IReadOnlyList<double> places, IReadOnlyList<double> girths)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(girths);
        bool rising = true;
        for (int i = 1; i < places.Count; i++)
        {
            rising &= places[i] > places[i - 1];
        }

        if (places.Count < 2 || places.Count != girths.Count || !rising || !girths.All(g => g > 0))
        {
            throw new ArgumentException("Girths need two marks or more, places that rise and girths above 0.", nameof(places));
        }

        (_places, _girths) = ([.. places], [.. girths]);
    }

    /// <summary>Places of the marks [m].</summary>
    public IReadOnlyList<double> Places => _places;

    /// <summary>Girth at a place; beyond the marks that of the last one [m].</summary>
    /// <param name="place">Place [m].</param>
    public double At(double place)
    {
        int i = Array.BinarySearch(_places, place);
        if (i >= 0)
        {
            return _girths[i];
        }

        i = ~i;
        if (i == 0 || i == _places.Length)
        {
            return _girths[i == 0 ? 0 : ^1];
        }

        double share = (place - _places[i - 1]) / (_places[i] - _places[i - 1]);
        return _girths[i - 1] + share * (_girths[i] - _girths[i - 1]);
    }

    /// <summary>Places where something may change between two others: both ends, the marks and evenly spaced places.</summary>
    /// <param name="from">First place [m].</param>
    /// <param name="to">Last place [m].</param>
    /// <param name="step">Spacing [m].</param>
    public IReadOnlyList<double> Grid(double from, double to, double step)
    {
        SortedSet<double> grid = [from, to];
        grid.UnionWith(_places.Where(p => p > from && p < to));
        int count = Math.Clamp((int)Math.Ceiling((to - from) / step), 1, 20_000);
        for (int i = 1; i < count; i++)
        {
            grid.Add(from + (to - from) * i / count);
        }

        return [.. grid];
    }
}
