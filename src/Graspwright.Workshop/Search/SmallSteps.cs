using Graspwright.Deciding.Search;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Search;

/// <summary>What a design is worth a small step to both sides in one free value.</summary>
/// <param name="Parameter">Number of the free value.</param>
/// <param name="Step">The step, as the search sees the value.</param>
/// <param name="Up">The design a step up, or as far as the range goes.</param>
/// <param name="Down">The same a step down.</param>
internal sealed record SmallStep(int Parameter, double Step, Design Up, Design Down);

/// <summary>Small steps about the point to try first: how the aims change, and whether the point stands on an edge.</summary>
internal static class SmallSteps
{
    private const double RangeShare = 0.01; // of a range, where the stock's step is smaller
    private const double Fall = 0.1;        // of an aim's value and of its extent on the front, above which it falls off: chosen by us
    private const int MostNamed = 4;

    /// <summary>Judges the steps.</summary>
    public static IReadOnlyList<SmallStep> Of(SearchStudy study)
    {
        DesignJudge judge = new(study.Variants, study.Measures);
        double[] at = study.Front[study.Chosen].Values;
        List<SmallStep> steps = [];
        for (int i = 0; i < at.Length; i++)
        {
            FreeParameter p = study.Variants.Space.Parameters[i];
            if (p.Unordered || study.Variants.Units[i].Length == 0)
            {
                continue;
            }

            double step = Math.Max(p.Step, RangeShare * (p.High - p.Low));
            double[] up = [.. at], down = [.. at];
            up[i] = p.Nearest(at[i] + step);
            down[i] = p.Nearest(at[i] - step);
            steps.Add(new(i, step, new(0, up, judge.Judge(up)), new(0, down, judge.Judge(down))));
        }

        return steps;
    }

    /// <summary>What a step does to each aim, by differences to both sides; nothing where a side has no value.</summary>
    public static Table Table(SearchStudy study, IReadOnlyList<SmallStep> steps) => new(
        "what a small step does there",
        [new("path", ""), new("step", ""), .. study.Measures.Aims.Select(a => new Column(a.Measure.Text, a.Measure.Unit))],
        [.. steps.Select(s => (IReadOnlyList<Cell>)[study.Variants.Names[s.Parameter], ChangesAnswer.Short(s.Step, study.Variants.Units[s.Parameter]), .. study.Measures.Aims.Select((_, k) => (Cell)Change(study, s, k))])]);

    /// <summary>Says where a small step makes the hand fall off: an aim much worse or without a value, or no hand at all.</summary>
    public static IEnumerable<Finding> Edges(SearchStudy study, IReadOnlyList<SmallStep> steps)
    {
        string[] falls = [.. steps.SelectMany(s => new[] { Falls(study, s, s.Up, "more"), Falls(study, s, s.Down, "less") }).OfType<string>()];
        if (falls.Length > 0)
        {
            string rest = falls.Length > MostNamed ? FormattableString.Invariant($"; and {falls.Length - MostNamed} steps like these") : "";
            yield return new("stands_on_edge", study.Search.Name, Verdict.Tight, $"The point to try first stands on an edge: {string.Join("; ", falls.Take(MostNamed))}{rest}.",
                "Take a point that bears such a step, or search with a margin, such as more friction than there is.")
            {
                Figure = falls.Length,
            };
        }
    }

    private static double Change(SearchStudy study, SmallStep step, int aim) =>
        (SearchAnswer.AimValue(study, step.Up, aim) - SearchAnswer.AimValue(study, step.Down, aim)) / (step.Up.Values[step.Parameter] - step.Down.Values[step.Parameter]) * step.Step;

    private static string? Falls(SearchStudy study, SmallStep step, Design side, string way)
    {
        Design chosen = study.Front[study.Chosen];
        string name = study.Variants.Names[step.Parameter], much = ChangesAnswer.Short(Math.Abs(side.Values[step.Parameter] - chosen.Values[step.Parameter]), study.Variants.Units[step.Parameter]);
        if (side.Outcome.Failed)
        {
            return $"{much} {way} in {name} leaves no hand that can be put together";
        }

        for (int k = 0; k < chosen.Outcome.Aims.Length; k++)
        {
            string what = study.Measures.Aims[k].Measure.Words + ChangesAnswer.Where(study.Measures.Aims[k].Measure.Text);
            double now = chosen.Outcome.Aims[k], then = side.Outcome.Aims[k];
            if (double.IsNaN(then))
            {
                return $"{much} {way} in {name} leaves {what} without a value";
            }

            double extent = study.Front.Max(d => d.Outcome.Aims[k]) - study.Front.Min(d => d.Outcome.Aims[k]);
            if (then - now > Fall * Math.Max(Math.Abs(now), extent))
            {
                string unit = study.Measures.Aims[k].Measure.Unit;
                return $"{much} {way} in {name} takes {what} from {ChangesAnswer.Short(SearchAnswer.AimValue(study, chosen, k), unit)} to {ChangesAnswer.Short(SearchAnswer.AimValue(study, side, k), unit)}";
            }
        }

        return null;
    }
}
