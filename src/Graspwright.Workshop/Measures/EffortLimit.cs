using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Measures;

/// <summary>What the wrist may give at the end of closing.</summary>
internal static class EffortLimit
{
    /// <summary>Effort limit [N·m].</summary>
    public static double At(RunReading reading) => Fraction(reading) * Capacity(reading);

    /// <summary>Share of capacity that ends the run; 1 where the run had no effort limit.</summary>
    public static double Fraction(RunReading reading) => reading.Options.EffortFraction ?? 1;

    /// <summary>Capacity of the wearer's joint where it stands [N·m].</summary>
    public static double Capacity(RunReading reading) => Capacity(reading.Drive.Wrist, reading.End[TraceLayout.JointTravel]);

    /// <summary>Capacity at a travel of the wearer's joint [N·m].</summary>
    /// <param name="wrist">The wrist.</param>
    /// <param name="travel">Travel in the driving direction from the start posture [rad].</param>
    public static double Capacity(Wrist wrist, double travel)
    {
        double sense = wrist.Direction == DrivingDirection.Flexion ? 1 : -1;
        return wrist.Capacity.At(wrist.StartRadians + sense * travel);
    }
}
