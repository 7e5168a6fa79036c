using Graspwright.Form.Surface;

namespace Graspwright.Form.Reading;

/// <summary>A unit that a surface may be in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Metres">One of it [m].</param>
public sealed record LengthUnit(string Name, double Metres)
{
    /// <summary>Units that scanners write.</summary>
    public static IReadOnlyList<LengthUnit> All { get; } = [new("mm", 0.001), new("cm", 0.01), new("m", 1), new("in", 0.0254)];
}

/// <summary>Which unit a surface is in, by its size.</summary>
/// <param name="Unit">The likely unit; <see langword="null"/> = none makes it a limb.</param>
/// <param name="Extent">Longest side of its box, in its own unit.</param>
/// <param name="Others">Other units with which it would be a limb as well: the guess is doubtful.</param>
public sealed record UnitGuess(LengthUnit? Unit, double Extent, IReadOnlyList<LengthUnit> Others)
{
    /// <summary>Shortest stretch of limb that is taken for one [m]: a hand without fingers.</summary>
    public const double Shortest = 0.06;

    /// <summary>Longest [m]: a whole arm.</summary>
    public const double Longest = 0.8;

    /// <summary>Guesses.</summary>
    /// <param name="mesh">The surface in its own unit.</param>
    /// <param name="metres">Its kind of file says metres.</param>
    public static UnitGuess Of(Mesh mesh, bool metres)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        (Numerics.Vector3D low, Numerics.Vector3D high) = mesh.Box();
        double extent = Math.Max(high.X - low.X, Math.Max(high.Y - low.Y, high.Z - low.Z));
        LengthUnit[] fitting = [.. LengthUnit.All.Where(u => Fits(extent * u.Metres))];
        LengthUnit? standard = metres ? fitting.FirstOrDefault(u => u.Name == "m") : null;
        return standard is not null ? new(standard, extent, []) : new(fitting.FirstOrDefault(), extent, [.. fitting.Skip(1)]);
    }

    /// <summary>Whether a length may be that of a limb.</summary>
    /// <param name="length">The length [m].</param>
    public static bool Fits(double length) => length is >= Shortest and <= Longest;
}
