namespace Graspwright.Drawing.Points;

/// <summary>A place with a name: a fulcrum, pin, anchor or knuckle.</summary>
/// <param name="Name">Name, as <see cref="IsName"/> allows.</param>
/// <param name="XMm">x [mm], distal from the wrist axis.</param>
/// <param name="YMm">y [mm], dorsal.</param>
public sealed record NamedPoint(string Name, double XMm, double YMm)
{
    /// <summary>Greatest coordinate that is believed [mm].</summary>
    public const double FarthestMm = 10_000;

    /// <summary>What a name may be, in words.</summary>
    public const string NameRule = "1 to 80 letters, digits, points, underscores, hyphens, spaces or square brackets, a letter first, no space last";

    /// <summary>Whether a text can be the name of a point.</summary>
    /// <param name="text">The text.</param>
    public static bool IsName(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length is > 0 and <= 80 && char.IsLetter(text[0]) && text[^1] != ' '
            && text.All(c => char.IsLetterOrDigit(c) || c is '.' or '_' or '-' or ' ' or '[' or ']');
    }

    internal static void Check(IReadOnlyList<NamedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (NamedPoint p in points)
        {
            if (!IsName(p.Name) || !names.Add(p.Name) || !(Math.Abs(p.XMm) <= FarthestMm && Math.Abs(p.YMm) <= FarthestMm))
            {
                throw new ArgumentException($"The point '{p.Name}' can't be written: its name must be unlike the others and be {NameRule}, its coordinates within {FarthestMm} mm.", nameof(points));
            }
        }
    }
}
