using Graspwright.Form.Pattern;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Tests.Mould;

namespace Graspwright.Workshop.Tests.Form;

/// <summary>Lines drawn on the demo's limb: whatever uses a patch between places and angles uses a drawn one alike.</summary>
public sealed class DrawnLineTests
{
    private static readonly LimbPatch Box = new("box", PatchKind.Tender, -0.05, -0.02, 0.5, 1.3);

    private static LimbForm Limb => Boatyard.Hand.Form! with { Patches = [], NearLine = [], FarLine = [], NearEdge = -0.065, FarEdge = 0.08 };

    // The box as an outline: with corners between, so that its sides follow the same way.
    private static LimbPatch Drawn(LimbPatch box)
    {
        double[] angles = [.. Enumerable.Range(0, 13).Select(i => box.AngleFromRadians + (box.AngleToRadians - box.AngleFromRadians) * i / 12)];
        return box with { Outline = [.. angles.Select(a => new LimbCorner(box.From, a)), .. angles.Reverse().Select(a => new LimbCorner(box.To, a))] };
    }

    private static FormModel Form(LimbForm limb)
    {
        (FormModel? form, IReadOnlyList<InputError> errors) = FormModel.Of(Boatyard.Hand with { Form = limb }, "hand.toml");
        Assert.Empty(errors);
        return form!;
    }

    private static SheetOnForm Sheet(LimbForm limb) => SheetOnForm.Of(Form(limb), Boatyard.Hand with { Form = limb }, stop: TestContext.Current.CancellationToken);

    [Fact]
    public void Relief_thickness_and_keep_outs_of_a_drawn_patch_are_those_of_the_box_it_draws()
    {
        foreach (LimbPatch patch in (LimbPatch[])[Box with { Relief = 0.002 }, Box with { Thickness = 0.005 }, Box with { Kind = PatchKind.KeepOut }])
        {
            LimbForm box = Limb with { Patches = [patch] }, drawn = Limb with { Patches = [Drawn(patch)] }, plain = Limb;
            (SheetOnForm a, SheetOnForm b, SheetOnForm c) = (Sheet(box), Sheet(drawn), Sheet(plain));
            Assert.Equal(a.Volume.Volume, b.Volume.Volume, 1e-12);
            Assert.Equal(a.Form.Raised, b.Form.Raised, 1e-12);
            Assert.NotEqual(c.Volume.Volume, b.Volume.Volume, 1e-7);
        }
    }

    [Fact]
    public void A_drawn_keep_out_takes_its_own_area_out_of_the_sheet()
    {
        // a triangle of places and angles on the forearm: half base times height on the rolled-out limb
        LimbCorner[] corners = [new(-0.055, 0.2), new(-0.025, 0.5), new(-0.055, 0.8)];
        LimbForm limb = Limb with { Patches = [new("window", PatchKind.KeepOut, -0.055, -0.025, 0.2, 0.8) { Outline = corners }] };
        SheetOnForm with = Sheet(limb), without = Sheet(Limb);
        // on this flat oval a radian is 26 to 34 mm long, by where it lies
        Assert.InRange(without.Volume.Area - with.Volume.Area, 0.5 * 0.03 * 0.6 * 0.024, 0.5 * 0.03 * 0.6 * 0.036);
        Assert.Equal(2, with.Region.Sides.Loops().Count - without.Region.Sides.Loops().Count + 1);
    }

