using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>How far a place is from the outside of a sheet on a form: below 0 under it, above 0 beyond it [m].</summary>
/// <remarks>
/// The outside of a sheet is the rim of all balls that stand on the form, each as large as the sheet is thick there. With one thickness t that is the distance less t;
/// with several it is the least of those of the parts. No two places differ by more than the way between them (Lipschitz constant 1), which is what the search rests on.
/// </remarks>
public sealed class OffsetField
{
    private readonly Nearest _whole;
    private readonly (Nearest Tree, double Distance)[] _parts;
    private readonly double _least;

    /// <summary>One distance everywhere.</summary>
    /// <param name="form">The closed form.</param>
    /// <param name="distance">The distance, above 0 outward [m].</param>
    public OffsetField(Nearest form, double distance)
    {
        ArgumentNullException.ThrowIfNull(form);
        (_whole, _parts, _least) = (form, [(form, distance)], distance);
    }

    /// <summary>A distance for each triangle.</summary>
    /// <param name="form">The closed form.</param>
    /// <param name="distances">Distance of each of its triangles, all above 0 [m].</param>
    /// <exception cref="ArgumentException">A distance is not above 0, or they are not as many as the triangles.</exception>
    public OffsetField(Nearest form, double[] distances)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(distances);
        if (distances.Length != form.Mesh.FaceCount || Array.Exists(distances, d => !(d > 0)))
        {
            throw new ArgumentException("One distance above 0 is needed for each triangle.", nameof(distances));
        }

        double[] classes = [.. distances.Distinct().Order()];
        _whole = form;
        _least = classes[0];
        _parts = classes.Length == 1
            ? [(form, classes[0])]
            : [.. classes.Select(c => (new Nearest(Neighbourhood.Of(form.Mesh.Keep(f => distances[f] == c).Part)), c))];
    }

    /// <summary>The form.</summary>
    public Mesh Form => _whole.Mesh;

    /// <summary>The greatest distance [m].</summary>
    public double Greatest => _parts[^1].Distance;

    /// <summary>How much it may jump where the form itself is passed, inside the sheet [m].</summary>
    public double Step => Greatest - _least;

    /// <summary>How far a place is from the outside.</summary>
    /// <param name="p">The place [m].</param>
    /// <param name="within">Places farther from it than this need not be told apart [m].</param>
    /// <returns>Its distance, infinite = farther than asked; and the way straight away from the form.</returns>
    public (double Miss, Vector3D Out) At(Vector3D p, double within = double.PositiveInfinity)
    {
        double reach = within * (1 + 1e-9) + 1e-12;
        if (_parts.Length == 1)
        {
            (Nearest tree, double distance) = _parts[0];
            Foot foot = tree.To(p, Math.Abs(distance) + reach);
            return foot.Face < 0 ? (double.PositiveInfinity, default) : (foot.Distance - distance, Away(p, foot));
        }

        Foot own = _whole.To(p, Greatest + reach);
        if (own.Face >= 0 && own.Distance < 0)
        {
            return (own.Distance - _least, Away(p, own));
        }

        (double Miss, Vector3D Out) best = (double.PositiveInfinity, default);
        foreach ((Nearest tree, double distance) in _parts)
        {
            Foot foot = tree.To(p, Math.Min(distance + reach, distance + best.Miss));
            if (foot.Face >= 0)
            {
                best = (Math.Abs(foot.Distance) - distance, 1 / Math.Abs(foot.Distance) * (p - foot.Place));
            }
        }

        return best;
    }

    private static Vector3D Away(Vector3D p, Foot foot) => foot.Distance == 0 ? default : 1 / foot.Distance * (p - foot.Place);
}
