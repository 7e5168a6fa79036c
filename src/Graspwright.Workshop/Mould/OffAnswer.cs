using System.Numerics;
using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>The answer about coming off with what pictures show of it.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Stretch">Stretch along the liner.</param>
/// <param name="Allowed">Elongation allowed; <see langword="null"/> = not on the label.</param>
/// <param name="Cut">The cut; <see langword="null"/> = none needed, or not known.</param>
public sealed record OffResult(Answer Answer, IReadOnlyList<StretchAt> Stretch, double? Allowed, Cut? Cut);

/// <summary>Does the liner come off over the hand, and where is it cut if it does not?</summary>
public static class OffAnswer
{
    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file, for errors.</param>
    /// <returns>The result, or what is missing for it.</returns>
    public static (OffResult? Result, IReadOnlyList<InputError> Errors) Of(HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (MouldMapping.Missing(hand, file, liner: true, form: true) is { Count: > 0 } missing)
        {
            return (null, missing);
        }

        Liner liner = hand.Liner!;
        LimbForm form = hand.Form!;
        TapeForm limb = MouldMapping.Form(form);
        Girths girths = MouldMapping.Girths(form);
        double snug = hand.Copies?.Snug ?? 0;
        double? allowed = liner.Putty.Elongation * liner.Off.StretchShare;
        IReadOnlyList<StretchAt> stretch = HoopStretch.Along(girths, form.NearEdge, form.FarEdge, snug, girths.Places[^1]);
        StretchAt worst = stretch.MaxBy(s => s.Stretch);
        // Where it must be cut, it is cut on until the stretch left at its end lets a hole of sensible size hold.
        double left = Math.Min(allowed ?? 0, TearFindings.LeftAtEnd(liner.Putty, stretch.Max(s => s.Girth)));
        bool needed = allowed is { } share && worst.Stretch > share;
        PlannedCut? cut = needed && HoopStretch.Cuts(stretch, left) is { } cuts ? PlannedCut.Of(cuts, girths, form, liner.Off.Clearance) : null;
        Terms terms = new();
        string formula = $"100·({terms.Input("largest_girth", 1000 * worst.Largest, "mm")}/{terms.Input("own_girth", 1000 * worst.Girth, "mm")} - 1)";
        List<Figure> figures = [new("hoop_stretch", "greatest stretch round the limb on the way off", "%") { Value = 100 * worst.Stretch, Working = terms.Working(formula, MouldingSources.Geometry) }];
        List<Finding> findings = [StretchFinding(worst, allowed, form)];
        if (cut is { } planned)
        {
            Terms length = new();
            string text = $"abs({length.Input("hole_place", 1000 * planned.Cut.To, "mm")} - {length.Input("edge", 1000 * planned.Cut.From, "mm")})";
            figures.Add(new("cut_length", "length of the cut", "mm") { Value = 1000 * planned.Cut.Length, Working = length.Working(text, MouldingSources.Geometry) });
            findings.Add(planned.Finding(form, liner.Off.Clearance));
            StretchAt end = stretch.MinBy(s => Math.Abs(s.Place - planned.Cut.To));
            TearFindings.Add(figures, findings, liner.Putty, left, planned.Cut.Length, end.Girth);
        }

        PullFindings.Add(figures, findings, hand, girths, snug);
        ThumbFinding(figures, findings, form, snug, allowed);
        findings.Add(UndercutFinding(limb, form, figures));
        Answer answer = new()
        {
            Verb = "off",
            Hand = hand.Name,
            Sentence = Sentence(worst, allowed, cut, figures),
            Figures = figures,
            Findings = findings,
            Tables = [Marks(form, stretch, allowed, cut?.Cut)],
            Cautions = MouldCautions.Off,
        };
        return (new(answer, stretch, allowed, cut?.Cut), []);
    }

    private static string Sentence(StretchAt worst, double? allowed, PlannedCut? cut, List<Figure> figures)
    {
        string way = $"On its way off the liner is stretched by {Number(100 * worst.Stretch, 0)} % where it sits at {Number(1000 * worst.Place, 0)} mm and passes {Number(1000 * worst.Largest, 0)} mm of girth";
        if (allowed is not { } limit)
        {
            return $"{way}. Whether it may is not known: the label gives no elongation.";
        }

        if (cut is not { } planned)
        {
            return $"{way}; {Number(100 * limit, 0)} % is allowed: it comes off whole.";
        }

        double? hole = figures.FirstOrDefault(f => f.Key == "hole_diameter")?.Value;
        string end = hole is { } mm ? $" and end it in a {Number(Math.Ceiling(mm - 1e-6), 0)} mm round hole" : " and end it in a round hole";
        return $"{way}; {Number(100 * limit, 0)} % is allowed. Cut it {Number(1000 * planned.Cut.Length, 0)} mm deep from the edge at {Number(1000 * planned.Cut.From, 0)} mm, {planned.Where},{end}.";
    }

