using Graspwright.Hand;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Measures;

public sealed class MeasureTests
{
    public static TheoryData<string> Keys => [.. MeasureTable.All.Select(m => m.Key)];

    // Each expected value is worked out by hand from the made run's inputs.
    [Theory]
    [InlineData("first_touch", 10)]
    [InlineData("all_touch", 10)]
    [InlineData("time_to_touch", 10.5 / 60)]
    [InlineData("shift_start", 12)]
    [InlineData("shift_cost", 3)]
    [InlineData("shift_give_back", 3.1)]
    [InlineData("output_arm", 7.2)]
    [InlineData("work_in", 0.5)]
    [InlineData("grip_efficiency", 4)]
    [InlineData("friction_efficiency", 82)]
    [InlineData("loop_mean", 0.2 / (Math.PI / 6))]
    [InlineData("loop_max", 0.8)]
    [InlineData("reopening_left", 0.4)]
    [InlineData("wrist_left", 5)]
    [InlineData("degrees_lost_to_give", 3)]
    [InlineData("effort_share", 100)]
    [InlineData("carriage_left", 10)]
    [InlineData("slot_left", 0)]
    [InlineData("peak_link", 200)]
    [InlineData("peak_pin", 190)]
    [InlineData("fingertip_gauge", 10)]
    [InlineData("cuff_slide", 2.588190451025)] // 2·5 mm·sin 15°
    // 0.1 mm at anchor, input and gimbal (100 N each), fulcrum 180 N; 0.2 mm at the bar's 190 N; 0.05 mm at the index knuckle's 50 N; τ 2.5 N·m.
    [InlineData("dead_travel", (0.03 + 0.018 + 0.038 + 0.0025) / 2.5 * 180 / Math.PI)]
    [InlineData("dead_travel_worn", (0.03 + 0.072 + 0.038 + 0.0025) / 2.5 * 180 / Math.PI)]
    public void Reads_the_run_as_its_definition_says(string key, double expected) =>
        Assert.Equal(expected, MeasureTable.Of(key).Value(MadeRun.Gripping().Reading()).Value, 1e-9 * Math.Abs(expected));

    [Theory]
    [MemberData(nameof(Keys))]
    public void Prints_a_formula_that_gives_the_printed_value(string key)
    {
        Figure figure = MeasureTable.Of(key).Figure(MadeRun.Gripping().Reading());

        Assert.Null(figure.Why);
        Dictionary<string, double> inputs = figure.Working!.Inputs.ToDictionary(i => i.Name, i => i.Value);
        double worked = FormulaText.Evaluate(figure.Working.Formula, inputs);
        Assert.Equal(figure.Value!.Value, worked, 1e-9 * Math.Max(1, Math.Abs(worked)));
        Assert.All(inputs.Keys, name => Assert.Contains(name, figure.Working.Formula, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Names_a_source_that_is_on_the_register(string key)
    {
        string source = MeasureTable.Of(key).Figure(MadeRun.Gripping().Reading()).Working!.Source;
        Assert.Contains(source, Source.All.Concat(MeasureSources.All).Select(s => s.Key));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Works_out_the_resultant_on_a_flat_face(bool x)
    {
        MadeRun made = MadeRun.Gripping();
        made.Held = new Face(new(0.1, -0.05), MadeRun.Radians(30));
        double grip = made.Closing[^1][TraceLayout.Grip];
        made.Closing[^1][TraceLayout.ResultantX] = -grip * Math.Cos(MadeRun.Radians(30));
        made.Closing[^1][TraceLayout.ResultantY] = -grip * Math.Sin(MadeRun.Radians(30));

        Figure figure = MeasureTable.Of(x ? "object_resultant_x" : "object_resultant_y").Figure(made.Reading());

        double worked = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
        Assert.Equal(figure.Value!.Value, worked, 1e-9);
    }

    [Fact]
    public void A_gauge_squeezed_from_two_sides_reads_one_side()
    {
        MadeRun made = MadeRun.Gripping();
        double[] end = made.Closing[^1];
        foreach (int finger in (int[])[0, 1])
        {
            for (int s = 0; s < 3; s++)
            {
                end[MadeRun.Layout.Contact(finger, s)] = 0;
            }
        }

        // 12 N from +x and 2 N from −x: the palm answers with 10 N, so each half carries 12 N across the split.
        end[MadeRun.Layout.Contact(1, 2)] = 12;
        end[MadeRun.Layout.ContactPointX(1, 2)] = 0.120;
        end[MadeRun.Layout.ContactPointX(1, 2) + 1] = -0.040;
        end[MadeRun.Layout.Contact(1, 0)] = 2;
        end[MadeRun.Layout.ContactPointX(1, 0)] = 0.040;
        end[MadeRun.Layout.ContactPointX(1, 0) + 1] = -0.040;

        Assert.Equal(12, new GaugeReading().Value(made.Reading()).Value, 1e-12);
    }

    [Fact]
    public void Says_why_a_figure_has_no_value()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.Clear();
        made.Opening.Clear();
        made.Held = HeldObject.None;
        made.Drive = made.Drive with { Crank = made.Drive.Crank with { Slot = null } };
        RunReading reading = made.Reading();

        Assert.Equal("nothing touched", MeasureTable.Of("first_touch").Figure(reading).Why);
        Assert.Equal("the crank's arm is fixed", MeasureTable.Of("shift_cost").Figure(reading).Why);
        Assert.Equal("the run did not open the hand again", MeasureTable.Of("loop_mean").Figure(reading).Why);
        Assert.Null(MeasureTable.Of("gauge_reading").Figure(reading).Value);
    }

    [Fact]
    public void Claims_no_figure_past_a_lost_path()
    {
        MadeRun made = MadeRun.Gripping();
        made.End = RunEnd.NotFollowed;
        made.Failure = new(MadeRun.Radians(12.3), Opening: false, 0.5, "no balance was found");

        Assert.All(MeasureTable.Figures(made.Reading()), f =>
        {
            Assert.Null(f.Value);
            Assert.Contains("12.3°", f.Why, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Keeps_the_closing_figures_when_only_the_opening_is_lost()
    {
        MadeRun made = MadeRun.Gripping();
        made.Failure = new(MadeRun.Radians(5), Opening: true, 0.5, "no balance was found");

        Assert.NotNull(new GripForce().Figure(made.Reading()).Value);
        Assert.Null(new ReopeningLeft().Figure(made.Reading()).Value);
    }

    [Fact]
    public void Has_each_key_once()
    {
        Assert.Equal(MeasureTable.All.Count, MeasureTable.All.Select(m => m.Key).Distinct().Count());
        Assert.Throws<ArgumentException>(() => MeasureTable.Of("no_such_measure"));
    }
}
