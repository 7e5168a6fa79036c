using CsCheck;

namespace Graspwright.Hand.Tests;

/// <summary>Random hands that pass every check: what they hold is plausible only in sign and size.</summary>
internal static class RandomHands
{
    public static readonly Gen<double> Length = Gen.OneOf(Gen.Double[1e-4, 0.2], Gen.Int[1, 2000].Select(i => i / 10000.0));
    private static readonly Gen<double> MaybeZero = Gen.OneOf(Gen.Const(0.0), Length);
    private static readonly Gen<double> Turn = Gen.OneOf(Gen.Double[-6.2, 6.2], Gen.Int[-3500, 3500].Select(i => i / 10.0 * Math.PI / 180));
    private static readonly Gen<double> Force = Gen.Double[0, 500];
    private static readonly Gen<double> Stiffness = Gen.Double[10, 2e6];
    private static readonly Gen<double> Share = Gen.Double[0.01, 1];
    private static readonly Gen<Point> Far = Gen.Select(Gen.Double[0.02, 0.2], Gen.Double[0.02, 0.2], (x, y) => new Point(x, y));
    private static readonly Gen<Point> Anywhere = Gen.Select(Gen.Double[-0.2, 0.2], Gen.Double[-0.2, 0.2], (x, y) => new Point(x, y));
    private static readonly Gen<string> Word = Gen.OneOf(Gen.Const("grip"), Gen.Const("Ω \"quoted\" \\ back"), Gen.Const("two words"), Gen.Const("a.b"), Gen.String[Gen.Char['a', 'z'], 1, 8]);
    private static readonly Gen<Pin> SomePin = Gen.Select(MaybeZero, MaybeZero, MaybeZero, (r, p, w) => new Pin(r, p, w));
    private static readonly Gen<LinkKind> Kind = Gen.Enum<LinkKind>();

    private static readonly Gen<MomentTable> Capacity = Gen.Select(Gen.Double[0.01, 0.3].Array[1, 6], Gen.Double[0, 20].Array[6]).Select((steps, moments) =>
        new MomentTable([.. steps.Select((_, i) => -1 + steps.Take(i + 1).Sum())], [.. moments.Take(steps.Length)]));

    private static readonly Gen<Coupling> SomeCoupling = Gen.OneOf(
        Gen.Double[0, 2].Select(r => (Coupling)new RatioCoupling(r)),
        Gen.Select(Length, Turn, Length, Turn, (a, b, c, d) => (Coupling)new FourBarCoupling(a, b, c, d)));

    private static readonly Gen<FingerJoints> Joints = Gen.OneOf(
        Gen.Const((FingerJoints)new AdaptiveJoints()),
        Gen.Select(SomeCoupling, SomeCoupling, (p, d) => (FingerJoints)new CoupledJoints(p, d)));

    public static Gen<HandModel> Hand =>
        from names in Gen.Shuffle(new[] { "index", "middle", "ring", "little", "an odd one" }).Select(Gen.Int[1, 5], (n, count) => n.Take(count).ToArray())
        from fingers in names.Select(Finger).Aggregate(Gen.Const(Array.Empty<Finger>()), (some, next) => Gen.Select(some, next, (list, f) => list.Append(f).ToArray()))
        from tree in Tree(names, "bar")
        from wrist in SomeWrist
        from links in Gen.Select(SomePull, SomeCrank, SomeTransfer, SomeRail)
        from gives in Gen.Select(Rotational, Rotational, Gen.Double[0, 0.33], SomePin, Anywhere, Gen.Bool, Anywhere, Turn)
        from friction in Gen.Double[0, 1].Array[4]
        from objects in Objects
        from locks in Locks(names)
        from structure in RandomStructure.Of(names)
        from signals in Signals
        from text in Gen.Select(Word, Word, Gen.Enum<Side>(), Length)
        from day in RandomDays.Day(names[0])
        select new HandModel
        {
            Name = text.Item1,
            Description = text.Item2,
            Side = text.Item3,
            HandBreadth = text.Item4,
            Wrist = wrist,
            Give = new() { CuffStiffness = gives.Item1, ShellStiffness = gives.Item2, Hysteresis = gives.Item3 },
            Gimbal = gives.Item6 ? new(gives.Item4, gives.Item5) : null,
            Palm = new(gives.Item7, gives.Item8),
            PullLink = links.Item1,
            Crank = links.Item2,
            TransferLink = links.Item3,
            Rail = links.Item4,
            Balance = tree,
            Fingers = [.. fingers.OrderByDescending(f => f.Across)],
            Friction = new() { Pin = friction[0], Rail = friction[1], Slot = friction[2], Guide = friction[3] },
            Objects = objects,
            Locks = locks,
            Structure = structure with { Hinges = [.. fingers.OrderByDescending(f => f.Across).Zip(structure.Hinges, (f, h) => h with { Finger = f.Name })] },
            Drawer = new()
            {
                PeriodSeconds = 86400 * (1 + friction[0]),
                SupplySeconds = 3600 * friction[1],
                Chance = friction[2] > 0.5 ? 0.05 : 0.1,
                ComputedLives = friction[3] > 0.5 ? [] : [new("finger", 86400 * (2 + friction[0]), 86400, 86400 * (4 + friction[1]))],
            },
            Signals = signals,
            Tolerances = [new("crank.fulcrum.x", 0.0002), new($"fingers.{(names[0] == "an odd one" ? "\"an odd one\"" : names[0])}.segments[1]", friction[0] / 1000)],
            Files = [new("readings", "bench/readings.csv")],
            Jobs = day.Jobs,
            WristRange = gives.Item6 ? new(wrist.TravelRadians, 0.5) : null,
            Pads = day.Pads,
            Thumb = day.Thumb,
            ClosingLock = day.ClosingLock,
            Room = day.Room,
            Body = new(50 + 60 * friction[0], 0.004 + 0.004 * friction[1], 0.5 + 0.4 * friction[2], gives.Item5, 0.5 * friction[3], gives.Item7),
        };

