using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Tests.Strength;

public sealed class StrengthTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();
    private static readonly BreakResult Broken = Breaking.Answer(new(Boatyard));
    private static readonly LifeResult Lived = Lasting.Answer(new(Boatyard) { Beside = ["pla-along"], Samples = 300 });

    public static TheoryData<string> Figures => [.. Broken.Answer!.Figures.Concat(Lived.Answer!.Figures).Select(f => f.Key).Distinct()];

    [Theory]
    [MemberData(nameof(Figures))]
    public void Prints_a_formula_that_gives_the_printed_value(string key)
    {
        Figure figure = Broken.Answer!.Figures.Concat(Lived.Answer!.Figures).First(f => f.Key == key);

        Assert.Null(figure.Why);
        Dictionary<string, double> inputs = figure.Working!.Inputs.ToDictionary(i => i.Name, i => i.Value);
        double worked = FormulaText.Evaluate(figure.Working.Formula, inputs);
        Assert.Equal(figure.Value!.Value, worked, 1e-9 * Math.Max(1, Math.Abs(worked)));
        Assert.All(inputs.Keys, name => Assert.Contains(name, figure.Working.Formula, StringComparison.Ordinal));
        Assert.Contains(figure.Working.Source, Source.All.Concat(MeasureSources.All).Concat(StrengthSources.All).Select(s => s.Key));
    }

    [Fact]
    public void Orders_the_links_of_every_finger_by_the_push_they_stand() =>
        Assert.All(Broken.Orders, o =>
        {
            Assert.Equal(o.Links.Select(l => l.Newtons).Order(), o.Links.Select(l => l.Newtons));
            Assert.Contains(o.Links, l => l.IsWearer);
            Assert.Contains(o.Links, l => l.Name == "base");
        });

    [Fact]
    public void A_pin_that_is_offered_goes_first_and_carries_the_grip()
    {
        foreach (FailureOrder order in Broken.Orders)
        {
            foreach (CheapPin pin in CheapPin.For(Boatyard, order, Broken.Loads!))
            {
                HandModel fitted = With(Boatyard, h => h with { PinMaterial = pin.Material, PinDiameter = h.PinDiameter with { First = pin.Diameter } });
                FailureOrder again = FailureOrder.All(fitted).Single(o => o.Build.Finger.Name == pin.Finger);
                Assert.Equal(FailureLink.Pin, again.First.Name);
                Assert.True(pin.GripFactor >= CheapPin.LeastGripFactor && pin.Chance > 0.5);
            }
        }
    }

    [Fact]
    public void A_skin_that_stands_nothing_is_hurt_first()
    {
        HandModel tender = Boatyard with { Structure = Boatyard.Structure with { Shell = Boatyard.Structure.Shell with { SkinLimit = 1000 } } };
        Answer answer = Breaking.Answer(new(tender)).Answer!;
        Assert.Equal(Verdict.Fails, answer.Findings.First(f => f.Key == "wearer_first").Verdict);
        Assert.Contains("your skin takes harm", answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shell_that_is_given_a_strength_joins_the_order()
    {
        HandModel weak = Boatyard with { Structure = Boatyard.Structure with { Shell = Boatyard.Structure.Shell with { BreakingMoment = 0.01 } } };
        Assert.All(FailureOrder.All(weak), o => Assert.Equal("shell", o.First.Name));
    }

    [Fact]
    public void Says_which_force_of_the_run_a_part_may_carry()
    {
        StructuralPart part = new() { Name = "eye", Kind = PartKind.Eye, Carries = "pul link", Material = "brass", Diameter = 0.004, Width = 0.01, Thickness = 0.003, Length = 0.006 };
        InputError error = Assert.Single(Breaking.Answer(new(Boatyard with { Structure = Boatyard.Structure with { Parts = [part] } })).Errors);
        Assert.Equal("parts.eye.carries", error.Key);
        Assert.Contains("pull link", error.Fix, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PartKind.Pin, 0.001)]
    [InlineData(PartKind.Stud, 0.002)]
    [InlineData(PartKind.Eye, 0.002)]
    [InlineData(PartKind.Arm, 0.002)]
    [InlineData(PartKind.Rod, 0.003)]
    [InlineData(PartKind.Thread, 0.002)]
    public void Every_kind_of_part_is_judged_and_a_flimsy_one_fails(PartKind kind, double size)
    {
        StructuralPart part = new() { Name = "flimsy", Kind = kind, Carries = "pull link", Material = "abs-across", Diameter = 0.5 * size, Width = size, Thickness = size, Length = kind == PartKind.Thread ? 0.0005 : 0.05 };
        HandModel hand = Boatyard with { Structure = Boatyard.Structure with { Parts = [part] } };
        PartStrength judged = DriveStrength.All(hand, Broken.Loads!).Single(p => p.Name == "flimsy");
        Assert.Equal(Broken.Loads!.Greatest["pull link"], judged.Newtons);
        Assert.InRange(judged.Factor!.Value, 1e-6, kind is PartKind.Eye or PartKind.Rod ? 3 : 1.5);
    }

    [Fact]
    public void A_bent_arm_is_weaker_inside_its_bend_than_a_straight_one()
    {
        StructuralPart straight = new() { Name = "arm", Kind = PartKind.Arm, Carries = "pull link", Material = "6061-T6", Diameter = 0.0001, Width = 0.01, Thickness = 0.004, Length = 0.02 };
        Materials materials = new(Boatyard);
        double Breaks(StructuralPart p) => DriveStrength.Checks(p, materials.Solid(p.Material), pushed: false).Min(c => c.BreakingForce(materials.Solid(p.Material)));
        Assert.InRange(Breaks(straight with { InnerRadius = 0.004 }) / Breaks(straight), 0.5, 0.85);
    }

    [Fact]
    public void A_rod_buckles_only_where_it_is_pushed()
    {
        StructuralPart rod = new() { Name = "rod", Kind = PartKind.Rod, Carries = "pull link", Material = "stainless-304", Diameter = 0.002, Length = 0.2 };
        Materials materials = new(Boatyard);
        Assert.DoesNotContain(DriveStrength.Checks(rod, materials.Solid("stainless-304"), pushed: false), c => c.Mode == "buckled");
        Graspwright.Strength.StressCheck buckled = DriveStrength.Checks(rod, materials.Solid("stainless-304"), pushed: true).Single(c => c.Mode == "buckled");
        double inertia = Math.PI * Math.Pow(0.002, 4) / 64;
        Assert.Equal(Math.PI * Math.PI * 200e9 * inertia / 0.04, buckled.BreakingForce(materials.Solid("stainless-304")), 1e-6);
    }

    [Fact]
    public void No_use_at_all_gives_no_life_and_says_so()
    {
        HandModel idle = WithUse(u => u with { GripsPerDay = 0, Jobs = [], Knocks = [] });
        idle = idle with { Jobs = [] };
        Answer answer = Lasting.Answer(new(idle) { Samples = 50 }).Answer!;
        Figure figure = answer.Figures.Single(f => f.Key == "first_failure_days");
        Assert.Null(figure.Value);
        Assert.Contains("no grip and no knock", figure.Why, StringComparison.Ordinal);
        Assert.Contains("[use]", answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void More_knocks_shorten_life_and_a_quieter_day_lengthens_it()
    {
        double now = LifeSensitivity.Middle(Prints(Boatyard), Broken.Loads!, 1);
        double twice = LifeSensitivity.Middle(Prints(WithUse(u => u with { Knocks = [.. u.Knocks.Select(k => k with { PerDay = 2 * k.PerDay })] })), Broken.Loads!, 1);
        Assert.InRange(twice / now, 0.3, 0.7);
    }

    [Fact]
    public void Every_hinge_has_a_band_and_the_shares_of_first_breaks_sum_to_one()
    {
        HandBand band = Lasting.Sample(Prints(Boatyard), Broken.Loads!, 200, 1);
        Assert.Equal(12, band.Hinges.Count);
        Assert.Equal(1, band.Hinges.Sum(h => h.First), 1e-9);
        Assert.All(band.Hinges, h => Assert.Equal(h.Days.Order(), h.Days));
        Assert.Equal(band.FirstBreak[0], band.Hinges.Min(h => h.Days[0]));
    }

    [Fact]
    public void A_history_of_grips_counts_as_the_grips_it_was_made_of()
    {
        // 600 squeezes on the mug in one day, as a history of the moment at the end of each, against the same 600 as jobs.
        HandModel jobs = WithUse(u => u with { Knocks = [], GripsPerDay = 600, Jobs = [new("all day", "mug", GripEffort.Hard, 600)] }) with { Jobs = [] };
        GripLoads counted = GripLoads.Of(jobs);
        GripLoad grip = Assert.Single(counted.Grips);
        HandModel recorded = WithUse(u => u with { Knocks = [], Jobs = [], History = new("day.csv", 1, "mug") });
        double tau = Squeezed(recorded);
        GripLoads rain = GripLoads.Of(recorded, [.. Enumerable.Range(0, 1201).Select(i => i % 2 == 0 ? 0 : tau)]);
        Assert.Equal(600, rain.HistoryCycles, 1e-9);
        Assert.Equal(600, rain.Grips.Sum(g => g.PerDay), 1e-9);
        Assert.Equal(grip.Peaks["index mcp"], rain.Grips[0].Peaks["index mcp"], 1e-6);
        Assert.Equal(grip.Rubbed["index mcp"], rain.Grips[0].Rubbed["index mcp"], 1e-9);
    }

    [Fact]
    public void Wear_grows_play_at_pin_tip_and_wrist()
    {
        GripLoads loads = Broken.Loads!;
        double[][] perDay = WearCourse.PerDay(Prints(Boatyard), loads);
        HandModel early = WearCourse.After(Boatyard, perDay, 10), late = WearCourse.After(Boatyard, perDay, 1000);
        Assert.True(late.Fingers[0].WornPlay.First > early.Fingers[0].WornPlay.First);
        Assert.True(WearCourse.TipPlay(late)[0] > WearCourse.TipPlay(early)[0]);
        Assert.True(WearCourse.DeadTravelOf(late, loads.Reference!) > WearCourse.DeadTravelOf(early, loads.Reference!));
    }

    [Fact]
    public void A_material_that_is_not_known_is_named_with_its_neighbour()
    {
        InputError error = Assert.Single(Lasting.Answer(new(Boatyard) { Beside = ["petg-alon"] }).Errors);
        Assert.Contains("petg-along", error.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_life_below_and_above_what_makers_tell_is_said_to_be_so()
    {
        Finding[] told = [.. Lived.Answer!.Findings.Where(f => f.Key == "beside_practice")];
        Assert.Equal(2, told.Length);
        Assert.All(told, f => Assert.Contains("common practice, no source", f.Reason, StringComparison.Ordinal));
        Assert.Contains(Lived.Answer.Cautions, c => c.Contains("No published count of grips or knocks", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_material_of_the_table_has_a_fatigue_line_below_its_strength_and_sources_on_the_register() =>
        Assert.All(MaterialTable.All, m =>
        {
            Assert.InRange(Materials.Line(m).Amplitude(1e3), m.FatigueStrength * m.Surface, m.Strength);
            Assert.All(m.SourceKeys, k => Assert.Contains(k, MaterialSources.All.Select(s => s.Key)));
            Assert.InRange(Materials.Ageing(m, new()), 0, 0.01);
        });

    /// <summary>The wrist's moment at the end of a squeeze on the mug [N·m].</summary>
    private static double Squeezed(HandModel hand) =>
        ClosingRun.Solve(DriveMapping.ToDrive(hand), HoldMapping.ToHeld(hand, hand.Objects.Single(o => o.Name == "mug")), new() { EffortFraction = hand.Wrist.SqueezeShare, Opening = false }).AtEnd[TraceLayout.Tau];

    private static HandModel Prints(HandModel hand) => Lasting.InMaterial(hand, "petg-along");

    private static HandModel With(HandModel hand, Func<Hinges, Hinges> change) => hand with { Structure = hand.Structure with { Hinges = [.. hand.Structure.Hinges.Select(change)] } };

    private static HandModel WithUse(Func<Use, Use> change) => Boatyard with { Structure = Boatyard.Structure with { Use = change(Boatyard.Structure.Use) } };
}
