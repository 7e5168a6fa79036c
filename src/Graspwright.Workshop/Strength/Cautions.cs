namespace Graspwright.Workshop.Strength;

/// <summary>What every answer about strength and life says beside its figures.</summary>
public static class Cautions
{
    /// <summary>The cautions.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "A broken hinge is a dropped load: do not carry over people, or hot, sharp or heavy things, on these figures.",
        "This is not a rated lifting device. Where somebody else wears the hand, the standard for external limb prostheses (ISO 22523) and licensed practice come before these figures.",
        "Strength of prints varies with printer, spool and walls more than any table says: break a few of your own on a luggage scale first.",
        "A part that does not break hands the blow on: to the next part, and in the end to your hand. Choose what breaks first and keep it in the drawer.",
    ];
}
