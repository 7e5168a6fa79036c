namespace Graspwright.Moulding.Copies;

/// <summary>How one copy differs from the one before it.</summary>
/// <param name="Name">Name of the copy.</param>
/// <param name="Coat">Distance by which its surface lies outside the one before it, coats and thickness [m]; below 0 = inside.</param>
/// <param name="CoatSpread">Half width of what is not known of it [m].</param>
/// <param name="Change">Relative growth on setting or cooling; below 0 = it shrinks.</param>
/// <param name="ChangeSpread">Half width of what is not known of it.</param>
public readonly record struct CopyStep(string Name, double Coat, double CoatSpread, double Change, double ChangeSpread);

/// <summary>A copy with its girth.</summary>
/// <param name="Name">Name of the copy.</param>
/// <param name="Girth">Girth [m].</param>
/// <param name="FromCoat">What coats and thickness add to the girth [m].</param>
/// <param name="FromChange">What setting or cooling adds [m].</param>
/// <param name="Spread">Half width of the girth from all steps so far, added by their squares [m].</param>
public readonly record struct CopyGirth(string Name, double Girth, double FromCoat, double FromChange, double Spread);

/// <summary>Girths along a chain of copies.</summary>
public static class CopyChain
{
    /// <summary>Follows a girth through the copies.</summary>
    /// <param name="girth">Girth of the limb [m], above 0.</param>
    /// <param name="steps">The copies, in order.</param>
    /// <remarks>A coat of t adds 2·π·t to the girth of any rounded section; growth multiplies it.</remarks>
    public static IReadOnlyList<CopyGirth> Follow(double girth, IReadOnlyList<CopyStep> steps)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(girth);
        ArgumentNullException.ThrowIfNull(steps);
        List<CopyGirth> found = [];
        double now = girth, variance = 0;
        foreach (CopyStep step in steps)
        {
            double coat = 2 * Math.PI * step.Coat, change = (now + coat) * step.Change;
            variance += Math.Pow(2 * Math.PI * step.CoatSpread, 2) + Math.Pow((now + coat) * step.ChangeSpread, 2);
            now += coat + change;
            found.Add(new(step.Name, now, coat, change, Math.Sqrt(variance)));
        }

        return found;
    }

    /// <summary>How deep to take plaster off, all round, so that the last girth becomes a wanted one.</summary>
    /// <param name="girth">Girth that the chain ends with [m].</param>
    /// <param name="wanted">Girth wanted [m].</param>
    /// <returns>Depth [m]; below 0 = build up.</returns>
    public static double TakeOff(double girth, double wanted) => (girth - wanted) / (2 * Math.PI);
}
