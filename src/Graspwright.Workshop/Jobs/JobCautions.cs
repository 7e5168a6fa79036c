namespace Graspwright.Workshop.Jobs;

/// <summary>What every answer about jobs says beside its figures.</summary>
public static class JobCautions
{
    /// <summary>The cautions.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Never hold or lift anything over people. A grip can be lost without warning.",
        "Not for rotating machines, winches or anything that can catch the hand and draw it in.",
        "A hand that is caught must break away from the arm. Nothing here says that this one does: prove it on a bench first, and if it does not, say so to whoever wears it.",
        "Numb, grafted or freshly operated skin: ask a clinician before any load. Tingling, or pain at night: stop and see one.",
        "Building for somebody else: their consent, a responsible person named, a hand-over in writing, and the local rules for custom devices.",
        "Friction differs from day to day with sweat, dust and wear. Local codes and a licensed prosthetist or therapist come before these figures.",
        "Not modelled: motion of the object in the hand, the weight of hand and device on the drive (on the wrist it counts), shocks, edges and soft things.",
    ];
}
