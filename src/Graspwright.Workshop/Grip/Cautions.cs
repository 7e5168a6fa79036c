namespace Graspwright.Workshop.Grip;

/// <summary>What every answer about grip says beside its figures.</summary>
public static class Cautions
{
    /// <summary>The cautions.</summary>
    public static IReadOnlyList<string> Grip { get; } =
    [
        "A grip can be lost without warning: do not hold over people or yourself what must not drop, nor anything hot, sharp or under load, on these figures alone.",
        "Closing fingers pinch: keep skin, the other hand and other people's fingers out of joints and bars.",
        "This is not a rated lifting device. Local codes and a licensed prosthetist or therapist come before these figures.",
        "Not modelled: fingers touching the palm or each other, motion of the object, gravity, friction of the pads on the object.",
    ];
}