    private static Finding StretchFinding(StretchAt worst, double? allowed, LimbForm form)
    {
        string reason = $"Where it sits at {Number(1000 * worst.Place, 0)} mm from the {form.Zero} it has to pass {Number(1000 * worst.Largest, 0)} mm of girth at {Number(1000 * worst.LargestAt, 0)} mm: {Number(100 * worst.Stretch)} % longer than it is.";
        if (allowed is not { } limit)
        {
            return new("stretch", "liner", Verdict.NotKnown, $"{reason} The label gives no elongation.", "Copy the elongation from the tub's data sheet, or pull a cured strip beside a ruler until it breaks.") { Figure = 100 * worst.Stretch, Unit = "%" };
        }

        double margin = limit > 0 ? (limit - worst.Stretch) / limit : -1;
        return new("stretch", "liner", Verdicts.Of(margin), $"{reason} {Number(100 * limit)} % is allowed.", "Cut it as below, make it shorter at the edge, or take a softer putty with more elongation.") { Figure = 100 * worst.Stretch, Limit = 100 * limit, Unit = "%", Margin = margin };
    }

    private static void ThumbFinding(List<Figure> figures, List<Finding> findings, LimbForm form, double snug, double? allowed)
    {
        if (form.Thumb is not { } thumb)
        {
            return;
        }

        ThumbSleeve sleeve = new(thumb.Root * (1 - snug), thumb.Largest, thumb.Length, thumb.AngleRadians);
        Terms terms = new();
        string own = $"({terms.Input("root", 1000 * thumb.Root, "mm")}·(1 - {terms.Input("snug", snug, "")}))";
        string formula = $"100·((max({own}, {terms.Input("largest", 1000 * thumb.Largest, "mm")}) + 2·{terms.Input("length", 1000 * thumb.Length, "mm")}·sin({terms.Input("angle", thumb.AngleRadians, "rad")}))/{own} - 1)";
        figures.Add(new("thumb_stretch", "stretch of the thumb's sleeve drawn off along the arm", "%") { Value = 100 * sleeve.Stretch, Working = terms.Working(formula, MouldingSources.Geometry) });
        string reason = $"Drawn straight off along the arm, the thumb's sleeve would be stretched by up to {Number(100 * sleeve.Stretch, 0)} %, if the thumb does not fold in.";
        if (allowed is not { } limit)
        {
            findings.Add(new("thumb", "thumb", Verdict.NotKnown, reason, "Copy the elongation from the tub's data sheet.") { Figure = 100 * sleeve.Stretch, Unit = "%" });
            return;
        }

        double margin = limit > 0 ? (limit - sleeve.Stretch) / limit : -1, cut = sleeve.Cut(limit);
        findings.Add(new("thumb", "thumb", Verdicts.Of(margin), reason, $"Slip the thumb out first; else cut its sleeve {Number(1000 * cut, 0)} mm from its open end, on the side away from the web, into a round hole.") { Figure = 100 * sleeve.Stretch, Limit = 100 * limit, Unit = "%", Margin = margin });
    }

    private static Finding UndercutFinding(TapeForm limb, LimbForm form, List<Figure> figures)
    {
        FacedSurface faces = limb.Faces(form.NearEdge, form.FarEdge);
        UndercutSum sum = Undercuts.Of(faces.Normals, faces.Areas, Vector3.UnitZ);
        figures.Add(new("undercut_share", "share of the surface that holds a rigid shell back", "%") { Value = 100 * sum.Share });
        if (sum.Worst < 0)
        {
            return new("undercut", "rigid shell", Verdict.Good, "Nothing holds a rigid shell back when it is drawn off over the fingertips.", "");
        }

        double back = double.RadiansToDegrees(sum.WorstAngle), place = 1000 * faces.Points[sum.Worst].Z;
        return new("undercut", "rigid shell", Verdict.Fails, $"Drawn off over the fingertips, a rigid shell is held back by {Number(100 * sum.Share, 0)} % of the surface; the worst of it, at {Number(place, 0)} mm, leans back by {Number(back)}°.",
            "Make shell and plaster negatives in two halves, parted along both sides of the limb; a soft liner stretches past.")
        { Figure = 100 * sum.Share, Limit = 0, Unit = "%" };
    }

    private static Table Marks(LimbForm form, IReadOnlyList<StretchAt> stretch, double? allowed, Cut? cut) => new("girths on the way off",
        [new("mark", ""), new("place", "mm"), new("girth", "mm"), new("largest to pass", "mm"), new("stretch", "%"), new("note", "")],
        [.. form.Marks.Where(m => m.Place >= form.NearEdge && m.Place <= form.FarEdge).Select(m => Row(m, stretch.MinBy(s => Math.Abs(s.Place - m.Place)), allowed, cut))]);

    private static IReadOnlyList<Cell> Row(LimbMark mark, StretchAt s, double? allowed, Cut? cut)
    {
        bool open = cut is { } c && mark.Place >= Math.Min(c.From, c.To) && mark.Place <= Math.Max(c.From, c.To);
        return [mark.Name, 1000 * mark.Place, 1000 * mark.Girth, 1000 * s.Largest, 100 * s.Stretch, open ? "cut open" : s.Stretch > allowed ? "too much" : ""];
    }
}
