using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>Output arm, transfer link and carriage on a rail through the fulcrum are a slider-crank: place, speed and force beside the exact formulas.</summary>
public sealed class SliderCrankTests
{
    private const double Degree = Math.PI / 180;

    // R. S. Khurmi and J. K. Gupta, Theory of Machines, 14th ed., Example 15.4, p. 528: r 0.3 m, l 1.5 m, 180 rpm, 40° from the
    // dead centre. The book prints 4.19 m/s by its two-term formula; 4.196433719 m/s is the exact motion, worked out apart.
    [Fact]
    public void Exact_formula_gives_the_speed_of_the_worked_example()
    {
        const double turning = 180 * 2 * Math.PI / 60;
        double speed = turning * SlidePerTurn(0.3, 1.5, 40 * Degree);
        Assert.Equal(4.196433719, speed, 1e-9);
        Assert.Equal(4.19, speed, 0.3e-2 * 4.19); // the two-term formula is good to 0.3 % for l/r of 4 and more
    }

    [Fact]
    public void Carriage_moves_and_pulls_as_in_a_slider_crank_of_the_same_proportions()
    {
        const double r = 0.012, l = 5 * r, rest = 20 * Degree, stiff = 2e8;
        Vector2D fulcrum = new(0.02, 0.02);
        DriveModel plain = PlainDrive.With(new FingerLeaf(0), PlainDrive.CoupledFinger("index", 12e-3));
        DriveModel drive = plain with
        {
            PullLink = plain.PullLink with { Stiffness = stiff },
            TransferLink = new TransferLink { Stiffness = stiff },
            Crank = plain.Crank with { Output = r * Vector2D.AtAngle(rest) },
            Rail = new Rail { Rest = fulcrum + new Vector2D(Slide(r, l, rest), 0), DirectionRadians = Math.PI, Travel = 0.03 },
        };
        RunResult run = ClosingRun.Solve(drive, HeldObject.None, PlainDrive.ToTheEnd);
        Assert.Null(run.Failure);
        int loaded = 0;
        foreach (double[] row in run.Closing)
        {
            double angle = rest + row[TraceLayout.Phi];
            double link = row[TraceLayout.TransferLink], along = row[TraceLayout.CarriageForce];
            double stretched = along > 0 ? link / stiff * (link / along) : 0; // the link is stiff, not rigid
            Assert.Equal(Slide(r, l, rest) - Slide(r, l, angle) - stretched, row[TraceLayout.Carriage], 1e-11);
            if (along > 0.1)
            {
                // The moment of the link about the fulcrum, for each newton along the rail, is the slide for each radian.
                loaded++;
                double perNewton = link * row[TraceLayout.OutputArm] / along;
                Assert.Equal(SlidePerTurn(r, l, angle), perNewton, 1e-6 * r);
            }
        }

        Assert.True(loaded > 30, $"{loaded} loaded states");
    }

    /// <summary>Distance of the slide from the crank's axis.</summary>
    private static double Slide(double r, double l, double angle) =>
        r * Math.Cos(angle) + Math.Sqrt(l * l - r * r * Math.Sin(angle) * Math.Sin(angle));

    /// <summary>Slide toward the axis for each radian of the crank.</summary>
    private static double SlidePerTurn(double r, double l, double angle) =>
        r * Math.Sin(angle) * (1 + r * Math.Cos(angle) / Math.Sqrt(l * l - r * r * Math.Sin(angle) * Math.Sin(angle)));
}
