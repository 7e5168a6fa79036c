using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Ears;
using Graspwright.Strength.Pins;
using Graspwright.Strength.Sections;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>How far a part of hinge or drive is from breaking under the greatest force of the closing run at the squeeze effort.</summary>
/// <param name="Name">Part, or hinge and part.</param>
/// <param name="Mode">How it breaks first.</param>
/// <param name="Newtons">Greatest force [N]; <see langword="null"/> = the closing run names no such force.</param>
/// <param name="Breaks">Force that breaks it [N].</param>
/// <param name="Bends">Force at which it stays bent [N].</param>
/// <param name="Material">Its material.</param>
public sealed record PartStrength(string Name, string Mode, double? Newtons, double Breaks, double Bends, string Material)
{
    /// <summary>Breaking force ÷ greatest force.</summary>
    public double? Factor => Newtons is { } n && n > 0 ? Breaks / n : null;
}

/// <summary>Checks hinges and parts of the drive under the closing run.</summary>
public static class DriveStrength
{
    /// <summary>Every hinge and part, weakest first.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips.</param>
    public static IReadOnlyList<PartStrength> All(HandModel hand, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        Materials materials = new(hand);
        List<PartStrength> found = [];
        foreach (FingerBuild finger in FingerBuild.All(hand))
        {
            for (int h = 0; h < finger.Joints.Count; h++)
            {
                string position = finger.Position(h);
                double load = loads.Greatest.GetValueOrDefault(position);
                foreach (IGrouping<HingePart, StressCheck> part in finger.Chain.Hinges[h].UnderGrip().GroupBy(c => c.Part))
                {
                    string material = finger.MaterialOf(h, part.Key);
                    found.Add(Weakest($"{position}, {part.Key.ToString().ToLowerInvariant()}", material, materials.Solid(material), load, part));
                }
            }
        }

        foreach (StructuralPart part in hand.Structure.Parts)
        {
            double? load = loads.Greatest.TryGetValue(part.Carries, out double force) ? force : null;
            found.Add(Weakest(part.Name, part.Material, materials.Solid(part.Material), load, Checks(part, materials.Solid(part.Material), loads.Pushing.Contains(part.Carries))));
        }

        return [.. found.OrderBy(p => p.Factor ?? double.PositiveInfinity)];
    }

    /// <summary>The greatest pressure of a hinge pin beside what its bore may bear, as a finding.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips.</param>
    public static IEnumerable<Finding> Bearings(HandModel hand, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        Materials materials = new(hand);
        (string Position, string Material, double Pressure, double Limit) worst = ("", "", 0, 1);
        foreach (FingerBuild finger in FingerBuild.All(hand))
        {
            for (int h = 0; h < finger.Joints.Count; h++)
            {
                string material = WearCourse.BoreMaterial(finger);
                double pressure = loads.Greatest.GetValueOrDefault(finger.Position(h)) * Bore(finger, h), limit = materials.Of(material).BearingLimit;
                worst = pressure / limit > worst.Pressure / worst.Limit ? (finger.Position(h), material, pressure, limit) : worst;
            }
        }

        double margin = 1 - worst.Pressure / worst.Limit;
        return worst.Position.Length == 0
            ? []
            : [
                new("bore_pressure", worst.Position, Verdicts.Of(margin),
                    $"The pin of the {Say.Position(worst.Position)} presses its bore hardest, with {Say.Number(worst.Pressure / 1e6)} MPa at the squeeze effort; {worst.Material} bears {Say.Number(worst.Limit / 1e6)} MPa while it turns.",
                    "A thicker pin, a wider tongue, or a bushing of oiled bronze.")
                {
                    Figure = worst.Pressure / 1e6,
                    Limit = worst.Limit / 1e6,
                    Unit = "MPa",
                    Margin = margin,
                },
            ];
    }

    private static double Bore(FingerBuild finger, int hinge)
    {
        Hinge h = finger.Chain.Hinges[hinge];
        return WearCourse.HasBushing(finger) ? h.EarEye.BearingPerNewton / 2 : h.TongueEye.BearingPerNewton;
    }

    private static PartStrength Weakest(string name, string material, Solid solid, double? load, IEnumerable<StressCheck> checks)
    {
        StressCheck[] all = [.. checks];
        StressCheck first = all.MinBy(c => c.BreakingForce(solid));
        return new(name, first.Mode, load, first.BreakingForce(solid), all.Min(c => c.BendingForce(solid)), material);
    }

    /// <summary>Ways to break of a part of the drive, for each newton that it carries.</summary>
    /// <param name="part">The part.</param>
    /// <param name="solid">Its material.</param>
    /// <param name="pushed">Whether its force also pushes, so that a rod may buckle.</param>
    public static IReadOnlyList<StressCheck> Checks(StructuralPart part, Solid solid, bool pushed)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(solid);
        const double Rectangle = 1.5, ThreadShare = 0.5; // half the cylinder round the thread shears
        double d = part.Diameter, t = part.Thickness ?? 0, w = part.Width ?? 0, l = part.Length ?? 0;
        Section round = Section.Round(d);
        switch (part.Kind)
        {
            case PartKind.Pin:
                ClevisPin pin = new(d, t, w, part.Gap);
                return [new(HingePart.Pin, "bent", pin.MomentPerNewton / pin.Modulus, 1, ClevisPin.RoundPlastic, Shear: false), new(HingePart.Pin, "sheared", pin.ShearPerNewton, 1, 1, Shear: true)];
            case PartKind.Stud:
                return [new(HingePart.Pin, "bent at its root", l / round.ModulusFlat, 1, ClevisPin.RoundPlastic, Shear: false), new(HingePart.Pin, "sheared", 1 / round.Area, 1, 1, Shear: true)];
            case PartKind.Eye:
                Eye eye = new(w, t, d, d, l);
                return
                [
                    new(HingePart.Ears, "beside the hole", eye.NetPerNewton, eye.PinLoadedFactor, 1, Shear: false),
                    new(HingePart.Ears, "torn out behind the pin", eye.ShearOutPerNewton, 1, 1, Shear: true),
                    new(HingePart.Ears, "crushed by the pin", eye.BearingPerNewton / 2, 1, 1, Shear: false), // a bore stands about twice the tensile strength before it runs out of round
                ];
            case PartKind.Arm:
                double depth = w - d;
                double stress = part.InnerRadius is { } inner ? CurvedBar.Stress(inner, w, t, l, 0).Inner : l / ((w * w * w - d * d * d) * t / (6 * w));
                return [new(HingePart.Ears, part.InnerRadius is null ? "bent" : "bent open", stress, 1, Rectangle, Shear: false), new(HingePart.Ears, "sheared", 1.5 / (depth * t), 1, 1, Shear: true)];
            case PartKind.Thread:
                return [new(HingePart.Pin, "thread pulled out", 1 / (ThreadShare * Math.PI * d * l), 1, 1, Shear: true)];
            default:
                StressCheck pulled = new(HingePart.Pin, "pulled", 1 / round.Area, 1, 1, Shear: false);
                return !pushed ? [pulled] : [pulled, new(HingePart.Pin, "buckled", solid.Strength / Graspwright.Strength.Sections.Column.Buckling(d, l, solid.Modulus, solid.Yield), 1, 1, Shear: false)];
        }
    }
}
