using Graspwright.Form.Flattening;
using Graspwright.Form.Pattern;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>A mark on the paper.</summary>
/// <param name="X">To the right on its piece [m].</param>
/// <param name="Y">Up on its piece [m].</param>
/// <param name="Words">What it is.</param>
/// <param name="Kind">Contact, hollow or skin.</param>
public readonly record struct PatternMark(double X, double Y, string Words, string Kind);

/// <summary>A piece as the paper shows it: fingertips up, outer side up.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Pattern">The piece.</param>
/// <param name="Place">Where a point of the flat piece lies on the paper, from its lower left corner [m].</param>
/// <param name="Marks">Marks on it.</param>
/// <param name="Lines">Outlines of patches and hollows on it: words and pieces of line [m].</param>
/// <param name="Width">Width on the paper [m].</param>
/// <param name="Height">Height on the paper [m].</param>
/// <param name="Darts">Darts that were opened.</param>
public sealed record PaperPiece(string Name, PatternPiece Pattern, Func<double, double, (double X, double Y)> Place, IReadOnlyList<PatternMark> Marks,
    IReadOnlyList<(string Words, IReadOnlyList<((double X, double Y) From, (double X, double Y) To)> Line)> Lines, double Width, double Height, int Darts)
{
    /// <summary>Wires that go over it.</summary>
    public IReadOnlyList<WireOnPaper> Wires { get; init; } = [];
}

/// <summary>The paper pattern.</summary>
/// <param name="Answer">The answer; <see langword="null"/> = there is none.</param>
/// <param name="Errors">What is wrong with the input.</param>
/// <param name="Pieces">The pieces.</param>
public sealed record PatternResult(Answer? Answer, IReadOnlyList<InputError> Errors, IReadOnlyList<PaperPiece> Pieces);

/// <summary>Which pieces are cut from the sheet, and how far is it stretched when they are laid on the form?</summary>
public static class PatternAnswer
{
    private const double UsualAllowance = 0.008, MostFlips = 0;
    private const double Comfortable = 0.9, MostOver = 2; // of the limit: good up to the first, not to be laid beyond the second
    private const double MostBeyond = 0.1, PaysTwo = 0.7; // share of the area beyond the limit from which two pieces are tried, and to what share of it they must bring it

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Path of its file.</param>
    /// <param name="traced">Outline of a piece that was pressed, cut and laid flat, as it was traced [m]; <see langword="null"/> = none to compare with.</param>
    /// <param name="say">Told how far a long thinning of a scan is.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static PatternResult Of(HandModel hand, string file, IReadOnlyList<(double X, double Y)>? traced = null, Action<string>? say = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(hand);
        (FormModel? form, IReadOnlyList<InputError> errors) = FormModel.Of(hand, file, say, stop);
        if (form is null)
        {
            return new(null, errors, []);
        }

        PatternPlan plan = hand.Form!.Pattern;
        SheetOnForm sheet = SheetOnForm.Of(form, hand, stop: stop);
        List<(Piece Piece, Flat Flat, int Darts)> flats;
        try
        {
            flats = Flats(sheet, hand.Form, stop);
            if (flats.Any(f => f.Flat.Crossings > 0) || Beyond(flats, plan.Stretch) >= MostBeyond)
            {
                // round the thumb one sheet laps over itself, or a waist stretches it too far: it is cut in two where that pays
                SheetOnForm two = sheet.Split(hand, stop);
                List<(Piece Piece, Flat Flat, int Darts)> halves = Flats(two, hand.Form, stop);
                if (flats.Sum(f => f.Flat.Crossings) > halves.Sum(f => f.Flat.Crossings) || Beyond(halves, plan.Stretch) < PaysTwo * Beyond(flats, plan.Stretch))
                {
                    (sheet, flats) = (two, halves);
                }
            }
        }
        catch (InvalidOperationException refusal)
        {
            return new(null, [new(file, 0, 0, "form", refusal.Message.TrimEnd('.'), "a limb with a few openings", "Mend the scan: it has handles or tunnels that no limb has.")], []);
        }

