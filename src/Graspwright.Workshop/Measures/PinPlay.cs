using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Measures;

/// <summary>The play of every pin beside its load at the end of closing.</summary>
internal static class PinPlay
{
    private static readonly string[] Joints = ["mcp", "pip", "dip"];

    /// <summary>One pin.</summary>
    /// <param name="Name">Name.</param>
    /// <param name="Play">Diametral play [m].</param>
    /// <param name="Load">Load [N].</param>
    internal sealed record Pin(string Name, double Play, double Load);

    /// <summary>Every pin with play, in the order of the chain.</summary>
    /// <param name="reading">Run.</param>
    /// <param name="drive">The drive whose play counts: new or worn.</param>
    public static IEnumerable<Pin> All(RunReading reading, DriveModel drive)
    {
        double[] end = reading.End;
        TraceLayout layout = reading.Run.Layout;
        double pull = Math.Abs(end[TraceLayout.PullLink]), transfer = Math.Abs(end[TraceLayout.TransferLink]);
        List<Pin> pins =
        [
            new("anchor", drive.PullLink.AnchorPlay, pull),
            new("crank_input", drive.PullLink.CrankPlay, pull),
            new("fulcrum", drive.Crank.FulcrumPlay, end[TraceLayout.Fulcrum]),
            new("crank_output", drive.Crank.OutputPlay, transfer),
            new("carriage", drive.TransferLink.CarriagePlay, transfer),
        ];
        if (drive.Joint.HasGimbal)
        {
            pins.Add(new("gimbal", drive.Joint.GimbalPlay, pull));
        }

        int bar = 0;
        AddBars(drive.Tree, end, ref bar, pins);
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int j = 0; j < 3; j++)
            {
                pins.Add(new($"{layout.FingerNames[f]}_{Joints[j]}", drive.Fingers[f].Play[j], end[layout.Pin(f, j)]));
            }
        }

        return pins.Where(p => p.Play > 0 && p.Load > 0);
    }

    private static void AddBars(BalanceNode node, double[] end, ref int bar, List<Pin> pins)
    {
        if (node is BalanceBar here)
        {
            pins.Add(new($"bar_{here.Name}", here.Play, end[TraceLayout.Pivot(bar)]));
            bar++;
            AddBars(here.First, end, ref bar, pins);
            AddBars(here.Second, end, ref bar, pins);
        }
    }
}
