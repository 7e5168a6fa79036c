using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Bench;

/// <summary>The bench plan in words, tables and findings.</summary>
internal static class PlanWords
{
    // A parameter known to a tenth is known well on a bench; to more than half of its size it is as good as unknown. Common practice, no source.
    private const double Well = 0.10;
    private const double Unknown = 0.5;
    private const double Tied = 0.9;

    /// <summary>The answer.</summary>
    public static Answer Compose(HandModel hand, ReadingPlan plan, IReadOnlyList<BenchParameter> parameters, int candidates, IReadOnlyList<Finding> inTheWay) => new()
    {
        Verb = "readings",
        Hand = hand.Name,
        Sentence = Sentence(plan, parameters, candidates),
        Findings = [.. inTheWay, .. Findings(plan, parameters)],
        Tables =
        [
            new("readings to take", [new("reading", ""), new("on", ""), new("stroke", ""), new("wrist", "deg"), new("read", ""), new("expected", ""), new("unit", ""), new("scatter", ""), new("tells most of", "")],
            [
                .. plan.Readings.Select((r, i) => (IReadOnlyList<Cell>)
                    [(double)(i + 1), r.Thing, r.Opening ? "opening" : "closing", r.WristDegrees, r.Quantity, Digits(r.Expected), r.Unit, Digits(r.Deviation), parameters[plan.ToldBy[i]].Name]),
            ]),
            new("what they will tell", [new("parameter", ""), new("known to", "%"), new("tied most to", ""), new("by", "")],
                [.. parameters.Select((p, i) => (IReadOnlyList<Cell>)[p.Words, Math.Round(100 * plan.Spread[i], 1), parameters[Partner(plan, i)].Name, plan.Correlation[i, Partner(plan, i)].ToString("0.00", CultureInfo.InvariantCulture)])]),
        ],
        Cautions =
        [
            "On a vice with a dummy wrist, never on an arm. Fingers pinch: gauges go in and out with the wrist at rest.",
            "The give of the cuff found here is that of the dummy wrist; that of flesh comes from the measuring sheet.",
            .. Cautions.Grip.Skip(3),
        ],
    };

    private static string Sentence(ReadingPlan plan, IReadOnlyList<BenchParameter> parameters, int candidates)
    {
        string[] well = [.. parameters.Where((_, i) => plan.Spread[i] <= Well).Select(p => p.Name)], poor = [.. parameters.Where((_, i) => plan.Spread[i] > Unknown).Select(p => p.Name)];
        string told = well.Length > 0 ? $" They tell {Names(well)} to a tenth or better." : "";
        string not = poor.Length > 0 ? $" They cannot tell {Names(poor)}: no reading of these gauges does on this hand." : "";
        return Say($"{plan.Readings.Count} readings out of {candidates} that could be taken tell {parameters.Count} unknowns apart as well as so few can.{told}{not}");
    }

    private static IEnumerable<Finding> Findings(ReadingPlan plan, IReadOnlyList<BenchParameter> parameters)
    {
        for (int i = 0; i < parameters.Count; i++)
        {
            int tied = Partner(plan, i);
            double known = plan.Spread[i], r = plan.Correlation[i, tied];
            Verdict verdict = known > Unknown ? Verdict.NotKnown : known > Well ? Verdict.Tight : Verdict.Good;
            string also = Math.Abs(r) > Tied ? Say($" It is tied to {parameters[tied].Name} (correlation {r:0.00}): an error in one is taken for the other.") : "";
            yield return new("told_apart", parameters[i].Name, verdict, Say($"{Upper(parameters[i].Words)} will be known to {100 * known:0} % (one standard deviation).{also}"),
                known > Unknown ? "Measure it by itself: a single pin, link or pad on the bench." : "Take each reading twice, or add readings with --count.")
            { Figure = 100 * known, Limit = 100 * Well, Unit = "%", Margin = 1 - known / Well };
        }
    }

    private static int Partner(ReadingPlan plan, int i) =>
        Enumerable.Range(0, plan.Spread.Length).Where(k => k != i).DefaultIfEmpty(i).MaxBy(k => Math.Abs(plan.Correlation[i, k]));

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Names(string[] names) => names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";

    private static string Digits(double value) => value.ToString("G3", CultureInfo.InvariantCulture);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
