using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>Derivatives of the end of closing by implicit differentiation against differences of whole runs.</summary>
public sealed class EndRatesTests
{
    private static readonly int[] Columns = [TraceLayout.Theta, TraceLayout.Tau, TraceLayout.Grip, TraceLayout.Carriage, TraceLayout.TransferLink, TraceLayout.Phi];

    [Theory]
    [InlineData("02", "fulcrum")]
    [InlineData("02", "arm")]
    [InlineData("02", "pads")]
    [InlineData("02", "effort")]
    [InlineData("05a", "fulcrum")]
    [InlineData("05a", "slot")]
    [InlineData("06", "fulcrum")]
    [InlineData("06", "pads")]
    [InlineData("07a", "fulcrum")]
    public void Rates_are_those_of_differences_where_nothing_sticks(string start, string what)
    {
        DriveCase c = DriveCase.Read(Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Run", "Cases"), start + "_*.json").Single());
        const double Step = 1e-6, Wide = 2e-4;
        (RunResult run, IReadOnlyList<double[]?> rates) = ClosingRun.SolveWithRates(c.Drive, c.Held, c.Options, [new(Vary(c.Drive, what, Step), c.Held, Vary(c.Drive, what, -Step), c.Held, Step)]);
        Assert.Null(run.Failure);
        if (rates[0] is not { } rate)
        {
            Assert.True(run.AtEnd[TraceLayout.Sticking] > 0);
            Assert.True(c.HasFriction);
            return;
        }

        RunOptions closing = c.Options with { Opening = false };
        double[] up = ClosingRun.Solve(Vary(c.Drive, what, Wide), c.Held, closing).AtEnd, down = ClosingRun.Solve(Vary(c.Drive, what, -Wide), c.Held, closing).AtEnd;
        foreach (int column in Columns)
        {
            double difference = (up[column] - down[column]) / (2 * Wide);
            Assert.True(Math.Abs(difference - rate[column]) <= 2e-4 * Math.Max(Math.Abs(difference), Math.Abs(run.AtEnd[column])), $"column {column}: {rate[column]:R} against {difference:R}");
        }
    }

    private static DriveModel Vary(DriveModel drive, string what, double step) => what switch
    {
        "fulcrum" => drive with { Crank = drive.Crank with { Fulcrum = drive.Crank.Fulcrum + new Vector2D(step / 10, 0) } },
        "arm" => drive with { Crank = drive.Crank with { Output = (1 + step) * drive.Crank.Output } },
        "pads" => drive with { Fingers = [.. drive.Fingers.Select(f => f with { PadStiffness = (1 + step) * f.PadStiffness })] },
        "effort" => drive with { Wrist = drive.Wrist with { Capacity = new(drive.Wrist.Capacity.AnglesRadians, [.. drive.Wrist.Capacity.MomentsNewtonMetres.Select(m => m * (1 + step))]) } },
        "slot" => drive with { Crank = drive.Crank with { Slot = drive.Crank.Slot! with { Preload = (1 + step) * drive.Crank.Slot.Preload } } },
        _ => throw new ArgumentException(what, nameof(what)),
    };
}
