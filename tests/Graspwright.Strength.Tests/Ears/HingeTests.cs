using CsCheck;
using Graspwright.Strength.Ears;
using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Tests.Ears;

public sealed class HingeTests
{
    private static readonly Solid Print = new(3.5e9, 1.29e9, 53e6, 53e6, 0.55, 1, Brittle: true);
    private static readonly Solid Steel = new(200e9, 77.5e9, 207e6, 517e6, 0.62, 0.8, Brittle: false);

    private static Hinge Some(double ear = 0.003, double pin = 0.003) => new(ear, 0.011, 0.009, 0.0055, 0.001, 0.008, 0.0001, pin, pin, Print, Steel, Print);

    [Fact]
    public void The_ways_of_a_side_push_balance_it() =>
        Gen.Select(Gen.Double[0.001, 0.006], Gen.Double[0.001, 0.006], Gen.Double[0.01, 0.1], Gen.Double[-0.03, 0.03]).Sample((ear, pin, along, off) =>
        {
            Hinge hinge = Some(ear, pin);
            SideLoad side = hinge.Side(along, off);
            Assert.Equal(along, side.EarPull * hinge.Pin.Spacing + side.EarBending, 1e-12);
            Assert.Equal(Math.Abs(off), side.EarLift * hinge.Pin.Spacing + side.EarTwist, 1e-12);
        });

    [Fact]
    public void A_limp_pin_leaves_the_ears_to_bend()
    {
        SideLoad side = Some(pin: 1e-5).Side(0.08, 0.01);
        Assert.Equal(0.08, side.EarBending, 1e-6);
        Assert.Equal(0.01, side.EarTwist, 1e-6);
    }

    [Fact]
    public void A_stiff_pin_makes_the_ears_push_and_pull()
    {
        // With E·A/e each and half the spacing as arm: two ears, stiffness E·A·s²/(2e); two ears bent, 2·E·I/e.
        Hinge hinge = Some() with { PinSolid = Steel with { Modulus = 1e20 } };
        Section ear = Section.Rectangle(0.003, 0.011);
        double s = hinge.Pin.Spacing, pull = ear.Area * s * s / 2, bend = 2 * ear.InertiaSide;
        Assert.Equal(0.08 * pull / (pull + bend) / s, hinge.Side(0.08, 0).EarPull, 1e-9);
    }

    [Fact]
    public void A_finger_on_stiff_hinges_gives_as_a_cantilever()
    {
        Solid rigid = Print with { Modulus = 1e20, ShearModulus = 1e20 };
        Hinge hinge = Some() with { Ear = rigid, PinSolid = rigid };
        Section bar = Section.Rectangle(0.014, 0.012);
        FingerChain chain = new([hinge, hinge], [bar, bar], [0.09, 0.045], [0, 0], Print, 1e20, 1e20);
        Assert.Equal(Math.Pow(0.09, 3) / (3 * Print.Modulus * bar.InertiaSide), chain.Compliance(), 1e-12);
    }

    [Fact]
    public void A_brittle_part_breaks_at_its_notch_and_a_tough_one_by_its_plastic_section()
    {
        StressCheck check = new(HingePart.Ears, "at the root", 1e6, 2, 1.5, Shear: false);
        Assert.Equal(53.0 / 2, check.BreakingForce(Print), 1e-9);
        Assert.Equal(517 * 1.5, check.BreakingForce(Steel), 1e-9);
        Assert.Equal(207, check.BendingForce(Steel), 1e-9);
        Assert.Equal(517 * 0.62, new StressCheck(HingePart.Pin, "sheared", 1e6, 1, 1, Shear: true).BreakingForce(Steel), 1e-9);
    }

    [Fact]
    public void Thicker_ears_break_later_in_every_way_of_their_own() =>
        Assert.All(
            Some().UnderSidePush(0.08, 0.01).Zip(Some(ear: 0.0033).UnderSidePush(0.08, 0.01)).Where(p => p.First.Part == HingePart.Ears),
            p => Assert.True(p.Second.BreakingForce(Print) > p.First.BreakingForce(Print), p.First.Mode));
}
