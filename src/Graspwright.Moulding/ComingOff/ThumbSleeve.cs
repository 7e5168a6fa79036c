namespace Graspwright.Moulding.ComingOff;

/// <summary>The sleeve over a thumb that stands away from the line in which the tube is drawn off.</summary>
/// <param name="Root">Girth of the sleeve at its root, unstretched [m].</param>
/// <param name="Largest">Largest girth beyond the root [m].</param>
/// <param name="Length">Length covered [m].</param>
/// <param name="Angle">Angle of the thumb away from the pull [rad].</param>
/// <remarks>
/// Drawn off along the arm, the root of the sleeve has to let through the thumb and the distance by which its tip stands
/// aside, L·sin α: at most the girth and twice that distance. Flesh and a thumb that folds in make it easier.
/// </remarks>
public readonly record struct ThumbSleeve(double Root, double Largest, double Length, double Angle)
{
    /// <summary>Elongation at the root.</summary>
    public double Stretch => Math.Max(0, (Math.Max(Root, Largest) + 2 * Length * Math.Sin(Angle)) / Root - 1);

    /// <summary>Length of a cut from the open end of the sleeve that brings it down to an elongation [m].</summary>
    /// <param name="allowed">Elongation allowed.</param>
    public double Cut(double allowed)
    {
        if (Stretch <= allowed)
        {
            return 0;
        }

        double left = ((1 + allowed) * Root - Math.Max(Root, Largest)) / (2 * Math.Sin(Angle));
        return Math.Clamp(Length - left, 0, Length);
    }
}