    [Fact]
    public void A_far_edge_lower_at_the_little_finger_leaves_the_sheet_shorter_there()
    {
        LimbCorner[] line = [new(0.08, 0), new(0.08, Math.PI / 2), new(0.075, Math.PI), new(0.065, 3 * Math.PI / 2)];
        LimbForm limb = Limb with { FarLine = line, FarEdge = new LimbLine(line).MeanPlace };
        SheetOnForm sheet = Sheet(limb);
        Mesh mesh = sheet.Region.Sides.Mesh;
        double Reach(double angle) => Enumerable.Range(0, mesh.PointCount).Where(v => Math.Abs(Math.IEEERemainder(sheet.Form.Frame.Of(mesh.At(v)).Angle - angle, 2 * Math.PI)) < 0.06).Max(v => mesh.At(v).Z);
        Assert.Equal(0.08, Reach(0.3), 1e-3);
        Assert.Equal(0.065, Reach(3 * Math.PI / 2), 1e-3);
        Assert.Equal(0.075, Reach(Math.PI), 1e-3);
        Assert.InRange(sheet.Volume.Area, 0.9 * Sheet(Limb).Volume.Area, 0.999 * Sheet(Limb).Volume.Area);
    }

    [Fact]
    public void The_thumbs_seam_goes_round_a_drawn_patch_and_past_one_whose_box_only_lies_in_its_way()
    {
        LimbForm Sore(params LimbCorner[] corners)
        {
            LimbLine line = new(corners);
            return Limb with { Patches = [new("scar", PatchKind.Scar, line.Places.Low, line.Places.High, line.Angles.Low, line.Angles.High) { Outline = corners }] };
        }

        bool Crossed(LimbForm limb) => PatternAnswer.Of(Boatyard.Hand with { Form = limb }, "hand.toml", stop: TestContext.Current.CancellationToken).Answer!.Findings.Any(f => f.Key == "seam");
        double web = Math.PI / 2;
        Assert.False(Crossed(Sore(new(0.06, web - 0.2), new(0.075, web - 0.2), new(0.075, web + 0.05), new(0.06, web + 0.05))));
        // all round the thumb's side: no angle within 40° is free
        Assert.True(Crossed(Sore(new(0.065, web - 0.9), new(0.075, web - 0.9), new(0.075, web + 0.9), new(0.065, web + 0.9))));
    }

    [Fact]
    public void Lines_through_the_root_of_the_thumb_are_refused_where_it_gets_a_sleeve()
    {
        LimbCorner[] far = [new(0.08, 0), new(0.03, Math.PI / 2), new(0.08, Math.PI), new(0.08, 3 * Math.PI / 2)], window = [new(0.02, 1.2), new(0.05, 1.2), new(0.05, 1.5), new(0.02, 1.5)];
        (string Key, LimbForm Limb)[] wrong =
        [
            ("form.far_line", Limb with { FarLine = far, FarEdge = 0.07 }),
            ("form.patches.window", Limb with { Patches = [new("window", PatchKind.KeepOut, 0.02, 0.05, 1.2, 1.5) { Outline = window }] }),
            ("form.pattern.opening", Limb with { Pattern = Limb.Pattern with { Thumb = "opening", Opening = window } }),
        ];
        foreach ((string key, LimbForm limb) in wrong)
        {
            PatternResult result = PatternAnswer.Of(Boatyard.Hand with { Form = limb }, "hand.toml", stop: TestContext.Current.CancellationToken);
            Assert.Null(result.Answer);
            Assert.Equal(key, Assert.Single(result.Errors).Key);
            Assert.Contains("root of the thumb", result.Errors[0].Found, StringComparison.Ordinal);
        }

        // a window in the same places that is only tender is no cut
        Assert.NotNull(FormModel.Of(Boatyard.Hand with { Form = Limb with { Patches = [new("window", PatchKind.Tender, 0.02, 0.05, 1.2, 1.5) { Outline = window }] } }, "hand.toml", stop: TestContext.Current.CancellationToken).Form);
    }

