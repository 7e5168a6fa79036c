using System.Globalization;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Grip;

/// <summary>Chooses the case that an answer speaks of first, and says it in a sentence.</summary>
internal static class Headline
{
    /// <summary>Grip from which an object counts as gripped [N].</summary>
    private const double AnyGrip = 0.1;

    /// <summary>Most situations named one by one in a sentence.</summary>
    private const int MostNamed = 3;

    /// <summary>The first case all free at the all-day effort; else the first.</summary>
    /// <param name="cases">Cases.</param>
    public static GripCase? Choose(IReadOnlyList<GripCase> cases) =>
        cases.FirstOrDefault(c => c.Pattern is null && c.Effort == Effort.AllDay && Followed(c))
        ?? cases.FirstOrDefault(Followed)
        ?? (cases.Count > 0 ? cases[0] : null);

    /// <summary>The sentence.</summary>
    /// <param name="cases">All cases.</param>
    /// <param name="headline">The one it is about.</param>
    public static string Sentence(IReadOnlyList<GripCase> cases, GripCase headline) => $"{About(headline)} {Others(cases, headline)}".TrimEnd();

    private static bool Followed(GripCase c) => c.Reading.Run.End != RunEnd.NotFollowed;

    /// <summary>The sentence about one case.</summary>
    /// <param name="c">The case.</param>
    public static string About(GripCase c)
    {
        string place = c.Thing is Hand.NothingHeld ? "With nothing held" : $"On the {Name(c.Thing)}";
        string locks = c.Pattern is null ? "" : $", with the locks ‘{c.Pattern.Name}’,";
        RunResult run = c.Reading.Run;
        if (!Followed(c))
        {
            return $"{place}{locks} the motion could not be followed past {Angles.Text(run.Failure?.ThetaRadians ?? 0)}: no grip is claimed.";
        }

        if (c.Thing is Hand.NothingHeld)
        {
            return $"{place}{locks} this hand closes over {Angles.Text(run.AtEnd[TraceLayout.Theta])} of wrist; {Limit(c)}.";
        }

        if (c.Reading.Closing(EventKind.Touch) is not { } touch)
        {
            return $"{place}{locks} this hand touches nothing at your {c.Effort.Word()} effort; {Limit(c)}.";
        }

        double grip = run.AtEnd[TraceLayout.Grip];
        return $"{place}{locks} this hand touches at {Angles.Text(touch.ThetaRadians)}{Shift(c)} and grips with {Force(grip)} at your {c.Effort.Word()} effort{Held(c)}; {Limit(c)}.";
    }

    private static string Held(GripCase c) => RunTables.HeldFor(c.Situation.Find("hold_time")) is { } band ? $", which can be held {band} without a pause" : "";

    private static string Shift(GripCase c)
    {
        if (c.Reading.Drive.Crank.Slot is null)
        {
            return "";
        }

        Measures.Reading cost = new ShiftCost().Value(c.Reading);
        if (cost.Why is not null)
        {
            return ", does not shift";
        }

        string degrees = cost.Value.ToString("0.0", CultureInfo.InvariantCulture);
        return c.Reading.Closing(EventKind.ShiftEnd) is null ? $", is still shifting after {degrees}°" : $", shifts over {degrees}°";
    }

    private static string Limit(GripCase c) => c.Reading.Run.End == RunEnd.Effort
        ? "the limit is the wrist's effort, not travel"
        : "the limit is the wrist's travel, not effort";

    /// <summary>The second sentence: what the other effort brings here, and how many situations work.</summary>
    private static string Others(IReadOnlyList<GripCase> cases, GripCase headline)
    {
        GripCase? other = cases.FirstOrDefault(c => c.Thing == headline.Thing && c.Pattern == headline.Pattern && c.Effort != headline.Effort && Followed(c));
        double? more = headline.Thing is Hand.NothingHeld ? null : other?.Reading.End[TraceLayout.Grip];
        string squeeze = more is >= AnyGrip ? $"{(other!.Effort == Effort.Squeeze ? "A short squeeze" : "The all-day effort")} grips it with {Force(more.Value)}" : "";
        List<GripCase> alike = [.. cases.Where(c => c.Effort == headline.Effort && c.Thing is not Hand.NothingHeld)];
        if (alike.Count < 2)
        {
            return squeeze.Length > 0 ? squeeze + "." : "";
        }

        string lead = squeeze.Length > 0 ? squeeze + "; " : "";
        List<GripCase> working = [.. alike.Where(Works)];
        bool locks = alike.Select(c => c.Pattern).Distinct().Count() > 1;
        string kind = locks ? "pairs of object and lock pattern" : "objects";
        string effort = $"at {headline.Effort.Word()} effort";
        if (working.Count == 0)
        {
            return Capital($"{lead}none of the {alike.Count} {kind} works {effort}: a free finger does not touch, or the hand does not open again.");
        }

        string missed = string.Join(", ", alike.Except(working).Take(MostNamed).Select(c => locks ? $"{c.Thing.Name}/{c.Situation.Locks}" : c.Thing.Name));
        int unnamed = alike.Count - working.Count - MostNamed;
        string not = missed.Length == 0 ? "" : $" (not {missed}{(unnamed > 0 ? $" and {unnamed} more" : "")})";
        string count = working.Count == alike.Count ? $"all {alike.Count} {kind} work" : $"{working.Count} of {alike.Count} {kind} work";
        GripCase weakest = working.MinBy(c => c.Reading.End[TraceLayout.Grip])!;
        string where = $"{Name(weakest.Thing)}{(weakest.Pattern is null ? "" : $" with the locks ‘{weakest.Pattern.Name}’")}";
        int pushed = working.Count(c => Fails(c, "pushed_out"));
        string held = pushed > 0 ? $" In {pushed} of them the fingers push the object out of the palm, and the thumb must keep it." : "";
        return Capital($"{lead}{count} {effort}{not}: every free finger touches and the hand opens again. The weakest grip is {Force(weakest.Reading.End[TraceLayout.Grip])} on the {where}.{held}");
    }

    /// <summary>A situation works where the motion was followed, every free finger touches, something grips and the hand opens again.</summary>
    private static bool Works(GripCase c) =>
        Followed(c) && c.Reading.Closing(EventKind.AllTouch) is not null && c.Reading.End[TraceLayout.Grip] >= AnyGrip && !Fails(c, "reopens");

    private static bool Fails(GripCase c, string key) => c.Situation.Findings.Any(f => f.Key == key && f.Verdict == Results.Verdict.Fails);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Name(Hand.HandObject thing)
    {
        double? size = thing switch
        {
            Hand.CylinderObject cylinder => cylinder.Diameter,
            Hand.PlateObject plate => plate.Thickness,
            _ => null,
        };
        if (size is null)
        {
            return thing.Name;
        }

        string millimetres = (size.Value * 1000).ToString("0.#", CultureInfo.InvariantCulture);
        return thing.Name.Contains($"{millimetres} mm", StringComparison.Ordinal) ? thing.Name : $"{millimetres} mm {thing.Name}";
    }

    /// <summary>Newtons with kilograms-force beside them (1 kgf = 9.80665 N, ISO 80000-4).</summary>
    private static string Force(double newtons) =>
        string.Create(CultureInfo.InvariantCulture, $"{newtons.ToString(newtons < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture)} N ({newtons / 9.80665:0.0} kgf)");
}
