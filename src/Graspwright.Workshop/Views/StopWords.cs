using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Stops that act in a recorded state, in words.</summary>
public static class StopWords
{
    private static readonly string[] JointNames = ["MCP", "PIP", "DIP"];

    /// <summary>A sentence on the stops that act.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="layout">Layout of the row.</param>
    /// <param name="row">Recorded state.</param>
    public static string Sentence(DriveModel drive, TraceLayout layout, double[] row)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(row);
        var words = new List<string>();
        Pair(words, row, 0, "the crank rests on its open stop", "the crank is against its far stop");
        if (drive.Crank.Slot is not null)
        {
            Pair(words, row, 1, "the slot pin is at its near end", "the slot pin is at its far end");
        }

        Pair(words, row, 2, "the carriage rests on its open stop", "the carriage is at the end of its rail");
        for (int b = 0; b < layout.BarNames.Count; b++)
        {
            string bar = $"bar {layout.BarNames[b]} is against its tilt stop";
            Pair(words, row, 3 + b, bar, bar);
        }

        int joints = 3 + layout.BarNames.Count;
        string open = Joints(layout, row, joints, high: false), bent = Joints(layout, row, joints, high: true);
        if (open.Length > 0)
        {
            words.Add("on their open stops: " + open);
        }

        if (bent.Length > 0)
        {
            words.Add("bent to their stops: " + bent);
        }

        return words.Count == 0 ? "No stop acts." : "Stops acting: " + string.Join("; ", words) + ".";
    }

    private static string Joints(TraceLayout layout, double[] row, int first, bool high)
    {
        var fingers = new List<string>();
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            var names = Enumerable.Range(0, 3).Where(j => Acts(row, first + 3 * f + j, high)).Select(j => JointNames[j]).ToList();
            if (names.Count > 0)
            {
                fingers.Add(layout.FingerNames[f] + " " + string.Join(" ", names));
            }
        }

        return string.Join(", ", fingers);
    }

    private static void Pair(List<string> words, double[] row, int coordinate, string low, string high)
    {
        if (Acts(row, coordinate, high: false))
        {
            words.Add(low);
        }

        if (Acts(row, coordinate, high: true))
        {
            words.Add(high);
        }
    }

    /// <summary>Whether a stop acts on a coordinate of a recorded state. The bits are kept in a double, which holds whole numbers to 2^53 exactly.</summary>
    internal static bool Acts(double[] row, int coordinate, bool high) =>
        Math.Floor(row[TraceLayout.Stops] / Math.Pow(2, 2 * coordinate + (high ? 1 : 0))) % 2 == 1;
}