    [Fact]
    public void A_drawn_opening_round_the_thumb_is_cut_out()
    {
        LimbCorner[] round = [.. Enumerable.Range(0, 12).Select(i => new LimbCorner(0.026 + 0.038 * Math.Cos(Math.PI * i / 6), Math.PI / 2 + 0.75 * Math.Sin(Math.PI * i / 6)))];
        LimbForm root = Limb with { Pattern = Limb.Pattern with { Thumb = "opening" } }, drawn = Limb with { Pattern = Limb.Pattern with { Thumb = "opening", Opening = round } };
        SheetOnForm wide = Sheet(drawn), narrow = Sheet(root);
        Assert.InRange(wide.Volume.Area, 0.8 * narrow.Volume.Area, 0.99 * narrow.Volume.Area);
        DrawnLoop opening = SkinMap.Line(wide.Form.Frame, round);
        Mesh mesh = wide.Region.Sides.Mesh;
        Assert.All(Enumerable.Range(0, mesh.PointCount), v => Assert.InRange(opening.At(mesh.At(v)), -5e-4, 1));
    }

    // Round half a tube a line turns by π, and the crease of the web bends it back a little at the ends: 5π/4 in all, and two changes of side.
    // The tube has a radius of girth ÷ 2π = 13.4 mm; where the palm's edge runs into it the line is bent more sharply, to a third of that.
    // The line that followed the triangles' sides turned by 2π and more, and changed sides at every other chord.
    [Fact]
    public void The_seam_round_the_thumb_turns_no_more_than_its_own_curvature()
    {
        PatternResult pattern = PatternAnswer.Of(Boatyard.Hand with { Form = Limb }, "hand.toml", stop: TestContext.Current.CancellationToken);
        Assert.Contains(pattern.Pieces, p => p.Name == "thumb sleeve" && p.Pattern.Runs.Any(r => r.Seam >= 0));
        foreach (RimRun run in pattern.Pieces.SelectMany(p => p.Pattern.Runs.Where(r => r.Seam >= 0)))
        {
            PatternPiece piece = pattern.Pieces.Select(p => p.Pattern).First(p => p.Runs.Contains(run));
            (double Turn, double Length)[] turns = Turns(piece, run);
            Assert.All(turns, t => Assert.InRange(Math.Abs(t.Turn), 0, t.Length / (0.084 / (2 * Math.PI) / 3)));
            Assert.InRange(turns.Sum(t => Math.Abs(t.Turn)), 0, 1.25 * Math.PI);
            int[] sides = [.. turns.Where(t => Math.Abs(t.Turn) > 40 * t.Length).Select(t => Math.Sign(t.Turn))];
            Assert.InRange(Enumerable.Range(1, Math.Max(0, sides.Length - 1)).Count(i => sides[i] != sides[i - 1]), 0, 2);
        }
    }

    // Turning between neighbouring chords of 2 mm and a little more [rad], and how long they are [m]: what scissors follow.
    private static (double Turn, double Length)[] Turns(PatternPiece piece, RimRun run)
    {
        List<(double X, double Y)> line = [];
        foreach (int v in run.Points)
        {
            if (line.Count == 0 || double.Hypot(piece.Flat.X[v] - line[^1].X, piece.Flat.Y[v] - line[^1].Y) >= 0.002)
            {
                line.Add((piece.Flat.X[v], piece.Flat.Y[v]));
            }
        }

        return [.. Enumerable.Range(1, Math.Max(0, line.Count - 2)).Select(i =>
        {
            double ax = line[i].X - line[i - 1].X, ay = line[i].Y - line[i - 1].Y, bx = line[i + 1].X - line[i].X, by = line[i + 1].Y - line[i].Y;
            return (Math.Atan2(ax * by - ay * bx, ax * bx + ay * by), (double.Hypot(ax, ay) + double.Hypot(bx, by)) / 2);
        })];
    }

    [Fact]
    public void Tables_and_pictures_show_what_is_drawn()
    {
        FormResult result = FormAnswer.Of(Boatyard.Hand, "hand.toml", stop: TestContext.Current.CancellationToken);
        Table skin = result.Answer!.Tables.Single(t => t.Name == "skin map"), edges = result.Answer.Tables.Single(t => t.Name == "edges of the liner");
        Assert.Contains(skin.Rows, r => r[0].Text == "scar" && r[^1].Text == "outline of 6 corners");
        Assert.Contains(edges.Rows, r => r[^1].Text == "line of 4 corners");
    }
}