    private static Gen<double> Rotational => Gen.OneOf(Gen.Const(double.PositiveInfinity), Gen.Double[1, 900]);

    private static Gen<Wrist> SomeWrist =>
        from angles in Gen.Select(Gen.Double[-1, 1], Gen.Double[0.1, 3])
        from shares in Gen.Select(Share, Share, Gen.Double[0.1, 9])
        from tables in Gen.Select(Capacity, Capacity, Gen.Enum<DrivingDirection>())
        select new Wrist
        {
            Direction = tables.Item3,
            StartRadians = angles.Item1,
            TravelRadians = angles.Item2,
            SqueezeShare = Math.Max(shares.Item1, shares.Item2),
            AllDayShare = Math.Min(shares.Item1, shares.Item2),
            SpeedRadiansPerSecond = shares.Item3,
            FlexionCapacity = tables.Item1,
            ExtensionCapacity = tables.Item2,
        };

    // The anchor lies on the other side of the wrist axis from the crank, so that the line misses axis and fulcrum.
    private static Gen<PullLink> SomePull =>
        Gen.Select(Kind, Stiffness, Gen.Double[0, 0.01], SomePin, SomePin, Gen.Double[0.05, 0.2]).Select((kind, k, slack, a, c, far) =>
            new PullLink { Kind = kind, Anchor = new(-far, 0.5), Stiffness = k, Slack = kind == LinkKind.Cord ? slack : 0 - slack, AnchorPin = a, CrankPin = c });

    private static Gen<Crank> SomeCrank =>
        from places in Gen.Select(Far, Gen.Select(Gen.Double[0.005, 0.05], Gen.Double[0.005, 0.05]), Far)
        from rest in Gen.Select(Gen.Double[0.1, 3], Force, SomePin, SomePin, Gen.Bool)
        from slot in Gen.Select(Turn, Length, Force, Force)
        select new Crank
        {
            Fulcrum = places.Item1,
            Input = new(places.Item2.Item1, places.Item2.Item2),
            Output = places.Item3,
            StopRadians = rest.Item1,
            Drag = rest.Item2,
            FulcrumPin = rest.Item3,
            OutputPin = rest.Item4,
            Slot = rest.Item5 ? new(slot.Item1, slot.Item2, slot.Item3, slot.Item4) : null,
        };

    private static Gen<TransferLink> SomeTransfer =>
        Gen.Select(Kind, Stiffness, Gen.Double[0, 0.01], SomePin, (kind, k, slack, pin) =>
            new TransferLink { Kind = kind, Stiffness = k, Slack = kind == LinkKind.Cord ? slack : 0 - slack, CarriagePin = pin });

    private static Gen<Rail> SomeRail =>
        Gen.Select(Turn, Length, Force, Gen.Bool, Length, Anywhere).Select((turn, travel, drag, guided, guide, offset) =>
            new Rail { Rest = new(-0.3, -0.3), DirectionRadians = turn, Travel = travel, Drag = drag, GuideLength = guided ? guide : null, LoadOffset = offset });

    private static Gen<IReadOnlyList<HandObject>> Objects =>
        Gen.Select(Length, Length, Anywhere, Turn, MaybeZero).Select((d, s, p, n, t) => (IReadOnlyList<HandObject>)
            [new CylinderObject("mug", d, new OnPalm(s)), new CylinderObject("big tin", d, new AtCentre(p)), new PlateObject("plate", p, n, t), new NothingHeld("air")]);

    private static Gen<Triple> Three(Gen<double> one) => Gen.Select(one, one, one, (a, b, c) => new Triple(a, b, c));

