using Graspwright.Strength.Pins;
using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Ears;

/// <summary>A hinge: a tongue between two ears on a pin. All lengths in m.</summary>
/// <param name="EarThickness">Thickness of one ear, above 0.</param>
/// <param name="EarHeight">Height of the ears, palm to back, above the hole.</param>
/// <param name="EarLength">From their root to the pin, above 0.</param>
/// <param name="Edge">From the centre of the pin to the free edge.</param>
/// <param name="RootRadius">Radius at the root.</param>
/// <param name="Tongue">Thickness of the tongue.</param>
/// <param name="Gap">Gap on each side.</param>
/// <param name="PinDiameter">Diameter of the pin.</param>
/// <param name="Hole">Diameter of the hole in the ears: pin and bushing.</param>
/// <param name="Ear">Material of the ears.</param>
/// <param name="PinSolid">Material of the pin.</param>
/// <param name="TongueSolid">Material of the tongue.</param>
public sealed record Hinge(
    double EarThickness,
    double EarHeight,
    double EarLength,
    double Edge,
    double RootRadius,
    double Tongue,
    double Gap,
    double PinDiameter,
    double Hole,
    Solid Ear,
    Solid PinSolid,
    Solid TongueSolid)
{
    private const double RectanglePlastic = 1.5;

    /// <summary>The pin in its hinge.</summary>
    public ClevisPin Pin => new(PinDiameter, EarThickness, Tongue, Gap);

    /// <summary>One ear.</summary>
    public Eye EarEye => new(EarHeight, EarThickness, Hole, PinDiameter, Edge);

    /// <summary>The tongue.</summary>
    public Eye TongueEye => new(EarHeight, Tongue, PinDiameter, PinDiameter, Edge);

    /// <summary>Material of a part; the phalanx beyond is as the tongue.</summary>
    /// <param name="part">The part.</param>
    public Solid Of(HingePart part) => part switch
    {
        HingePart.Ears => Ear,
        HingePart.Pin => PinSolid,
        _ => TongueSolid,
    };

    /// <summary>Ways to break under a force in the plane of motion, as the grip puts on the pin.</summary>
    /// <remarks>The force is taken as pulling the tongue out of the ears, the worse sense; each ear takes half.</remarks>
    public IReadOnlyList<StressCheck> UnderGrip()
    {
        ClevisPin pin = Pin;
        Eye ear = EarEye, tongue = TongueEye;
        return
        [
            new(HingePart.Ears, "beside the hole", ear.NetPerNewton / 2, ear.PinLoadedFactor, 1, Shear: false),
            new(HingePart.Ears, "torn out behind the pin", ear.ShearOutPerNewton / 2, 1, 1, Shear: true),
            new(HingePart.Pin, "bent", pin.MomentPerNewton / pin.Modulus, 1, ClevisPin.RoundPlastic, Shear: false),
            new(HingePart.Pin, "sheared", pin.ShearPerNewton, 1, 1, Shear: true),
            new(HingePart.Tongue, "beside the hole", tongue.NetPerNewton, tongue.PinLoadedFactor, 1, Shear: false),
            new(HingePart.Tongue, "torn out behind the pin", tongue.ShearOutPerNewton, 1, 1, Shear: true),
        ];
    }

    /// <summary>Pressure of the pin on ears and tongue for each newton across the hinge [Pa/N], the greater of both.</summary>
    public double BearingPerNewton => Math.Max(EarEye.BearingPerNewton / 2, TongueEye.BearingPerNewton);

    /// <summary>How a push at the fingertip across the plane of motion is carried.</summary>
    /// <param name="along">From the pin to the fingertip along the ears [m].</param>
    /// <param name="off">How far the push lies off the line of the ears, palm to back [m].</param>
    public SideLoad Side(double along, double off) => SideLoad.Of(this, along, off);

    /// <summary>Ways to break under a push at the fingertip across the plane of motion.</summary>
    /// <param name="along">From the pin to the fingertip along the ears [m].</param>
    /// <param name="off">How far the push lies off the line of the ears [m].</param>
    public IReadOnlyList<StressCheck> UnderSidePush(double along, double off)
    {
        SideLoad side = Side(along, off);
        Section ear = Section.Rectangle(EarThickness, EarHeight);
        double direct = side.EarPull / ear.Area + (side.EarBending / 2 + EarLength / 2) / ear.ModulusSide + side.EarLift * EarLength / ear.ModulusFlat;
        double twist = side.EarTwist / 2 / ear.TorsionModulus;
        double root = Math.Sqrt(direct * direct + 3 * twist * twist);
        ClevisPin pin = Pin;
        double both = Math.Sqrt(side.EarPull * side.EarPull + side.EarLift * side.EarLift);
        return
        [
            new(HingePart.Ears, "beside the hole", both * EarEye.NetPerNewton, EarEye.PinLoadedFactor, 1, Shear: false),
            new(HingePart.Ears, "at the root", root, Eye.RootFactor(RootRadius, EarThickness), RectanglePlastic, Shear: false),
            new(HingePart.Ears, "torn out behind the pin", side.EarPull * EarEye.ShearOutPerNewton, 1, 1, Shear: true),
            new(HingePart.Pin, "bent", both * pin.CoupleMomentPerNewton / pin.Modulus, 1, ClevisPin.RoundPlastic, Shear: false),
            new(HingePart.Pin, "sheared", both / pin.Area, 1, 1, Shear: true),
            new(HingePart.Tongue, "at the hole", along / ((EarHeight - PinDiameter) * Tongue * Tongue / 6), Eye.PlainHoleFactor(PinDiameter / EarHeight), RectanglePlastic, Shear: false),
        ];
    }
}
