using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Ears;
using Graspwright.Strength.Pins;
using Graspwright.Strength.Sections;

namespace Graspwright.Workshop.Strength;

/// <summary>A finger with its hinges as the engine takes them.</summary>
/// <param name="Finger">The finger.</param>
/// <param name="Said">What the file says about its hinges.</param>
/// <param name="Joints">Index of each hinge: 0 MCP, 1 PIP, 2 DIP; a fused joint is no hinge.</param>
/// <param name="Chain">As a push at the tip sees it, hand open.</param>
public sealed record FingerBuild(Finger Finger, Hinges Said, IReadOnlyList<int> Joints, FingerChain Chain)
{
    private static readonly string[] Names = ["mcp", "pip", "dip"];

    /// <summary>Builds every finger of a hand.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<FingerBuild> All(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Materials materials = new(hand);
        return [.. hand.Fingers.Zip(hand.Structure.Hinges, (f, h) => Build(f, h, hand.Structure.Shell, materials))];
    }

    /// <summary>Name of a hinge, as the closing run and the log of parts name it: <c>index mcp</c>.</summary>
    /// <param name="hinge">Index in <see cref="Joints"/>.</param>
    public string Position(int hinge) => $"{Finger.Name} {Names[Joints[hinge]]}";

    /// <summary>Name of the material of a part of a hinge.</summary>
    /// <param name="hinge">Index in <see cref="Joints"/>.</param>
    /// <param name="part">The part.</param>
    public string MaterialOf(int hinge, HingePart part) => part switch
    {
        HingePart.Ears => Joints[hinge] == 0 ? Said.BaseMaterial : Said.FingerMaterial,
        HingePart.Pin => Said.PinMaterial,
        _ => Said.FingerMaterial,
    };

    /// <summary>An entry of a triple.</summary>
    /// <param name="triple">Triple.</param>
    /// <param name="index">0, 1 or 2.</param>
    public static double At(Triple triple, int index) => index switch { 0 => triple.First, 1 => triple.Second, _ => triple.Third };

    private static FingerBuild Build(Finger finger, Hinges said, Shell shell, Materials materials)
    {
        Solid phalanx = materials.Solid(said.FingerMaterial), pin = materials.Solid(said.PinMaterial), root = materials.Solid(said.BaseMaterial);
        List<int> joints = [];
        List<Hinge> hinges = [];
        List<Section> sections = [];
        List<double> along = [], off = [];
        double[] direction = [0, 0, 0, 0]; // of the body before each joint, and of the last segment
        for (int j = 0; j < 3; j++)
        {
            direction[j + 1] = direction[j] - At(finger.OpenRadians, j);
        }

        for (int j = 0; j < 3; j++)
        {
            if (At(finger.RangeRadians, j) <= 0)
            {
                continue;
            }

            double x = 0, y = 0;
            for (int s = j; s < 3; s++)
            {
                x += At(finger.Segments, s) * Math.Cos(direction[s + 1]);
                y += At(finger.Segments, s) * Math.Sin(direction[s + 1]);
            }

            joints.Add(j);
            hinges.Add(new(At(said.EarThickness, j), At(said.EarHeight, j), At(said.EarLength, j), At(said.Edge, j), At(said.RootRadius, j), At(said.Tongue, j), At(said.Gap, j),
                At(said.PinDiameter, j), At(said.PinDiameter, j) + 2 * At(said.BushingWall, j), j == 0 ? root : phalanx, pin, phalanx));
            sections.Add(Section.Box(At(said.Width, j), At(said.Height, j), At(said.Wall, j)));
            along.Add(Math.Abs(x * Math.Cos(direction[j]) + y * Math.Sin(direction[j])));
            off.Add(Math.Abs(y * Math.Cos(direction[j]) - x * Math.Sin(direction[j])));
        }

        return new(finger, said, joints, new(hinges, sections, along, off, phalanx, finger.PadStiffness, BaseStiffness(shell, along.Count > 0 ? along[0] : 0)));
    }

    /// <summary>Stiffness of palm and shell as the fingertip feels it [N/m].</summary>
    /// <remarks>
    /// The shell is a rigid pad of length L on the springy side of the palm, of stiffness K in all: a push with lever a from its
    /// middle gives (1 + 12a²/L²)/K. At its end, the knuckle, that is 4/K, which is what the file states. The same pad presses
    /// the skin in <see cref="FailureOrder.SkinPush"/>.
    /// </remarks>
    /// <param name="shell">The shell.</param>
    /// <param name="beyond">From the knuckle to the fingertip [m].</param>
    public static double BaseStiffness(Shell shell, double beyond)
    {
        ArgumentNullException.ThrowIfNull(shell);
        double lever = (beyond + shell.BearingLength / 2) / shell.BearingLength;
        return 4 * shell.SideStiffness / (1 + 12 * lever * lever);
    }

    /// <summary>Mass of what moves: phalanges, tongues, ears on the finger and pins [kg].</summary>
    /// <param name="materials">Materials.</param>
    public double MovingMass(Materials materials)
    {
        ArgumentNullException.ThrowIfNull(materials);
        double body = materials.Of(Said.FingerMaterial).Density, pin = materials.Of(Said.PinMaterial).Density, mass = 0;
        for (int j = 0; j < 3; j++)
        {
            mass += body * Section.Box(At(Said.Width, j), At(Said.Height, j), At(Said.Wall, j)).Area * At(Finger.Segments, j);
        }

        for (int h = 0; h < Joints.Count; h++)
        {
            ClevisPin p = Chain.Hinges[h].Pin;
            mass += pin * p.Area * (p.Tongue + 2 * p.Gap + 2 * p.Ear);
        }

        return mass;
    }
}
