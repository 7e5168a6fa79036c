using System.Globalization;
using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>Puts what a job does into plain words.</summary>
internal static class JobWords
{
    private const double KilogramForce = 9.80665;

    /// <summary>The sentence: how many jobs work, which fail and by how much.</summary>
    public static string Sentence(IReadOnlyList<JobOutcome> outcomes)
    {
        int works = outcomes.Count(o => o.Works), unknown = outcomes.Count(o => o.Unknown is not null);
        string count = works == outcomes.Count ? outcomes.Count == 1 ? "The job works" : $"All {Whole(outcomes.Count)} jobs work" : $"{Whole(works)} of {Whole(outcomes.Count)} jobs work";
        List<string> failing = [.. outcomes.Where(o => o.Unknown is null && !o.Works).OrderBy(o => o.Margin).Select(o => o.Margin <= -1 + 1e-6 ? $"the {o.Job.Name} is not held at all" : $"the {o.Job.Name} fails by {Amount(-o.Spare, o.Unit)}")];
        string fails = failing.Count > 0 ? "; " + Joined(failing) : "";
        string lost = unknown > 0 ? $"; of {Whole(unknown)} nothing can be said" : "";
        JobOutcome[] tight = [.. outcomes.Where(o => o.Works && o.Verdict == Verdict.Tight).OrderBy(o => o.Margin)];
        string near = tight.Length > 0 ? $" Tight, within what friction may differ: {Joined([.. tight.Select(o => o.Job.Name)])}." : "";
        return $"{count}{fails}{lost}.{near}";
    }

    /// <summary>Why a job works or fails.</summary>
    public static string Reason(JobOutcome o)
    {
        string name = Capital(o.Job.Name);
        if (o.Unknown is { } why)
        {
            return $"{name}: {why}.";
        }

        if (o.Grasp is null)
        {
            return o.Held!.Mode == GiveWay.PushedOut
                ? $"{name}: what is left behind the locks pushes it out of the hand; palm and thumb cannot hold it there."
                : o.Relaxed is not null ? $"{name}: when the wrist relaxes the locks give back more than the pads were pressed in, and nothing grips." : $"{name}: no finger touches it at this effort.";
        }

        if (o.Held!.Mode == GiveWay.PushedOut)
        {
            return $"{name}: the fingers push it out of the hand before any load comes; nothing on its other side holds it.";
        }

        string slips = o.Held.Mode == GiveWay.None && o.Works ? "" : Slips(o);
        string spare = o.Works
            ? o.Held.Mode == GiveWay.None ? $"holds {Load(o)} with more than {Whole((int)HoldResult.MostFactor)} times to spare" : $"holds {Load(o)} with {Amount(o.Spare, o.Unit)} to spare, then {How(o)}"
            : $"{How(o)} and holds only {Amount(o.Amount + o.Spare, o.Unit)} of {Load(o)}";
        return $"{name}: {spare}.{slips} {Friction(o)}{Left(o)}";
    }

    private static string Slips(JobOutcome o) => o.Held!.FirstSlip.Contact >= 0 && o.Held.FirstSlipFactor < HoldResult.MostFactor && o.Held.FirstSlip.Direction.Length > 0
        ? $" First to slip: {Contact(o.Grasp!.Contacts[o.Held.FirstSlip.Contact])}, {Direction(o.Held.FirstSlip.Direction)}." : "";

    /// <summary>What to try.</summary>
    public static string Change(JobOutcome o)
    {
        if (o.Unknown is not null)
        {
            return "Move the object, or open the fingers further; see what grip says of it.";
        }

        if (o.Grasp is null || o.Held!.Mode == GiveWay.PushedOut)
        {
            return o.Relaxed is not null ? "A finer pitch, less backlash, softer pads, or a harder squeeze before locking." : "Hold it nearer the wrist so that fingertips come round it, or as a handle with the thumb against it.";
        }

        return o.Held.Mode switch
        {
            GiveWay.Twist => "Softer or ribbed pads, a thicker handle, or the thumb laid along it.",
            GiveWay.Tip => "Take it nearer where it hangs, or spread the fingers wider along it.",
            GiveWay.PullOut when o.Job.As == Hand.HeldAs.HookBar => "Bend the fingertips further round it, or hold it in a lock that bears more.",
            GiveWay.PullOut => "Bring fingertips round its far side, or lock before the load comes.",
            _ => o.Job.Wet ? "Pads that hold when wet (ribs, a dry cloth), or more grip: a shorter output arm or a harder effort." : "Pads of higher friction, or more grip: a shorter output arm or a harder effort.",
        };
    }

    /// <summary>A verdict's row for the table.</summary>
    public static string How(JobOutcome o) => o.Held?.Mode switch
    {
        GiveWay.Drop => "drops",
        GiveWay.Twist => "twists in the hand",
        GiveWay.Tip => "tips in the hand",
        GiveWay.Slide => "slides along its axis",
        GiveWay.PullOut => "is pulled out",
        GiveWay.PushedOut => "is pushed out",
        GiveWay.None => "holds",
        _ => "–",
    };

    /// <summary>A direction of the hand in words.</summary>
    public static string Direction(Vector3D d)
    {
        double x = Math.Abs(d.X), y = Math.Abs(d.Y), z = Math.Abs(d.Z);
        if (x >= y && x >= z)
        {
            return d.X > 0 ? "toward the fingertips" : "toward the wrist";
        }

        return y >= z ? d.Y > 0 ? "toward the back of the hand" : "away from the palm" : d.Z > 0 ? "toward the thumb" : "away from the thumb";
    }

    /// <summary>An amount with its unit; forces with kilograms-force beside them.</summary>
    public static string Amount(double value, string unit) => unit switch
    {
        "kg" => $"{Digits(value)} kg",
        "N" => $"{Digits(value)} N ({Digits(value / KilogramForce)} kgf)",
        _ => $"{Digits(value)} {unit}",
    };

    /// <summary>Two or three digits.</summary>
    public static string Digits(double value) => value.ToString(Math.Abs(value) switch { >= 99.5 => "0", >= 9.95 => "0.0", >= 0.0995 => "0.00", _ => "0.000" }, CultureInfo.InvariantCulture);

    private static string Load(JobOutcome o) => Amount(o.Amount, o.Unit);

    private static string Friction(JobOutcome o) => o.FrictionNeeded switch
    {
        0 => "It needs no friction.",
        double.PositiveInfinity => "No friction would be enough.",
        _ => string.Create(CultureInfo.InvariantCulture, $"It needs friction of {o.FrictionNeeded:0.00}{(o.Job.Wet ? " wet" : "")}; the pads have {o.FrictionThere:0.00}."),
    };

    private static string Left(JobOutcome o) => o.Relaxed is { } r
        ? string.Create(CultureInfo.InvariantCulture, $" Locked and relaxed, {r.GripAfter:0.0} N of {r.GripBefore:0.0} N of grip are left.") : "";

    private static string Contact(HoldContact c) => c.Kind switch { ContactKind.Palm => "the palm", ContactKind.Thumb => "the thumb", _ => $"the {c.Name}" };

    private static string Joined(List<string> words) => words.Count switch { 0 => "", 1 => words[0], _ => $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}" };

    private static string Whole(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
