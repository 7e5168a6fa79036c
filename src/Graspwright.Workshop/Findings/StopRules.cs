using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>Does a stop of crank, carriage or finger end the motion before the grip does?</summary>
public sealed class StopEarly() : Rule("stop_early")
{
    private const double WholeTurn = 1e-9;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        foreach (RunEvent e in reading.Run.Events)
        {
            if (e.Opening || e.Kind != EventKind.StopReached)
            {
                continue;
            }

            double[] row = reading.StateAt(e.ThetaRadians);
            if (e.Subject is "crank" or "carriage")
            {
                bool upper = CoordinateStops.OnUpper(row, e.Subject == "crank" ? 0 : 2);
                if (upper && reading.End[TraceLayout.Theta] > e.ThetaRadians + WholeTurn)
                {
                    yield return Early(reading, e, $"The {e.Subject} meets its stop at {Angles.Text(e.ThetaRadians)}; from there the wrist only stretches links.",
                        $"Move the {e.Subject}'s stop out, or lengthen the take-up arms so that the fingers need less of its travel.");
                }
            }
            else if (IsFreeFinger(reading, row, e, out int finger) && !Touches(reading, row, finger))
            {
                yield return Early(reading, e, $"The {e.Subject} finger meets its stop at {Angles.Text(e.ThetaRadians)} before it touches.",
                    $"Check where the object lies, or give the {e.Subject} finger more range or another take-up arm.");
            }
        }
    }

    private Finding Early(RunReading reading, RunEvent e, string reason, string change)
    {
        double at = Degrees(e.ThetaRadians), end = Degrees(reading.End[TraceLayout.Theta]);
        return new(Key, e.Subject, Verdict.Fails, reason, change) { Figure = at, Limit = end, Unit = "deg", Margin = end > 0 ? at / end - 1 : null };
    }

    private static bool IsFreeFinger(RunReading reading, double[] row, RunEvent e, out int finger)
    {
        TraceLayout layout = reading.Run.Layout;
        for (finger = 0; finger < layout.FingerNames.Count; finger++)
        {
            if (layout.FingerNames[finger] == e.Subject)
            {
                int joint = Math.Max(e.Part, 1) - 1;
                bool fused = reading.Drive.Fingers[finger].RangeRadians[joint] == 0;
                return !fused && row[layout.Locked(finger)] == 0 && CoordinateStops.OnUpper(row, CoordinateStops.Joint(layout, finger, joint));
            }
        }

        return false;
    }

    private static bool Touches(RunReading reading, double[] row, int finger)
    {
        TraceLayout layout = reading.Run.Layout;
        return row[layout.Contact(finger, 0)] > 0 || row[layout.Contact(finger, 1)] > 0 || row[layout.Contact(finger, 2)] > 0;
    }
}

/// <summary>Does a balance bar stand on its stop?</summary>
public sealed class BarOnStop() : Rule("bar_on_stop")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        List<BalanceBar> bars = [];
        Gather(reading.Drive.Tree, bars);
        for (int b = 0; b < bars.Count; b++)
        {
            double stop = bars[b].TiltStopRadians;
            if (stop <= 0)
            {
                continue;
            }

            double tilt = 0, at = 0;
            foreach (double[] row in reading.Run.Closing)
            {
                double here = Math.Abs(row[TraceLayout.Tilt(b)]);
                if (here > tilt)
                {
                    (tilt, at) = (here, row[TraceLayout.Theta]);
                }
            }

            bool reached = tilt >= stop * (1 - 1e-9);
            double margin = Below(Math.Min(tilt, stop), stop);
            string reason = reached
                ? $"Bar {bars[b].Name} stands on its stop from {Angles.Text(at)}: from there its two sides no longer share the pull."
                : $"Bar {bars[b].Name} tilts up to {Say(Degrees(tilt))}° of the {Say(Degrees(stop))}° to its stop.";
            Finding finding = Judge($"bar {bars[b].Name}", Degrees(tilt), Degrees(stop), "deg", margin, reason,
                "Let the bar tilt further, lengthen its arms, or pair fingers that touch at nearly the same time.");
            yield return reached ? finding with { Verdict = Verdict.Fails } : finding;
        }
    }

    private static void Gather(BalanceNode node, List<BalanceBar> bars)
    {
        if (node is BalanceBar bar)
        {
            bars.Add(bar);
            Gather(bar.First, bars);
            Gather(bar.Second, bars);
        }
    }
}
