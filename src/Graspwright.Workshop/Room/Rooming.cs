using System.Globalization;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Room;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Room;

/// <summary>A sweep of one lock pattern.</summary>
/// <param name="Locks">Name of the pattern.</param>
/// <param name="Run">Closing on nothing, to the end of the travel.</param>
/// <param name="Sweep">What it found.</param>
public sealed record RoomSwept(string Locks, RunResult Run, SweepResult Sweep);

/// <summary>The answer with what is behind it.</summary>
/// <param name="Answer">What is printed; <see langword="null"/> = see the errors.</param>
/// <param name="Room">The bodies.</param>
/// <param name="Sweeps">Sweeps, all free first.</param>
/// <param name="Errors">Bad input.</param>
public sealed record RoomResult(Answer? Answer, RoomModel? Room, IReadOnlyList<RoomSwept> Sweeps, IReadOnlyList<InputError> Errors);

/// <summary>Is there room for the moving parts, and do the knuckles come where they should?</summary>
public static class Rooming
{
    /// <summary>Answers the question.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of the hand file, for messages.</param>
    public static RoomResult Answer(Hand.HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        DriveModel drive = DriveMapping.ToDrive(hand);
        if (hand.Room is not { } given || RoomMapping.ToRoom(hand, drive) is not { } room)
        {
            return new(null, null, [], [new(file, 0, 0, "room", "the hand file gives no room", "a section [room], with [room.stumps]", "Measure liner, shell and where the stumps end.")]);
        }

        try
        {
            RoomSwept[] sweeps = [.. Sweeps(hand, drive, ClosingRun.Solve)];
            return new(Compose(hand, given, sweeps), room, sweeps, []);
        }
        catch (DriveException fault)
        {
            return new(null, null, [], [Faults.OfHand(file, fault)]);
        }
    }

