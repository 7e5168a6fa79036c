using CsCheck;

namespace Graspwright.Hand.Tests;

/// <summary>Random sections about strength and life that pass every check.</summary>
internal static class RandomStructure
{
    private static readonly Gen<double> Stress = Gen.Double[1e6, 2e9];
    private static readonly Gen<double> Share = Gen.Double[0.01, 0.9];

    /// <summary>Sections for fingers of some names; the hinges follow the order across the hand, so each finger gets the same.</summary>
    public static Gen<HandStructure> Of(string[] fingers) =>
        from materials in Gen.Select(Stress, Stress, Share, Gen.Bool, Gen.Double[1e3, 1e5])
        from hinge in SomeHinges
        from part in Gen.Select(Gen.Enum<PartKind>(), Gen.Double[0.001, 0.004], Gen.Double[0.005, 0.02], Gen.Double[0, 0.001])
        from spring in Gen.Select(Gen.Enum<SpringDuty>(), Gen.Double[0.0003, 0.001], Gen.Double[0.004, 0.01], Gen.Double[1, 20], Gen.Bool)
        from shell in Gen.Select(RandomHands.Length, Stress, Gen.Bool, Share)
        from use in SomeUse(fingers)
        select new HandStructure
        {
            Materials =
            [
                MaterialTable.Find("petg-along")! with
                {
                    Name = "four walls", Like = "petg-along", Words = "my \"print\"", Modulus = materials.Item1, Strength = materials.Item2, StrengthSpread = materials.Item3, Brittle = materials.Item4, FatigueCycles = materials.Item5,
                },
                MaterialTable.Find("brass")! with { Like = "brass" },
            ],
            Hinges = [.. fingers.Select(_ => hinge)],
            Parts = [new() { Name = "an eye", Kind = part.Item1, Carries = "pull link", Material = "brass", Diameter = part.Item2, Thickness = part.Item3, Width = part.Item3, Length = part.Item3, InnerRadius = part.Item4 > 0.0005 ? part.Item4 : null, Gap = part.Item4 }],
            Springs = [new("in the slot", spring.Item1, spring.Item2, spring.Item3, spring.Item4, 0.025, 0.02, 0.005, spring.Item5 ? "music wire" : "stainless wire")],
            Shell = new() { BearingLength = shell.Item1, SkinLimit = shell.Item2, BreakingMoment = shell.Item3 ? 12 : null },
            Repair = new() { Pin = 60 + 60 * shell.Item4 },
            Use = use,
        };

    private static Gen<Hinges> SomeHinges =>
        Gen.Select(Gen.Double[0.001, 0.004], Gen.Double[0.005, 0.02], Gen.Bool, Gen.Double[0, 0.0005], Gen.Double[0, 0.001]).Select((small, large, solid, gap, bush) => new Hinges
        {
            Finger = "",
            BushingMaterial = solid ? "bronze" : Hinges.NoBushing,
            FingerMaterial = "four walls",
            BushingWall = new(bush / 4, 0, bush / 5),
            EarThickness = new(small, 2 * small, 0.0012345),
            EarHeight = new(2 * large, 2 * large, 3 * large),
            EarLength = new(large, large, large),
            Edge = new(large, large, large),
            Gap = new(gap, gap, 0),
            PinDiameter = new(small, small, small),
            Wall = solid ? new(double.PositiveInfinity, small, small) : new(small, small, small),
        });

    private static Gen<Use> SomeUse(string[] fingers) =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[0, 0.9], Gen.Double[0, 1], Gen.Double[0.01, 5], Gen.Bool, Gen.Double[0, 2]).Select((grips, gentle, spread, energy, said, days) => new Use
        {
            GripsPerDay = 2 * grips + 7,
            HoldSeconds = 10 * spread,
            GentleShare = gentle,
            FirmShare = 1 - gentle,
            HardShare = 0,
            CountSpread = spread,
            Knocks = said ? [new("hard one", energy, grips)] : Use.DefaultKnocks,
            Exposure = [.. fingers.Select((_, i) => i == 0 ? 1.0 : 0.0)],
            Jobs = said ? [new("carry", "mug", GripEffort.Hard, grips)] : [],
            History = said ? new("bench/day.csv", 1 + days, "big tin") : null,
        });
}
