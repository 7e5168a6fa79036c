using System.Globalization;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Grip;

/// <summary>Chooses the case that an answer speaks of first, and says it in a sentence.</summary>
internal static class Headline
{
    /// <summary>Grip from which an object counts as gripped [N].</summary>
    private const double AnyGrip = 0.1;

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
        string locks = c.Pattern is null ? "" : $", with {c.Pattern.Name},";
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

    private static string Others(IReadOnlyList<GripCase> cases, GripCase headline)
    {
        List<GripCase> alike = [.. cases.Where(c => c.Pattern == headline.Pattern && c.Effort == headline.Effort && c.Thing is not Hand.NothingHeld)];
        if (alike.Count < 2)
        {
            return "";
        }

        List<GripCase> gripped = [.. alike.Where(c => Followed(c) && c.Reading.End[TraceLayout.Grip] >= AnyGrip)];
        if (gripped.Count == 0)
        {
            return $"None of the {alike.Count} objects is gripped.";
        }

        GripCase weakest = gripped.MinBy(c => c.Reading.End[TraceLayout.Grip])!;
        string missed = string.Join(", ", alike.Except(gripped).Select(c => c.Thing.Name));
        string count = gripped.Count == alike.Count ? $"{(alike.Count == 2 ? "Both" : $"All {alike.Count}")} objects are gripped" : $"{gripped.Count} of {alike.Count} objects are gripped, not: {missed}";
        return $"{count}; the weakest grip is {Force(weakest.Reading.End[TraceLayout.Grip])} on the {weakest.Thing.Name}.";
    }

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

    private static string Force(double newtons) => newtons.ToString(newtons < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture) + " N";
}
