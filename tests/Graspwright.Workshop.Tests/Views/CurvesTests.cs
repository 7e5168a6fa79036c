using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

public sealed class CurvesTests
{
    private static readonly RunResult Run = SampleRun.Run();

    [Fact]
    public void Charts_hold_the_run_in_degrees_newtons_and_millimetres()
    {
        Series grip = Curves.GripForce(Run).Series[0];
        Assert.Equal(35, grip.X[^1], 9);
        Assert.Equal(60, grip.Y[^1], 9);
        Assert.Equal(14.5, Curves.OutputArm(Run).Series[0].Y[0], 9);
        Assert.Equal(100, Curves.EffortShare(Run).Series[0].Y[^1], 9);
        Assert.Equal(1.65 * 35, Curves.JointAngles(Run, 1).Series[0].Y[^1], 9);
        Assert.Equal(15, Curves.ContactForces(Run).Series[3].Y[^1], 9);
    }

    [Fact]
    public void The_loop_is_solid_closing_and_dashed_opening()
    {
        LineChart loop = Curves.Moment(Run);
        Assert.Equal([("closing", Dash.Solid), ("opening", Dash.Dashed)], loop.Series.Select(s => (s.Label, s.Dash)));
        Assert.Single(Curves.Moment(SampleRun.Run(opening: false)).Series);
    }

    [Fact]
    public void Only_the_first_touch_is_marked() =>
        Assert.Equal(["first touch 15.2°", "all touch 20.7°", "shift starts 21.4°", "shift ends 33.5°", "effort limit 35.0°"], Curves.Events(Run).Select(e => e.Label));

    [Fact]
    public void Sheets_say_what_ended_the_run_and_fit_on_A4()
    {
        Picture main = Curves.Main(Run), joints = Curves.Joints(Run), loop = Curves.Loop(Run);
        Assert.StartsWith("Closing ends at 35.0° at the effort limit, with a grip of 60.0 N for 2.63 N·m at the wrist.", main.Description, StringComparison.Ordinal);
        Assert.StartsWith("The moment on closing is at most 0.80 N·m above that on opening, at 35.0°.", loop.Description, StringComparison.Ordinal);
        Assert.All(new[] { main, joints, loop }, p =>
        {
            Assert.True(p.WidthMm <= 190 && p.HeightMm <= 277, $"{p.WidthMm} × {p.HeightMm}");
            SideViewTests.AssertClear(p);
        });
    }

    [Fact]
    public void The_terminal_chart_keeps_to_72_columns() =>
        Assert.All(Curves.Terminal(Run).Split('\n'), line => Assert.True(line.Length <= 72, line));
}
