namespace Graspwright.Moulding.ComingOff;

/// <summary>A patch of the limb that a cut keeps away from.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">From this place along the limb [m].</param>
/// <param name="To">To this place [m].</param>
/// <param name="AngleFrom">From this angle round the limb [rad].</param>
/// <param name="AngleTo">To this angle, going on in the same sense [rad].</param>
public readonly record struct Patch(string Name, double From, double To, double AngleFrom, double AngleTo);

/// <summary>Where round the limb a cut lies best.</summary>
/// <param name="Angle">Angle [rad], 0 to 2·π.</param>
/// <param name="Clearance">Distance on the surface to the nearest patch [m]; infinite without patches.</param>
/// <param name="Nearest">Name of that patch; empty without one.</param>
public readonly record struct CutLine(double Angle, double Clearance, string Nearest);

/// <summary>Finds the line for a cut.</summary>
public static class Patches
{
    private const int Angles = 360;

    /// <summary>The angle at which a cut keeps furthest from every patch.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="limb">Girths of the limb.</param>
    /// <param name="patches">The patches.</param>
    public static CutLine Best(Cut cut, Girths limb, IReadOnlyList<Patch> patches)
    {
        ArgumentNullException.ThrowIfNull(limb);
        ArgumentNullException.ThrowIfNull(patches);
        CutLine best = new(0, double.NegativeInfinity, "");
        for (int i = 0; i < Angles; i++)
        {
            CutLine here = At(i * 2 * Math.PI / Angles, cut, limb, patches);
            if (here.Clearance > best.Clearance)
            {
                best = here;
            }
        }

        return best;
    }

    /// <summary>Clearance of a cut at one angle.</summary>
    /// <param name="angle">Angle [rad].</param>
    /// <param name="cut">The cut.</param>
    /// <param name="limb">Girths of the limb.</param>
    /// <param name="patches">The patches.</param>
    public static CutLine At(double angle, Cut cut, Girths limb, IReadOnlyList<Patch> patches)
    {
        ArgumentNullException.ThrowIfNull(limb);
        ArgumentNullException.ThrowIfNull(patches);
        double low = Math.Min(cut.From, cut.To), high = Math.Max(cut.From, cut.To), clearance = double.PositiveInfinity;
        string nearest = "";
        foreach (Patch patch in patches)
        {
            double along = Math.Max(0, Math.Max(patch.From - high, low - patch.To));
            double place = Math.Clamp((patch.From + patch.To) / 2, low, high);
            double round = limb.At(place) * Off(angle, patch) / (2 * Math.PI), distance = double.Hypot(along, round);
            if (distance < clearance)
            {
                (clearance, nearest) = (distance, patch.Name);
            }
        }

        return new(angle, clearance, nearest);
    }

    // Angle between a line and the nearer side of a patch, 0 inside it.
    private static double Off(double angle, Patch patch)
    {
        double width = Turn(patch.AngleTo - patch.AngleFrom), into = Turn(angle - patch.AngleFrom);
        return into <= width ? 0 : Math.Min(into - width, 2 * Math.PI - into);
    }

    private static double Turn(double angle)
    {
        double turned = Math.IEEERemainder(angle, 2 * Math.PI);
        return turned < 0 ? turned + 2 * Math.PI : turned;
    }
}
