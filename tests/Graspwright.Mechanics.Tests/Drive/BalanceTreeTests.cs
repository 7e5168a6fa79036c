using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Tests.Drive;

/// <summary>Balance bars in the drive, where the answer is known beforehand.</summary>
public sealed class BalanceTreeTests
{
    [Fact]
    public void With_one_end_held_the_other_travels_twice_at_half_the_force()
    {
        Finger stiff = PlainDrive.CoupledFinger("held") with { Pull = new FingerPull { Stiffness = 1e10 } };
        DriveModel drive = PlainDrive.With(PlainDrive.EqualBar("root", new FingerLeaf(0), new FingerLeaf(1)), PlainDrive.CoupledFinger("free", 14e-3), stiff);
        RunResult run = ClosingRun.Solve(drive, PlainDrive.Bottle, PlainDrive.ToTheEnd with { Locks = [new FingerLock(1, 0, true)] });
        Assert.Null(run.Failure);
        int compared = 0;
        foreach (double[] row in run.Closing)
        {
            double pivot = row[TraceLayout.Pivot(0)];
            if (row[TraceLayout.Theta] == 0 || row[TraceLayout.Tilt(0)] <= -((BalanceBar)drive.Tree).TiltStopRadians)
            {
                continue;
            }

            compared++;
            Assert.Equal(2 * row[TraceLayout.Carriage] - 0.5 * pivot / 1e10, row[run.Layout.LeafTravel(0)], 1e-11);
            Assert.Equal(0, row[run.Layout.LeafTravel(1)], 5e-7);
            Assert.Equal(0.5 * pivot, row[run.Layout.LeafPull(0)], 1e-6 * pivot);
            Assert.Equal(0.5 * pivot, row[run.Layout.LeafPull(1)], 1e-6 * pivot);
            Assert.Equal(row[TraceLayout.CarriageForce], pivot, 1e-6 * pivot);
        }

        Assert.True(compared > 20, $"only {compared} states were compared");
    }

    [Fact]
    public void A_free_tree_with_equal_arms_shares_the_pulls_equally_whatever_the_pairing()
    {
        RunResult[] runs = [.. new[] { (0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2), (3, 1, 2, 0) }.Select(p => Paired(p.Item1, p.Item2, p.Item3, p.Item4))];
        foreach (RunResult run in runs)
        {
            Assert.Null(run.Failure);
            Assert.Empty(run.Jumps);
            Assert.DoesNotContain(run.Events, e => e.Kind == EventKind.StopReached && e.Subject.StartsWith("bar", StringComparison.Ordinal));
            foreach (double[] row in run.Closing)
            {
                double[] pulls = [.. Enumerable.Range(0, 4).Select(f => row[run.Layout.LeafPull(f)])];
                Assert.True(pulls.Max() - pulls.Min() <= 1e-6 * pulls.Max() + 1e-9, $"pulls {string.Join(' ', pulls)}");
            }
        }

        List<double[]> first = Steps(runs[0]);
        Assert.True(first.Count > 15);
        foreach (RunResult other in runs.Skip(1))
        {
            List<double[]> rows = Steps(other);
            Assert.Equal(first.Count, rows.Count);
            for (int k = 0; k < rows.Count; k++)
            {
                Assert.Equal(first[k][TraceLayout.Theta], rows[k][TraceLayout.Theta], 1e-8);
                Assert.Equal(first[k][TraceLayout.Tau], rows[k][TraceLayout.Tau], 1e-7);
                Assert.Equal(first[k][TraceLayout.Grip], rows[k][TraceLayout.Grip], 1e-6);
                Assert.Equal(first[k][TraceLayout.Carriage], rows[k][TraceLayout.Carriage], 1e-10);
            }
        }
    }

    [Fact]
    public void The_order_of_the_fingers_changes_nothing()
    {
        Finger[] fingers = Four();
        DriveModel drive = PlainDrive.With(Pairs(0, 1, 2, 3), fingers);
        DriveModel turned = PlainDrive.With(Pairs(3, 2, 1, 0), [.. fingers.Reverse()]);
        List<double[]> a = Steps(ClosingRun.Solve(drive, PlainDrive.Bottle, PlainDrive.ToTheEnd));
        RunResult other = ClosingRun.Solve(turned, PlainDrive.Bottle, PlainDrive.ToTheEnd);
        List<double[]> b = Steps(other);
        Assert.Equal(a.Count, b.Count);
        for (int k = 0; k < a.Count; k++)
        {
            Assert.Equal(a[k][TraceLayout.Tau], b[k][TraceLayout.Tau], 1e-8);
            for (int f = 0; f < 4; f++)
            {
                Assert.Equal(a[k][other.Layout.Joint(f, 0)], b[k][other.Layout.Joint(3 - f, 0)], 1e-9);
                Assert.Equal(a[k][other.Layout.LeafPull(f)], b[k][other.Layout.LeafPull(3 - f)], 1e-6);
            }
        }
    }

    private static RunResult Paired(int a, int b, int c, int d) =>
        ClosingRun.Solve(PlainDrive.With(Pairs(a, b, c, d), Four()), PlainDrive.Bottle, PlainDrive.ToTheEnd with { EffortFraction = 0.3 });

    private static BalanceBar Pairs(int a, int b, int c, int d) => PlainDrive.EqualBar(
        "root", PlainDrive.EqualBar("A", new FingerLeaf(a), new FingerLeaf(b)), PlainDrive.EqualBar("B", new FingerLeaf(c), new FingerLeaf(d)));

    private static Finger[] Four() =>
    [
        PlainDrive.CoupledFinger("index", 8.5e-3) with { Segments = new(0.045, 0.025, 0.02) },
        PlainDrive.CoupledFinger("middle") with { Segments = new(0.048, 0.028, 0.021), Mcp = new(0.097, 0.001) },
        PlainDrive.CoupledFinger("ring", 9.2e-3) with { Segments = new(0.044, 0.026, 0.02), Mcp = new(0.093, 0) },
        PlainDrive.CoupledFinger("little", 8.2e-3) with { Segments = new(0.037, 0.02, 0.018), Mcp = new(0.088, -0.002) },
    ];

    private static List<double[]> Steps(RunResult run) => [.. run.Closing.Where(r => r[TraceLayout.OutputStep] == 1)];
}
