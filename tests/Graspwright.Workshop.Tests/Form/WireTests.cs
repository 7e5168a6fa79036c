using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Tests.Mould;

namespace Graspwright.Workshop.Tests.Form;

public sealed class WireTests
{
    private static readonly Lazy<FormResult> Demo = new(() => FormAnswer.Of(Boatyard.Hand, "hand.toml"));

    // without its hardness nothing is said of hollows, and nothing searched for
    private static Liner Unlabelled => Boatyard.Hand.Liner! with { Putty = Boatyard.Hand.Liner.Putty with { ShoreA = null } };

    private static LimbForm Limb => Boatyard.Hand.Form!;

    [Fact]
    public void The_demos_leads_are_told_with_a_length_to_cut()
    {
        Table table = Demo.Value.Answer!.Tables.Single(t => t.Name == "wires over the liner");
        Assert.Equal(["back lead", "palm lead"], table.Rows.Select(r => r[0].Text));
        foreach (WireOnForm wire in Demo.Value.Wires)
        {
            Assert.Equal(wire.Free, wire.Length, 1e-9);
            Assert.True(wire.Outside > wire.Length);
            Assert.Equal(1.1 * wire.Outside, wire.Cut, 1e-12);
        }

        Assert.Contains(FormCautions.Wires[0], Demo.Value.Answer.Cautions);
    }

    // On the waist the section is nearly an ellipse of a known girth: half of the girth lies between two places half round from each other.
    [Fact]
    public void Half_round_is_half_the_girth_and_over_the_sheet_π_thicknesses_more()
    {
        WireOnForm wire = One(Wire(Spot(-15, 10), Spot(-15, 190)));
        Assert.Equal(0.168 / 2, wire.Length, 0.01 * 0.084);
        Assert.Equal(wire.Length + Math.PI * 0.003, wire.Outside, 0.02 * wire.Outside);
    }

    [Fact]
    public void Tender_skin_is_gone_round_and_the_detour_told()
    {
        LimbPatch sore = new("sore", PatchKind.Tender, -0.045, -0.005, Radians(60), Radians(100));
        FormResult result = Of([sore], Wire(Spot(-25, 30), Spot(-25, 130)));
        WireOnForm wire = result.Wires[0];
        Assert.True(wire.Length > wire.Free + 0.005);
        WirePass pass = wire.Passes.Single(p => p.Patch == sore);
        Assert.Equal(0.004, pass.Distance, 0.3e-3);
        Assert.Contains("off the skin it must not rub", Reasons(result), StringComparison.Ordinal);
        // likes load may be crossed
        Assert.Equal(wire.Free, Of([sore with { Kind = PatchKind.LikesLoad }], Wire(Spot(-25, 30), Spot(-25, 130))).Wires[0].Length, 1e-6);
    }

    [Fact]
    public void An_end_on_tender_skin_or_off_the_sheet_is_refused_with_its_place()
    {
        LimbPatch sore = new("sore", PatchKind.Tender, -0.045, -0.005, Radians(60), Radians(100));
        Assert.Contains("ends at -25 mm, 80° round from the back: on sore", Reasons(Of([sore], Wire(Spot(-25, 0), Spot(-25, 80)))), StringComparison.Ordinal);
        Assert.Contains("begins at 84 mm, 0° round from the back, where there is no sheet", Reasons(Of([], Wire(Spot(84, 0), Spot(-25, 80)))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_ring_of_tender_skin_leaves_no_way()
    {
        LimbPatch ring = new("ring", PatchKind.Scar, -0.03, -0.02, Radians(0), Radians(180)), other = new("other", PatchKind.Numb, -0.03, -0.02, Radians(170), Radians(370));
        Assert.Contains("there is no way over the sheet", Reasons(Of([ring, other], Wire(Spot(-50, 0), Spot(0, 0)))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_seam_that_is_crossed_and_a_bend_that_is_too_sharp_are_told()
    {
        string reasons = Reasons(Of([], Wire(Spot(-25, 240), Spot(-25, 300)) with { Diameter = 0.004 }));
        Assert.Contains("crosses a seam at -2", reasons, StringComparison.Ordinal);
        Assert.Contains("270° round from the back", reasons, StringComparison.Ordinal);
        Assert.Contains(Demo.Value.Answer!.Findings, f => f.Key == "wire_bend" && f.Verdict == Verdict.Good);
        Assert.Contains(Of([], Wire(Spot(-25, 240), Spot(-25, 300)) with { Diameter = 0.004 }).Answer!.Findings, f => f.Key == "wire_bend" && f.Verdict == Verdict.Fails);
    }

    [Fact]
    public void A_wire_lies_on_the_paper_as_long_as_on_the_middle_of_the_sheet()
    {
        PatternResult pattern = PatternAnswer.Of(Boatyard.Hand, "hand.toml", stop: TestContext.Current.CancellationToken);
        foreach (WireOnForm wire in Demo.Value.Wires)
        {
            double paper = pattern.Pieces.SelectMany(p => p.Wires).Where(w => w.Name == wire.Wire.Name).SelectMany(w => w.Runs).Sum(r => r.Zip(r.Skip(1)).Sum(s => double.Hypot(s.First.X - s.Second.X, s.First.Y - s.Second.Y)));
            Assert.Equal((wire.Length + wire.Outside) / 2, paper, 0.04 * paper);
        }

        Assert.Contains(pattern.Answer!.Findings, f => f.Key == "wire_seam" && f.Subject == "palm lead");
        Assert.Contains(PatternPictures.FullSize(pattern).Marks, m => m.Layer == "wires");
        Assert.Contains(FormPictures.Views(Demo.Value).Marks, m => m.Layer == "wires");
    }

    private static LimbWire Wire(LimbSpot from, LimbSpot to) => new("lead", from, to, null, 0.004, 0.1, null, 10);

    private static LimbSpot Spot(double placeMm, double angleDegrees) => new(null, placeMm / 1000, Radians(angleDegrees));

    private static double Radians(double degrees) => double.DegreesToRadians(degrees);

    private static FormResult Of(LimbPatch[] patches, LimbWire wire) =>
        FormAnswer.Of(Boatyard.Hand with { Form = Limb with { Patches = patches, Wires = [wire] }, Liner = Unlabelled }, "hand.toml", stop: TestContext.Current.CancellationToken);

    private static WireOnForm One(LimbWire wire) => Of([], wire).Wires[0];

    private static string Reasons(FormResult result) => string.Join(" ", result.Answer!.Findings.Select(f => f.Reason));
}
