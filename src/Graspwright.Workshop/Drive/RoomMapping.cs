using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Room;

namespace Graspwright.Workshop.Drive;

/// <summary>Hands the room of a hand to the sweep.</summary>
public static class RoomMapping
{
    private const double Narrower = 0.6; // the hand's rays at the wrist lie this much nearer together than at the knuckles: chosen by us

    /// <summary>Bodies of a hand; <see langword="null"/> where the file gives no room.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="drive">Its drive.</param>
    public static RoomModel? ToRoom(Hand.HandModel hand, DriveModel drive)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (hand.Room is not { } room)
        {
            return null;
        }

        double cover = room.Liner + room.Shell, radius = room.HandThickness / 2 + cover;
        List<StillBody> still = [];
        foreach (Hand.NamedPlace stump in room.Stumps)
        {
            Hand.Finger finger = hand.Fingers.First(f => f.Name == stump.Finger);
            double end = Math.Max(stump.Place.X + cover - radius, 0);
            still.Add(new($"shell over the {stump.Finger} stump", new(new(0, room.HandMiddle, Narrower * finger.Across), new(end, stump.Place.Y, finger.Across), radius)));
        }

        return new()
        {
            Drive = drive,
            LinkRadius = room.LinkWidth / 2,
            BarRadius = room.BarWidth / 2,
            BarPitch = room.BarPitch,
            DriveAcross = room.DriveAcross,
            Still = still,
            BackOfShell = room.HandMiddle + radius,
        };
    }
}
