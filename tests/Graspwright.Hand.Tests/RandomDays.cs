using CsCheck;

namespace Graspwright.Hand.Tests;

/// <summary>Random jobs, pads, thumbs, locks and rooms that pass every check.</summary>
internal static class RandomDays
{
    private static readonly Gen<double> Length = RandomHands.Length;
    private static readonly Gen<SpacePoint> Space = Gen.Select(Gen.Double[-0.2, 0.2], Gen.Double[-0.2, 0.2], Gen.Double[-0.2, 0.2], (x, y, z) => new SpacePoint(x, y, z));

    /// <summary>What a day adds to a hand.</summary>
    public sealed record Made(IReadOnlyList<Job> Jobs, Pads Pads, Thumb Thumb, ClosingLock? ClosingLock, HandRoom? Room);

    public static Gen<Made> Day(string finger) =>
        from jobs in Jobs
        from shares in Gen.Double[0.01, 0.9].Array[4]
        from lengths in Length.Array[14]
        from spaces in Gen.Select(Space, Space)
        from has in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool, Gen.Bool)
        select new Made(
            jobs,
            new Pads(has.Item3 ? "metal" : "silicone", shares[0], shares[1], shares[2], shares[3], lengths[0]),
            new Thumb(900 * shares[0], lengths[1], -3 * shares[3], lengths[2], 4e5 * shares[1], 1e5 * shares[2], [new("side, by the index", spaces.Item1, spaces.Item1 with { Y = spaces.Item1.Y + 0.03 + Math.Abs(spaces.Item2.Y) })]),
            new(lengths[3], lengths[4], has.Item3 ? double.PositiveInfinity : 1e6 * shares[3], has.Item4 ? 100 * shares[0] : null),
            has.Item2 ? Room(lengths, has.Item4, finger) : null);

    private static HandRoom Room(double[] lengths, bool limited, string finger) => new()
    {
        Liner = lengths[0], Shell = lengths[1], Clearance = lengths[2], Base = lengths[3], HandThickness = lengths[4], HandMiddle = -lengths[5], LinkWidth = lengths[6],
        BarWidth = lengths[7], BarPitch = lengths[8], DriveAcross = lengths[9], LeastGap = lengths[10], MostHeight = limited ? lengths[11] : null,
        Stumps = [new(finger, new(lengths[12], lengths[13]))], SoundKnuckles = [new(finger, new(lengths[13], -lengths[12]))],
    };

    private static Gen<IReadOnlyList<Job>> Jobs =>
        Gen.Select(Gen.Double[0.01, 9], Space, Gen.Double[0, 99], Gen.Bool, Gen.Bool, Gen.Double[0, 2]).Select((load, hangs, pull, wet, locked, share) => (IReadOnlyList<Job>)
            [
                new Job("full mug") { ObjectName = "mug", As = HeldAs.Handle, Centre = wet ? new Point(pull / 1000, -load / 100) : null, Load = load, Hangs = hangs, Pull = pull, Toward = "palmar", Forearm = "thumb up", LockAndRelax = locked, Wet = wet, Acceleration = share, TimesADay = 7 },
                new Job("card") { ObjectName = "plate", As = HeldAs.Plate, Twist = share + 0.1, Squeeze = wet, Locks = locked ? "held" : null },
            ]);
}
