namespace Graspwright.Signals.Sites;

/// <summary>How far a pair may slip in a direction.</summary>
/// <param name="DirectionDegrees">Direction from +x [deg].</param>
/// <param name="SlipMm">Distance until the nearest two gestures come under the limit, or to the edge of what was mapped [mm].</param>
/// <param name="EndsAtMap">Whether the edge of the map ended it: it may slip at least so far.</param>
public readonly record struct Slip(double DirectionDegrees, double SlipMm, bool EndsAtMap);

/// <summary>Placement windows: how far each pair may slip while the others stay.</summary>
public static class PlacementWindows
{
    private const double Step = 0.25, Farthest = 60, Fine = 1e-3;

    /// <summary>Window of one pair of a set.</summary>
    /// <param name="field">What pairs give between the mapped places.</param>
    /// <param name="chosen">The set.</param>
    /// <param name="readings">Readings of the set, in the same order.</param>
    /// <param name="which">Which of the set slips.</param>
    /// <param name="limit">Least separation, in scatters.</param>
    /// <param name="directions">How many directions round.</param>
    public static IReadOnlyList<Slip> Of(SiteField field, IReadOnlyList<Site> chosen, IReadOnlyList<SiteReading> readings, int which, double limit, int directions = 24)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(chosen);
        ArgumentNullException.ThrowIfNull(readings);
        SiteReading[] set = [.. readings];
        Site site = chosen[which];
        double At(double x, double y)
        {
            set[which] = field.At(x, y);
            return SiteSearch.Of(set).Separation;
        }

        List<Slip> slips = [];
        for (int d = 0; d < directions; d++)
        {
            double degrees = 360.0 * d / directions;
            (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
            double mm = 0;
            bool edge = false;
            while (mm < Farthest && At(site.XMm + mm * cos, site.YMm + mm * sin) >= limit && !edge)
            {
                mm += Step;
                edge = !field.Knows(site.XMm + mm * cos, site.YMm + mm * sin);
            }

            if (edge)
            {
                slips.Add(new(degrees, mm - Step, true));
                continue;
            }

            double low = Math.Max(0, mm - Step), high = mm;
            while (high - low > Fine)
            {
                double middle = 0.5 * (low + high);
                (low, high) = At(site.XMm + middle * cos, site.YMm + middle * sin) >= limit ? (middle, high) : (low, middle);
            }

            slips.Add(new(degrees, low, mm >= Farthest));
        }

        return slips;
    }
}
