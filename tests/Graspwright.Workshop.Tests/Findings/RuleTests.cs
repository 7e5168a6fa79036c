using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Findings;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Findings;

public sealed class RuleTests
{
    [Theory]
    [InlineData(0.10, Verdict.Good)]
    [InlineData(0.0999, Verdict.Tight)]
    [InlineData(0.0, Verdict.Tight)]
    [InlineData(-0.0001, Verdict.Fails)]
    [InlineData(double.NaN, Verdict.NotKnown)]
    public void Judges_by_the_margin(double margin, Verdict expected) => Assert.Equal(expected, Verdicts.Of(margin));

    [Theory]
    [InlineData(0.5, -0.1, 0.9, Verdict.Tight)]
    [InlineData(0.5, 0.9, -0.1, Verdict.Tight)]
    [InlineData(0.5, 0.4, 0.6, Verdict.Good)]
    [InlineData(-0.5, -0.6, -0.4, Verdict.Fails)]
    public void Is_tight_where_the_interval_holds_the_limit(double margin, double low, double high, Verdict expected) =>
        Assert.Equal(expected, Verdicts.Of(margin, low, high));

    [Fact]
    public void A_sound_run_fails_in_nothing_but_its_dear_shift_and_its_play()
    {
        IReadOnlyList<Finding> findings = RuleTable.Look(MadeRun.Gripping().Reading());
        Assert.Equal(["shift", "lost_to_play", "lost_to_play"], findings.Where(f => f.Verdict == Verdict.Fails).Select(f => f.Key));
    }

    [Fact]
    public void Every_finding_has_a_reason_and_a_change() =>
        Assert.All(RuleTable.Look(MadeRun.Gripping().Reading()), f =>
        {
            Assert.NotEmpty(f.Reason);
            Assert.NotEmpty(f.Change);
        });

