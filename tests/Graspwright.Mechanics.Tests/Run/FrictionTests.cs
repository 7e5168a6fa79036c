using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>One place that rubs at a time, beside its textbook law.</summary>
public sealed class FrictionTests
{
    private const double Degree = Math.PI / 180;

    // Beer, Johnston et al., Vector Mechanics for Engineers, 9th ed., Sample 8.8: 600 lb, μ 0.25, wrap 2π/3 → 355.43 lb.
    [Fact]
    public void Belt_law_is_that_of_the_worked_example() => Assert.Equal(355.430908313, 600 / Belt(0.25, 2 * Math.PI / 3), 1e-8);

    // The same law between leaf and finger: T₁ = T₂ e^{μβ} closing, T₂ = T₁ e^{μβ} opening.
    [Fact]
    public void A_guide_takes_its_share_of_a_sliding_pull_by_the_belt_law()
    {
        const double mu = 0.25, wrap = 2 * Math.PI / 3;
        Finger finger = PlainDrive.CoupledFinger("index") with { Pull = new FingerPull { Stiffness = 1e6, GuideWrapRadians = wrap } };
        DriveModel drive = PlainDrive.With(new FingerLeaf(0), finger) with { Friction = new FrictionCoefficients { Guide = mu } };
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, new RunOptions { EffortFraction = 0.3 });
        Assert.Null(run.Failure);
        int closing = run.Closing.Count(r => Sliding(run, r, 1)), opening = run.Opening.Count(r => Sliding(run, r, -1));
        Assert.True(closing > 15 && opening > 10, $"{closing} sliding states closing, {opening} opening");
        foreach (double[] row in run.Closing.Where(r => Sliding(run, r, 1)))
        {
            double leaf = row[run.Layout.LeafPull(0)];
            Assert.Equal(leaf, row[run.Layout.FingerPull(0)] * Belt(mu, wrap), 1e-7 * leaf);
        }

