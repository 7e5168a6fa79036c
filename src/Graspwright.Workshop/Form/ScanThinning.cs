using Graspwright.Form.Repair;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>Thins scans of many triangles, and tells it among the repairs.</summary>
internal static class ScanThinning
{
    private const int Many = 150_000; // more than a limb needs: 0.8 mm from point to point
    private const double Usual = 0.05e-3, LongestEdge = 0.004; // a hollow or a drawn line between points farther apart would be missed
    private const double BetweenWords = 0.1;

    /// <summary>Thins where it is asked for, or where the scan has many triangles.</summary>
    /// <param name="repaired">The repaired scan.</param>
    /// <param name="thin">How far it may stray; 0 = not at all, <see langword="null"/> = left to its size [m].</param>
    /// <param name="say">Told how far it is.</param>
    /// <param name="stop">Stops it.</param>
    public static Repaired Of(Repaired repaired, double? thin, Action<string>? say, CancellationToken stop)
    {
        int before = repaired.Mesh.FaceCount;
        double most = thin ?? (before > Many ? Usual : 0);
        if (most <= 0)
        {
            return repaired;
        }

        double said = -1;
        Thinned? thinned = Thinning.Of(repaired.Sides, most, LongestEdge, share =>
        {
            // a round that begins anew is told from its start
            if (share < said || share >= said + BetweenWords)
            {
                said = share;
                say?.Invoke($"Thinning the scan of {before} triangles: {Number(100 * share, 0)} % gone");
            }
        }, stop);
        if (thinned is null)
        {
            return repaired with { Leftovers = [.. repaired.Leftovers, new("triangles not thinned: the scan cuts itself in too many places, or would stray farther than thin allows", before, repaired.Mesh.At(0))] };
        }

        string volume = repaired.Closed ? $", volume {Sign(1e6 * thinned.VolumeChange)} ml" : "";
        string own = thinned.OwnCrossings > 0 ? $"; {thinned.OwnCrossings} pairs that cut each other in the scan left as they were" : "";
        string words = $"triangles thinned out, {thinned.Sides.Mesh.FaceCount} left: at most {Number(1000 * thinned.Deviation, 3)} mm from the scan by sampling both ways, {Number(1000 * most, 3)} mm allowed (area {Sign(1e4 * thinned.AreaChange)} cm²{volume}; no triangles cut each other anew{own})";
        return repaired with { Sides = thinned.Sides, Mends = [.. repaired.Mends, new(words, before - thinned.Sides.Mesh.FaceCount, thinned.Place)] };
    }

    private static string Sign(double value) => (value < 0 ? "−" : "+") + Number(Math.Abs(value), 2);
}
