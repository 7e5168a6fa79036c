using System.Buffers.Binary;
using Graspwright.Form.Surface;
using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Tests.Mould;

namespace Graspwright.Workshop.Tests.Form;

/// <summary>A coarse scan, made here of tape marks: 32 corners round, 6 mm apart.</summary>
public sealed class ScanTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("scan").FullName;

    private string HandFile => Path.Combine(_folder, "hand.toml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static LimbForm Limb => Boatyard.Hand.Form!;

    private static TapeMark[] Marks => [.. Limb.Marks.Select(m => new TapeMark(m.Place, m.Girth, m.Width ?? double.NaN, m.Depth ?? double.NaN))];

    private HandModel Scanned(TapeThumb? thumb, Func<LimbForm, LimbForm>? change = null, int round = 32, double step = 0.006)
    {
        Mesh mesh = Loft.Of(new(Marks), thumb, round, step).Mesh;
        byte[] file = new byte[84 + 50 * mesh.FaceCount];
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(80), mesh.FaceCount);
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            for (int d = 0; d < 3; d++)
            {
                BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(84 + 50 * (h / 3) + 12 + 12 * (h % 3) + 4 * d), (float)(1000 * mesh.Points[3 * mesh.Corners[h] + d]));
            }
        }

        File.WriteAllBytes(Path.Combine(_folder, "limb.stl"), file);
        LimbForm form = Limb with { Scan = new("limb.stl", "mm", "z", "y", 0, 0.06) };
        return Boatyard.Hand with { Form = change is null ? form : change(form) };
    }

    [Fact]
    public void A_scan_is_thinned_within_what_the_file_says_and_tells_it()
    {
        HandModel fine = Scanned(null, f => f with { Thumb = null, Scan = f.Scan! with { Thin = 0 } }, 200, 0.0012), thinned = fine with { Form = fine.Form! with { Scan = fine.Form.Scan! with { Thin = 0.1e-3 } } };
        List<string> said = [];
        FormModel before = FormModel.Of(fine, HandFile, said.Add, TestContext.Current.CancellationToken).Form!;
        Assert.Empty(said);
        FormModel after = FormModel.Of(thinned, HandFile, said.Add, TestContext.Current.CancellationToken).Form!;
        Assert.Contains(said, s => s.StartsWith("Thinning the scan of ", StringComparison.Ordinal));
        Assert.InRange(after.Mesh.FaceCount, 1000, before.Mesh.FaceCount / 2);
        Graspwright.Form.Repair.Mend mend = Assert.Single(after.Repair!.Mends, m => m.What.StartsWith("triangles thinned out", StringComparison.Ordinal));
        Assert.Equal(before.Mesh.FaceCount - after.Mesh.FaceCount, mend.Count);
        Graspwright.Form.Surface.Nearest tree = new(before.Sides);
        Assert.All(Enumerable.Range(0, after.Mesh.FaceCount), f => Assert.InRange(Math.Abs(tree.To(after.Mesh.Middle(f)).Distance), 0, 0.1e-3));
        Assert.Equal(SurfaceSums.Of(before.Sides).Volume, SurfaceSums.Of(after.Sides).Volume, 0.1e-3 * SurfaceSums.Of(before.Sides).Area);
        // below the number from which a scan is thinned by itself, it is left as it is
        Assert.DoesNotContain(FormModel.Of(fine with { Form = fine.Form with { Scan = fine.Form.Scan with { Thin = null } } }, HandFile, stop: TestContext.Current.CancellationToken).Form!.Repair!.Mends, m => m.What.Contains("thinned", StringComparison.Ordinal));
    }

    [Fact]
    public void A_thinning_can_be_stopped()
    {
        HandModel hand = Scanned(null, f => f with { Thumb = null, Scan = f.Scan! with { Thin = 0.1e-3 } }, 200, 0.0012);
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => FormAnswer.Of(hand, HandFile, stop: stop.Token));
    }

    [Fact]
    public void A_drawn_edge_that_misses_the_scan_names_its_corner()
    {
        HandModel hand = Scanned(null, f => f with { Thumb = null, Scan = f.Scan! with { Zero = 0.05 } });
        InputError error = Assert.Single(FormAnswer.Of(hand with { Form = hand.Form! with { NearEdge = -0.1 } }, HandFile, stop: TestContext.Current.CancellationToken).Errors);
        Assert.Equal("form.far_line[1]", error.Key);
        Assert.Contains("misses the scan", error.Found, StringComparison.Ordinal);
    }

    private static TapeThumb Thumb => new(0.03, 0.084, 0.074, 0.05, 0.8);

    [Fact]
    public void The_thumb_of_a_scan_gets_a_sleeve()
    {
        PatternResult pattern = PatternAnswer.Of(Scanned(Thumb), HandFile, stop: TestContext.Current.CancellationToken);
        Assert.Contains("thumb sleeve", pattern.Pieces.Select(p => p.Name));
        Assert.All(pattern.Pieces, p => Assert.Equal((0, 0), (p.Pattern.Flat.Flips, p.Pattern.Flat.Crossings)));
        // as long as the file says, and as wide as the thumb is round beside its allowance
        PaperPiece sleeve = pattern.Pieces.Single(p => p.Name == "thumb sleeve");
        Assert.InRange(SurfaceSums.Of(sleeve.Pattern.Piece.Sides).Area, 0.7 * 0.022 * 0.074, 1.6 * 0.022 * 0.084);
    }

    [Fact]
    public void A_thumb_of_which_the_file_says_nothing_is_left_out_and_told()
    {
        HandModel hand = Scanned(Thumb, f => f with { Thumb = null });
        Assert.Contains(FormAnswer.Of(hand, HandFile, stop: TestContext.Current.CancellationToken).Answer!.Findings, f => f.Key == "thumb" && f.Verdict == Verdict.Good);
        PatternResult pattern = PatternAnswer.Of(hand, HandFile, stop: TestContext.Current.CancellationToken);
        Assert.DoesNotContain("thumb sleeve", pattern.Pieces.Select(p => p.Name));
        Assert.All(pattern.Pieces, p => Assert.Equal((0, 0), (p.Pattern.Flat.Flips, p.Pattern.Flat.Crossings)));
    }

    [Fact]
    public void What_parts_on_the_other_side_is_no_thumb_and_is_refused_with_its_place()
    {
        HandModel hand = Scanned(Thumb, f => f with { Scan = f.Scan! with { Back = "-y" } });
        InputError error = Assert.Single(FormAnswer.Of(hand, HandFile, stop: TestContext.Current.CancellationToken).Errors);
        Assert.Equal("form.far_line", error.Key);
        Assert.Contains("form.scan.back", error.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coarse_scan_has_the_pattern_of_the_tape_marks_it_was_made_of()
    {
        PatternResult fine = PatternAnswer.Of(Boatyard.Hand with { Form = Limb with { Thumb = null } }, "hand.toml", stop: TestContext.Current.CancellationToken), coarse = PatternAnswer.Of(Scanned(null, f => f with { Thumb = null }), HandFile, stop: TestContext.Current.CancellationToken);
        double Area(PatternResult r) => r.Pieces.Sum(p => p.Pattern.Area);
        Assert.Equal(fine.Pieces.Count, coarse.Pieces.Count);
        Assert.Equal(Area(fine), Area(coarse), 0.01 * Area(fine));
        foreach ((PaperPiece a, PaperPiece b) in fine.Pieces.Zip(coarse.Pieces))
        {
            Assert.Equal((a.Width, a.Height), (b.Width, b.Height), (p, q) => Math.Abs(p.Item1 - q.Item1) < 0.003 && Math.Abs(p.Item2 - q.Item2) < 0.003);
        }
    }

    // A seam from the thumb to the fingertips goes round what it must not rub; one that cannot is a finding.
    [Theory]
    [InlineData("80 deg", "95 deg", false)]
    [InlineData("20 deg", "160 deg", true)]
    public void The_thumbs_seam_goes_round_tender_skin(string from, string to, bool crossed)
    {
        HandModel hand = Boatyard.Changed("scar = { kind = \"tender\", outline = [[\"50 mm\", \"212 deg\"], [\"58 mm\", \"236 deg\"], [\"70 mm\", \"250 deg\"], [\"80 mm\", \"238 deg\"], [\"72 mm\", \"215 deg\"], [\"60 mm\", \"200 deg\"]] }",
            $"scar = {{ kind = \"tender\", from = \"60 mm\", to = \"80 mm\", angle_from = \"{from}\", angle_to = \"{to}\" }}");
        Assert.Equal(crossed, PatternAnswer.Of(hand, "hand.toml", stop: TestContext.Current.CancellationToken).Answer!.Findings.Any(f => f.Key == "seam"));
    }
}
