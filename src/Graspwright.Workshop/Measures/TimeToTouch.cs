using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Time from the open hand to the first touch at the wearer's angular speed, give included.</summary>
public sealed class TimeToTouch() : Measure("time_to_touch", "time to the first touch", "s", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        if (reading.AngularSpeed is not > 0)
        {
            return Reading.None("the wrist's angular speed is not given");
        }

        return reading.Closing(EventKind.Touch) is { } touch
            ? reading.StateAt(touch.ThetaRadians)[TraceLayout.JointTravel] / reading.AngularSpeed.Value
            : Reading.None("nothing touched");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        double travel = reading.StateAt(reading.Closing(EventKind.Touch)!.ThetaRadians)[TraceLayout.JointTravel];
        string joint = terms.Input("joint_travel_at_touch", travel * Angles.DegreesPerRadian, "deg");
        string speed = terms.Input("angular_speed", reading.AngularSpeed!.Value * Angles.DegreesPerRadian, "deg/s");
        return terms.Working($"{joint}/{speed}", Physics);
    }
}
