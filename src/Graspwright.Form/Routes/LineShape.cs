using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>Lengths and bends of a line in space that is given by its corners.</summary>
public static class LineShape
{
    /// <summary>Length of a line [m].</summary>
    /// <param name="places">Its corners [m].</param>
    public static double Length(IReadOnlyList<Vector3D> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        double length = 0;
        for (int i = 1; i < places.Count; i++)
        {
            length += (places[i] - places[i - 1]).Length;
        }

        return length;
    }

    /// <summary>Places at equal steps along a line, both ends among them.</summary>
    /// <param name="places">Its corners [m].</param>
    /// <param name="step">The longest step, above 0 [m].</param>
    public static IReadOnlyList<Vector3D> Even(IReadOnlyList<Vector3D> places, double step)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(step, 0);
        double length = Length(places);
        int count = Math.Max(1, (int)Math.Ceiling(length / step - 1e-9)), at = 1;
        List<Vector3D> even = [places[0]];
        double done = 0;
        for (int i = 1; i < count; i++)
        {
            double want = length * i / count;
            while (at < places.Count - 1 && done + (places[at] - places[at - 1]).Length < want)
            {
                done += (places[at] - places[at - 1]).Length;
                at++;
            }

            double piece = (places[at] - places[at - 1]).Length;
            even.Add(places[at - 1] + (piece > 0 ? (want - done) / piece : 0) * (places[at] - places[at - 1]));
        }

        even.Add(places[^1]);
        return even;
    }

    /// <summary>The sharpest bend: the least circle through three places of a line that lie an arm apart along it.</summary>
    /// <param name="places">Its corners [m].</param>
    /// <param name="arm">The arm: how far a wire's own stiffness evens out a corner [m].</param>
    /// <returns>Radius and place; infinite = straight, or shorter than two arms [m].</returns>
    public static (double Radius, Vector3D Place) SharpestBend(IReadOnlyList<Vector3D> places, double arm)
    {
        const int parts = 5;
        IReadOnlyList<Vector3D> even = Even(places, arm / parts);
        (double Radius, Vector3D Place) least = (double.PositiveInfinity, even[0]);
        for (int i = parts; i + parts < even.Count; i++)
        {
            Vector3D a = even[i - parts], b = even[i], c = even[i + parts];
            double cross = (b - a).Cross(c - a).Length, radius = cross > 0 ? (b - a).Length * (c - b).Length * (c - a).Length / (2 * cross) : double.PositiveInfinity;
            least = radius < least.Radius ? (radius, b) : least;
        }

        return least;
    }
}
