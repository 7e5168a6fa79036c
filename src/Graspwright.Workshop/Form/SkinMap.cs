using Graspwright.Form.Region;
using Graspwright.Hand;

namespace Graspwright.Workshop.Form;

/// <summary>Patches, edges and openings of a hand file as lines on the form.</summary>
public static class SkinMap
{
    private const int AlongBox = 12, Looks = 24;
    private const double Step = 0.001;

    /// <summary>Outline of a patch.</summary>
    /// <param name="frame">Frame of the form.</param>
    /// <param name="patch">The patch, drawn freely or between places and angles.</param>
    public static DrawnLoop Outline(LimbFrame frame, LimbPatch patch)
    {
        ArgumentNullException.ThrowIfNull(patch);
        if (patch.Outline.Count > 0)
        {
            return Line(frame, patch.Outline);
        }

        double width = LimbFrame.Turn(patch.AngleToRadians - patch.AngleFromRadians);
        double[] angles = [.. Enumerable.Range(0, AlongBox + 1).Select(i => patch.AngleFromRadians + width * i / AlongBox)];
        return new(frame, [.. angles.Select(a => (patch.From, a)), .. angles.Reverse().Select(a => (patch.To, a))]);
    }

    /// <summary>A drawn line.</summary>
    /// <param name="frame">Frame of the form.</param>
    /// <param name="corners">Its corners.</param>
    public static DrawnLoop Line(LimbFrame frame, IReadOnlyList<LimbCorner> corners) => new(frame, [.. corners.Select(c => (c.Place, c.AngleRadians))]);

    /// <summary>How far a point lies beyond the edge toward the elbow, below 0 outside the liner [m].</summary>
    internal static Func<Numerics.Vector3D, double> Near(LimbFrame frame, LimbForm limb) => Edge(frame, limb.NearEdge, limb.NearLine);

    /// <summary>How far a point lies beyond the edge toward the fingertips, below 0 on the liner's side [m].</summary>
    internal static Func<Numerics.Vector3D, double> Far(LimbFrame frame, LimbForm limb) => Edge(frame, limb.FarEdge, limb.FarLine);

    /// <summary>A place within a patch, well away from its outline.</summary>
    internal static (double Place, double Angle) Middle(LimbFrame frame, LimbPatch patch)
    {
        double width = LimbFrame.Turn(patch.AngleToRadians - patch.AngleFromRadians);
        (double Place, double Angle) At(int i, int j) => (patch.From + (patch.To - patch.From) * i / Looks, patch.AngleFromRadians + width * j / Looks);
        if (patch.Outline.Count == 0)
        {
            return At(Looks / 2, Looks / 2);
        }

        DrawnLoop outline = Outline(frame, patch);
        return (from i in Enumerable.Range(0, Looks + 1) from j in Enumerable.Range(0, Looks + 1) select At(i, j)).MinBy(p => outline.At(p.Place, p.Angle));
    }

    /// <summary>Whether a line along the limb at an angle runs over a patch.</summary>
    internal static bool Crosses(DrawnLoop patch, double angle, double from, double to)
    {
        for (double place = from; place <= to; place += Step)
        {
            if (patch.At(place, angle) < 0)
            {
                return true;
            }
        }

        return false;
    }

    private static Func<Numerics.Vector3D, double> Edge(LimbFrame frame, double plane, IReadOnlyList<LimbCorner> line) =>
        line.Count == 0 ? p => p.Z - plane : Line(frame, line).At;
}
