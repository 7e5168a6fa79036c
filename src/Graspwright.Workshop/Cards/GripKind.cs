using Graspwright.Hand;
using Graspwright.Workshop.Grip;

namespace Graspwright.Workshop.Cards;

/// <summary>A way to grip.</summary>
public enum GripKind
{
    /// <summary>Fingertips against the thumb.</summary>
    Pinch,

    /// <summary>The finger nearest the thumb straight, the others closed.</summary>
    Point,

    /// <summary>Fingers hooked round a bar.</summary>
    Hook,

    /// <summary>Fingers round a thick handle.</summary>
    Cylinder,
}

/// <summary>With which object and which locks a hand does a grip.</summary>
/// <param name="Kind">The grip.</param>
/// <param name="Thing">The object; <see langword="null"/> = the hand file names none for it.</param>
/// <param name="Pattern">The lock pattern; <see langword="null"/> = none.</param>
/// <param name="Lacks">What the hand lacks for it; empty = nothing.</param>
public sealed record GripChoice(GripKind Kind, HandObject? Thing, LockPattern? Pattern, string Lacks)
{
    /// <summary>Chooses for every grip: plate for the pinch, thinnest cylinder for point and hook, thickest for the cylinder grip.</summary>
    /// <remarks>
    /// Pinch takes the pattern that leaves the finger nearest the thumb free and locks most others; point the one that
    /// locks that finger alone. A pattern named like the grip goes before both.
    /// </remarks>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<GripChoice> All(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        CylinderObject[] cylinders = [.. hand.Objects.OfType<CylinderObject>().OrderBy(c => c.Diameter)];
        CylinderObject? thin = cylinders.FirstOrDefault(), thick = cylinders.LastOrDefault();
        PlateObject? plate = hand.Objects.OfType<PlateObject>().FirstOrDefault();
        string first = hand.Fingers[0].Name;
        LockPattern? pinch = Named(hand, "pinch") ?? hand.Locks.Where(l => l.Name != GripQuestion.AllFree && l.Locks.All(f => f.Finger != first) && l.Locks.Count < hand.Fingers.Count).MaxBy(l => l.Locks.Count);
        LockPattern? point = Named(hand, "point") ?? hand.Locks.FirstOrDefault(l => l.Locks.Count == 1 && l.Locks[0].Finger == first);
        return
        [
            new(GripKind.Pinch, plate, pinch, plate is null ? "the hand file names no plate to pinch" : ""),
            new(GripKind.Point, thin, point, point is null ? $"no lock pattern holds the {first} straight" : thin is null ? NoCylinder : ""),
            new(GripKind.Hook, thin, Named(hand, "hook"), thin is null ? NoCylinder : ""),
            new(GripKind.Cylinder, thick, Named(hand, "cylinder"), thick is null ? NoCylinder : ""),
        ];
    }

    private const string NoCylinder = "the hand file names no cylinder to close on";

    private static LockPattern? Named(HandModel hand, string word) => hand.Locks.FirstOrDefault(l => l.Name.Contains(word, StringComparison.OrdinalIgnoreCase));
}
