using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Findings;

/// <summary>Reads which coordinate stands on its upper stop from the bits of a recorded state.</summary>
internal static class CoordinateStops
{
    /// <summary>Whether a coordinate stands on its upper stop; order φ, d, s, tilts, three joints a finger.</summary>
    /// <param name="row">Recorded state.</param>
    /// <param name="coordinate">Index of the coordinate.</param>
    public static bool OnUpper(double[] row, int coordinate) => ((long)row[TraceLayout.Stops] >> (2 * coordinate + 1) & 1) != 0;

    /// <summary>Index of a finger's joint among the coordinates.</summary>
    /// <param name="layout">Layout.</param>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="joint">0 MCP, 1 PIP, 2 DIP.</param>
    public static int Joint(TraceLayout layout, int finger, int joint) => 3 + layout.BarNames.Count + 3 * finger + joint;
}
