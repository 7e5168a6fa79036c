using Graspwright.Deciding.Changes;
using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Tests.Variants;

/// <summary>The short way from values to a hand gives what the file gives.</summary>
public sealed class HandVariantsTests
{
    private static HandEditor Demo { get; } = HandEditor.Open(MadeHand.Read())!;

    private static DesignSearch Free(params FreeValue[] free) => new("tried") { Free = free, Aims = [new("grip_force@mug", true)] };

    private static FreeValue Range(string path, double from, double to, double? step = null) =>
        new(path) { Dimension = HandPath.TryDescribe(path, out HandKey? key, out _) ? key.Dimension : throw new ArgumentException(path, nameof(path)), From = from, To = to, Step = step };

    public static TheoryData<string, double, double> Paths => new()
    {
        { "crank.fulcrum.x", 0.018, 0.025 },
        { "crank.input_angle", 1.2, 1.6 },
        { "crank.input_arm", 0.015, 0.021 },
        { "crank.output.y", 0.012, 0.016 },
        { "crank.slot.direction", -2.2, -1.6 },
        { "crank.slot.preload", 2, 30 },
        { "crank.slot.turn", -0.5, 0.5 },
        { "pull_link.anchor.x", -0.05, -0.04 },
        { "wrist.start", -0.5, 0 },
        { "wrist.all_day_share", 0.1, 0.3 },
        { "wrist.capacity.flexion[2][2]", 9, 12 },
        { "balance.first.first_arm", 0.008, 0.012 },
        { "fingers.all.pad_stiffness", 5000, 20000 },
        { "fingers.all.arm", 0.008, 0.011 },
        { "fingers.index.segments[2]", 0.02, 0.03 },
        { "fingers.all.half_thickness[1]", 0.007, 0.0085 },
        { "friction.slot", 0, 0.1 },
        { "objects.mug.diameter", 0.05, 0.065 },
        { "hinges.all.pin_diameter[1]", 0.001, 0.003 },
        { "pads.friction", 0.4, 1 },
    };

    [Theory]
    [MemberData(nameof(Paths))]
    public void A_free_value_sets_what_its_path_sets_in_the_file(string path, double from, double to) => Agrees(Free(Range(path, from, to)), 6);

    [Fact]
    public void A_value_that_others_do_not_follow_in_proportion_goes_through_the_file_and_agrees_too()
    {
        HandVariants variants = Made(Free(Range("wearer.hand_breadth", 0.08, 0.09)));
        double[] design = [84.5];
        Assert.Empty(ModelDifferences.Between(variants.Edited(design).Editor!.Reading.Hand!, variants.Hand(design)));
        Assert.True(variants.ThroughTheFile);
    }

    [Fact]
    public void Many_at_once_agree_with_the_file() => Agrees(Free(
        Range("crank.fulcrum.x", 0.018, 0.025, 0.0001), Range("crank.input_arm", 0.015, 0.021), Range("crank.input_angle", 1.2, 1.6),
        Range("fingers.all.arm", 0.008, 0.011), Range("fingers.index.arm", 0.008, 0.011), Range("wrist.start", -0.5, 0),
        new("wrist.drive") { OneOf = ["flexion", "extension"] },
        new("crank.slot.preload") { Dimension = Dimension.Force, OneOf = ["6 N", "11 N", "20 N"] }) with
    { Changes = ["softer pads", "cross pairing"] }, 25);

    [Fact]
    public void The_hand_as_it_is_is_found_among_the_designs()
    {
        HandVariants variants = Made(Free(Range("crank.fulcrum.x", 0.018, 0.025, 0.0001), new("crank.slot.preload") { Dimension = Dimension.Force, OneOf = ["6 N", "8 N", "11 N"] }));
        Assert.Equal(["21.3 mm", "8 N"], variants.Texts(variants.AsItIs));
        Assert.Empty(ModelDifferences.Between(Demo.Reading.Hand!, variants.Hand(variants.AsItIs)));
    }