    private static Gen<Finger> Finger(string name) =>
        from places in Gen.Select(Anywhere, Gen.Double[-0.05, 0.05], Gen.Double[-1, 1], Three(Length), Three(MaybeZero))
        from angles in Gen.Select(Three(Gen.Double[-1, 1]), Three(Gen.Double[0, 2]), Joints, Stiffness)
        from drives in Gen.Select(Three(MaybeZero), Gen.Bool, Length, Turn, Turn)
        from loads in Gen.Select(Three(Force), Three(Force), Three(Force), Three(MaybeZero))
        from plays in Gen.Select(Three(MaybeZero), Three(MaybeZero))
        from pull in Gen.Select(Kind, Stiffness, Gen.Double[0, 0.01], Gen.Double[0, 6])
        select new Finger
        {
            Name = name,
            Knuckle = places.Item1,
            Across = places.Item2,
            SplayRadians = places.Item3,
            Segments = places.Item4,
            HalfThickness = places.Item5,
            OpenRadians = angles.Item1,
            RangeRadians = angles.Item2,
            Joints = angles.Item3,
            PadStiffness = angles.Item4,
            Arms = drives.Item1,
            DrivePin = drives.Item2 ? new(drives.Item3, drives.Item4, drives.Item5) : null,
            SpringRate = loads.Item1,
            SpringPreload = loads.Item2,
            Drag = loads.Item3,
            PinRadius = loads.Item4,
            Play = plays.Item1,
            WornPlay = plays.Item2,
            Pull = new() { Kind = pull.Item1, Stiffness = pull.Item2, Slack = pull.Item1 == LinkKind.Cord ? pull.Item3 : 0 - pull.Item3, GuideWrapRadians = pull.Item4 },
        };

    private static Gen<BalanceNode> Tree(string[] fingers, string name) => fingers.Length == 1
        ? Gen.Const((BalanceNode)new FingerLeaf(fingers[0]))
        : Gen.Int[1, fingers.Length - 1].SelectMany(left => Gen.Select(
            Tree(fingers[..left], name + "1"), Tree(fingers[left..], name + "2"), Gen.Select(Length, Length, Gen.Double[0, 1.5], SomePin, MaybeZero, MaybeZero),
            (first, second, b) => (BalanceNode)new BalanceBar
            {
                Name = name,
                First = first,
                Second = second,
                FirstArm = b.Item1,
                SecondArm = b.Item2,
                TiltStopRadians = b.Item3,
                PivotPin = b.Item4,
                FirstPinRadius = b.Item5,
                SecondPinRadius = b.Item6,
            }));

    private static Gen<MuscleSignals?> Signals =>
        from given in Gen.Bool
        from words in Gen.Select(Word, Word, Word)
        from numbers in Gen.Double[0.01, 0.3].Array[14]
        from bounds in Gen.Select(Gen.Double[40, 70], Gen.Double[5, 80], Gen.Bool, Anywhere)
        select !given ? null : new MuscleSignals
        {
            Kind = bounds.Item3 ? "envelope" : "",
            MainsHertz = bounds.Item1,
            DelayLimit = numbers[0],
            LeastSpacing = numbers[1],
            SeparationLimit = numbers[2],
            LoopShare = numbers[3],
            LineSpeed = 1e6 * numbers[4],
            Map = bounds.Item3 ? "signals/map.csv" : "",
            Channels = [new(words.Item1, words.Item2, bounds.Item3 ? words.Item3 : "", "")],
            Recordings = [new("morning", "a.edf", bounds.Item3, 2, bounds.Item3 ? 1000 * numbers[5] : null, ""), new("noon", "b.csv", false, 1, null, "cues.csv")],
            Sore = [new(words.Item2, bounds.Item4, numbers[6])],
            Stud = bounds.Item3 ? null : new()
            {
                Metal = "silver",
                DomeDiameter = numbers[7],
                DomeHeight = numbers[8],
                FlangeDiameter = numbers[9],
                HoleDiameter = numbers[10],
                LinerThickness = numbers[11],
                Squeeze = numbers[12],
                ShoreHardness = bounds.Item2,
                TearStrength = 1e5 * numbers[13],
                StretchAtBreak = 10 * numbers[0],
                PullOut = 100 * numbers[1],
                ShellMovement = numbers[2],
                WireDiameter = numbers[3],
                WireLength = numbers[4],
            },
        };

    private static Gen<IReadOnlyList<LockPattern>> Locks(string[] names) =>
        Gen.Select(Gen.Double[0, 3], Gen.Bool, Gen.Bool, Gen.Double[1, 300]).Select((at, holds, limited, limit) => (IReadOnlyList<LockPattern>)
            [new LockPattern("held", [.. names.Select(n => new FingerLock(n, at, holds, limited ? limit : null) { HoldsUnpowered = limited ? holds : null, HandRelease = holds ? "lever" : "" })]), new LockPattern("none held", [])]);
}
