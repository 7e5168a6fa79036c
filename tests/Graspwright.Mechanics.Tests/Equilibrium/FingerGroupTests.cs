using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Tests.Drive;

namespace Graspwright.Mechanics.Tests.Equilibrium;

public sealed class FingerGroupTests
{
    /// <summary>A finger means the same in whichever lane and group it stands, beside whatever kind of finger.</summary>
    [Fact]
    public void Order_of_the_fingers_does_not_matter() => RandomDrive.ForEachSeed(60, seed =>
    {
        DriveModel drive = SixFingers(seed);
        int[] order = [4, 2, 5, 0, 3, 1];
        DriveModel shuffled = drive with { Fingers = [.. order.Select(f => drive.Fingers[f])], Tree = Renamed(drive.Tree, order) };
        DriveEquations first = new(drive, RandomDrive.MakeObject(seed)), second = new(shuffled, RandomDrive.MakeObject(seed));
        Random random = new(seed);
        first.Theta = second.Theta = 0.3 * random.NextDouble();
        for (int i = 0; i < first.TrunkCount; i++)
        {
            first.X[i] = second.X[i] = Math.Max(first.Low[i], -0.2) + 0.5 * random.NextDouble() * Math.Min(first.High[i], 0.4);
        }

        for (int f = 0; f < 6; f++)
        {
            for (int q = 0; q < first.Sizes[f]; q++)
            {
                double x = 0.7 * random.NextDouble() * Math.Min(first.High[first.Offsets[f] + q], 1.2);
                first.X[first.Offsets[f] + q] = x;
                second.X[second.Offsets[Array.IndexOf(order, f)] + q] = x;
            }
        }

        foreach (DriveEquations eq in (DriveEquations[])[first, second])
        {
            eq.ModesByValue = true;
            eq.Evaluate();
        }

        bool[] held = new bool[first.Count];
        double[] right = [.. first.R], turned = [.. second.R];
        Close(first.Stored, second.Stored, seed, "energy");
        first.Jacobian.Factor(held, first.Ridge);
        second.Jacobian.Factor(held, second.Ridge);
        first.Jacobian.Solve(right, held);
        second.Jacobian.Solve(turned, held);
        for (int i = 0; i < first.TrunkCount; i++)
        {
            Close(first.R[i], second.R[i], seed, $"residual {i}");
            Close(right[i], turned[i], seed, $"solution {i}");
        }

        for (int f = 0; f < 6; f++)
        {
            int at = Array.IndexOf(order, f);
            for (int q = 0; q < 3; q++)
            {
                Close(first.Overlap[3 * f + q], second.Overlap[3 * at + q], seed, $"overlap of finger {f}");
                Close(first.JointLoads[3 * f + q], second.JointLoads[3 * at + q], seed, $"pin load of finger {f}");
            }

            for (int q = 0; q < first.Sizes[f]; q++)
            {
                int one = first.Offsets[f] + q, other = second.Offsets[at] + q;
                Close(first.R[one], second.R[other], seed, $"residual of finger {f}");
                Close(right[one], turned[other], seed, $"solution of finger {f}");
            }
        }
    });

    /// <summary>The arrow's solution put back into its rows gives the right side.</summary>
    [Fact]
    public void Solution_of_the_arrow_satisfies_its_rows() => RandomDrive.ForEachSeed(60, seed =>
    {
        DriveEquations eq = new(SixFingers(seed), RandomDrive.MakeObject(seed)) { ModesByValue = true, Theta = 0.1 };
        Random random = new(seed);
        for (int i = 0; i < eq.Count; i++)
        {
            eq.X[i] = 0.3 * random.NextDouble() * Math.Min(eq.High[i], 1);
        }

        eq.Evaluate();
        bool[] held = [.. Enumerable.Range(0, eq.Count).Select(_ => random.Next(5) == 0)];
        double[] right = [.. Enumerable.Range(0, eq.Count).Select(i => held[i] ? 0 : random.NextDouble() - 0.5)], x = [.. right];
        eq.Jacobian.Factor(held, eq.Ridge);
        eq.Jacobian.Solve(x, held);
        for (int i = 0; i < eq.Count; i++)
        {
            Assert.True(!held[i] || x[i] == 0, $"seed {seed}: held unknown {i} moved");
            double row = eq.Jacobian.RowTimes(i, x) + eq.Ridge[i] * x[i];
            double size = Enumerable.Range(0, eq.Count).Sum(k => Math.Abs(RowEntry(eq, i, k) * x[k])) + 1;
            Assert.True(held[i] || Math.Abs(row - right[i]) < 1e-9 * size, $"seed {seed}: row {i} gives {row}, wanted {right[i]}");
        }
    });

    private static double RowEntry(DriveEquations eq, int row, int column)
    {
        double[] unit = new double[eq.Count];
        unit[column] = 1;
        return eq.Jacobian.RowTimes(row, unit);
    }

    /// <summary>Six fingers of several kinds on one tree: two groups, coupled and adaptive side by side.</summary>
    private static DriveModel SixFingers(int seed)
    {
        List<Finger> fingers = [];
        for (int other = seed; fingers.Count < 6; other++)
        {
            fingers.AddRange(RandomDrive.Make(other).Fingers);
        }

        BalanceNode tree = new FingerLeaf(0);
        for (int f = 1; f < 6; f++)
        {
            tree = new BalanceBar { Name = $"bar {f}", FirstArm = (6 + f) * 1e-3, SecondArm = 0.012, TiltStopRadians = 1, PivotPinRadius = 1.5e-3, First = tree, Second = new FingerLeaf(f) };
        }

        return RandomDrive.Make(seed) with { Fingers = [.. fingers.Take(6)], Tree = tree };
    }

    private static BalanceNode Renamed(BalanceNode node, int[] order) => node switch
    {
        BalanceBar bar => bar with { First = Renamed(bar.First, order), Second = Renamed(bar.Second, order) },
        FingerLeaf leaf => leaf with { FingerIndex = Array.IndexOf(order, leaf.FingerIndex) },
        _ => node,
    };

    private static void Close(double one, double other, int seed, string what) =>
        Assert.True(Math.Abs(one - other) <= 1e-9 * (1 + Math.Abs(one)), $"seed {seed}, {what}: {one:r} and {other:r}");
}
