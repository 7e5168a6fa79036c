using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Ears;

/// <summary>How a hinge carries one newton at the fingertip across the plane of motion.</summary>
/// <remarks>
/// The push bends the hinge sideways by its arm along the finger and twists it by its arm off the line of the ears. Each
/// of the two moments finds two ways: ears pushed and pulled against each other through the pin (bending the pin), or
/// ears bent or twisted each by itself. The two share it by their stiffness. The direct push is shared by both ears, each
/// as if it stood free: a tongue with a gap does not hold their ends square.
/// </remarks>
/// <param name="EarPull">Pull in one ear and push in the other for each newton [1].</param>
/// <param name="EarBending">Moment that the two ears take by bending sideways [m].</param>
/// <param name="EarLift">Force palm to back on each ear, opposite on the other [1].</param>
/// <param name="EarTwist">Moment that the two ears take by twisting [m].</param>
/// <param name="YawStiffness">Sideways stiffness of the hinge [N·m/rad].</param>
/// <param name="RollStiffness">Stiffness against twist about the finger's length [N·m/rad].</param>
/// <param name="ShiftStiffness">Stiffness against a push straight through the pin's middle [N/m].</param>
public readonly record struct SideLoad(double EarPull, double EarBending, double EarLift, double EarTwist, double YawStiffness, double RollStiffness, double ShiftStiffness)
{
    /// <summary>Shares a push among the ways.</summary>
    /// <param name="hinge">Hinge.</param>
    /// <param name="along">Arm along the finger [m].</param>
    /// <param name="off">Arm off the line of the ears [m].</param>
    public static SideLoad Of(Hinge hinge, double along, double off)
    {
        ArgumentNullException.ThrowIfNull(hinge);
        Section ear = Section.Rectangle(hinge.EarThickness, hinge.EarHeight);
        double modulus = hinge.Ear.Modulus, length = hinge.EarLength, spacing = hinge.Pin.Spacing;
        double tilt = hinge.Pin.TiltStiffness(hinge.PinSolid.Modulus);
        double pairs = spacing * spacing / 2;
        double pull = Series(modulus * ear.Area / length * pairs, tilt);
        double bend = 2 * modulus * ear.InertiaSide / length;
        double lift = Series(3 * modulus * ear.InertiaFlat / (length * length * length) * pairs, tilt);
        double twist = 2 * hinge.Ear.ShearModulus * ear.TorsionConstant / length;
        return new(
            along * pull / (pull + bend) / spacing,
            along * bend / (pull + bend),
            Math.Abs(off) * lift / (lift + twist) / spacing,
            Math.Abs(off) * twist / (lift + twist),
            pull + bend,
            lift + twist,
            6 * modulus * ear.InertiaSide / (length * length * length));
    }

    private static double Series(double a, double b) => a * b / (a + b);
}
