namespace Graspwright.Signals.Sites;

/// <summary>A candidate pair of contacts on the form or the paper pattern.</summary>
/// <param name="Name">Its name.</param>
/// <param name="XMm">Centre of the pair [mm].</param>
/// <param name="YMm">Centre of the pair [mm].</param>
/// <param name="DirectionDegrees">Direction of the pair, along the fibre, from +x [deg].</param>
/// <param name="SpacingMm">Distance of its two contacts [mm].</param>
public sealed record Site(string Name, double XMm, double YMm, double DirectionDegrees, double SpacingMm)
{
    /// <summary>Distance between the centres of two pairs [mm].</summary>
    /// <param name="other">The other pair.</param>
    public double DistanceTo(Site other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return double.Hypot(XMm - other.XMm, YMm - other.YMm);
    }
}

/// <summary>What a site gives at each gesture: mean and scatter of the logarithm of its level.</summary>
/// <param name="Mean">Mean at each gesture, rest first.</param>
/// <param name="Deviation">Scatter within gestures, pooled; above 0.</param>
public sealed record SiteReading(double[] Mean, double Deviation)
{
    /// <summary>Squared distance of two gestures in scatters.</summary>
    /// <param name="first">One gesture.</param>
    /// <param name="second">The other.</param>
    public double Squared(int first, int second)
    {
        double d = (Mean[first] - Mean[second]) / Deviation;
        return d * d;
    }
}

/// <summary>A round place on the skin where no contact may sit.</summary>
/// <param name="Name">What is there.</param>
/// <param name="XMm">Centre [mm].</param>
/// <param name="YMm">Centre [mm].</param>
/// <param name="RadiusMm">Radius [mm].</param>
public sealed record SorePlace(string Name, double XMm, double YMm, double RadiusMm);

/// <summary>Limits of a choice.</summary>
/// <param name="Count">How many pairs.</param>
/// <param name="LeastDistanceMm">Least distance between the centres of two pairs [mm].</param>
/// <param name="Sore">Places to keep off: neither contact of a pair may lie in one.</param>
public sealed record SiteLimits(int Count, double LeastDistanceMm, IReadOnlyList<SorePlace> Sore);

/// <summary>A set of sites.</summary>
/// <param name="Sites">Their places in the list, rising.</param>
/// <param name="Separation">Distance in scatters of the two gestures that lie nearest.</param>
/// <param name="First">One of these two.</param>
/// <param name="Second">The other.</param>
/// <param name="Looked">Sets and part sets that were looked at.</param>
public sealed record SiteSet(IReadOnlyList<int> Sites, double Separation, int First, int Second, long Looked);
