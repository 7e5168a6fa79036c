using CsCheck;

namespace Graspwright.Hand.Tests;

/// <summary>Random forms, liners and copies that pass every check.</summary>
internal static class RandomMould
{
    private static readonly Gen<double> Share = Gen.Double[0.01, 0.9];
    private static readonly Gen<double> Positive = Gen.OneOf(Gen.Double[1e-3, 900], Gen.Int[1, 900].Select(i => i / 10.0));
    private static readonly Gen<double> Indoors = Gen.OneOf(Gen.Double[274, 318], Gen.Int[1, 44].Select(i => i + 273.15));
    private static readonly Gen<double> Turn = Gen.Double[-6.2, 6.2];

    public static Gen<HandModel> On(Gen<HandModel> hands) =>
        from hand in hands
        from has in Gen.Bool.Array[3]
        from form in Form
        from liner in Liner
        from copies in Copies
        select hand with { Form = has[0] ? form : null, Liner = has[1] ? liner : null, Copies = has[2] ? copies : null };

    private static Gen<LimbForm> Form =>
        from marks in Gen.Select(Gen.Double[0.01, 0.05], Gen.Double[0.1, 0.3], Gen.Bool, Gen.Double[0.03, 0.1], Gen.Double[0.03, 0.1]).Array[2, 5]
        from thumb in Gen.Select(Gen.Bool, Gen.Double[0.01, 0.1].Array[3], Gen.Double[-0.1, 0.1], Gen.Double[0, 1.5])
        from patches in Gen.Select(Gen.Enum<PatchKind>(), Gen.Double[-0.1, 0], Gen.Double[0.001, 0.1], Turn, Turn).Array[0, 3]
        from wires in Gen.Select(Spot, Spot, Gen.Bool, Gen.Double[0, 0.01], Share, Gen.Double[0.0005, 0.003], Gen.Double[1, 20]).Array[0, 2]
        from scan in Gen.Select(Gen.Bool, Gen.Int[0, 4].Select(i => (string?)((string?[])["mm", "cm", "m", "in", null])[i]), Gen.Bool.Select(b => b ? "z" : "-z"), Gen.Bool.Select(b => b ? "y" : "-x"), Gen.Double[-0.2, 0.2], Gen.Double[0.01, 0.1])
        from thin in Gen.Select(Gen.Bool, Gen.Double[0, 0.001])
        from line in Gen.Select(Gen.Bool, Gen.Bool, Gen.Double[0.2, 0.8], Gen.Double[-0.001, 0.001].Array[5], Gen.Double[0, 1])
        from plan in Gen.Select(Turn, Gen.Double[0.001, 0.02], Gen.Bool, Gen.Double[0.01, 0.1], Gen.Double[0.01, 0.4], Gen.Double[1e3, 1e5], Gen.Bool.Select(b => b ? "sleeve" : "opening"))
        select new LimbForm
        {
            Zero = "crease of the wrist",
            // Half the girth of the rectangle and of the rhombus: a girth that its width and depth allow.
            Marks = [.. marks.Select((m, i) => new LimbMark($"m{i}", marks.Take(i + 1).Sum(x => x.Item1), m.Item3 ? m.Item4 + m.Item5 + double.Hypot(m.Item4, m.Item5) : m.Item2, m.Item3 ? m.Item4 : null, m.Item3 ? m.Item5 : null))],
            NearEdge = marks[0].Item1,
            FarEdge = line.Item1 ? Edge(marks, line.Item3, line.Item4, line.Item5) is var corners ? new LimbLine(corners).MeanPlace : 0 : marks.Sum(x => x.Item1),
            FarLine = line.Item1 ? Edge(marks, line.Item3, line.Item4, line.Item5) : [],
            Thumb = thumb.Item1 ? new(thumb.Item3, thumb.Item2[0], thumb.Item2[1], thumb.Item2[2], thumb.Item4) : null,
            Patches = [.. patches.Select((p, i) => line.Item2 && i == 0 ? Drawn(p.Item1, marks[0].Item1, p.Item4) : new LimbPatch($"patch {i}", p.Item1, p.Item2, p.Item2 + p.Item3, p.Item4, p.Item5, i == 1 ? 0.002 : 0, i == 2 ? 0.004 : null))],
            Wires = [.. wires.Select((w, i) => new LimbWire($"wire {i}", patches.Length > 0 ? new("patch 0", 0, 0) : w.Item1, w.Item2, w.Item3 ? w.Item1 : null, w.Item4, w.Item5, w.Item3 ? w.Item6 : null, w.Item7))],
            Scan = scan.Item1 ? new("limb.stl", scan.Item2, scan.Item3, scan.Item4, scan.Item5, scan.Item6, thin.Item1 ? thin.Item2 : null) : null,
            Pattern = new(plan.Item1, plan.Item3 ? plan.Item2 : null, plan.Item3, plan.Item4, plan.Item5, plan.Item6, plan.Item7),
        };

