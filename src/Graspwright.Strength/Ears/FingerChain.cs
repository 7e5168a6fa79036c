using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Ears;

/// <summary>A finger as a push at its tip sees it: hinges and phalanges one behind the other.</summary>
/// <param name="Hinges">MCP, PIP, DIP; fewer where a joint is fused.</param>
/// <param name="Phalanges">Sections, one beyond each hinge.</param>
/// <param name="Along">From each hinge to the tip along the finger [m].</param>
/// <param name="Off">How far the push lies off the line of each hinge's ears, palm to back [m].</param>
/// <param name="Solid">Material of the phalanges.</param>
/// <param name="PadStiffness">Stiffness of the pad at the tip [N/m].</param>
/// <param name="BaseStiffness">Stiffness of what stands behind the finger, as its tip feels it [N/m].</param>
public sealed record FingerChain(
    IReadOnlyList<Hinge> Hinges,
    IReadOnlyList<Section> Phalanges,
    IReadOnlyList<double> Along,
    IReadOnlyList<double> Off,
    Solid Solid,
    double PadStiffness,
    double BaseStiffness)
{
    /// <summary>Sideways give at the tip for each newton [m/N].</summary>
    public double Compliance()
    {
        double give = 1 / PadStiffness + 1 / BaseStiffness;
        for (int j = 0; j < Hinges.Count; j++)
        {
            SideLoad side = Hinges[j].Side(Along[j], Off[j]);
            double near = Along[j], far = j + 1 < Hinges.Count ? Along[j + 1] : 0;
            give += near * near / side.YawStiffness + Off[j] * Off[j] / side.RollStiffness + 1 / side.ShiftStiffness;
            give += (near * near * near - far * far * far) / (3 * Solid.Modulus * Phalanges[j].InertiaSide);
        }

        return give;
    }

    /// <summary>Ways to break at one hinge or in the phalanx beyond it, under a push at the tip.</summary>
    /// <param name="joint">Index of the hinge.</param>
    public IReadOnlyList<StressCheck> Checks(int joint) =>
    [
        .. Hinges[joint].UnderSidePush(Along[joint], Off[joint]),
        new(HingePart.Phalanx, "bent sideways", Along[joint] / Phalanges[joint].ModulusSide, 1, 1.5, Shear: false),
    ];
}
