namespace Graspwright.Workshop.Mould;

/// <summary>What every answer about moulding says beside its figures, where the step is.</summary>
public static class MouldCautions
{
    private const string Defer = "No medical advice: local codes, the tub's safety sheet and a licensed prosthetist or therapist come before these figures.";

    /// <summary>For weighing and mixing.</summary>
    public static IReadOnlyList<string> Mixing { get; } =
    [
        "Test a patch of the cured liner on skin elsewhere for three to four days first; skin can react to it. Stop at redness that stays longer than half an hour.",
        "Food-safe is not skin-safe: a label for baking moulds says nothing about wearing it all day. Ask for tests on skin (ISO 10993-5, -10, -23).",
        "Test a patch of putty on everything that will touch it uncured, gloves included. What was stopped from curing stays sticky for good.",
        "Air the room, keep putty off eyes and food, wash hands before and after.",
        Defer,
    ];

    /// <summary>For the clock.</summary>
    public static IReadOnlyList<string> Clock { get; } =
    [
        "Keep a scrap of each batch on the bench: it, not the clock, says when the piece is firm.",
        "On a limb, have a helper; take it off at once if it burns, stings or numbs. Putty from a freezer below -18 °C can hurt skin.",
        Defer,
    ];

    /// <summary>For coming off and cutting.</summary>
    public static IReadOnlyList<string> Off { get; } =
    [
        "Never cut toward skin, and never on the limb without a helper, blunt scissors and a guard between liner and skin. A blade slips on a curved form: clamp the form, not your hand.",
        "Tight is not safe: blue, cold, tingling or numb skin means off at once. Never sleep in a new liner.",
        "Not modelled: flesh that gives, hair, sweat, the bending of the opened edges beside a cut.",
        Defer,
    ];

    /// <summary>For the copies.</summary>
    public static IReadOnlyList<string> Copies { get; } =
    [
        "Never put a hand or a limb into setting plaster, and never into a bucket of it. It grips, then heats: people have been burnt and have lost fingers. On skin only thin layers of bandage over a barrier, cool water, a helper, scissors ready; off at the first heat.",
        "Hot wax burns and sticks, and it catches fire: water bath, thermometer, no open flame, lid beside it. Wax on skin only hand-warm.",
        "Plaster dust, resin vapour and sanding dust: air the room, mask and goggles. Uncured resin can make skin allergic for life.",
        "Do not pour plaster down a drain.",
        Defer,
    ];
}