    // Five corners round the limb, between the marks.
    private static IReadOnlyList<LimbCorner> Edge((double, double, bool, double, double)[] marks, double share, double[] off, double turn) =>
        [.. off.Select((o, i) => new LimbCorner(marks[0].Item1 + share * marks.Skip(1).Sum(m => m.Item1) + o, turn + 2 * Math.PI * i / off.Length))];

    private static LimbPatch Drawn(PatchKind kind, double place, double angle)
    {
        LimbCorner[] corners = [new(place, angle * 0.8), new(place + 0.02, angle * 0.8 + 0.3), new(place + 0.03, angle * 0.8 - 0.2)];
        LimbLine line = new(corners);
        return new("patch 0", kind, line.Places.Low, line.Places.High, line.Angles.Low, line.Angles.High) { Outline = corners };
    }

    private static Gen<LimbSpot> Spot => Gen.Select(Gen.Double[-0.1, 0.1], Turn).Select(s => new LimbSpot(null, s.Item1, s.Item2));

    private static Gen<Liner> Liner =>
        from sheet in Gen.Select(Gen.Double[0.001, 0.005], Gen.Int[0, 2], Gen.Double[0.05, 0.5], Gen.Double[0.05, 0.5], Share, Share)
        from putty in Putty
        from bench in Bench
        from work in Positive.Array[6]
        from hollows in Gen.Int[0, 50]
        from off in Gen.Select(Share, Gen.Double[0, 2], Positive, Gen.Double[0, 0.05])
        select new Liner
        {
            Thickness = sheet.Item1,
            SheetArea = sheet.Item2 == 1 ? sheet.Item3 : null,
            SheetLength = sheet.Item2 == 2 ? sheet.Item3 : null,
            SheetWidth = sheet.Item2 == 2 ? sheet.Item4 : null,
            Overlap = sheet.Item1,
            Waste = sheet.Item5,
            Spare = sheet.Item6,
            Putty = putty,
            Bench = bench,
            Work = new(work[0], work[1], work[2], work[3], work[4], hollows, work[5]),
            Off = new(off.Item1, off.Item2, off.Item3, off.Item4),
        };

    private static Gen<PuttyLabel> Putty =>
        from numbers in Positive.Array[12]
        from given in Gen.Bool.Array[8]
        from shares in Gen.Select(Share, Share, Gen.Double[0.5, 0.98], Gen.Double[1.1, 5], Gen.Double[5, 90], Gen.Double[0.05, 20])
        from at in Indoors
        select new PuttyLabel
        {
            Name = given[0] ? "grey \"putty\"" : "",
            RatioA = numbers[0],
            RatioB = numbers[1],
            RatioError = given[1] ? shares.Item1 : null,
            DensityA = numbers[2],
            DensityB = numbers[3],
            MixTime = given[2] ? numbers[4] / 2 : null,
            WorkTime = numbers[4],
            SetTime = numbers[4] + numbers[5],
            FullTime = given[3] ? numbers[4] + numbers[5] + numbers[6] : null,
            At = at,
            ShoreA = given[4] ? shares.Item5 : null,
            Elongation = given[5] ? shares.Item6 : null,
            Tear = given[6] ? numbers[7] * 1000 : null,
            Price = given[7] ? numbers[8] : null,
            Pack = given[7] ? numbers[9] : null,
            Money = given[7] ? "EUR" : "",
            Arrhenius = given[0],
            TenDegreeFactor = shares.Item4,
            Conductivity = numbers[10],
            SpecificHeat = numbers[11],
            MixShare = shares.Item2,
            HandsOffShare = shares.Item1,
            CureAtSet = shares.Item3,
        };

    private static Gen<PuttyBench> Bench =>
        from numbers in Positive.Array[8]
        from warm in Indoors.Array[3]
        from more in Gen.Select(Gen.Double[244, 283], Share, Share, Share, Gen.Enum<ChilledAs>(), Gen.Int[0, 4], Gen.Bool)
        select new PuttyBench
        {
            ScaleStep = numbers[0] / 1000,
            Tub = more.Item7 ? numbers[1] / 1e6 : null,
            Room = warm[0],
            Humidity = more.Item2,
            Mould = warm[1],
            Hand = warm[2],
            Freezer = more.Item1,
            Chill = numbers[2],
            ChilledAs = more.Item5,
            FlatThickness = numbers[3] / 1000,
            Carry = numbers[2] / 2,
            Helpers = more.Item6,
            AirTransfer = numbers[4],
            FreezerTransfer = numbers[5],
            HandTransfer = numbers[6],
            ContactTransfer = numbers[7],
            HandShare = more.Item3,
            WorkingShare = more.Item4,
        };

    private static Gen<CopyPlan> Copies =>
        from x in Gen.Double[0.001, 0.019].Array[10]
        from ratio in Gen.Double[0.2, 1.4]
        from water in Indoors
        select new CopyPlan(x[0], x[1], x[2], x[3], ratio, x[4], x[5], x[6], x[7], x[8], x[9], water);
}