    [Fact]
    public void An_edit_keeps_every_comment_and_all_other_lines()
    {
        HandVariants variants = Made(Free(Range("crank.fulcrum.x", 0.018, 0.025, 0.0001)));
        string before = Demo.Source.Text.Text, after = variants.Edited([22.4]).Editor!.Source.Text.Text;
        Assert.Equal(before.Replace("fulcrum = [\"21.3 mm\", ", "fulcrum = [\"22.4 mm\", ", StringComparison.Ordinal), after);
    }

    [Theory]
    [InlineData("crank.fulcrm.x", "crank.fulcrum.x")]
    [InlineData("fingers.indx.across", "fingers.index.across")]
    public void A_path_that_names_nothing_is_refused_with_the_nearest(string path, string near)
    {
        List<InputError> errors = [];
        Assert.Null(HandVariants.Of(Demo, "hand.toml", Free(new FreeValue(path) { Dimension = Dimension.Length, From = 0, To = 1 }), errors));
        Assert.Contains(near, Assert.Single(errors).Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void An_end_of_a_range_that_breaks_the_file_is_told_with_its_line()
    {
        List<InputError> errors = [];
        Assert.Null(HandVariants.Of(Demo, "hand.toml", Free(Range("crank.slot.length", -0.001, 0.004)), errors));
        Assert.Contains("-1 mm", errors[0].Found, StringComparison.Ordinal);
        Assert.Contains("above 0", errors[0].Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_set_of_the_demos_changes_is_the_hand_that_the_file_gives()
    {
        List<InputError> errors = [];
        IReadOnlyList<Change> changes = Demo.Reading.Hand!.Decisions.Changes;
        ChangeVariants variants = ChangeVariants.Of(Demo, "hand.toml", changes, errors)!;
        Assert.True(changes.Count >= 6);
        foreach (ChangeSet set in ChangeArithmetic.Sets(changes.Count))
        {
            Assert.Empty(ModelDifferences.Between(variants.Edited(set).Editor!.Reading.Hand!, variants.Hand(set)));
        }
    }

    [Fact]
    public void Of_two_changes_of_one_value_the_later_wins()
    {
        List<InputError> errors = [];
        Change one = new("one") { Edits = [new("rail.travel", "20 mm")] }, other = new("other") { Edits = [new("rail.travel", "22 mm")] };
        ChangeVariants variants = ChangeVariants.Of(Demo, "hand.toml", [one, other], errors)!;
        Assert.Equal(0.022, variants.Hand(ChangeSet.Whole(2)).Rail.Travel);
        Assert.Equal((one, other), Assert.Single(variants.SameValues()));
    }

    [Fact]
    public void A_change_that_breaks_the_file_is_told_with_the_line_it_would_make_wrong()
    {
        List<InputError> errors = [];
        Change bad = new("bad") { Parts = [new("rail", "[rail]\nrest = [\"60 mm\", \"30 mm\"]\n")] };
        Assert.Null(ChangeVariants.Of(Demo, "hand.toml", [bad], errors));
        InputError error = Assert.Single(errors);
        Assert.Equal("changes.bad", error.Key);
        Assert.Contains("rail.travel", error.Found, StringComparison.Ordinal);
        Assert.True(error.Line > 10);
    }

    private static HandVariants Made(DesignSearch search)
    {
        List<InputError> errors = [];
        HandVariants? variants = HandVariants.Of(Demo, "hand.toml", search, errors);
        Assert.Empty(errors);
        return variants!;
    }

    private static void Agrees(DesignSearch search, int designs)
    {
        HandVariants variants = Made(search);
        for (int k = 0; k < designs; k++)
        {
            Chance chance = new(77, k);
            double[] design = variants.Space.Any(ref chance);
            HandModel byFile = variants.Edited(design).Editor!.Reading.Hand!, shortly = variants.Hand(design);
            foreach (ModelDifference d in ModelDifferences.Between(byFile, shortly))
            {
                double there = Assert.IsType<double>(ModelDifferences.At(byFile, d.Steps)), here = Assert.IsType<double>(d.Value);
                Assert.True(Math.Abs(there - here) <= 1e-12 * Math.Max(Math.Abs(there), 1e-6), $"{d.Place} {there:R} {here:R}");
            }
        }

        Assert.False(variants.ThroughTheFile);
    }
}
