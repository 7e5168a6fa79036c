using System.Globalization;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Thumb;

/// <summary>Which fingertips does the wearer's own thumb meet, and how hard do they press on it?</summary>
public static class Thumbing
{
    internal const double Meets = 0.0005; // metres: as near as a pad is soft
    private const double OverTheBack = 120; // degrees off face from which a pad lies on a finger's back
    private const double Near = 0.010, OffFace = 45; // metres a thumb can be moved by will, degrees a pad rolls: common practice, no source

    /// <summary>A posture of the thumb with what the fingers do there.</summary>
    private sealed record Met(Hand.ThumbPosture Posture, IReadOnlyList<FingertipOnThumb> Tips, IReadOnlyList<(Effort Effort, double Bare, double Plate, string? Why)> Presses);

    /// <summary>Answers the question.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of the hand file, for messages.</param>
    /// <returns>The answer, or bad input.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Answer(Hand.HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (hand.Thumb is not { Postures.Count: > 0 } thumb)
        {
            return (null, [new(file, 0, 0, "thumb.postures", "no posture of the thumb is given", "at least one section [thumb.postures.NAME]", "Measure where the pad lies in each posture, and the far end of a straw held on it.")]);
        }

        try
        {
            DriveModel drive = DriveMapping.ToDrive(hand);
            RunResult free = ClosingRun.Solve(drive, HeldObject.None, new() { EffortFraction = null, Opening = false });
            Met[] met = [.. thumb.Postures.Select(p => Meet(hand, drive, free, p))];
            return (Compose(hand, thumb, drive, met), []);
        }
        catch (DriveException fault)
        {
            return (null, [Faults.OfHand(file, fault)]);
        }
    }

    /// <summary>How the fingertips come to the thumb's pad in each posture while the hand closes on nothing; empty without postures.</summary>
    /// <param name="hand">The hand.</param>
    /// <exception cref="DriveException">The hand cannot be put together.</exception>
    public static IReadOnlyList<ThumbMeeting> Meetings(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (hand.Thumb is not { Postures.Count: > 0 } thumb)
        {
            return [];
        }

        DriveModel drive = DriveMapping.ToDrive(hand);
        RunResult free = ClosingRun.Solve(drive, HeldObject.None, new() { EffortFraction = null, Opening = false });
        return [.. thumb.Postures.Select(p => new ThumbMeeting(p, drive, free, ThumbReach.Nearest(drive, free.Layout, free.Closing, Space(p.Pad), (Space(p.LooksAt) - Space(p.Pad)).Unit)))];
    }

    private static Met Meet(Hand.HandModel hand, DriveModel drive, RunResult free, Hand.ThumbPosture posture)
    {
        Vector3D pad = Space(posture.Pad), looks = (Space(posture.LooksAt) - pad).Unit;
        IReadOnlyList<FingertipOnThumb> tips = ThumbReach.Nearest(drive, free.Layout, free.Closing, pad, looks);
        return new(posture, tips, [.. Efforts.Both.Select(e => Press(hand, drive, pad, looks, tips, e))]);
    }

    /// <summary>Force on the pad: of the fingertips that meet it, and of all fingers where a plate lies on it.</summary>
    private static (Effort Effort, double Bare, double Plate, string? Why) Press(Hand.HandModel hand, DriveModel drive, Vector3D pad, Vector3D looks, IReadOnlyList<FingertipOnThumb> tips, Effort effort)
    {
        const double acrossAll = 0.5;
        if (looks.InPlane.Length < acrossAll)
        {
            return (effort, double.NaN, double.NaN, "it looks across the hand, where the drive does not press");
        }

        Face face = new(pad.InPlane, Math.Atan2(looks.Y, looks.X));
        try
        {
            RunResult run = ClosingRun.Solve(drive, face, new() { EffortFraction = effort.Share(hand.Wrist), Opening = false });
            if (run.Failure is { } failure)
            {
                return (effort, double.NaN, double.NaN, $"the closing could not be followed past {Angles.Text(failure.ThetaRadians)}");
            }

            double bare = 0;
            foreach (FingertipOnThumb tip in tips.Where(t => t.Gap <= Meets))
            {
                for (int s = 0; s < 3; s++)
                {
                    bare += Math.Cos(drive.Fingers[tip.Finger].SplayRadians) * run.AtEnd[run.Layout.Contact(tip.Finger, s)];
                }
            }

            return (effort, bare, run.AtEnd[TraceLayout.Grip], null);
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return (effort, double.NaN, double.NaN, $"the {fault.Subject} finger already lies on it with the hand open");
        }
    }

    private static Answer Compose(Hand.HandModel hand, Hand.Thumb thumb, DriveModel drive, Met[] met) => new()
    {
        Verb = "thumb",
        Hand = hand.Name,
        Sentence = Sentence(thumb, drive, met),
        Figures = [.. met.SelectMany(m => Figures(thumb, drive, m))],
        Findings = [.. met.SelectMany(m => Findings(thumb, drive, m)), .. Efforts.Both.Select(e => DailyPinch.Judge(e, Strongest(met, e))).OfType<Finding>()],
        Tables = [Reach(drive, met), Pressures(thumb, met), RunTables.Guesses(hand)],
        Cautions =
        [
            "This hand can hurt its wearer's own thumb: the wrist is stronger than the thumb's pad can bear. Close it gently on the bare thumb, and let go at the first pain.",
            "Numb, grafted or freshly operated skin does not warn: ask a clinician first.",
            "Thresholds are of people with whole hands, and of other places on the hand than the pad. Measure the wearer's own, and keep well below.",
        ],
    };

    /// <summary>The strongest pinch of all postures at an effort [N]; NaN without one.</summary>
    private static double Strongest(Met[] met, Effort effort) =>
        met.SelectMany(m => m.Presses).Where(p => p.Effort == effort && p.Why is null).Select(p => p.Plate).DefaultIfEmpty(double.NaN).Max();

    private static string Sentence(Hand.Thumb thumb, DriveModel drive, Met[] met)
    {
        List<string> parts = [];
        foreach (Met m in met)
        {
            string[] fingers = [.. m.Tips.Where(t => t.Gap <= Meets).Select(t => drive.Fingers[t.Finger].Name)];
            FingertipOnThumb nearest = m.Tips.MinBy(t => t.Gap)!;
            parts.Add(fingers.Length > 0
                ? $"{m.Posture.Name} it meets {string.Join(" and ", fingers)}"
                : string.Create(CultureInfo.InvariantCulture, $"{m.Posture.Name} it meets none (the {drive.Fingers[nearest.Finger].Name} stays {1000 * nearest.Gap:0} mm away)"));
        }

        double most = met.SelectMany(m => m.Presses).Where(p => p.Why is null).Select(p => p.Plate / Area(thumb)).DefaultIfEmpty(double.NaN).Max();
        string worst = double.IsNaN(most) ? "" : string.Create(CultureInfo.InvariantCulture, $" With a plate between, its pad bears up to {most / 1000:0} kPa; {thumb.Limit / 1000:0} kPa are allowed.");
        return $"The thumb's pad: {string.Join("; ", parts)}.{worst}";
    }

    private static IEnumerable<Figure> Figures(Hand.Thumb thumb, DriveModel drive, Met m)
    {
        foreach (FingertipOnThumb t in m.Tips)
        {
            Terms terms = new();
            double half = drive.Fingers[t.Finger].HalfThickness.Third;
            string axis = terms.Input("pad_to_axis", 1000 * (t.Gap + half), "mm"), radius = terms.Input("half_thickness", 1000 * half, "mm");
            yield return new($"thumb_gap@{m.Posture.Name}/{drive.Fingers[t.Finger].Name}", "gap from thumb pad to fingertip", "mm") { Value = 1000 * t.Gap, Working = terms.Working($"{axis} - {radius}", "room-sweep") };
        }

        foreach ((Effort effort, _, double plate, string? why) in m.Presses)
        {
            Figure figure = new($"thumb_pressure@{m.Posture.Name}/{effort.Word()}", "mean pressure on the thumb's pad, a plate between", "kPa");
            Terms terms = new();
            string force = terms.Input("force", plate, "N"), width = terms.Input("pad_width", 1000 * thumb.PadWidth, "mm");
            yield return why is not null ? figure with { Why = why } : figure with { Value = plate / Area(thumb) / 1000, Working = terms.Working($"1000·{force}/(π·{width}^2/4)", "drive-model") };
        }
    }

    private static IEnumerable<Finding> Findings(Hand.Thumb thumb, DriveModel drive, Met m)
    {
        FingertipOnThumb nearest = m.Tips.MinBy(t => t.Gap)!;
        string finger = drive.Fingers[nearest.Finger].Name;
        double off = double.RadiansToDegrees(nearest.OffRadians);
        string face = string.Create(CultureInfo.InvariantCulture, $"{off:0}° from face to face");
        if (nearest.Gap > Meets)
        {
            yield return new("thumb_reach", m.Posture.Name, nearest.Gap <= Near ? Verdict.Tight : Verdict.Fails,
                string.Create(CultureInfo.InvariantCulture, $"{m.Posture.Name}: the thumb reaches no fingertip; nearest is the {finger}, {1000 * nearest.Gap:0.0} mm away at {double.RadiansToDegrees(nearest.Theta):0.0}° of wrist, {face} ({1000 * Near:0} mm are taken as what a thumb can be moved by: common practice, no source)."),
                "Turn the finger's splay toward the thumb, lengthen its distal segment, or give it a thumb piece.")
            { Figure = 1000 * nearest.Gap, Limit = 1000 * Near, Unit = "mm", Margin = (Near - nearest.Gap) / Near };
        }
        else if (off >= OverTheBack)
        {
            yield return new("thumb_reach", m.Posture.Name, Verdict.Good,
                string.Create(CultureInfo.InvariantCulture, $"{m.Posture.Name}: the thumb's pad lies on the back of the {finger} at {double.RadiansToDegrees(nearest.Theta):0.0}° of wrist, as in a fist."),
                "Nothing.")
            { Figure = off, Unit = "deg" };
        }
        else
        {
            yield return new("thumb_reach", m.Posture.Name, Verdicts.Of((OffFace - off) / OffFace),
                string.Create(CultureInfo.InvariantCulture, $"{m.Posture.Name}: the {finger} meets the thumb's pad at {double.RadiansToDegrees(nearest.Theta):0.0}° of wrist, {face} ({OffFace:0}° are taken as the most: common practice, no source)."),
                "Change the distal ratio or the fingertip's pad so that it faces the thumb.")
            { Figure = off, Limit = OffFace, Unit = "deg", Margin = (OffFace - off) / OffFace };
        }

        foreach ((Effort effort, double bare, double plate, string? why) in m.Presses)
        {
            yield return why is not null
                ? new("thumb_pressure", $"{m.Posture.Name}, {effort.Word()}", Verdict.NotKnown, $"{m.Posture.Name}, {effort.Word()} effort: no pressure is given, as {why}.", "Measure what a gauge between thumb and finger reads.")
                : Pressure(thumb, m.Posture.Name, effort, bare, plate);
        }
    }

    private static Finding Pressure(Hand.Thumb thumb, string posture, Effort effort, double bare, double plate)
    {
        double pressure = plate / Area(thumb), margin = (thumb.Limit - pressure) / thumb.Limit, pain = pressure / thumb.PainThreshold;
        string hurts = pressure > thumb.PainThreshold ? " That is past the wearer's pain threshold: this hand can hurt its wearer's own thumb." : pressure > thumb.Limit ? " That is past the limit: this hand can hurt its wearer's own thumb." : "";
        return new("thumb_pressure", $"{posture}, {effort.Word()}", Verdicts.Of(margin),
            string.Create(CultureInfo.InvariantCulture, $"{posture}, {effort.Word()} effort: with a plate on the pad the fingers press it with {plate:0.0} N, {pressure / 1000:0} kPa on average, {100 * pain:0} % of the pain threshold; {thumb.Limit / 1000:0} kPa are allowed. Without a plate the fingertips that meet it press with {bare:0.0} N.{hurts}"),
            "A broad thumb piece spreads the force; a gentler effort, or a lock before the pinch, lowers it.")
        { Figure = pressure / 1000, Limit = thumb.Limit / 1000, Unit = "kPa", Margin = margin };
    }

    private static Table Reach(DriveModel drive, Met[] met) => new("reach",
        [new("posture", ""), new("fingertip", ""), new("gap", "mm"), new("off face", "deg"), new("at", "deg"), new("x", "mm"), new("y", "mm"), new("toward thumb", "mm")],
        [.. met.SelectMany(m => m.Tips.Select(t => (IReadOnlyList<Cell>)
            [m.Posture.Name, drive.Fingers[t.Finger].Name, 1000 * t.Gap, double.RadiansToDegrees(t.OffRadians), double.RadiansToDegrees(t.Theta), 1000 * t.Place.X, 1000 * t.Place.Y, 1000 * t.Place.Z]))]);

    private static Table Pressures(Hand.Thumb thumb, Met[] met) => new("pressure on the thumb",
        [new("posture", ""), new("effort", ""), new("bare", "N"), new("with a plate", "N"), new("pressure", "kPa"), new("allowed", "kPa"), new("pain begins", "kPa")],
        [.. met.SelectMany(m => m.Presses.Select(p => (IReadOnlyList<Cell>)
            [m.Posture.Name, p.Effort.Word(), p.Bare, p.Plate, p.Plate / Area(thumb) / 1000, thumb.Limit / 1000, thumb.PainThreshold / 1000]))]);

    private static double Area(Hand.Thumb thumb) => Math.PI * thumb.PadWidth * thumb.PadWidth / 4;

    private static Vector3D Space(Hand.SpacePoint p) => new(p.X, p.Y, p.Z);
}
