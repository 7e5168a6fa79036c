using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>Which grips the wearer's list uses how often, against published shares of grips and things.</summary>
/// <remarks>
/// Gracia-Ibáñez 2017 weighs the time of each grip by how much autonomy depends on it: pad to pad 31.9 %, lumbrical 15.4 %,
/// special pinch 7.3 %, cylindrical 12 %, no grip at all 18.6 %; what its abstract does not name is the rest. Shares here are of gripping alone.
/// Feix 2014 counts grasps: 96 % of things at most 70 mm wide, 92 % at most 500 g.
/// </remarks>
public static class GripShares
{
    /// <summary>Key of the source of shares of grips.</summary>
    public const string Source = "gracia-ibanez-2017";

    private const double PadToPad = 31.9, Lumbrical = 15.4, SpecialPinch = 7.3, Cylindrical = 12.0, NoGrip = 18.6; // %
    private const double Gripping = 100 - NoGrip, Unnamed = Gripping - PadToPad - Lumbrical - SpecialPinch - Cylindrical;
    private const double Narrow = 0.070, NarrowShare = 96, Light = 0.5, LightShare = 92;

    /// <summary>A kind of grip: how often the list uses it and what is published.</summary>
    /// <param name="Key">Key of its figure.</param>
    /// <param name="Words">What it is.</param>
    /// <param name="PerDay">Grips a day.</param>
    /// <param name="Share">Share of the counted grips [%].</param>
    /// <param name="Low">Published share of gripping that is surely of this kind [%].</param>
    /// <param name="High">The same with all that the source leaves unnamed [%].</param>
    public sealed record Group(string Key, string Words, double PerDay, double Share, double Low, double High)
    {
        /// <summary>Whether the list has more or less of it than published.</summary>
        public string Stands => Share > High ? "over-represented" : Share < Low ? "under-represented" : "as published";
    }

    /// <summary>The three kinds that this hand knows; empty where nothing is counted.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<Group> Of(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        double[] counts = new double[3];
        foreach (DayJob grips in hand.CountedGrips)
        {
            counts[Kind(hand, grips)] += grips.PerDay;
        }

        double all = counts.Sum();
        return all <= 0 ? [] :
        [
            new("pinch_share", "between fingers and thumb", counts[0], 100 * counts[0] / all, Of100(PadToPad + Lumbrical + SpecialPinch), Of100(PadToPad + Lumbrical + SpecialPinch + Unnamed)),
            new("round_share", "round a thing", counts[1], 100 * counts[1] / all, Of100(Cylindrical), Of100(Cylindrical + Unnamed)),
            new("hook_share", "hooked", counts[2], 100 * counts[2] / all, 0, Of100(Unnamed)),
        ];
    }

    /// <summary>Figures: each kind's share of the counted grips.</summary>
    /// <param name="groups">The kinds.</param>
    public static IEnumerable<Figure> Figures(IReadOnlyList<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        foreach (Group group in groups)
        {
            Terms terms = new();
            foreach (Group other in groups)
            {
                terms.Add(terms.Input(other.Key.Replace("_share", "", StringComparison.Ordinal), other.PerDay, ""));
            }

            yield return new(group.Key, $"share of the counted grips {group.Words}", "%") { Value = group.Share, Working = terms.Working($"100·{group.Key.Replace("_share", "", StringComparison.Ordinal)}/({terms.Sum})", Source) };
        }
    }

    /// <summary>What stands out; none where nothing is counted.</summary>
    /// <param name="groups">The kinds.</param>
    public static IEnumerable<Finding> Findings(IReadOnlyList<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count == 0)
        {
            yield break;
        }

        string[] off = [.. groups.Where(g => g.Share > g.High || g.Share < g.Low).Select(g => Say($"grips {g.Words} are {g.Stands} ({g.Share:0} % of the list, {g.Low:0} to {g.High:0} % published)"))];
        yield return new("grip_shares", "the list of jobs", off.Length == 0 ? Verdict.Good : Verdict.Tight,
            off.Length == 0 ? "The list uses grips in about the published shares." : $"Beside published shares of whole-handed people, {string.Join("; ", off)}.",
            off.Length == 0 ? "" : "If your day is really like this, leave it. If not, name what is missing, or the count of jobs flatters the hand.");
    }

    /// <summary>The kinds, and the things gripped, beside what is published.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="groups">The kinds.</param>
    public static Table Table(HandModel hand, IReadOnlyList<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(groups);
        List<IReadOnlyList<Cell>> rows = [.. groups.Select(g => (IReadOnlyList<Cell>)[g.Words, g.PerDay, g.Share, g.Low, g.High, g.Stands])];
        if (groups.Count > 0)
        {
            rows.Add(Thing("things at most 70 mm wide", [.. hand.CountedGrips.Select(g => (g.PerDay, Width(hand, g) <= Narrow))], NarrowShare));
            rows.Add(Thing("things at most 500 g, of those weighed", [.. hand.Jobs.Where(j => j is { TimesADay: > 0, Load: > 0 }).Select(j => (j.TimesADay!.Value, j.Load <= Light))], LightShare));
        }

        return new("grips of the day", [new("grips", ""), new("a day", ""), new("share", "%"), new("published from", "%"), new("to", "%"), new("stands", "")], rows);
    }

    private static IReadOnlyList<Cell> Thing(string words, (double Times, bool Is)[] things, double published)
    {
        double all = things.Sum(t => t.Times), of = things.Where(t => t.Is).Sum(t => t.Times), share = 100 * of / all;
        return all <= 0 ? [words, 0, double.NaN, published, published, "not weighed"]
            : [words, of, share, published, published, Math.Abs(share - published) <= 10 ? "as published" : share > published ? "over-represented" : "under-represented"];
    }

    private static int Kind(HandModel hand, DayJob grips) => hand.Jobs.FirstOrDefault(j => j.Name == grips.Name && j.TimesADay > 0) is { } job
        ? job.As switch { HeldAs.Plate => 0, HeldAs.HookBar => 2, _ => 1 }
        : Thing(hand, grips) is PlateObject ? 0 : 1;

    private static HandObject Thing(HandModel hand, DayJob grips) => hand.Objects.First(o => o.Name == grips.ObjectName);

    private static double Width(HandModel hand, DayJob grips) => Thing(hand, grips) switch { CylinderObject c => c.Diameter, PlateObject p => p.Thickness, _ => 0 };

    private static double Of100(double share) => 100 * share / Gripping;

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
