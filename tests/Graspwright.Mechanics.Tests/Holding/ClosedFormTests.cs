using CsCheck;
using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Holding;

/// <summary>Limits of grips against hand-worked statics (Coulomb's law; each formula stands beside its test).</summary>
public sealed class ClosedFormTests
{
    private static readonly Gen<(double N, double Mu, double W)> Numbers = Gen.Select(Gen.Double[1, 60], Gen.Double[0.05, 1.5], Gen.Double[0.1, 50]);

    [Fact]
    public void A_pinched_plate_slips_at_twice_friction_times_force() =>
        Numbers.Sample(x => Near(2 * x.Mu * x.N / x.W, MadeGrip.Pinch(x.N, x.Mu, thickness: 0), Force(new(x.W, 0, 0), new(0.12, -0.05, 0))), iter: 200);

    [Fact]
    public void A_pinched_plate_turns_on_the_spot_at_twice_friction_times_force_times_spin_radius() =>
        Numbers.Sample(x => Near(2 * x.Mu * x.N * 0.004 / (0.01 * x.W), MadeGrip.Pinch(x.N, x.Mu, 0, 0.004), new OutsideLoad(default, default, new(0, 0.01 * x.W, 0))), iter: 100);

    [Fact]
    public void A_plate_is_drawn_from_the_thumb_at_the_fingers_force() =>
        Numbers.Sample(x => Near(x.N / x.W, MadeGrip.Pinch(x.N, x.Mu, 0), Force(new(0, x.W, 0), new(0.12, -0.05, 0))), iter: 100);

    [Fact]
    public void A_cylinder_in_two_contacts_slides_along_its_axis_at_twice_friction_times_force() =>
        Numbers.Sample(x => Near(2 * x.Mu * x.N / x.W, MadeGrip.Ring(0.03, x.N, x.Mu, 90, -90), Force(new(0, 0, -x.W), default)), iter: 100);

    [Fact]
    public void A_cylinder_in_three_contacts_slides_along_its_axis_at_three_times_friction_times_force() =>
        Numbers.Sample(x => Near(3 * x.Mu * x.N / x.W, MadeGrip.Ring(0.03, x.N, x.Mu, 90, 210, 330), Force(new(0, 0, x.W), default)), iter: 100);

    [Fact]
    public void A_cylinder_in_three_contacts_turns_at_three_times_friction_times_force_times_radius() =>
        Numbers.Sample(x => Near(3 * x.Mu * x.N * 0.02 / (0.05 * x.W), MadeGrip.Ring(0.02, x.N, x.Mu, 90, 210, 330), new OutsideLoad(default, default, new(0, 0, 0.05 * x.W))), iter: 100);

    /// <summary>Across its axis a two-point grip holds 2·μ·N along the contacts' tangents: sliding on both at once.</summary>
    [Fact]
    public void A_cylinder_in_two_contacts_is_pulled_out_sideways_at_twice_friction_times_force() =>
        Numbers.Sample(x => Near(2 * x.Mu * x.N / x.W, MadeGrip.Ring(0.03, x.N, x.Mu, 90, -90), Force(new(x.W, 0, 0), default)), iter: 100);

    /// <summary>Slide and turn together in a three-point ring: each contact's friction goes μN at the angle of both, (W/3)² + (T/3r)² = (μN)².</summary>
    [Fact]
    public void Slide_and_turn_share_the_friction_of_a_ring() => Numbers.Sample(x =>
    {
        double arm = 0.013, radius = 0.02, one = Math.Sqrt(1 + arm * arm / (radius * radius)) / 3;
        Near(x.Mu * x.N / (one * x.W), MadeGrip.Ring(radius, x.N, x.Mu, 90, 210, 330), new OutsideLoad(new(0, 0, x.W), default, new(0, 0, arm * x.W)));
    }, iter: 100);

    /// <summary>A bar in a hook: two hooked fingers bear a load along their normals up to the locks' M ÷ arm, whatever the friction.</summary>
    [Fact]
    public void A_hooked_bar_hangs_until_the_locks_give() => Numbers.Sample(x =>
    {
        HoldContact[] fingers = [MadeGrip.Finger(0, new(0.1, -0.02, 0.01), new(-1, 0, 0), 0, x.Mu), MadeGrip.Finger(1, new(0.1, -0.02, -0.01), new(-1, 0, 0), 0, x.Mu)];
        Grasp hook = new() { Contacts = fingers, Locked = true, LockLimits = [new(0, 0, 2.5), new(1, 0, 2.5)], Centre = new(0.11, -0.02, 0), Axis = new(0, 0, 1) };
        Near(Math.Min(2 * 2.5 / 0.05 / x.W, HoldResult.MostFactor), hook, Force(new(x.W, 0, 0), new(0.11, -0.02, 0)));
    }, iter: 100);

