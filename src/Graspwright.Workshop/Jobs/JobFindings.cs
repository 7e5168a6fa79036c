using System.Globalization;
using Graspwright.Mechanics.Holding;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>What a job says about the hand and about the arm.</summary>
internal static class JobFindings
{
    private const double Ulnar = 9.5, Radial = 11.0; // N·m, means of ten men, Delp, Grierson & Buchanan 1996
    private const double LeastShown = 0.01; // share of the wrist's strength below which a load's moment is not spoken of
    private const double MostTip = 20; // degrees, common practice, no source: a mug filled to a finger's breadth

    /// <summary>All of them; those of arm, lock and tip only where they are not good.</summary>
    public static IEnumerable<Finding> Of(Hand.HandModel hand, JobOutcome o)
    {
        yield return new("job", o.Job.Name, o.Verdict, JobWords.Reason(o), JobWords.Change(o))
        {
            Figure = o.Unknown is not null || o.Held!.Factor < 0 ? null : o.Amount + o.Spare,
            Limit = o.Amount,
            Unit = o.Unit,
            Margin = double.IsNaN(o.Margin) ? null : o.Margin,
        };
        if (o.Unknown is not null || o.Grasp is null)
        {
            yield break;
        }

        foreach (Finding finding in new[] { Wrist(hand, o), Sideways(hand, o), Lock(o), Thumb(hand, o), Tips(o) }.OfType<Finding>().Where(f => f.Verdict != Verdict.Good))
        {
            yield return finding;
        }
    }

    private static Finding? Wrist(Hand.HandModel hand, JobOutcome o)
    {
        double needs = Math.Abs(o.WristNeeds), limit = hand.Wrist.SqueezeShare * o.WristCapacity;
        if (limit > 0 && Math.Abs(o.FlexingOfAll) < LeastShown * o.WristCapacity)
        {
            return null; // the drive's own moment is what the effort allows
        }

        if (limit <= 0)
        {
            return new("wrist_load", o.Job.Name, Verdict.Fails, $"{o.Job.Name}: the wrist's strength falls to nothing at the angle in which this is held.", "Start from another posture, or measure the strength there again.");
        }

        string helps = o.FlexingOfAll == 0 ? "" : (o.FlexingOfAll > 0) == (hand.Wrist.Direction == Hand.DrivingDirection.Flexion) ? "helps the drive" : "works against the drive";
        string load = helps.Length > 0 ? $" (the weight of load, hand and device {helps} with {Text(Math.Abs(o.FlexingOfAll))} N·m)" : "";
        return new("wrist_load", o.Job.Name, Verdicts.Of((limit - needs) / limit),
            $"{o.Job.Name}: the wrist has to bear {Text(needs)} N·m{load}, {Text(100 * needs / o.WristCapacity, "0")} % of its strength there; a short squeeze may take {Text(100 * hand.Wrist.SqueezeShare, "0")} %.",
            o.Job.LockAndRelax ? "Carry it nearer the wrist, or share it with the other arm." : "Lock before the load comes, carry it nearer the wrist, or turn the forearm so that the load helps.")
        { Figure = needs, Limit = limit, Unit = "N·m", Margin = (limit - needs) / limit };
    }

    private static Finding? Sideways(Hand.HandModel hand, JobOutcome o)
    {
        double needs = Math.Abs(o.SidewaysOfAll), strength = o.SidewaysOfAll > 0 ? Radial : Ulnar, limit = hand.Wrist.SqueezeShare * strength;
        return new("sideways_load", o.Job.Name, Verdicts.Of((limit - needs) / limit),
            $"{o.Job.Name}: load, hand and device bend the wrist sideways with {Text(needs)} N·m; a whole-handed man's wrist gives {Text(strength, "0.0")} N·m there (mean of ten, population value), and a short squeeze may take {Text(limit)} N·m of it.",
            "Carry it nearer the wrist, let the forearm hang, or share it with the other arm.")
        { Figure = needs, Limit = limit, Unit = "N·m", Margin = (limit - needs) / limit };
    }

    private static Finding? Lock(JobOutcome o)
    {
        if (o.Relaxed is not { GripBefore: > 0 } r)
        {
            return null;
        }

        double left = r.GripAfter / r.GripBefore;
        const double wanted = 0.5; // common practice, no source
        return new("lock_left", o.Job.Name, Verdicts.Of((left - wanted) / wanted),
            string.Create(CultureInfo.InvariantCulture, $"{o.Job.Name}: locking and relaxing leaves {r.GripAfter:0.0} N of {r.GripBefore:0.0} N ({100 * left:0} %; half is taken as the least, common practice, no source)."),
            "A finer pitch, less backlash, a stiffer lock or softer pads leave more.")
        { Figure = 100 * left, Limit = 100 * wanted, Unit = "%", Margin = (left - wanted) / wanted };
    }

    private static Finding? Thumb(Hand.HandModel hand, JobOutcome o)
    {
        Hand.Thumb thumb = hand.Thumb!;
        double force = 0;
        for (int c = 0; c < o.Grasp!.Contacts.Count && c < o.Held!.Forces.Count; c++)
        {
            force = o.Grasp.Contacts[c].Kind == ContactKind.Thumb ? o.Held.Forces[c].Dot(o.Grasp.Contacts[c].Normal) : force;
        }

        if (force <= 0)
        {
            return null;
        }

        double pressure = force / (Math.PI * thumb.PadWidth * thumb.PadWidth / 4), limit = thumb.Limit;
        return new("thumb_pressure", o.Job.Name, Verdicts.Of((limit - pressure) / limit),
            $"{o.Job.Name}: at the limit of what it holds, the thumb's pad bears {Text(force, "0")} N, {Text(pressure / 1000, "0")} kPa on average; its wearer allows {Text(limit / 1000, "0")} kPa. This hand can hurt its wearer's own thumb.",
            "A broad thumb piece spreads the force; a gentler effort lowers it.")
        { Figure = pressure / 1000, Limit = limit / 1000, Unit = "kPa", Margin = (limit - pressure) / limit };
    }

    private static Finding? Tips(JobOutcome o)
    {
        double degrees = double.RadiansToDegrees(o.Tips);
        return o.Job.Load <= 0 || o.Job.As == Hand.HeldAs.HookBar ? null : new("tips", o.Job.Name, degrees <= MostTip ? Verdict.Good : Verdict.Tight,
            $"{o.Job.Name}: it tips by {Text(degrees, "0")}° between touch and full grip, as the wrist drives (an open mug is taken to bear {Text(MostTip, "0")}°: common practice, no source).",
            "Turn the forearm thumb up, where it does not tip, or follow with the elbow.")
        { Figure = degrees, Limit = MostTip, Unit = "deg", Margin = (MostTip - degrees) / MostTip };
    }

    private static string Text(double value, string format = "0.00") => value.ToString(format, CultureInfo.InvariantCulture);
}
