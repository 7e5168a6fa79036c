using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>Does the hand open again?</summary>
public sealed class Reopens() : Rule("reopens")
{
    /// <summary>Joint angle that may be left [deg].</summary>
    public const double AllowedDegrees = 1;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        Reading left = new ReopeningLeft().Value(reading);
        if (reading.Options.Opening && left.Why is null)
        {
            yield return Judge("fingers", left.Value, AllowedDegrees, "deg", Below(left.Value, AllowedDegrees),
                left.Value < AllowedDegrees
                    ? $"Back at the start every free joint is within {Say(Math.Max(left.Value, 0.1))}° of open."
                    : $"Back at the start a joint still stands {Say(left.Value)}° from open: drag and friction hold it against its spring.",
                "Stiffer or more preloaded return springs open it; less drag on joints, crank and rail does so without costing grip.");
        }
    }
}

/// <summary>Does a finger roll off the object?</summary>
public sealed class RollsOff() : Rule("rolls_off")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        foreach (RunEvent e in reading.Run.Events)
        {
            if (e.Opening || e.Kind != EventKind.ContactLost || FingerOf(layout, e.Subject) is not { } finger || NearerTouches(reading, e, finger))
            {
                continue;
            }

            yield return new(Key, e.Subject, Verdict.Fails,
                $"The {e.Subject} finger rolls off: its contact nearest the knuckle lets go at {Angles.Text(e.ThetaRadians)} after pressing with up to {Say(e.Value)} N.",
                "Longer take-up arms at PIP and DIP against MCP, or a stiffer PIP spring, keep the near segment on the object.")
            {
                Figure = Degrees(e.ThetaRadians),
                Limit = Degrees(reading.End[TraceLayout.Theta]),
                Unit = "deg",
            };
        }
    }

    private static int? FingerOf(TraceLayout layout, string name)
    {
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            if (layout.FingerNames[f] == name)
            {
                return f;
            }
        }

        return null;
    }

    private static bool NearerTouches(RunReading reading, RunEvent e, int finger)
    {
        double[] row = reading.StateAt(e.ThetaRadians);
        for (int s = 0; s < e.Part - 1; s++)
        {
            if (row[reading.Run.Layout.Contact(finger, s)] > 0)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Do the fingers push the object out of the palm?</summary>
/// <remarks>The limit is a resultant of 0 along y; the margin is the resultant ÷ the grip force, as a limit of 0 divides nothing.</remarks>
public sealed class PushedOut() : Rule("pushed_out")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        double grip = reading.End[TraceLayout.Grip], y = reading.End[TraceLayout.ResultantY];
        if (reading.Held is Cylinder && grip > 0)
        {
            string outward = Fingers(reading, -1), inward = Fingers(reading, 1);
            string against = inward.Length > 0 ? $"; only {inward} press it in, from its far side" : "; no finger reaches round to its far side";
            yield return Judge("object", y, 0, "N", y / grip,
                y < 0
                    ? $"The fingers push the object out of the palm with {Say(-y)} N: {outward} press it away from the palm{against}. Thumb or friction must hold the {Say(-y)} N."
                    : $"The fingers press the object into the palm with {Say(y)} N: {inward} reach round it{(outward.Length > 0 ? $", while {outward} press it away from the palm" : "")}.",
                "Hold it nearer the wrist (a smaller station), so that the fingertips come round its far side, or let PIP and DIP bend more for each degree of MCP.");
        }
    }

    private static string Fingers(RunReading reading, int sense)
    {
        IReadOnlyList<string> names = reading.Run.Layout.FingerNames;
        double[] newtons = new double[names.Count];
        foreach (ContactTerms.Contact contact in ContactTerms.All(reading))
        {
            newtons[contact.Finger] += sense * contact.OnObject.Y;
        }

        int[] order = [.. Enumerable.Range(0, names.Count)];
        Array.Sort(order, (a, b) => newtons[b].CompareTo(newtons[a]));
        return string.Join(", ", order.Where(f => newtons[f] >= 0.05).Select(f => $"{names[f]} {Say(newtons[f])} N"));
    }
}

/// <summary>Does a lock carry more than it may?</summary>
public sealed class LockOverload() : Rule("lock_overload")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            double? limit = f < reading.LockLimits.Count ? reading.LockLimits[f] : null;
            if (limit is not > 0 || reading.End[layout.Locked(f)] == 0)
            {
                continue;
            }

            double load = 0;
            foreach (double[] row in reading.Run.Closing.Concat(reading.Run.Opening))
            {
                load = row[layout.Locked(f)] != 0 ? Math.Max(load, row[layout.FingerPull(f)]) : load;
            }

            yield return Judge($"lock of {layout.FingerNames[f]}", load, limit.Value, "N", Below(load, limit.Value),
                $"The lock of {layout.FingerNames[f]} stands against a pull of up to {Say(load)} N and may carry {Say(limit.Value)} N.",
                "Let the lock's pull go while it holds, or fit a stronger one; it must still let go by hand under full load.");
        }
    }
}

/// <summary>Could the path not be followed?</summary>
public sealed class PathLost() : Rule("path_not_followed")
{
    /// <inheritdoc/>
    public override bool ReadsLostRuns => true;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Run.Failure is { } failure)
        {
            string leg = failure.Opening ? "opening" : "closing";
            yield return new(Key, "path", Verdict.NotKnown,
                $"On {leg} the motion could not be followed past {Angles.Text(failure.ThetaRadians)}: {failure.Reason} (out of balance by {failure.Residual.ToString("G3", System.Globalization.CultureInfo.InvariantCulture)}). Nothing past it is claimed.",
                "Look for a stop, a slack cord or a dead centre near that angle; a small change of the hand usually frees the path.")
            {
                Figure = Degrees(failure.ThetaRadians),
                Unit = "deg",
            };
        }
    }
}
