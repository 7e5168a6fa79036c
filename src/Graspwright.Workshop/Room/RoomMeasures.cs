using Graspwright.Mechanics.Room;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Room;

/// <summary>How the measures of room are read and worked out; their table is <see cref="HandMeasureTable"/>.</summary>
internal static class RoomMeasures
{
    private const string NoRoom = "the hand file gives no [room]";

    /// <summary>Smallest gap over the travel and every lock pattern.</summary>
    public static Figure Clearance(IReadOnlyList<RoomSwept> sweeps)
    {
        NearPair? near = sweeps.SelectMany(s => s.Sweep.Pairs).MinBy(p => p.Gap);
        return near is null
            ? HandMeasureTable.TravelClearance.Blank with { Why = sweeps.Count == 0 ? NoRoom : "nothing was given to pass" }
            : HandMeasureTable.TravelClearance.Blank with { Value = 1000 * near.Gap, Working = Measures.Clearance.Of(near) };
    }

    /// <summary>Smallest gap from a finger to the palm or a stump, over the travel and every lock pattern.</summary>
    public static Figure PalmGap(IReadOnlyList<RoomSwept> sweeps)
    {
        NearPair? near = sweeps.SelectMany(s => s.Sweep.OnPalm).MinBy(p => p.Gap);
        return near is null
            ? HandMeasureTable.PalmGap.Blank with { Why = sweeps.Count == 0 ? NoRoom : "no finger comes near the palm or a stump" }
            : HandMeasureTable.PalmGap.Blank with { Value = 1000 * near.Gap, Working = Measures.Clearance.Of(near) };
    }

    /// <summary>Height of the highest moving part over the back of the shell.</summary>
    public static Figure Height(Hand.HandModel hand, IReadOnlyList<RoomSwept> sweeps)
    {
        if (hand.Room is not { } room || sweeps.Count == 0)
        {
            return HandMeasureTable.Height.Blank with { Why = NoRoom };
        }

        double height = sweeps.Max(s => s.Sweep.Height), back = room.HandMiddle + room.HandThickness / 2 + room.Liner + room.Shell;
        Terms terms = new();
        string shell = terms.Input("back_of_shell", 1000 * back, "mm"), top = terms.Input("top", 1000 * (back + height), "mm");
        return HandMeasureTable.Height.Blank with { Value = 1000 * height, Working = terms.Working($"{top} - {shell}", "room-sweep") };
    }

    /// <summary>Room between a knuckle and what lies behind it.</summary>
    public static Figure KnuckleRoom(Hand.HandModel hand, string finger)
    {
        Figure figure = HandMeasureTable.KnuckleRoom.Blank with { Key = $"{HandMeasureTable.KnuckleRoom.Key}@{finger}" };
        if (hand.Room is not { } room || room.Stumps.FirstOrDefault(s => s.Finger == finger) is not { } stump)
        {
            return figure with { Why = NoRoom };
        }

        Terms t = new();
        double knuckle = hand.Fingers.First(f => f.Name == finger).Knuckle.X;
        string[] parts = [t.Input("knuckle", 1000 * knuckle, "mm"), t.Input("stump_end", 1000 * stump.Place.X, "mm"), t.Input("liner", 1000 * room.Liner, "mm"), t.Input("shell", 1000 * room.Shell, "mm"), t.Input("clearance", 1000 * room.Clearance, "mm"), t.Input("base", 1000 * room.Base, "mm")];
        return figure with { Value = 1000 * (knuckle - Rooming.Needed(room, stump)), Working = t.Working($"{parts[0]} - ({string.Join(" + ", parts[1..])})", "room-sweep") };
    }
}
