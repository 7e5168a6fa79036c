using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;
using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>What is told about a form, with what pictures show of it.</summary>
/// <param name="Answer">The answer; <see langword="null"/> = there is none.</param>
/// <param name="Errors">What is wrong with the input.</param>
/// <param name="Sheet">The sheet on its form.</param>
public sealed record FormResult(Answer? Answer, IReadOnlyList<InputError> Errors, SheetOnForm? Sheet)
{
    /// <summary>The skin map.</summary>
    public IReadOnlyList<LimbPatch> Patches { get; init; } = [];

    /// <summary>Wires over the liner.</summary>
    public IReadOnlyList<WireOnForm> Wires { get; init; } = [];
}

/// <summary>How big is the form, how thick does the sheet lie on it, and where does it trap air?</summary>
public static class FormAnswer
{
    private const double GirthTolerance = 0.02;

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Path of its file.</param>
    /// <param name="say">Told how far a long thinning of a scan is.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static FormResult Of(HandModel hand, string file, Action<string>? say = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(hand);
        (FormModel? form, IReadOnlyList<InputError> errors) = FormModel.Of(hand, file, say, stop);
        if (form is null)
        {
            return new(null, errors, null);
        }

        SheetOnForm sheet = SheetOnForm.Of(form, hand, stop: stop);
        SurfaceSums sums = SurfaceSums.Of(form.Sides);
        List<Figure> figures = Figures(form, sheet, sums);
        IReadOnlyList<WireOnForm> wires = WireOnForm.All(sheet, hand.Form!, stop);
        List<Finding> findings = [.. Findings(form, sheet, hand), .. WireTables.Findings(wires, sheet, hand.Form!)];
        Answer answer = new()
        {
            Verb = "form",
            Hand = hand.Name,
            Sentence = Sentence(form, sheet),
            Figures = figures,
            Findings = findings,
            Tables = [Hollows(sheet), Girths(form, hand.Form!), .. Edges(hand.Form!), .. WireTables.Tables(wires, form), .. Skin(hand.Form!), .. Mends(form)],
            Cautions = wires.Count > 0 ? [.. FormCautions.Form.SkipLast(1), .. FormCautions.Wires, FormCautions.Form[^1]] : FormCautions.Form,
        };
        return new(answer, [], sheet) { Patches = hand.Form!.Patches, Wires = wires };
    }

    private static string Sentence(FormModel form, SheetOnForm sheet)
    {
        string first = $"Made from {form.From}: the liner covers {Number(1e4 * sheet.Volume.Area, 0)} cm² and {Number(1e6 * sheet.Volume.Volume, 0)} ml of sheet lie on it, {Short(1000 * sheet.Plain)} mm thick.";
        if (sheet.Rule is not { } rule)
        {
            return $"{first} Where it bridges is not known: the label gives no hardness.";
        }

        return sheet.Hollows.Count == 0
            ? $"{first} Pressed by hand it reaches every place: it follows any hollow that a ball of {Number(2000 * rule.Radius, 0)} mm goes into."
            : sheet.Hollows.Count == 1
            ? $"{first} It would bridge one hollow, {Number(1000 * sheet.Hollows[0].Depth)} mm deep: press it in first."
            : $"{first} It would bridge {sheet.Hollows.Count} hollows, the deepest by {Number(1000 * sheet.Hollows.Max(h => h.Depth))} mm: press them in first.";
    }

    private static List<Figure> Figures(FormModel form, SheetOnForm sheet, SurfaceSums sums)
    {
        Terms steiner = new(), flat = new();
        string text = $"{steiner.Input("area", 1e4 * sheet.Volume.Area, "cm²")}·{steiner.Input("thickness", 100 * sheet.Plain, "cm")} + {steiner.Input("mean_curvature", 100 * sheet.Volume.MeanCurvature, "cm")}·thickness^2 + {steiner.Input("gauss_curvature", sheet.Volume.GaussCurvature, "rad")}·thickness^3/3";
        List<Figure> figures =
        [
            Plain("form_area", "surface of the whole form", "cm²", 1e4 * sums.Area),
            form.Repair is { Closed: false } ? new("form_volume", "volume of the whole form", "ml") { Why = "The form is open." } : Plain("form_volume", "volume of the whole form", "ml", 1e6 * sums.Volume),
            Plain("region_area", "area that the liner covers", "cm²", 1e4 * sheet.Volume.Area),
            Plain("sheet_volume", "volume of the sheet on the curved form", "ml", 1e6 * sheet.Volume.Volume),
            new("sheet_volume_steiner", "the same by Steiner's formula, one thickness all over", "ml") { Value = 1e6 * sheet.Volume.Steiner, Working = steiner.Working(text, FormSources.Steiner) },
            new("sheet_volume_flat", "the same as if it lay flat", "ml") { Value = 1e6 * sheet.Volume.Flat, Working = flat.Working($"{flat.Input("area", 1e4 * sheet.Volume.Area, "cm²")}·{flat.Input("thickness", 100 * sheet.Plain, "cm")}", FormSources.Surface) },
        ];
        if (form.Raised != 0)
        {
            figures.Add(Plain("relief_volume", "built up for relief, less what is carved", "ml", 1e6 * form.Raised));
        }

        if (sheet.Rule is { } rule)
        {
            Terms ball = new();
            string bending = $"{ball.Input("modulus", rule.Modulus, "Pa")}·{ball.Input("thickness", rule.Thickness, "m")}^3/(12·(1 - {ball.Input("poisson", Graspwright.Form.Hollows.BridgingRule.Poisson, "")}^2))";
            figures.Add(new("ball_radius", "ball that goes where the sheet goes: smaller hollows are bridged", "mm") { Value = 1000 * rule.Radius, Working = ball.Working($"1000·max(thickness, (6·{bending}/{ball.Input("hand_pressure", rule.Pressure, "Pa")})^(1/3))", FormSources.Plate) });
            figures.Add(Plain("deepest_hollow", "deepest hollow that the sheet bridges", "mm", 1000 * sheet.Hollows.Select(h => h.Depth).DefaultIfEmpty(0).Max()));
        }

        return figures;
    }

    private static Figure Plain(string key, string words, string unit, double value) => new(key, words, unit) { Value = value, Working = new("added_up", [new("added_up", value, unit)], FormSources.Surface) };

    private static IEnumerable<Finding> Findings(FormModel form, SheetOnForm sheet, HandModel hand)
    {
        if (form.Repair is { } repair)
        {
            foreach (Leftover left in repair.Leftovers)
            {
                yield return new("scan", "scan", left.What.StartsWith("open", StringComparison.Ordinal) ? Verdict.Tight : Verdict.Fails, $"{Capital(left.What)}: {left.Count}, {At(left.Place)}.", "Close it in the scanner's program, or scan that place again; an arm that is cut off in the air may stay open outside the liner's edges.");
            }

            foreach (Finding tape in Tape(form, hand.Form!))
            {
                yield return tape;
            }

            if (form.Thumb is { End: not > 0 } thumb)
            {
                yield return new("thumb", "thumb", Verdict.Good, $"The scan has a thumb, {Number(1000 * thumb.RootGirth)} mm round at its root, and the file says nothing of covering it: the liner leaves it out.", "For a sleeve write [form.thumb] with its root, largest girth and covered length.");
            }
        }

        foreach (LimbPatch patch in hand.Form!.Patches.Where(p => p.Thickness > Math.Min(0.012, form.Frame.Radius((p.From + p.To) / 2) / 2)))
        {
            yield return new("thickness", patch.Name, Verdict.Fails, $"{Number(1000 * patch.Thickness!.Value)} mm of sheet is more than the form bears there.", "Write a thickness in millimetres that is a small part of the limb's.");
        }

        if (sheet.Plain > form.Frame.Radius((hand.Form.NearEdge + hand.Form.FarEdge) / 2) / 2)
        {
            yield return new("thickness", "liner", Verdict.Fails, $"The sheet of {Number(1000 * sheet.Plain)} mm is as thick as the form: it does not lie round it.", "Check liner.thickness and the unit of the form.");
        }

        if (sheet.Rule is null)
        {
            yield return new("hollows", "liner", Verdict.NotKnown, "Where the sheet bridges depends on its hardness.", "Copy shore_a from the tub's data sheet into [liner.putty].");
            yield break;
        }

        (string Name, DrawnLoop Outline)[] sore = [.. hand.Form.Patches.Where(p => p.Kind is PatchKind.Tender or PatchKind.Scar or PatchKind.Bony or PatchKind.Numb).Select(p => (p.Name, SkinMap.Outline(form.Frame, p)))];
        for (int i = 0; i < sheet.Hollows.Count; i++)
        {
            Graspwright.Form.Hollows.Hollow hollow = sheet.Hollows[i];
            Vector3D p = sheet.Region.Sides.Mesh.At(hollow.Deepest);
            string? on = sore.FirstOrDefault(s => s.Outline.At(p) <= 0).Name;
            string at = At(form, p);
            string near = on is null ? "" : $" It lies on {on}: rather fill it on the plaster than press hard there.";
            yield return new("hollow", $"hollow {i + 1}", hollow.Depth > sheet.Plain ? Verdict.Fails : Verdict.Tight, $"The sheet bridges {Number(1e6 * hollow.Area, 0)} mm², {Number(1000 * hollow.Depth)} mm deep, {at}: air stays under it.{near}",
                $"Press it in as number {i + 1}, before the sheet is laid farther; else fill it on the plaster.")
            { Figure = 1000 * hollow.Depth, Limit = 1000 * sheet.Plain, Unit = "mm" };
        }

        if (sheet.Hollows.Count == 0)
        {
            yield return new("hollows", "liner", Verdict.Good, $"The sheet lies on everywhere: no hollow deeper than {Number(1000 * SheetOnForm.LeastDepth)} mm is tighter than its ball of {Number(1000 * sheet.Rule.Radius)} mm radius.", "Nothing need change.");
        }
    }

    private static IEnumerable<Finding> Tape(FormModel form, LimbForm limb)
    {
        IEnumerable<(string Name, double Place, double Tape, double Scan)> girths = limb.Marks.Select(m => (m.Name, m.Place, m.Girth, TapeGirth.Of(form.Mesh, m.Place, form.IsThumb)));
        if (limb.Thumb is { } tape && form.Thumb is { } thumb)
        {
            girths = girths.Append(("thumb", thumb.WebPlace, tape.Root, thumb.RootGirth));
        }

        foreach ((string name, double place, double read, double girth) in girths.Where(g => double.IsFinite(g.Scan)))
        {
            double off = girth / read - 1;
            if (Math.Abs(off) > GirthTolerance)
            {
                string where = name == "thumb" ? "at the thumb's root" : $"at {Number(1000 * place, 0)} mm";
                yield return new("tape", name, Math.Abs(off) > 3 * GirthTolerance ? Verdict.Fails : Verdict.Tight, $"The scan measures {Number(1000 * girth)} mm round {where}, the tape {Number(1000 * read)} mm: {Number(100 * off)} %.",
                    "Measure again; then check zero_at and the unit of the scan.")
                { Figure = 1000 * girth, Limit = 1000 * read, Unit = "mm" };
            }
        }
    }

    internal static string At(FormModel form, Vector3D p)
    {
        (double place, double angle) = form.Frame.Of(p);
        return $"at {Number(1000 * place, 0)} mm, {Number(double.RadiansToDegrees(LimbFrame.Turn(angle)), 0)}° round from the back";
    }

    private static string At(Vector3D p) => double.IsNaN(p.X) ? "here and there" : $"the first at {Number(1000 * p.X, 0)}, {Number(1000 * p.Y, 0)}, {Number(1000 * p.Z, 0)} mm";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static Table Hollows(SheetOnForm sheet) => new("hollows, in the order to press them in",
        [new("no", ""), new("place", "mm"), new("round", "deg"), new("deep", "mm"), new("area", "mm²"), new("air", "ml")],
        [.. sheet.Hollows.Select((h, i) => (sheet.Form.Frame.Of(sheet.Region.Sides.Mesh.At(h.Deepest)), h, i)).Select(x => (IReadOnlyList<Cell>)[x.i + 1, 1000 * x.Item1.Place, double.RadiansToDegrees(LimbFrame.Turn(x.Item1.Angle)), 1000 * x.h.Depth, 1e6 * x.h.Area, 1e6 * x.h.Volume])]);

    private static Table Girths(FormModel form, LimbForm limb) => new("girths of the form",
        [new("mark", ""), new("place", "mm"), new("tape", "mm"), new("form", "mm")],
        [.. limb.Marks.Select(m => (IReadOnlyList<Cell>)[m.Name, 1000 * m.Place, 1000 * m.Girth, 1000 * TapeGirth.Of(form.Mesh, m.Place, form.IsThumb)])]);

    private static IEnumerable<Table> Edges(LimbForm limb)
    {
        if (limb.NearLine.Count + limb.FarLine.Count > 0)
        {
            yield return new("edges of the liner", [new("edge", ""), new("mean", "mm"), new("nearest to the elbow", "mm"), new("nearest to the fingertips", "mm"), new("drawn as", "")],
                [Row("toward the elbow", limb.NearEdge, limb.NearLine), Row("toward the fingertips", limb.FarEdge, limb.FarLine)]);
        }

        static IReadOnlyList<Cell> Row(string edge, double plane, IReadOnlyList<LimbCorner> line) =>
            [edge, 1000 * plane, 1000 * line.Select(c => c.Place).DefaultIfEmpty(plane).Min(), 1000 * line.Select(c => c.Place).DefaultIfEmpty(plane).Max(), line.Count > 0 ? $"line of {line.Count} corners" : "plane"];
    }

    private static IEnumerable<Table> Skin(LimbForm limb)
    {
        if (limb.Patches.Count > 0)
        {
            yield return new("skin map", [new("patch", ""), new("kind", ""), new("from", "mm"), new("to", "mm"), new("from angle", "deg"), new("to angle", "deg"), new("relief", "mm"), new("thickness", "mm"), new("drawn as", "")],
                [.. limb.Patches.Select(p => (IReadOnlyList<Cell>)[p.Name, Words(p.Kind), 1000 * p.From, 1000 * p.To, double.RadiansToDegrees(p.AngleFromRadians), double.RadiansToDegrees(p.AngleToRadians), 1000 * p.Relief, p.Thickness is { } t ? 1000 * t : default(Cell), p.Outline.Count > 0 ? $"outline of {p.Outline.Count} corners" : "from and to"])]);
        }
    }

    private static string Words(PatchKind kind) => kind switch { PatchKind.LikesLoad => "likes load", PatchKind.KeepOut => "keep out", _ => kind.ToString().ToLowerInvariant() };

    private static IEnumerable<Table> Mends(FormModel form)
    {
        if (form.Repair is { } repair)
        {
            yield return new("what was mended", [new("what", ""), new("how often", ""), new("x", "mm"), new("y", "mm"), new("z", "mm")],
                [.. repair.Mends.Select(m => (IReadOnlyList<Cell>)[m.What, m.Count, 1000 * m.Place.X, 1000 * m.Place.Y, 1000 * m.Place.Z])]);
        }
    }
}
