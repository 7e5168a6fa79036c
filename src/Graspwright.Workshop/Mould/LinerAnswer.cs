using Graspwright.Hand;
using Graspwright.Moulding.Batch;
using Graspwright.Moulding.Cure;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>How much to weigh out, roll and pay for a liner.</summary>
public static class LinerAnswer
{
    private const double BallCheckMm = 1;

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file, for errors.</param>
    /// <returns>The answer, or what is missing for it.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Of(HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (MouldMapping.Missing(hand, file, liner: true) is { Count: > 0 } missing)
        {
            return (null, missing);
        }

        Liner liner = hand.Liner!;
        WorkPlan plan = WorkPlan.Fewest(hand), whole = plan.Batches == 1 ? plan : WorkPlan.Of(hand, 1, plan.Sheet);
        return (new()
        {
            Verb = "liner",
            Hand = hand.Name,
            Sentence = Sentence(liner, plan, whole),
            Figures = Figures(liner, plan),
            Findings = [.. Findings(liner, plan, whole)],
            Tables = [.. Tables(hand, liner, plan)],
            Cautions = MouldCautions.Mixing,
        }, []);
    }

    private static string Sentence(Liner liner, WorkPlan plan, WorkPlan whole)
    {
        BatchSum b = plan.Batch;
        string weigh = $"{Grams(b.A.Mass, liner.Bench.ScaleStep)} of A and {Grams(b.B.Mass, liner.Bench.ScaleStep)} of B";
        string sheet = $"{Number(1e4 * plan.Sheet.Area, 0)} cm² at {Short(1000 * liner.Thickness)} mm";
        double step = liner.Bench.ScaleStep;
        string all = Grams(plan.Batches * (OnScale(b.A.Mass, step) + OnScale(b.B.Mass, step)), step);
        string cost = Cost(liner, plan) is { } money ? $" It takes {all} of putty, about {Number(money, 2)} {liner.Putty.Money}".TrimEnd() + "." : $" It takes {all} of putty.";
        if (plan.Batches == 1)
        {
            return (plan.Fits ? $"Weigh {weigh} for a sheet of {sheet}: one batch can be worked in time." : $"Weigh {weigh} for a sheet of {sheet}, but it cannot be worked in time.") + cost;
        }

        string why = !whole.Fits ? $"one would still be worked at {Clock(whole.End)}, and hands come off at {Clock(whole.Cure[CureMoment.HandsOff].Seconds)}" : "one does not go into the tub";
        string late = plan.Fits ? "" : " Even so it cannot be worked in time.";
        return $"Mix {plan.Batches} batches of {weigh} for a sheet of {sheet}: {why}.{late}{cost}";
    }

    private static double? Cost(Liner liner, WorkPlan plan) => liner.Putty is { Price: { } price, Pack: { } pack } ? price / pack * plan.Batch.Mass * plan.Batches : null;

    private static List<Figure> Figures(Liner liner, WorkPlan plan)
    {
        BatchSum b = plan.Batch;
        PuttyLabel p = liner.Putty;
        double area = 1e4 * plan.Sheet.Area, step = 1000 * liner.Bench.ScaleStep;
        List<Figure> figures =
        [
            Figure("sheet_area", "area of the sheet", "cm²", area, t => t.Input("area", area, "cm²")),
            Figure("batch_volume", "volume of one batch", "cm³", 1e6 * b.Volume, t =>
                $"{t.Input("area", area, "cm²")}/{t.Input("batches", plan.Batches, "")}·{t.Input("thickness", 1000 * liner.Thickness, "mm")}/10·(1 + {t.Input("spare", liner.Spare, "")})/(1 - {t.Input("waste", liner.Waste, "")})"),
            Figure("mix_density", "density of the mixture", "g/cm³", b.Density / 1000, t =>
                $"({t.Input("ratio_a", p.RatioA, "")} + {t.Input("ratio_b", p.RatioB, "")})/(ratio_a/{t.Input("density_a", p.DensityA / 1000, "g/cm³")} + ratio_b/{t.Input("density_b", p.DensityB / 1000, "g/cm³")})"),
            Part("weight_a", "weight of A in one batch", b, p, p.RatioA),
            Part("weight_b", "weight of B in one batch", b, p, p.RatioB),
            Figure("volume_a", "volume of A", "cm³", 1e6 * b.A.Volume, t => $"{t.Input("weight", 1000 * b.A.Mass, "g")}/{t.Input("density", p.DensityA / 1000, "g/cm³")}"),
            Figure("volume_b", "volume of B", "cm³", 1e6 * b.B.Volume, t => $"{t.Input("weight", 1000 * b.B.Mass, "g")}/{t.Input("density", p.DensityB / 1000, "g/cm³")}"),
            Figure("ball_a", "A rolled to a ball, across", "mm", 1000 * b.A.BallDiameter, t => $"10·(6·{t.Input("volume", 1e6 * b.A.Volume, "cm³")}/π)^(1/3)"),
            Figure("ball_b", "B rolled to a ball, across", "mm", 1000 * b.B.BallDiameter, t => $"10·(6·{t.Input("volume", 1e6 * b.B.Volume, "cm³")}/π)^(1/3)"),
            Figure("ball_check", "error of A if its ball is a millimetre out", "%", 100 * BatchSums.BallError(b.A.BallDiameter, BallCheckMm / 1000), t =>
                $"100·((1 + {t.Input("out", BallCheckMm, "mm")}/{t.Input("ball", 1000 * b.A.BallDiameter, "mm")})^3 - 1)"),
            Figure("ratio_error", "error of the ratio that the scale allows at worst", "%", 100 * b.RatioErrorWorst, t =>
                $"100·({t.Input("scale_step", step, "g")}/{t.Input("weight_a", 1000 * b.A.Mass, "g")} + scale_step/{t.Input("weight_b", 1000 * b.B.Mass, "g")})"),
        ];
        if (p is { Price: { } price, Pack: { } pack })
        {
            figures.Add(Figure("cost", "cost of all batches", p.Money, Cost(liner, plan)!.Value, t =>
                $"{t.Input("price", price, p.Money)}/{t.Input("pack", 1000 * pack, "g")}·{t.Input("batch", 1000 * b.Mass, "g")}·{t.Input("batches", plan.Batches, "")}"));
        }

        return figures;
    }

    private static Figure Part(string key, string words, BatchSum b, PuttyLabel p, double ratio) =>
        Figure(key, words, "g", 1000 * b.Mass * ratio / (p.RatioA + p.RatioB), t =>
            $"{t.Input("volume", 1e6 * b.Volume, "cm³")}·{t.Input("density", b.Density / 1000, "g/cm³")}·{t.Input("own_ratio", ratio, "")}/({t.Input("ratio_a", p.RatioA, "")} + {t.Input("ratio_b", p.RatioB, "")})");

    private static Figure Figure(string key, string words, string unit, double value, Func<Terms, string> formula)
    {
        Terms terms = new();
        string text = formula(terms);
        return new(key, words, unit) { Value = value, Working = terms.Working(text, MouldingSources.Geometry) };
    }

    private static IEnumerable<Finding> Findings(Liner liner, WorkPlan plan, WorkPlan whole)
    {
        BatchSum b = plan.Batch;
        PuttyLabel p = liner.Putty;
        double worst = 100 * b.RatioErrorWorst;
        string effect = "What a wrong ratio does to this putty is not known from its label: the part in excess stays unbonded, so expect it softer, stickier or slower, and test.";
        if (p.RatioError is { } allowed)
        {
            double margin = (allowed - b.RatioErrorWorst) / allowed;
            yield return new("ratio", "scale", Verdicts.Of(margin), $"A scale that shows {Short(1000 * liner.Bench.ScaleStep, 2)} g lets the ratio be out by up to {Number(worst)} %; the label allows {Number(100 * allowed)} %. {effect}",
                "Weigh on a finer scale, or mix fewer and bigger batches.")
            { Figure = worst, Limit = 100 * allowed, Unit = "%", Margin = margin };
        }
        else
        {
            yield return new("ratio", "scale", Verdict.NotKnown, $"A scale that shows {Short(1000 * liner.Bench.ScaleStep, 2)} g lets the ratio be out by up to {Number(worst)} %; the label does not say how much is too much. {effect}",
                $"Mix two scraps, one {Number(worst)} % over and one under, and compare them the next day; a scale that shows 0.1 g takes the question away.")
            { Figure = worst, Unit = "%" };
        }

        if (liner.Bench.Tub is { } tub)
        {
            double full = b.Volume / tub, margin = (WorkPlan.TubFill - full) / WorkPlan.TubFill;
            yield return new("tub", "tub", Verdicts.Of(margin), margin < 0
                    ? $"The tub is too small: one batch of {Number(1e6 * b.Volume, 0)} ml would fill {Number(100 * full, 0)} % of its {Number(1e6 * tub, 0)} ml, and above two thirds it can't be folded over."
                    : $"One batch of {Number(1e6 * b.Volume, 0)} ml fills {Number(100 * full, 0)} % of the tub.",
                $"Take a tub of {Number(1e6 * b.Volume / WorkPlan.TubFill, 0)} ml or more, or mix smaller batches.")
            { Figure = 1e6 * b.Volume, Limit = 1e6 * tub * WorkPlan.TubFill, Unit = "ml", Margin = margin };
        }

        double handsOff = plan.Cure[CureMoment.HandsOff].Seconds, left = -plan.Late / handsOff;
        yield return new("in_time", plan.Batches == 1 ? "the batch" : "each batch", Verdicts.Of(left), plan.Fits
                ? $"The work of {Clock(plan.End)} ends before hands off at {Clock(handsOff)}; the closest of its deadlines has {Clock(-plan.Late)} to spare."
                : $"The work can't be done in time, even in {plan.Batches} batches: the closest deadline is missed by {Clock(plan.Late)}.",
            "See 'clock' for what would make it fit: chilling, a helper, a cooler room.")
        { Figure = plan.End, Limit = handsOff, Unit = "s", Margin = left };
        if (plan.Batches > 1 && whole.Fits)
        {
            yield return new("tub_batches", "batches", Verdict.Tight, "One batch could be worked in time, but does not go into the tub.", "A bigger tub saves a seam.");
        }

        double ball = 100 * BatchSums.BallError(b.A.BallDiameter, BallCheckMm / 1000);
        yield return new("ball", "ball", Verdict.Good, $"Rolled to balls, A is {Number(1000 * b.A.BallDiameter)} mm and B {Number(1000 * b.B.BallDiameter)} mm across. It is a poor check: one millimetre out is {Number(ball)} % of the part. It finds the wrong tub or a slip of ten, not a bad weighing.", "Trust the scale.");
    }

    private static IEnumerable<Table> Tables(HandModel hand, Liner liner, WorkPlan plan)
    {
        BatchSum b = plan.Batch;
        double step = liner.Bench.ScaleStep;
        yield return new("batch", [new("part", ""), new("weigh", ""), new("volume", "ml"), new("ball", "mm"), new("1 mm out", "%")],
        [
            ["A", Grams(b.A.Mass, step), 1e6 * b.A.Volume, 1000 * b.A.BallDiameter, 100 * BatchSums.BallError(b.A.BallDiameter, BallCheckMm / 1000)],
            ["B", Grams(b.B.Mass, step), 1e6 * b.B.Volume, 1000 * b.B.BallDiameter, 100 * BatchSums.BallError(b.B.BallDiameter, BallCheckMm / 1000)],
            ["together", Grams(OnScale(b.A.Mass, step) + OnScale(b.B.Mass, step), step), 1e6 * b.Volume, 1000 * b.BallDiameter, 100 * BatchSums.BallError(b.BallDiameter, BallCheckMm / 1000)],
        ]);
        yield return new("rolling", [new("rule", "")],
        [
            [$"Two rods of {Short(1000 * liner.Thickness)} mm, one each side, carry the roller: they set the thickness, not your eye."],
            ["Roll from the middle outward, turn the sheet by a quarter each time, never back over an edge."],
            [$"Between two sheets of clean polyethylene, wide enough for {Number(100 * Math.Sqrt(plan.Sheet.Area / plan.Batches), 0)} cm a side and a hand more."],
            ["Wet nothing. A bubble is pricked at once, flat, from the side."],
        ]);
        if (plan.Batches > 1)
        {
            yield return Seams(hand, plan);
        }

        if (plan.Sheet.Outline.Count > 0)
        {
            yield return new("outline of the sheet, laid flat", [new("place on the limb", "mm"), new("along the sheet", "mm"), new("half width either side of the middle line", "mm")],
                [.. plan.Sheet.Outline.Select(r => (IReadOnlyList<Cell>)[1000 * r.Place, 1000 * r.Along, 500 * r.Width])]);
        }

        yield return Inhibitors.Table;
        yield return new("seal and release", [new("what does not stop the cure, as far as the lists go", "")], [.. Inhibitors.Safe.Select(s => (IReadOnlyList<Cell>)[s])]);
    }

    /// <summary>Batches in order, from the far edge: hollows and thumb first, while hands are fresh; each seam lies on a cured edge.</summary>
    private static Table Seams(HandModel hand, WorkPlan plan)
    {
        IReadOnlyList<double> cuts = plan.Sheet.Outline.Count == 0 ? [] : Splitting.EqualAreas([.. plan.Sheet.Outline.Select(r => r.Place)], [.. plan.Sheet.Outline.Select(r => r.Width)], plan.Batches);
        List<IReadOnlyList<Cell>> rows = [];
        for (int i = 0; i < plan.Batches; i++)
        {
            int c = plan.Batches - 2 - i;
            string where = c < 0 ? "up to the near edge" : cuts.Count == 0 ? $"piece {i + 1} of {plan.Batches}" : $"down to {Number(1000 * cuts[c], 0)} mm";
            string on = c < 0 || cuts.Count == 0 ? "" : Inside(hand, cuts[c]);
            rows.Add([i + 1, where, i == 0 ? "far edge first, hollows and thumb with it" : "overlap the firm edge before: clean, dry, no release on it", on]);
        }

        return new("batches in order", [new("batch", ""), new("piece", ""), new("seam", ""), new("mind", "")], rows);
    }

    private static string Inside(HandModel hand, double place)
    {
        string[] hit = [.. hand.Form!.Patches.Where(p => p.Kind != PatchKind.Seam && p.From <= place && place <= p.To).Select(p => p.Name)];
        return hit.Length == 0 ? "" : $"crosses {Row(hit)}: step the seam round it";
    }
}
