namespace Graspwright.Workshop.Form;

/// <summary>What answers about form and pattern say beside their figures.</summary>
public static class FormCautions
{
    private const string Defer = "No medical advice: local codes, the safety sheets of what you use and a licensed prosthetist or therapist come before these figures.";

    /// <summary>For the form.</summary>
    public static IReadOnlyList<string> Form { get; } =
    [
        "A form is not a limb: flesh gives, swells by evening and moves over bone. Try the liner on, look at the skin after ten minutes and after an hour.",
        "Sanding and carving plaster make dust: mask, goggles, damp cloth; no compressed air.",
        Defer,
    ];

    /// <summary>For wires over the liner.</summary>
    public static IReadOnlyList<string> Wires { get; } =
    [
        "Wires lie on the outside of the sheet, in a groove or under a strip, never between sheet and skin: there they press sores that numb skin does not tell of. Fix both ends so that a pull ends at the sheet and not at the joint or the contact.",
        "What is wired to a body runs on a battery and hangs on nothing that is plugged into the mains, a charger included. Wiring and insulation are for whoever is licensed to approve them.",
    ];

    /// <summary>For the pattern.</summary>
    public static IReadOnlyList<string> Pattern { get; } =
    [
        "Cut away from your hand and never toward skin; clamp the sheet or have a helper hold it: a blade slips on rubber. Sheath blades.",
        "Plaster dust, resin vapour and sanding dust: air the room, mask and goggles. Uncured resin can make skin allergic for life: gloves that the silicone's label allows.",
        "Test a patch of the cured sheet on skin elsewhere first; redness that stays longer than half an hour means stop. Seams and darts rub: keep them off scars, bone and numb skin.",
        "Measure the printed ruler before you cut. A pattern printed at “fit to page” is too small everywhere.",
        Defer,
    ];
}