        double allowance = plan.Allowance ?? hand.Liner?.Overlap ?? UsualAllowance;
        IReadOnlyList<PatternPiece> rims = Rims.Of([.. flats.Select(f => (f.Piece, f.Flat))], allowance, plan.BothSides, plan.Notches);
        string[] names = Names(sheet, rims);
        IReadOnlyList<WireOnForm> wires = WireOnForm.All(sheet, hand.Form, stop);
        PaperPiece[] pieces = [.. rims.Select((r, i) => PaperPieces.Make(r, names[i], sheet, hand, wires, flats[i].Darts))];
        List<Figure> figures = Figures(pieces, allowance);
        List<Finding> findings = [.. Findings(pieces, plan, hand, sheet), .. wires.SelectMany(w => WireTables.Crossings(w, form))];
        List<Table> tables = [Pieces(pieces, plan)];
        if (traced is not null)
        {
            OutlineComparison.Add(pieces, traced, figures, findings, tables);
        }

        Answer answer = new()
        {
            Verb = "pattern",
            Hand = hand.Name,
            Sentence = Sentence(pieces, plan, allowance),
            Figures = figures,
            Findings = findings,
            Tables = tables,
            Cautions = FormCautions.Pattern,
        };
        return new(answer, [], pieces);
    }

    private static List<(Piece Piece, Flat Flat, int Darts)> Flats(SheetOnForm sheet, LimbForm limb, CancellationToken stop)
    {
        Func<int, double> dear = Dear(sheet, limb);
        (IReadOnlyList<Piece> discs, _) = Discs.Of(Neighbourhood.Of(sheet.Middle()), sheet.Region.Seams, dear);
        return [.. discs.Select(d => Darts.Of(d, limb.Pattern.Stretch, dear, stop))];
    }

    // Share of the area of all pieces that is stretched beyond a limit.
    private static double Beyond(List<(Piece Piece, Flat Flat, int Darts)> flats, double limit)
    {
        double[] areas = [.. flats.Select(f => SurfaceSums.Of(f.Piece.Sides).Area)];
        return flats.Select((f, i) => areas[i] * Darts.ShareBeyond(f.Piece, f.Flat, limit)).Sum() / areas.Sum();
    }

    private static Func<int, double> Dear(SheetOnForm sheet, LimbForm limb)
    {
        Mesh mesh = sheet.Region.Sides.Mesh;
        double[] cost = new double[mesh.PointCount];
        Array.Fill(cost, 1);
        foreach (LimbPatch patch in limb.Patches.Where(p => p.Kind is not (PatchKind.LikesLoad or PatchKind.Seam)))
        {
            double[] away = SkinMap.Outline(sheet.Form.Frame, patch).Values(mesh);
            for (int v = 0; v < cost.Length; v++)
            {
                cost[v] = away[v] <= 0 ? 20 : cost[v];
            }
        }

        return v => cost[v];
    }

    private static bool OnThumb(SheetOnForm sheet, PatternPiece piece)
    {
        HashSet<int> thumb = [];
        Mesh mesh = sheet.Region.Sides.Mesh;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            if (sheet.Region.IsThumb[f])
            {
                thumb.UnionWith([mesh.Corners[3 * f], mesh.Corners[3 * f + 1], mesh.Corners[3 * f + 2]]);
            }
        }

        return 2 * piece.Piece.OldPoints.Count(thumb.Contains) > piece.Piece.OldPoints.Length;
    }

    // The sheet, or its back and its palm by which way they look; further ones are numbered.
    private static string[] Names(SheetOnForm sheet, IReadOnlyList<PatternPiece> pieces)
    {
        string[] names = [.. pieces.Select(p => OnThumb(sheet, p) ? "thumb sleeve" : "")];
        int[] plain = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Length == 0)];
        Mesh mesh = sheet.Region.Sides.Mesh;
        double Back(int i) => pieces[i].Piece.OldPoints.Average(v => Math.Cos(sheet.Form.Frame.Of(mesh.At(v)).Angle));
        bool backFirst = plain.Length > 1 && Back(plain[0]) >= Back(plain[1]);
        for (int k = 0; k < plain.Length; k++)
        {
            names[plain[k]] = plain.Length == 1 ? "sheet" : k > 1 ? $"piece {k + 1}" : k == 0 == backFirst ? "back" : "palm";
        }

        return names;
    }

    private static double Worst(PaperPiece piece) => Darts.Reached(piece.Pattern.Piece, f => Darts.Beyond(piece.Pattern.Flat, f)).Value;

    private static string Sentence(PaperPiece[] pieces, PatternPlan plan, double allowance)
    {
        string count = pieces.Length == 1 ? "one piece" : $"{pieces.Length} pieces";
        string sizes = string.Join(", ", pieces.Select(p => $"{p.Name} {Number(1000 * p.Width, 0)} by {Number(1000 * p.Height, 0)} mm"));
        double share = pieces.Sum(p => p.Pattern.Area * Darts.ShareBeyond(p.Pattern.Piece, p.Pattern.Flat, plan.Stretch)) / pieces.Sum(p => p.Pattern.Area);
        int darts = pieces.Sum(p => p.Darts);
        string stretch = share < 0.005 ? $"laid on, none of it is stretched or squeezed by more than {Short(100 * plan.Stretch)} %" : $"laid on, {Number(100 * share, 0)} % of it is stretched or squeezed by more than {Short(100 * plan.Stretch)} %";
        return $"The liner is cut as {count} ({sizes}, with {Short(1000 * allowance)} mm beside seams{(darts > 0 ? $" and {darts} {(darts == 1 ? "dart" : "darts")}" : "")}); {stretch}.";
    }

    private static List<Figure> Figures(PaperPiece[] pieces, double allowance)
    {
        List<Figure> figures = [];
        foreach (PaperPiece piece in pieces)
        {
            string key = piece.Name.Replace(' ', '_');
            double flat = Polygon(piece.Pattern.CutLine), on = piece.Pattern.Area;
            figures.Add(Added($"{key}_area", $"{piece.Name}: area to cut, allowance included", "cm²", 1e4 * flat));
            figures.Add(Added($"{key}_form_area", $"{piece.Name}: area in the middle of the sheet's thickness on the form", "cm²", 1e4 * on));
            figures.Add(Added($"{key}_stretch", $"{piece.Name}: stretch or squeeze when it is laid on, reached by the worst hundredth of it", "%", 100 * Worst(piece)));
            Terms mean = new();
            figures.Add(new($"{key}_mean_stretch", $"{piece.Name}: mean stretch, root of the squares over the area", "%")
            {
                Value = 100 * Math.Sqrt(piece.Pattern.Flat.Distortion / on / 2),
                Working = mean.Working($"100·sqrt({mean.Input("distortion", 1e6 * piece.Pattern.Flat.Distortion, "mm²")}/{mean.Input("area", 1e6 * on, "mm²")}/2)", FormSources.Rounds),
            });
        }

        figures.Add(Added("allowance", "allowance beside seams", "mm", 1000 * allowance));
        return figures;
    }

    private static Figure Added(string key, string words, string unit, double value) => new(key, words, unit) { Value = value, Working = new("added_up", [new("added_up", value, unit)], FormSources.Surface) };

    private static double Polygon(IReadOnlyList<(double X, double Y)> line)
    {
        double sum = 0;
        for (int i = 0; i < line.Count; i++)
        {
            (double x, double y) = line[(i + 1) % line.Count];
            sum += line[i].X * y - x * line[i].Y;
        }

        return Math.Abs(sum / 2);
    }

    private static IEnumerable<Finding> Findings(PaperPiece[] pieces, PatternPlan plan, HandModel hand, SheetOnForm sheet)
    {
        foreach (PaperPiece piece in pieces)
        {
            Flat flat = piece.Pattern.Flat;
            if (flat.Flips > MostFlips || flat.Crossings > 0)
            {
                yield return new("flat", piece.Name, Verdict.Fails, flat.Crossings > 0 ? $"Laid flat, the piece laps over itself in {flat.Crossings} {(flat.Crossings == 1 ? "place" : "places")}." : $"{flat.Flips} triangles are turned over.", "Give it a further seam: a keep-out, another seam angle, or the thumb as a sleeve of its own.");
                continue;
            }

            double share = Darts.ShareBeyond(piece.Pattern.Piece, flat, plan.Stretch), worst = Worst(piece);
            int at = Darts.Reached(piece.Pattern.Piece, f => Darts.Beyond(flat, f)).Face;
            string where = FormAnswer.At(sheet.Form, piece.Pattern.Piece.Sides.Mesh.Middle(at));
            Verdict verdict = worst <= Comfortable * plan.Stretch ? Verdict.Good : share < MostBeyond && worst <= MostOver * plan.Stretch ? Verdict.Tight : Verdict.Fails;
            string darts = piece.Darts == 0 ? "" : $" {(piece.Darts == 1 ? "One dart was" : $"{piece.Darts} darts were")} opened for it.";
            yield return new("stretch", piece.Name, verdict, $"Laid on the form, the worst hundredth of {piece.Name} is stretched or squeezed by {Number(100 * worst)} % or more, {where} for one; {Number(100 * share, 0)} % of it by more than {Short(100 * plan.Stretch)} %.{darts}",
                worst <= plan.Stretch ? "Nothing need change." : "Work it on from the middle outward and let the edges move; a softer sheet, another seam, or stretch in [form.pattern] if the sheet takes more.")
            { Figure = 100 * worst, Limit = 100 * plan.Stretch, Unit = "%", Margin = (plan.Stretch - worst) / plan.Stretch };
        }

        foreach (LimbPatch patch in hand.Form!.Patches.Where(p => p.Kind is PatchKind.Tender or PatchKind.Scar or PatchKind.Bony or PatchKind.Numb or PatchKind.Contact))
        {
            Mesh mesh = sheet.Region.Sides.Mesh;
            DrawnLoop outline = SkinMap.Outline(sheet.Form.Frame, patch);
            if (sheet.Region.Seams.Any(e => outline.At(mesh.At(e.A)) <= 0))
            {
                yield return new("seam", patch.Name, Verdict.Fails, $"A seam runs over {patch.Name}.", "Turn the seam: form.pattern.seam is its angle from the back toward the thumb.");
            }
        }
    }

    private static Table Pieces(PaperPiece[] pieces, PatternPlan plan) => new("pieces",
        [new("piece", ""), new("wide", "mm"), new("high", "mm"), new("area to cut", "cm²"), new("notches", ""), new("darts", ""), new("stretched most", "%"), new("squeezed most", "%"), new($"beyond {Short(100 * plan.Stretch)} %", "% of area"), new("triangles", ""), new("way", "")],
        [.. pieces.Select(p => (IReadOnlyList<Cell>)[p.Name, 1000 * p.Width, 1000 * p.Height, 1e4 * Polygon(p.Pattern.CutLine), p.Pattern.Notches.Count, p.Darts,
            100 * Math.Max(0, Darts.Reached(p.Pattern.Piece, f => 1 / p.Pattern.Flat.Least[f] - 1).Value), 100 * Math.Max(0, Darts.Reached(p.Pattern.Piece, f => p.Pattern.Flat.Most[f] - 1).Value), 100 * Darts.ShareBeyond(p.Pattern.Piece, p.Pattern.Flat, plan.Stretch), p.Pattern.Flat.Most.Length, p.Pattern.Flat.Way])]);
}
