using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>Is there travel left when the fingers are on the object?</summary>
public sealed class TravelUsedUp() : Rule("travel_used_up")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Held is NoObject)
        {
            yield break;
        }

        double travel = Degrees(reading.Drive.Wrist.TravelRadians);
        if (reading.Closing(EventKind.AllTouch) is { } touch)
        {
            double used = Degrees(reading.StateAt(touch.ThetaRadians)[TraceLayout.JointTravel]);
            yield return Judge("wrist", used, travel, "deg", Below(used, travel),
                $"The free fingers are all on the object after {Say(used)}° of the wrist's {Say(travel)}°.",
                "To touch earlier, lengthen the crank's output arm or shorten the take-up arms at the knuckles.");
        }
        else if (reading.Run.End == RunEnd.Travel)
        {
            yield return new(Key, "wrist", Verdict.Fails,
                $"All {Say(travel)}° of wrist travel are used up before every free finger is on the object.",
                "Lengthen the crank's output arm, shorten the take-up arms at the knuckles, or start from a wrist bent further back.")
            {
                Figure = Degrees(reading.End[TraceLayout.JointTravel]),
                Limit = travel,
                Unit = "deg",
            };
        }
    }
}

/// <summary>Is there effort left when the fingers are on the object?</summary>
public sealed class EffortUsedUp() : Rule("effort_limit")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Held is NoObject || reading.Options.EffortFraction is null)
        {
            yield break;
        }

        if (reading.Closing(EventKind.AllTouch) is { } touch)
        {
            double used = 100 * reading.StateAt(touch.ThetaRadians)[TraceLayout.EffortShare];
            yield return Judge("wrist", used, 100, "%", Below(used, 100),
                $"{Say(used, 0)} % of this effort goes into bringing the fingers on to the object; the rest grips.",
                "Softer return springs, less drag and smaller pins leave more of it for the grip.");
        }
        else if (reading.Run.End == RunEnd.Effort)
        {
            yield return new(Key, "wrist", Verdict.Fails,
                $"The effort limit is met at {Angles.Text(reading.End[TraceLayout.Theta])}, before every free finger is on the object.",
                "Ease the return springs and the drag, or shorten the crank's output arm for force at the price of travel.")
            {
                Figure = 100 * reading.End[TraceLayout.EffortShare],
                Limit = 100,
                Unit = "%",
            };
        }
    }
}

/// <summary>How much of the travel goes into cuff, flesh and shell.</summary>
public sealed class LostToGive() : Rule("lost_to_give")
{
    /// <summary>Share of the travel that give may take: common practice, no source.</summary>
    public const double Allowed = 0.20;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        double lost = Degrees(reading.End[TraceLayout.JointTravel] - reading.End[TraceLayout.Theta]);
        double travel = Degrees(reading.Drive.Wrist.TravelRadians), limit = Allowed * travel;
        if (lost > 0)
        {
            yield return Judge("cuff and shell", lost, limit, "deg", Below(lost, limit),
                $"Of your {Say(travel)}°, {Say(lost)}° go into flesh, cuff and shell (a fifth of the travel is taken as the limit: common practice, no source).",
                "A longer, closer cuff or a stiffer shell brings degrees back.");
        }
    }
}

/// <summary>How much of the travel goes into play at a reversal.</summary>
public sealed class LostToPlay() : Rule("lost_to_play")
{
    /// <summary>Degrees that play may take at a reversal [deg]: common practice, no source.</summary>
    public const double AllowedDegrees = 2;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        foreach (bool worn in (bool[])[false, true])
        {
            Reading dead = new DeadTravel(worn).Value(reading);
            if (dead.Why is null && dead.Value > 0)
            {
                PinPlay.Pin greatest = PinPlay.All(reading, worn ? reading.Worn! : reading.Drive).MaxBy(p => p.Play * p.Load)!;
                string name = greatest.Name.Replace('_', ' ');
                yield return Judge(worn ? "worn pins" : "new pins", dead.Value, AllowedDegrees, "deg", Below(dead.Value, AllowedDegrees),
                    $"With {(worn ? "worn" : "new")} pins up to {Say(dead.Value)}° of wrist go into play when the motion turns round; the {name} pin takes most (2° taken as the limit: common practice, no source).",
                    $"Ream and bush the {name} pin first.");
            }
        }
    }
}

/// <summary>Does the object touch nothing at all?</summary>
public sealed class NoTouch() : Rule("no_touch")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Held is not NoObject && reading.Closing(EventKind.Touch) is null)
        {
            yield return new(Key, "object", Verdict.Fails,
                "No finger touches the object.",
                "Check where the object is held; if that is right, the fingers need more travel or a smaller tilt of the bars.");
        }
    }
}