    /// <summary>Locked and relaxed, a load across the contacts gains nothing from growth: still friction times what was left.</summary>
    [Fact]
    public void What_is_left_in_a_lock_bounds_a_load_across_it() => Numbers.Sample(x =>
    {
        Grasp left = MadeGrip.Ring(0.03, x.N, x.Mu, 90, -90);
        Grasp locked = GripOfRun.Locked(left, [])!;
        Near(2 * x.Mu * x.N / x.W, locked, Force(new(0, 0, x.W), default));
    }, iter: 100);

    /// <summary>
    /// A hammer in two fingers at ±b/2 against two points of the palm, D = 2r across: friction along the handle makes
    /// the couple μ·2N·D, and nothing else does, as each finger keeps its force and the palm's two forces are then fixed.
    /// </summary>
    [Fact]
    public void A_handle_tips_when_friction_along_it_is_used_up_and_palm_forces_shift() => Numbers.Sample(x =>
    {
        const double radius = 0.015, half = 0.02;
        Grasp handle = new()
        {
            Contacts =
            [
                MadeGrip.Finger(0, new(0, -radius, half), new(0, 1, 0), x.N, x.Mu), MadeGrip.Finger(1, new(0, -radius, -half), new(0, 1, 0), x.N, x.Mu),
                Palm(new(0, radius, half)), Palm(new(0, radius, -half)),
            ],
            Drives = [new(0, 0, 0.05 * x.N), new(1, 0, 0.05 * x.N)],
            Centre = default,
            Axis = new(0, 0, 1),
        };

        // Moment about x: fingers fixed at N each; the palm takes 2N at one place at most, N·half·2 more than even, and friction along z adds 2·μ·N·2·r.
        Near((2 * x.N * half + 2 * x.Mu * x.N * 2 * radius) / (0.1 * x.W), handle, new OutsideLoad(default, default, new(0.1 * x.W, 0, 0)));

        HoldContact Palm(Vector3D at) => new() { Name = "palm", Kind = ContactKind.Palm, Place = at, Normal = new(0, -1, 0), Friction = x.Mu, Stiffness = 14000 };
    }, iter: 100);

    [Fact]
    public void The_first_slip_of_an_even_grip_is_the_limit_itself() => Numbers.Sample(x =>
    {
        HoldResult held = new LoadLimit(MadeGrip.Ring(0.03, x.N, x.Mu, 90, 210, 330)).Hold(Force(new(0, 0, -x.W), default), new(0, 0, -1));
        double limit = 3 * x.Mu * x.N / x.W;
        Assert.Equal(limit, held.FirstSlipFactor, 1e-6 * limit);
        Assert.True(limit > HoldResult.MostFactor || held.Mode == GiveWay.Drop, held.Mode.ToString());
        Assert.True(held.FirstSlip.Direction.Z < -0.999);
    }, iter: 100);

    [Fact]
    public void The_friction_needed_is_that_at_which_the_load_is_just_held() => Numbers.Sample(x =>
    {
        double needed = new LoadLimit(MadeGrip.Ring(0.03, x.N, x.Mu, 90, 210, 330)).FrictionNeeded(Force(new(0, 0, x.W), default));
        double expected = x.W / (3 * x.N) / x.Mu;
        Assert.True(expected > 64 || Math.Abs(needed - expected) < 4e-3 * expected, $"{needed} against {expected}");
    }, iter: 60);

    [Theory]
    [InlineData(0, 0, -1, GiveWay.Drop)]
    [InlineData(0, 0, 1, GiveWay.Slide)]
    [InlineData(1, 0, 0, GiveWay.PullOut)]
    public void Says_how_the_grip_gives_way(double x, double y, double z, GiveWay mode) =>
        Assert.Equal(mode, new LoadLimit(MadeGrip.Ring(0.03, 10, 0.5, 90, -90)).Hold(Force(new(x, y, z), default), new(0, 0, -1)).Mode);

    [Fact]
    public void Says_that_a_turned_handle_twists() =>
        Assert.Equal(GiveWay.Twist, new LoadLimit(MadeGrip.Ring(0.03, 10, 0.5, 90, 210, 330)).Hold(new(default, default, new(0, 0, 1)), default).Mode);

    /// <summary>One finger alone pushes the object away: nothing balances it.</summary>
    [Fact]
    public void An_unopposed_finger_pushes_the_object_out()
    {
        HoldResult held = new LoadLimit(MadeGrip.Ring(0.03, 10, 0.2, 90)).Hold(Force(new(0, 0, 1), default), default);
        Assert.Equal((HoldResult.NotBalanced, GiveWay.PushedOut), (held.Factor, held.Mode));
    }

    private static OutsideLoad Force(Vector3D force, Vector3D place) => new(force, place, default);

    private static void Near(double expected, Grasp grasp, OutsideLoad load)
    {
        double factor = new LoadLimit(grasp).Factor(load);
        expected = Math.Min(expected, HoldResult.MostFactor);
        Assert.True(Math.Abs(factor - expected) <= 2e-5 * expected, $"{factor} against {expected}");
    }
}
