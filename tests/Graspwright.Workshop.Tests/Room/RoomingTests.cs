using Graspwright.Hand;
using Graspwright.Mechanics.Objects;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Room;

namespace Graspwright.Workshop.Tests.Room;

public sealed class RoomingTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard();
    private static readonly RoomResult Result = Rooming.Answer(Demo, "hand.toml");

    [Fact]
    public void Prints_formulas_that_give_the_printed_values() => PrintedFormulas.GiveTheirValues(Result.Answer!.Figures);

    [Fact]
    public void The_demo_has_room_over_its_whole_travel()
    {
        Assert.StartsWith("Nothing meets over the whole travel", Result.Answer!.Sentence, StringComparison.Ordinal);
        Assert.All(Result.Answer.Findings.Where(f => f.Key == "clearance"), f => Assert.Equal(Verdict.Good, f.Verdict));
    }

    [Fact]
    public void A_low_fulcrum_meets_the_shell_and_the_place_and_degree_are_said()
    {
        HandModel low = Demo with { Room = Demo.Room! with { HandThickness = 0.030 } };
        RoomResult result = Rooming.Answer(low, "hand.toml");
        Assert.Contains("meets the shell", result.Answer!.Sentence, StringComparison.Ordinal);
        Finding clash = result.Answer.Findings.First(f => f.Key == "clearance");
        Assert.Equal(Verdict.Fails, clash.Verdict);
        Assert.Contains("° of wrist", clash.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Fingers_splayed_into_each_other_meet()
    {
        Finger[] fingers = [.. Demo.Fingers.Select(f => f.Name == "ring" ? f with { SplayRadians = 0.12 } : f)];
        RoomResult result = Rooming.Answer(Demo with { Fingers = fingers }, "hand.toml");
        Assert.Contains("the ring", result.Answer!.Sentence, StringComparison.Ordinal);
        Assert.Contains(result.Sweeps[0].Sweep.Pairs, p => p.ClashTheta is not null && p.First.StartsWith("middle", StringComparison.Ordinal));
    }

    /// <summary>77 mm stump + 3 liner + 1.8 shell + 2 air + 9 base = 92.8 mm, 2.2 mm less than the knuckle's 95 mm.</summary>
    [Fact]
    public void A_knuckles_room_is_worked_by_hand()
    {
        Figure room = Result.Answer!.Figures.Single(f => f.Key == "knuckle_room@index");
        Assert.Equal(2.2, room.Value!.Value, 1e-9);
    }

    /// <summary>The measure that a search respects is the sweep's own figure.</summary>
    [Fact]
    public void The_measure_of_clearance_is_that_of_the_sweep()
    {
        Mechanics.Drive.DriveModel drive = DriveMapping.ToDrive(Demo);
        RoomSwept free = Result.Sweeps[0];
        RunReading reading = new() { Run = free.Run, Drive = drive, Held = HeldObject.None, Options = new(), Room = Result.Room };
        Assert.Equal(1000 * free.Sweep.Clearance, new Clearance().Value(reading).Value, 1e-12);
        PrintedFormulas.GiveTheirValues([new Clearance().Figure(reading)]);
        Assert.NotNull(new Clearance().Value(new() { Run = free.Run, Drive = drive, Held = HeldObject.None, Options = new() }).Why);
    }

    [Fact]
    public void A_hand_without_room_is_bad_input() => Assert.Equal("room", Assert.Single(Rooming.Answer(Demo with { Room = null }, "hand.toml").Errors).Key);
}