        foreach (double[] row in run.Opening.Where(r => Sliding(run, r, -1)))
        {
            double leaf = row[run.Layout.LeafPull(0)];
            Assert.Equal(leaf * Belt(mu, wrap), row[run.Layout.FingerPull(0)], 1e-7 * leaf * Belt(mu, wrap));
        }
    }

    // F₀ along the slot without friction; with it the link's tension is F₀/(cos δ − μ sin δ), δ between link and slot.
    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void A_shift_starts_when_the_pull_overcomes_spring_and_slot(double mu)
    {
        const double preload = 60;
        RunResult run = ClosingRun.Solve(LoadSensing(preload, mu), PlainDrive.Bottle, PlainDrive.ToTheEnd);
        Assert.Null(run.Failure);
        RunEvent start = run.First(EventKind.ShiftStart)!;
        double[] row = run.Closing.First(r => Math.Abs(r[TraceLayout.Theta] - start.ThetaRadians) < 1e-9);
        double tension = row[TraceLayout.TransferLink], cos = row[TraceLayout.SlotLoad] / tension, sin = Math.Sqrt(1 - cos * cos);
        Assert.Equal(preload / (cos - mu * sin), tension, 1e-6 * tension);
        Assert.Equal(row[TraceLayout.SlotLoad], start.Value, 1e-6 * preload);
        Assert.True(mu == 0 ? Math.Abs(start.Value - preload) < 1e-6 * preload : start.Value > preload * (1 + mu * 0.1));
    }

    [Fact]
    public void A_shift_without_friction_ends_when_the_load_is_preload_and_rate_times_length()
    {
        DriveModel drive = LoadSensing(60, 0);
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, PlainDrive.ToTheEnd);
        RunEvent end = run.First(EventKind.ShiftEnd)!;
        Slot slot = drive.Crank.Slot!;
        Assert.Equal(slot.Preload + slot.Rate * slot.Length, end.Value, 1e-6 * end.Value);
    }

    // Journal friction μ·r·N (Khurmi & Gupta, Theory of Machines, Example 10.15: 2000 N on 60 mm at μ 0.03 → 1.8 N·m).
    [Fact]
    public void A_rubbing_fulcrum_takes_mu_r_N_out_of_the_crank()
    {
        Assert.Equal(1.8, 0.03 * 0.03 * 2000, 1e-12);
        const double mu = 0.15, radius = 3e-3;
        DriveModel drive = Fulcrum(mu, radius);
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, new RunOptions { EffortFraction = 0.3, OutputStepRadians = Degree });
        Assert.Null(run.Failure);
        int compared = 0;
        foreach (double[] row in run.Closing.Skip(1))
        {
            double balance = Math.Abs(row[TraceLayout.PullLink]) * PullArm(drive, row) - row[TraceLayout.TransferLink] * row[TraceLayout.OutputArm];
            Assert.Equal(mu * radius * row[TraceLayout.Fulcrum], balance, 1e-8);
            compared++;
        }

        foreach (double[] row in run.Opening.Where(r => r[TraceLayout.Sticking] == 0 && r[TraceLayout.Theta] > Degree))
        {
            double balance = Math.Abs(row[TraceLayout.PullLink]) * PullArm(drive, row) - row[TraceLayout.TransferLink] * row[TraceLayout.OutputArm];
            Assert.Equal(-mu * radius * row[TraceLayout.Fulcrum], balance, 1e-8);
            compared++;
        }

        Assert.True(compared > 40, $"only {compared} states were compared");
    }

    // To first order in friction dτ/dM = dφ/dθ of the path without it, so the loop is 2 μ r N dφ/dθ wide.
    [Fact]
    public void The_loop_of_a_rubbing_fulcrum_is_two_mu_r_N_wide_seen_through_the_crank()
    {
        const double mu = 1e-3, radius = 3e-3, h = 0.02 * Degree;
        DriveModel drive = Fulcrum(mu, radius), smooth = Fulcrum(0, radius);
        RunOptions options = new() { EffortFraction = null, OutputStepRadians = 0.5 * Degree };
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, options);
        RunResult plain = ClosingRun.Solve(smooth, PlainDrive.Bottle, PlainDrive.ToTheEnd with { OutputStepRadians = h });
        Assert.Null(run.Failure);
        int compared = 0;
        foreach (double degrees in new[] { 3.0, 8, 12, 20, 28, 33 })
        {
            double[] closing = At(run.Closing, degrees), opening = At(run.Opening, degrees);
            double ratio = (At(plain.Closing, degrees + 0.02)[TraceLayout.Phi] - At(plain.Closing, degrees - 0.02)[TraceLayout.Phi]) / (2 * h);
            double expected = 2 * mu * radius * At(plain.Closing, degrees)[TraceLayout.Fulcrum] * ratio;
            double width = closing[TraceLayout.Tau] - opening[TraceLayout.Tau];
            Assert.True(Math.Abs(width - expected) < 1e-4 * expected + 1e-9, FormattableString.Invariant($"{degrees}°: loop {width:r} N·m, 2 μ r N dφ/dθ {expected:r} N·m"));
            compared++;
        }

        Assert.Equal(6, compared);
    }

    private static double[] At(IReadOnlyList<double[]> rows, double degrees) => rows.First(r => Math.Abs(r[TraceLayout.Theta] - degrees * Degree) < 1e-9);

    private static double Belt(double mu, double wrap) => Math.Exp(mu * wrap);

    /// <summary>The finger, and so the pull through its guide, has moved since the state before, all the way.</summary>
    private static bool Sliding(RunResult run, double[] row, int sense)
    {
        IReadOnlyList<double[]> rows = sense > 0 ? run.Closing : run.Opening;
        int k = rows.ToList().IndexOf(row);
        return k > 0 && row[TraceLayout.Sticking] == 0 && sense * (row[run.Layout.Joint(0, 0)] - rows[k - 1][run.Layout.Joint(0, 0)]) > 1e-6;
    }

    private static DriveModel Fulcrum(double mu, double radius)
    {
        DriveModel drive = PlainDrive.With(new FingerLeaf(0), PlainDrive.CoupledFinger("index"));
        return drive with { Crank = drive.Crank with { FulcrumPinRadius = radius }, Friction = new FrictionCoefficients { Pin = mu } };
    }

    private static DriveModel LoadSensing(double preload, double mu)
    {
        DriveModel drive = PlainDrive.With(new FingerLeaf(0), PlainDrive.CoupledFinger("index"));
        return drive with
        {
            Crank = drive.Crank with { Slot = new Slot { DirectionRadians = -60 * Degree, Length = 2e-3, Preload = preload, Rate = 4e3 } },
            Friction = new FrictionCoefficients { Slot = mu },
        };
    }

    /// <summary>Distance from the fulcrum to the line of the pull link, the crank having turned by φ.</summary>
    private static double PullArm(DriveModel drive, double[] row)
    {
        Vector2D anchor = drive.PullLink.Anchor.Rotated(row[TraceLayout.Theta]);
        double length = (drive.Crank.Fulcrum + drive.Crank.Input - drive.PullLink.Anchor).Length + row[TraceLayout.PullLink] / drive.PullLink.Stiffness;
        double Length(double turn) => (drive.Crank.Fulcrum + drive.Crank.Input.Rotated(turn) - anchor).Length;
        double sense = Math.Abs(Length(row[TraceLayout.Phi]) - length) < Math.Abs(Length(-row[TraceLayout.Phi]) - length) ? 1 : -1;
        Vector2D pin = drive.Crank.Input.Rotated(sense * row[TraceLayout.Phi]);
        Vector2D along = drive.Crank.Fulcrum + pin - anchor;
        return Math.Abs(pin.Cross(along)) / along.Length;
    }
}
