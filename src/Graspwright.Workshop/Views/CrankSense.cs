using Graspwright.Workshop.Drive;

namespace Graspwright.Workshop.Views;

/// <summary>Which way the crank of a hand turns.</summary>
public static class CrankSense
{
    /// <summary>+1 = anticlockwise in the side view as the wrist drives from rest, −1 else.</summary>
    /// <param name="hand">The hand.</param>
    public static int Of(Hand.HandModel hand) => Posture.CrankSign(DriveMapping.ToDrive(hand));
}