    [Fact]
    public void Sees_travel_used_up_before_all_fingers_touch()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.RemoveAll(e => e.Kind == EventKind.AllTouch);
        made.End = RunEnd.Travel;
        Assert.Equal(Verdict.Fails, Only(made, "travel_used_up").Verdict);
    }

    [Fact]
    public void Sees_effort_used_up_before_all_fingers_touch()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.RemoveAll(e => e.Kind == EventKind.AllTouch);
        Assert.Equal(Verdict.Fails, Only(made, "effort_limit").Verdict);
    }

    [Fact]
    public void Measures_travel_on_the_wearers_own_joint()
    {
        Finding finding = Only(MadeRun.Gripping(), "travel_used_up");
        Assert.Equal(10.5, finding.Figure!.Value, 1e-9);
        Assert.Equal((38 - 10.5) / 38, finding.Margin!.Value, 1e-9);
    }

    [Fact]
    public void Sees_an_object_that_nothing_touches()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.Clear();
        Assert.Equal(Verdict.Fails, Only(made, "no_touch").Verdict);
    }

    [Fact]
    public void Sees_an_object_pushed_out_of_the_palm()
    {
        MadeRun made = MadeRun.Gripping();
        made.Closing[^1][TraceLayout.ResultantY] = -3;
        Finding finding = Only(made, "pushed_out");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.Contains("3.0 N", finding.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Does_not_speak_of_the_palm_where_the_thumb_holds_a_face()
    {
        MadeRun made = MadeRun.Gripping();
        made.Held = new Face(default, 0);
        Assert.DoesNotContain(RuleTable.Look(made.Reading()), f => f.Key == "pushed_out");
    }

    [Theory]
    [InlineData(0.4, Verdict.Good)]
    [InlineData(0.95, Verdict.Tight)]
    [InlineData(1.5, Verdict.Fails)]
    public void Judges_reopening_against_one_degree(double left, Verdict expected)
    {
        MadeRun made = MadeRun.Gripping();
        made.Opening[^1][MadeRun.Layout.Joint(0, 1)] = MadeRun.Radians(left);
        Assert.Equal(expected, Only(made, "reopens").Verdict);
    }

    [Fact]
    public void Leaves_locked_fingers_out_of_reopening()
    {
        MadeRun made = MadeRun.Gripping();
        made.Opening[^1][MadeRun.Layout.Joint(1, 0)] = 1;
        made.Opening[^1][MadeRun.Layout.Locked(1)] = 1;
        Assert.Equal(Verdict.Good, Only(made, "reopens").Verdict);
    }

    [Fact]
    public void Sees_a_finger_roll_off_only_when_its_nearest_contact_goes()
    {
        MadeRun made = MadeRun.Gripping();
        double[] row = MadeRun.Row(20);
        row[MadeRun.Layout.Contact(0, 0)] = 5;
        made.Closing.Insert(4, row);
        made.Events.Add(new(EventKind.ContactLost, MadeRun.Radians(20), false, "index", 3, 2, false));
        Assert.DoesNotContain(RuleTable.Look(made.Reading()), f => f.Key == "rolls_off");

        row[MadeRun.Layout.Contact(0, 0)] = 0;
        Assert.Equal("index", Only(made, "rolls_off").Subject);
    }

    [Theory]
    [InlineData(EventKind.Slack, null, Verdict.Fails, 10.0)]
    [InlineData(EventKind.Slack, 26.0, Verdict.Tight, 6.0)]
    public void Measures_how_long_a_cord_hangs_slack(EventKind kind, double? tautAgain, Verdict expected, double degrees)
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.Add(new(kind, MadeRun.Radians(20), false, "pull index", 0, 0, false));
        if (tautAgain is { } taut)
        {
            made.Events.Add(new(EventKind.Taut, MadeRun.Radians(taut), false, "pull index", 0, 0, false));
        }

        Finding finding = Only(made, "cord_slack");
        Assert.Equal(expected, finding.Verdict);
        Assert.Equal(degrees, finding.Figure!.Value, 1e-9);
    }

    [Fact]
    public void Judges_a_jam_by_offset_over_length_against_friction()
    {
        // 10 mm off a 20 mm guide; at μ = 0.15 it binds from 1/(2·0.15).
        Finding finding = Only(MadeRun.Gripping(), "carriage_jam");
        Assert.Equal(0.5, finding.Figure!.Value, 1e-12);
        Assert.Equal(1 / 0.3, finding.Limit!.Value, 1e-12);

        MadeRun made = MadeRun.Gripping();
        made.Drive = made.Drive with { Rail = made.Drive.Rail with { GuideLength = 0.002 } };
        Assert.Equal(Verdict.Fails, Only(made, "carriage_jam").Verdict);
        made.Drive = made.Drive with { Rail = made.Drive.Rail with { GuideLength = null } };
        Assert.Equal(Verdict.NotKnown, Only(made, "carriage_jam").Verdict);
    }

    [Fact]
    public void Sees_a_dead_centre()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.Add(new(EventKind.DeadCentre, MadeRun.Radians(22), false, "pull link", 0, 0, false));
        Assert.Contains("22.0°", Only(made, "dead_centre").Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Sees_a_carriage_on_its_stop_before_the_end()
    {
        MadeRun made = MadeRun.Gripping();
        double[] row = MadeRun.Row(20);
        row[TraceLayout.Stops] = 1L << 5;
        made.Closing.Insert(4, row);
        made.Events.Add(new(EventKind.StopReached, MadeRun.Radians(20), false, "carriage", 0, 0, false));
        Finding finding = Only(made, "stop_early");
        Assert.Equal("carriage", finding.Subject);
        Assert.Equal(20.0 / 30 - 1, finding.Margin!.Value, 1e-9);
    }

    [Fact]
    public void Sees_a_finger_on_its_stop_before_it_touches_but_not_one_that_touches()
    {
        MadeRun made = MadeRun.Gripping();
        double[] row = MadeRun.Row(20);
        row[TraceLayout.Stops] = 1L << (2 * (3 + 1 + 3) + 1);
        made.Closing.Insert(4, row);
        made.Events.Add(new(EventKind.StopReached, MadeRun.Radians(20), false, "middle", 1, 0, false));
        Assert.Equal("middle", Only(made, "stop_early").Subject);

        row[MadeRun.Layout.Contact(1, 2)] = 1;
        Assert.DoesNotContain(RuleTable.Look(made.Reading()), f => f.Key == "stop_early");
    }

    [Fact]
    public void Sees_a_bar_on_its_stop()
    {
        Assert.Equal(Verdict.Good, Only(MadeRun.Gripping(), "bar_on_stop").Verdict);
        MadeRun made = MadeRun.Gripping();
        made.Closing[^1][TraceLayout.Tilt(0)] = -MadeRun.Radians(20);
        Assert.Equal(Verdict.Fails, Only(made, "bar_on_stop").Verdict);
    }

    [Fact]
    public void Says_that_a_shift_never_comes_or_never_finishes()
    {
        MadeRun made = MadeRun.Gripping();
        made.Events.RemoveAll(e => e.Kind == EventKind.ShiftEnd);
        Assert.Contains("never finishes", Only(made, "shift").Reason, StringComparison.Ordinal);
        made.Events.RemoveAll(e => e.Kind == EventKind.ShiftStart);
        Assert.Contains("never shifts", Only(made, "shift").Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Sees_a_lock_that_carries_too_much_only_where_a_limit_is_given()
    {
        MadeRun made = MadeRun.Gripping();
        made.Closing[^1][MadeRun.Layout.Locked(0)] = 1;
        Assert.DoesNotContain(RuleTable.Look(made.Reading()), f => f.Key == "lock_overload");
        made.LockLimits.Add(60);
        Finding finding = Only(made, "lock_overload");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.Equal(90, finding.Figure);
    }

    [Fact]
    public void Says_what_goes_into_wrist_and_skin_without_a_gimbal()
    {
        MadeRun made = MadeRun.Gripping();
        made.Drive = made.Drive with { Joint = new WristJoint() };
        Assert.Equal(100, Only(made, "wrist_reaction").Figure);
    }

    [Fact]
    public void A_lost_path_is_not_known_and_nothing_else_is_claimed()
    {
        MadeRun made = MadeRun.Gripping();
        made.End = RunEnd.NotFollowed;
        made.Failure = new(0.2, Opening: false, 0.5, "no balance was found");
        Finding finding = Assert.Single(RuleTable.Look(made.Reading()));
        Assert.Equal(("path_not_followed", Verdict.NotKnown), (finding.Key, finding.Verdict));
    }

    private static Finding Only(MadeRun made, string key) => Assert.Single(RuleTable.Look(made.Reading()), f => f.Key == key);
}