    /// <summary>Sweeps of the empty hand, all free and then with each lock pattern; none without a room.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="drive">Its drive.</param>
    /// <param name="solver">What follows the equilibrium.</param>
    /// <exception cref="DriveException">The hand cannot be put together.</exception>
    public static IReadOnlyList<RoomSwept> Sweeps(Hand.HandModel hand, DriveModel drive, Solver solver)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(solver);
        return RoomMapping.ToRoom(hand, drive) is { } room ? [.. hand.Locks.Prepend(null).Select(l => Swept(hand, drive, room, l, solver))] : [];
    }

    private static RoomSwept Swept(Hand.HandModel hand, DriveModel drive, RoomModel room, Hand.LockPattern? pattern, Solver solver)
    {
        RunOptions options = new() { EffortFraction = null, Opening = false, Locks = HoldMapping.ToLocks(hand, pattern) };
        RunResult run = solver(drive, HeldObject.None, options);
        return new(pattern?.Name ?? GripQuestion.AllFree, run, new RoomSweep(room, run.Layout).Sweep(run.Closing));
    }

    private static Answer Compose(Hand.HandModel hand, Hand.HandRoom room, RoomSwept[] sweeps) => new()
    {
        Verb = "room",
        Hand = hand.Name,
        Sentence = Sentence(room, sweeps),
        Figures = Figures(hand, room, sweeps),
        Findings = [.. RoomFindings.Of(hand, room, sweeps)],
        Tables = [Near(sweeps), Knuckles(hand, room), RunTables.Guesses(hand)],
        Cautions =
        [
            "Moving parts pinch: keep skin, sleeves and other people's fingers clear of them, and round off what they pass.",
            "Bodies are taken as round bars of one width; screws, cords and padding are not there. Turn the real hand through its travel by hand before power is put on it.",
        ],
    };

    private static string Sentence(Hand.HandRoom room, RoomSwept[] sweeps)
    {
        (RoomSwept at, NearPair? clash) = sweeps.Select(s => (s, s.Sweep.FirstClash)).OrderBy(p => p.FirstClash?.ClashTheta ?? double.PositiveInfinity).First();
        SweepResult highest = sweeps.Select(s => s.Sweep).MaxBy(s => s.Height)!;
        string height = string.Create(CultureInfo.InvariantCulture, $"The {highest.HighestPart} stands highest, {1000 * highest.Height:0.0} mm over the back of the shell at {Angles.Text(highest.HeightTheta)}.");
        if (clash is not null)
        {
            return $"The {clash.First} meets the {clash.Second} at {Angles.Text(clash.ClashTheta!.Value)} of wrist{With(at.Locks)}: the first clash of the travel. {height}";
        }

        (RoomSwept where, NearPair? near) = sweeps.Select(s => (s, s.Sweep.Pairs.Count > 0 ? s.Sweep.Pairs[0] : null)).OrderBy(p => p.Item2?.Gap ?? double.PositiveInfinity).First();
        return near is null
            ? $"Nothing was given that the moving parts could meet. {height}"
            : string.Create(CultureInfo.InvariantCulture, $"Nothing meets over the whole travel; the smallest gap is {1000 * near.Gap:0.0} mm, between the {near.First} and the {near.Second} at {Angles.Text(near.GapTheta)}{With(where.Locks)} ({1000 * room.LeastGap:0.0} mm are wanted). {height}");
    }

    /// <summary>The words ", with the locks ‘…’," or nothing.</summary>
    internal static string With(string locks) => locks == GripQuestion.AllFree ? "" : $" with the locks ‘{locks}’";

    private static List<Figure> Figures(Hand.HandModel hand, Hand.HandRoom room, RoomSwept[] sweeps) =>
        [RoomMeasures.Clearance(sweeps), RoomMeasures.Height(hand, sweeps), RoomMeasures.PalmGap(sweeps), .. room.Stumps.Select(s => RoomMeasures.KnuckleRoom(hand, s.Finger))];

    /// <summary>Least x of a knuckle axis before its stump: end, liner, shell, air and base [m].</summary>
    internal static double Needed(Hand.HandRoom room, Hand.NamedPlace stump) => stump.Place.X + room.Liner + room.Shell + room.Clearance + room.Base;

    private static Table Near(RoomSwept[] sweeps)
    {
        Column[] columns = [new("locks", ""), new("part", ""), new("beside", ""), new("gap", "mm"), new("at", "deg"), new("x", "mm"), new("y", "mm"), new("toward thumb", "mm"), new("meets at", "deg")];
        return new("nearest", columns, [.. sweeps.SelectMany(s => s.Sweep.Pairs.Take(6).Select(p => (IReadOnlyList<Cell>)
        [
            s.Locks, p.First, p.Second, 1000 * p.Gap, double.RadiansToDegrees(p.GapTheta), 1000 * p.Place.X, 1000 * p.Place.Y, 1000 * p.Place.Z,
            p.ClashTheta is { } theta ? double.RadiansToDegrees(theta) : double.NaN,
        ]))]);
    }

    private static Table Knuckles(Hand.HandModel hand, Hand.HandRoom room)
    {
        Column[] columns = [new("finger", ""), new("knuckle x", "mm"), new("least x", "mm"), new("room", "mm"), new("sound x", "mm"), new("sound y", "mm"), new("further out", "mm"), new("higher", "mm")];
        return new("knuckles", columns, [.. hand.Fingers.Select(f => (IReadOnlyList<Cell>)Row(f))]);

        Cell[] Row(Hand.Finger f)
        {
            Hand.NamedPlace? stump = room.Stumps.FirstOrDefault(s => s.Finger == f.Name), sound = room.SoundKnuckles.FirstOrDefault(s => s.Finger == f.Name);
            double least = stump is null ? double.NaN : Needed(room, stump);
            return
            [
                f.Name, 1000 * f.Knuckle.X, 1000 * least, 1000 * (f.Knuckle.X - least), 1000 * (sound?.Place.X ?? double.NaN), 1000 * (sound?.Place.Y ?? double.NaN),
                1000 * (f.Knuckle.X - (sound?.Place.X ?? double.NaN)), 1000 * (f.Knuckle.Y - (sound?.Place.Y ?? double.NaN)),
            ];
        }
    }
}
