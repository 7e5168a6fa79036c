using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>A slot that is an arc, with the straight slot as its special case.</summary>
public sealed class ArcSlotTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    public void A_slot_that_hardly_turns_is_the_straight_slot(double mu)
    {
        RunOptions options = new() { EffortFraction = 0.3 };
        RunResult straight = ClosingRun.Solve(Held(0, mu), PlainDrive.Bottle, options), bent = ClosingRun.Solve(Held(1e-9, mu), PlainDrive.Bottle, options);
        Assert.Equal(straight.First(EventKind.ShiftStart)!.ThetaRadians, bent.First(EventKind.ShiftStart)!.ThetaRadians, 1e-9);
        Assert.Equal(straight.First(EventKind.ShiftEnd)!.ThetaRadians, bent.First(EventKind.ShiftEnd)!.ThetaRadians, 1e-9);
        Assert.Equal(straight.AtEnd[TraceLayout.Tau], bent.AtEnd[TraceLayout.Tau], 1e-7);
    }

    // Half a circle of radius r leads 2r across from where it set out, and sets the direction back.
    [Fact]
    public void An_arc_of_half_a_turn_ends_across_its_diameter()
    {
        Slot slot = new() { DirectionRadians = 0, Length = Math.PI * 5e-3, TurnRadians = Math.PI, Preload = 0, Rate = 0 };
        Assert.Equal(0, slot.At(slot.Length).X, 1e-15);
        Assert.Equal(10e-3, slot.At(slot.Length).Y, 1e-15);
        Assert.Equal(-1, slot.Along(slot.Length).X, 1e-15);
    }

    // Bent about a point to its left at distance 1/κ, every place of the slot is as far from that point.
    [Fact]
    public void An_arc_whose_turn_is_length_over_link_runs_round_the_carriages_pin()
    {
        const double link = 35e-3;
        Slot slot = new() { DirectionRadians = -100 * Degree, Length = 7e-3, TurnRadians = 7.0 / 35, Preload = 0, Rate = 0 };
        Vector2D pin = link * Vector2D.AtAngle(-10 * Degree);
        Assert.All(Enumerable.Range(0, 8), i => Assert.Equal(link, (pin - slot.At(i * 1e-3)).Length, 1e-14));
    }

    /// <summary>Carriage at its stop, stiff links: the pin is bound to the circle about the carriage's pin, and the law of cosines gives the crank's angle.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(12, 0)]
    [InlineData(-25, 0)]
    [InlineData(40, 0)]
    [InlineData(0, 0.1)]
    [InlineData(12, 0.1)]
    [InlineData(-25, 0.1)]
    public void With_the_carriage_held_the_shift_costs_what_the_law_of_cosines_says(double turnDegrees, double mu)
    {
        DriveModel drive = Held(turnDegrees * Degree, mu);
        (double[] from, double[] to) = Shifted(drive);
        double expected = CrankAt(drive, to) - CrankAt(drive, from), cost = to[TraceLayout.Phi] - from[TraceLayout.Phi];
        Assert.True(expected > 0.01, $"the shift turns the crank by {expected} rad");
        Assert.Equal(expected, cost, 1e-6);
    }

    /// <summary>φ = ∫cot δ dr/r, and cot δ passes μ wherever the pin slides, straight or bent.</summary>
    [Theory]
    [InlineData(0, 0.05)]
    [InlineData(12, 0.05)]
    [InlineData(12, 0.2)]
    [InlineData(-25, 0.1)]
    public void No_shift_is_cheaper_than_friction_times_the_logarithm_of_the_arms(double turnDegrees, double mu)
    {
        (double[] from, double[] to) = Shifted(Held(turnDegrees * Degree, mu));
        double cost = to[TraceLayout.Phi] - from[TraceLayout.Phi], arms = Math.Log(from[TraceLayout.OutputArm] / to[TraceLayout.OutputArm]);
        Assert.True(arms > 0.1);
        Assert.True(cost >= mu * arms, $"{cost} rad, bound {mu * arms} rad");
    }

    /// <summary>An arc that turns with the link keeps the angle between them, and costs less than the straight slot that gets as far.</summary>
    [Fact]
    public void An_arc_that_turns_with_the_link_shifts_more_cheaply_than_a_straight_slot()
    {
        (double[] from, double[] to) = Shifted(Held(0, 0));
        (double[] first, double[] last) = Shifted(Held(-12 * Degree, 0));
        double straight = (to[TraceLayout.Phi] - from[TraceLayout.Phi]) / Math.Log(from[TraceLayout.OutputArm] / to[TraceLayout.OutputArm]);
        double bent = (last[TraceLayout.Phi] - first[TraceLayout.Phi]) / Math.Log(first[TraceLayout.OutputArm] / last[TraceLayout.OutputArm]);
        Assert.True(bent < straight, $"{bent} against {straight} rad per unit of ln(r₁/r₂)");
    }

    private static (double[] From, double[] To) Shifted(DriveModel drive)
    {
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, PlainDrive.ToTheEnd);
        Assert.Null(run.Failure);
        return (At(run, EventKind.ShiftStart), At(run, EventKind.ShiftEnd));
    }

    private static double[] At(RunResult run, EventKind kind)
    {
        double theta = run.First(kind)!.ThetaRadians;
        return run.Closing.First(r => Math.Abs(r[TraceLayout.Theta] - theta) < 1e-12);
    }

    /// <summary>Angle of the crank, by the triangle of fulcrum, output pin and carriage pin [rad].</summary>
    private static double CrankAt(DriveModel drive, double[] row)
    {
        Vector2D pin = drive.Rail.Rest + row[TraceLayout.Carriage] * Vector2D.AtAngle(drive.Rail.DirectionRadians), side = pin - drive.Crank.Fulcrum;
        Vector2D arm = drive.Crank.Output + drive.Crank.Slot!.At(row[TraceLayout.Shift]);
        double link = (drive.Rail.Rest - drive.Crank.Fulcrum - drive.Crank.Output).Length + row[TraceLayout.TransferLink] / drive.TransferLink.Stiffness;
        double corner = Math.Acos((arm.Dot(arm) + side.Dot(side) - link * link) / (2 * arm.Length * side.Length));
        double turned = Math.Atan2(side.Y, side.X) + corner - Math.Atan2(arm.Y, arm.X);
        return Math.Abs(turned);
    }

    /// <summary>A drive whose carriage soon comes to its stop, so that only the shift is left to give.</summary>
    private static DriveModel Held(double turn, double mu)
    {
        DriveModel drive = PlainDrive.With(new FingerLeaf(0), PlainDrive.CoupledFinger("index"));
        return drive with
        {
            PullLink = drive.PullLink with { Stiffness = 1e9 },
            TransferLink = drive.TransferLink with { Stiffness = 1e9 },
            Rail = drive.Rail with { Travel = 6e-3 },
            Crank = drive.Crank with { Slot = new Slot { DirectionRadians = -75 * Degree, Length = 4e-3, TurnRadians = turn, Preload = 30, Rate = 500 } },
            Friction = new FrictionCoefficients { Slot = mu },
        };
    }
}
