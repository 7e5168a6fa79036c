using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>Does a cord hang slack while the hand closes?</summary>
public sealed class CordSlack() : Rule("cord_slack")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        foreach (string subject in Subjects(reading))
        {
            double? from = null;
            double slack = 0;
            foreach (RunEvent e in reading.Run.Events)
            {
                if (e.Opening || e.Subject != subject)
                {
                    continue;
                }

                if (e.Kind == EventKind.Slack)
                {
                    from = e.ThetaRadians;
                }
                else if (e.Kind == EventKind.Taut)
                {
                    slack += e.ThetaRadians - (from ?? 0);
                    from = null;
                }
            }

            bool atEnd = from is not null;
            slack += atEnd ? reading.End[TraceLayout.Theta] - from!.Value : 0;
            yield return new(Key, subject, atEnd ? Verdict.Fails : Verdict.Tight,
                atEnd
                    ? $"The cord of {subject} hangs slack from {Angles.Text(from!.Value)} to the end of closing: it pulls nothing."
                    : $"The cord of {subject} hangs slack for {Angles.Text(slack)} of the closing.",
                "String the cord shorter, or stop the bar that lets it out earlier.")
            {
                Figure = Degrees(slack),
                Unit = "deg",
            };
        }
    }

    private static List<string> Subjects(RunReading reading)
    {
        List<string> subjects = [];
        foreach (RunEvent e in reading.Run.Events)
        {
            if (!e.Opening && e.Kind is EventKind.Slack or EventKind.Taut && !subjects.Contains(e.Subject))
            {
                subjects.Add(e.Subject);
            }
        }

        return subjects;
    }
}

/// <summary>Does the carriage jam on its rail?</summary>
/// <remarks>A guide of length L with its load e off its line binds when e ÷ L passes 1/(2μ).</remarks>
public sealed class CarriageJam() : Rule("carriage_jam")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        double friction = reading.Drive.Friction.Rail;
        if (reading.Drive.Rail.GuideLength is not { } length)
        {
            yield return new(Key, "carriage", Verdict.NotKnown,
                "The length of the carriage's guide is not given, so jamming cannot be judged.",
                "Measure the guide's length and how far its loads lie off its line, and enter both.");
        }
        else if (friction > 0)
        {
            double ratio = reading.Drive.Rail.LoadOffset.Length / length, limit = 1 / (2 * friction);
            yield return Judge("carriage", ratio, limit, "", Below(ratio, limit),
                $"The carriage's load lies {Say(ratio, 2)} guide lengths off its line; it jams from {Say(limit, 2)}.",
                "Lengthen the guide, bring the transfer link closer to its line, or make the rail slicker.");
        }
    }
}

/// <summary>Does the pull link pass through a dead centre?</summary>
public sealed class DeadCentre() : Rule("dead_centre")
{
    /// <inheritdoc/>
    public override bool ReadsLostRuns => true;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Closing(EventKind.DeadCentre) is { } dead)
        {
            yield return new(Key, dead.Subject, Verdict.Fails,
                $"At {Angles.Text(dead.ThetaRadians)} the pull link's line passes through the fulcrum or the wrist's axis: the crank no longer turns on.",
                "Move the fulcrum or the anchor so that the line stays clear of both over the whole travel.")
            {
                Figure = Degrees(dead.ThetaRadians),
                Limit = Degrees(reading.Drive.Wrist.TravelRadians),
                Unit = "deg",
                Margin = dead.ThetaRadians / reading.Drive.Wrist.TravelRadians - 1,
            };
        }
    }
}

/// <summary>Does the force of the pull link go into wrist and skin?</summary>
public sealed class WristReaction() : Rule("wrist_reaction")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        double force = Math.Abs(reading.End[TraceLayout.PullLink]);
        if (!reading.Drive.Joint.HasGimbal && force > 0)
        {
            yield return new(Key, "wrist", Verdict.NotKnown,
                $"No gimbal closes the force loop, so the pull link's {Say(force, 0)} N press the hand on to the forearm through wrist and skin; what yours bear is not known here.",
                "A pin on the wrist axis between cuff and hand shell carries this force instead.")
            {
                Figure = force,
                Unit = "N",
            };
        }
    }
}
