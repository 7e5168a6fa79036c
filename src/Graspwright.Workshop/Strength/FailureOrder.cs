using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Knocks;

namespace Graspwright.Workshop.Strength;

/// <summary>One link of the chain from fingertip to skin, by the push at the fingertip that it gives way to.</summary>
/// <param name="Name">finger, pin, base, shell or skin.</param>
/// <param name="Where">Where in it.</param>
/// <param name="Newtons">Push at the fingertip [N].</param>
/// <param name="Spread">Coefficient of variation of it.</param>
/// <param name="RepairSeconds">Repair [s]; infinite for the wearer.</param>
public sealed record FailureLink(string Name, string Where, double Newtons, double Spread, double RepairSeconds)
{
    /// <summary>Name of the link that is the wearer.</summary>
    public const string Skin = "skin";

    /// <summary>Name of the link that is the pin.</summary>
    public const string Pin = "pin";

    /// <summary>Whether it is the wearer.</summary>
    public bool IsWearer => Name == Skin;
}

/// <summary>What gives way first when a finger is pushed sideways at its tip.</summary>
/// <param name="Build">The finger.</param>
/// <param name="Compliance">Give at the tip for each newton [m/N].</param>
/// <param name="Links">The links, weakest first.</param>
public sealed record FailureOrder(FingerBuild Build, double Compliance, IReadOnlyList<FailureLink> Links)
{
    private const double SkinSpread = 0.3; // from person to person, as pain thresholds spread

    /// <summary>The weakest link.</summary>
    public FailureLink First => Links[0];

    /// <summary>Energy of a knock that it gives way to [J], all of it bending the finger.</summary>
    public double Joules => Impact.Energy(First.Newtons, Compliance);

    /// <summary>The weakest link that is not the pin.</summary>
    public FailureLink FirstDear => Links.First(l => l.Name != FailureLink.Pin);

    /// <summary>The order of every finger.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<FailureOrder> All(HandModel hand) => [.. FingerBuild.All(hand).Select(f => Of(hand, f))];

    /// <summary>The order of a finger.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="build">The finger.</param>
    public static FailureOrder Of(HandModel hand, FingerBuild build)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(build);
        Repair repair = hand.Structure.Repair;
        Materials materials = new(hand);
        List<FailureLink> links = [];
        for (int h = 0; h < build.Joints.Count; h++)
        {
            foreach (StressCheck check in build.Chain.Checks(h))
            {
                Material material = materials.Of(build.MaterialOf(h, check.Part));
                (string name, double seconds) = check.Part == HingePart.Pin ? (FailureLink.Pin, repair.Pin)
                    : check.Part == HingePart.Ears && build.Joints[h] == 0 ? ("base", repair.Base) : ("finger", repair.Finger);
                string part = check.Part.ToString().ToLowerInvariant();
                links.Add(new(name, $"{part} of the {build.Position(h).ToUpperInvariant().Split(' ')[^1]}, {check.Mode}", check.BreakingForce(materials.Solid(material.Name)), material.StrengthSpread, seconds));
            }
        }

        Shell shell = hand.Structure.Shell;
        double lever = build.Chain.Along[0] + shell.BearingLength / 2;
        if (shell.BreakingMoment is { } moment)
        {
            links.Add(new("shell", "shell or its fixings", moment / lever, 0.15, repair.Shell));
        }

        links.Add(new(FailureLink.Skin, "side of the palm under the shell", SkinPush(shell, lever), SkinSpread, double.PositiveInfinity));
        return new(build, build.Chain.Compliance(), [.. links.GroupBy(l => l.Name).Select(g => g.MinBy(l => l.Newtons)!).OrderBy(l => l.Newtons)]);
    }

    /// <summary>Push at the tip that brings the skin to its limit [N]: a rigid pad under force and moment, F/(L·B)·(1 + 6a/L).</summary>
    /// <param name="shell">The shell.</param>
    /// <param name="lever">From the tip to the middle of the pad [m].</param>
    public static double SkinPush(Shell shell, double lever)
    {
        ArgumentNullException.ThrowIfNull(shell);
        return shell.SkinLimit * shell.BearingLength * shell.BearingHeight / (1 + 6 * lever / shell.BearingLength);
    }
}
