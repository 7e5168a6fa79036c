using CsCheck;
using Graspwright.Moulding.ComingOff;

namespace Graspwright.Moulding.Tests.ComingOff;

public sealed class HoopStretchTests
{
    // A cone that widens toward the open end: g = g₀ + k·s. Everything must pass the far edge; cut up to g(s) = g_end ÷ (1 + allowed).
    [Fact]
    public void Cuts_a_cone_where_the_closed_form_says() =>
        Gen.Select(Gen.Double[0.1, 0.2], Gen.Double[0.05, 0.5], Gen.Double[0.08, 0.3], Gen.Double[0.01, 0.2]).Sample((girth, slope, length, allowed) =>
        {
            Girths cone = new([0, length], [girth, girth + slope * length]);
            IReadOnlyList<StretchAt> stretch = HoopStretch.Along(cone, 0, length, 0, length);
            double end = girth + slope * length, most = end / girth - 1;
            Assert.Equal(most, stretch.Max(s => s.Stretch), 1e-12);
            (Cut FromNear, Cut FromFar)? cuts = HoopStretch.Cuts(stretch, allowed);
            if (most <= allowed)
            {
                Assert.Null(cuts);
                return;
            }

            Assert.Equal((end / (1 + allowed) - girth) / slope, cuts!.Value.FromNear.Length, 1e-9);
            Assert.Equal(length, cuts.Value.FromFar.Length, 1e-12); // the narrow end is the last from there
        });

    // A stepped cylinder: narrow from 40 to 90 mm, wide before and after.
    [Fact]
    public void Cuts_a_stepped_cylinder_through_its_waist()
    {
        Girths waist = new([0, 0.04, 0.040001, 0.09, 0.090001, 0.15], [0.24, 0.24, 0.16, 0.16, 0.2, 0.2]);
        IReadOnlyList<StretchAt> stretch = HoopStretch.Along(waist, 0, 0.15, 0, 0.15);
        Assert.Equal(0.2 / 0.16 - 1, stretch.Max(s => s.Stretch), 1e-12);
        (Cut near, Cut far) = HoopStretch.Cuts(stretch, 0.1)!.Value;
        Assert.Equal(0.09, near.Length, 2e-6);
        Assert.Equal(0.11, far.Length, 2e-6);
        Assert.Null(HoopStretch.Cuts(stretch, 0.26));
    }

    [Fact]
    public void A_snug_tube_on_a_plain_cylinder_stretches_by_what_it_is_smaller() =>
        Assert.All(HoopStretch.Along(new([0, 0.2], [0.2, 0.2]), 0.05, 0.15, 0.04, 0.2), s => Assert.Equal(1 / 0.96 - 1, s.Stretch, 1e-12));

    // On a plain cylinder the force is known in closed form: 2·π·E·t·ε·μ·L.
    [Fact]
    public void Pulls_a_snug_tube_along_a_cylinder_with_the_closed_form()
    {
        PullOff pull = HoopStretch.Force(new([0, 0.3], [0.2, 0.2]), 0.05, 0.15, 0.05, 1e6, 0.003, 0.6);
        double strain = 1 / 0.95 - 1, perLength = 2 * Math.PI * 1e6 * 0.003 * strain;
        Assert.Equal(perLength * 0.6 * 0.1, pull.Force, 1e-6 * pull.Force);
        Assert.Equal(perLength / 0.2, pull.Pressure, 1e-9 * pull.Pressure);
    }

    [Fact]
    public void A_cut_keeps_away_from_patches_on_both_sides()
    {
        Girths limb = new([0, 0.2], [0.36, 0.36]);
        Patch[] patches = [new("back", 0, 0.2, 0, Math.PI / 2), new("palm", 0.05, 0.1, Math.PI, 1.5 * Math.PI), new("far", 0.3, 0.4, 0, 6.28)];
        CutLine line = Patches.Best(new(0, 0.08), limb, patches);
        // The two free quarters are alike; their middles lie an eighth of the girth from both patches.
        Assert.Equal(0.36 / 8, line.Clearance, 1e-9);
        Assert.Contains(Math.Round(line.Angle * 180 / Math.PI, 6), new[] { 135.0, 315.0 });
        Assert.Equal(0, Patches.At(0.3, new(0, 0.08), limb, patches).Clearance);
        Assert.Equal("back", Patches.At(0.3, new(0, 0.08), limb, patches).Nearest);
    }
}
