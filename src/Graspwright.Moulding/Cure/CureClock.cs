using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Cure;

/// <summary>Predicts when putty is mixed, firms and cures, from its label at one temperature and the flow of heat.</summary>
/// <remarks>
/// Each place collects label seconds at the speed of its own temperature; a moment comes when they reach the label's time.
/// The parts are chilled apart, so that nothing cures before mixing. Kneading folds the putty, so that it is at one
/// temperature while it lasts; before and after, heat flows by conduction. The heat of the cure itself is left out.
/// </remarks>
public static class CureClock
{
    private const int ChillCells = 24, SheetCells = 16;
    private const double StepSeconds = 2, LongStepSeconds = 10, SettledAfter = 60;

    /// <summary>Runs the clock.</summary>
    /// <param name="inputs">What it is told.</param>
    /// <param name="record">Whether states on the way are kept.</param>
    /// <exception cref="ArgumentException">The label's times are not in order, or a quantity is not above 0.</exception>
    public static CureResult Run(CureInputs inputs, bool record = false)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        Check(inputs);
        List<CureState> states = [];
        double start = Chill(inputs, record ? states : null, out double chilled, out double surface, out double middle, out double biot, out double? dry);
        Located[] moments = new Located[5];
        double mixed = Mix(inputs, start, record ? states : null, out double age, ref moments[(int)CureMoment.MixedBy]);
        Sheet(inputs, mixed, age, record ? states : null, moments);
        return new()
        {
            Moments = moments,
            ChilledMean = chilled,
            ChilledSurface = surface,
            ChilledMiddle = middle,
            FreezerBiot = biot,
            DryAfter = dry,
            AtMixing = start,
            Mixed = mixed,
            States = states,
        };
    }

    /// <summary>Radius of a ball [m].</summary>
    /// <param name="volume">Its volume [m³].</param>
    public static double BallRadius(double volume) => Math.Cbrt(3 * volume / (4 * Math.PI));

    private static void Check(CureInputs x)
    {
        bool order = x.WorkTime > 0 && x.SetTime > x.WorkTime && (x.FullTime is not { } full || full >= x.SetTime);
        double[] positive = [x.Conductivity, x.SpecificHeat, x.Density, x.Mass, x.Thickness, x.AirTransfer, x.FreezerTransfer, x.HandTransfer, x.ContactTransfer, x.FlatThickness, x.MixSeconds];
        if (!order || x.TenDegreeFactor <= 1 || Array.Exists(positive, v => !(v > 0 && double.IsFinite(v))) || x.Chill < 0 || x.Carry < 0 || x.CureAtSet is <= 0 or >= 0.99)
        {
            throw new ArgumentException("The clock needs work time < set time ≤ full cure, a factor above 1 and quantities above 0.", nameof(x));
        }
    }

    private static double Chill(CureInputs x, List<CureState>? states, out double mean, out double surface, out double middle, out double biot, out double? dry)
    {
        dry = null;
        double volume = x.GreaterPart * x.Mass / x.Density;
        (BodyShape shape, double length) = x.Shape switch
        {
            ChillShape.Ball => (BodyShape.Sphere, BallRadius(volume)),
            ChillShape.Tub => (BodyShape.Cylinder, Math.Cbrt(volume / (2 * Math.PI))), // as high as wide: V = 2·π·r³
            _ => (BodyShape.Slab, x.FlatThickness),
        };
        Surroundings Around(double transfer, double beyond) => new(shape == BodyShape.Slab ? transfer : 0, beyond, transfer, beyond);
        biot = x.FreezerTransfer * (shape == BodyShape.Slab ? length / 2 : length) / x.Conductivity;
        if (x.Chill <= 0)
        {
            (mean, surface, middle) = (x.Room, x.Room, x.Room);
            return x.Room;
        }

        HeatedBody body = new(shape, length, x.Stuff, x.Room, ChillCells);
        Surroundings freezer = Around(x.FreezerTransfer, x.Freezer), room = Around(x.AirTransfer, x.Room);
        Phase(body, shape, freezer, x.Chill, -x.Chill - x.Carry, states);
        mean = body.Mean;
        surface = body.OuterSurface(freezer);
        middle = body.Temperatures[shape == BodyShape.Slab ? ChillCells / 2 : 0];
        bool wet = x.DewPoint > body.OuterSurface(room);
        Phase(body, shape, room, x.Carry, -x.Carry, states);
        double carried = body.Mean;
        if (wet && x.DewPoint < x.Room)
        {
            dry = x.Carry;
            while (body.OuterSurface(room) < x.DewPoint)
            {
                body.Step(room, LongStepSeconds);
                dry += LongStepSeconds;
            }
        }

        return carried;
    }

    private static void Phase(HeatedBody body, BodyShape shape, Surroundings around, double seconds, double from, List<CureState>? states)
    {
        if (seconds <= 0)
        {
            return;
        }

        int steps = Math.Clamp((int)(seconds / LongStepSeconds), 8, 240);
        double step = seconds / steps;
        for (int i = 0; i < steps; i++)
        {
            if (i == 0)
            {
                body.Begin(around, step);
            }
            else
            {
                body.Step(around, step);
            }

            double inner = body.Temperatures[shape == BodyShape.Slab ? ChillCells / 2 : 0];
            states?.Add(new(from + (i + 1) * step, inner, body.Mean, body.OuterSurface(around), 0, 0, 0));
        }
    }

    /// <summary>Kneading: one temperature throughout, which goes to a balance between hands and air.</summary>
    private static double Mix(CureInputs x, double start, List<CureState>? states, out double age, ref Located mixedBy)
    {
        double radius = BallRadius(x.Mass / x.Density), area = 4 * Math.PI * radius * radius;
        double hands = x.HandTransfer * x.HandShare * area, air = x.AirTransfer * (1 - x.HandShare) * area;
        double balance = (hands * x.Hand + air * x.Room) / (hands + air), decay = (hands + air) / (x.Mass * x.SpecificHeat);
        double At(double t) => balance + (start - balance) * Math.Exp(-decay * t);
        int steps = Math.Max(8, (int)Math.Ceiling(x.MixSeconds / StepSeconds));
        double step = x.MixSeconds / steps;
        Func<double, double> rate = x.Rate.Speed();
        age = 0;
        bool found = false;
        for (int i = 0; i < steps; i++)
        {
            double t = i * step, before = age;
            // Simpson's rule on the exact temperature.
            age += step / 6 * (rate(At(t)) + 4 * rate(At(t + step / 2)) + rate(At(t + step)));
            found |= Locate(ref mixedBy, x.MixAge, t, before, age, step, found);
            double now = At(t + step);
            states?.Add(new(t + step, now, now, now, age, age, age));
        }

        return At(x.MixSeconds);
    }

    private static void Sheet(CureInputs x, double mixed, double age, List<CureState>? states, Located[] moments)
    {
        HeatedBody body = new(BodyShape.Slab, x.Thickness, x.Stuff, mixed, SheetCells);
        double[] ages = new double[SheetCells], speeds = new double[SheetCells];
        Array.Fill(ages, age);
        Func<double, double> rate = x.Rate.Speed();
        Array.Fill(speeds, rate(mixed));
        double worked = x.WorkingShare * x.HandTransfer + (1 - x.WorkingShare) * x.AirTransfer;
        double workedAt = (x.WorkingShare * x.HandTransfer * x.Hand + (1 - x.WorkingShare) * x.AirTransfer * x.Room) / worked;
        Surroundings rolling = new(x.ContactTransfer, x.Room, worked, workedAt), draping = rolling with { InnerTemperature = x.Mould };
        Surroundings resting = draping with { OuterTransfer = x.AirTransfer, OuterTemperature = x.Room };
        double time = x.MixSeconds, onMould = x.MixSeconds + x.RollSeconds, least = age, most = age;
        Span<bool> found = stackalloc bool[5];
        found[(int)CureMoment.MixedBy] = age >= x.MixAge;
        foreach ((CureMoment moment, double wanted) in ((CureMoment, double)[])[(CureMoment.Firming, x.WorkTime), (CureMoment.HandsOff, x.HandsOffAge), (CureMoment.OffMould, x.SetTime)])
        {
            // Over before it was mixed: the moment lies in the mixing, at the speed it had on average.
            found[(int)moment] = age >= wanted;
            moments[(int)moment] = age >= wanted ? new(wanted / age * x.MixSeconds, wanted, 0, 0, age / x.MixSeconds) : default;
        }

        Surroundings current = default;
        double changed = time, fastest = speeds[0];
        while (least < x.SetTime)
        {
            Surroundings around = found[(int)CureMoment.HandsOff] ? resting : time < onMould ? rolling : draping;
            changed = around == current ? changed : time;
            // Short steps while the temperatures move after a change, longer ones once they have come to rest.
            double step = time - changed < SettledAfter ? StepSeconds : LongStepSeconds;
            step = onMould - time > 1e-6 ? Math.Min(step, onMould - time) : step;
            if (!found[(int)CureMoment.HandsOff])
            {
                // A step ends where hands come off: from there on nothing warms the free side but the room.
                step = Math.Min(step, Math.Max(0.05, (x.HandsOffAge - most) / fastest));
            }

            if (around != current)
            {
                body.Begin(around, step);
                current = around;
            }
            else
            {
                body.Step(around, step);
            }

            double mostBefore = most, leastBefore = least;
            (most, least, fastest) = (double.NegativeInfinity, double.PositiveInfinity, 0);
            for (int i = 0; i < SheetCells; i++)
            {
                double speed = rate(body.Temperatures[i]);
                ages[i] += step * (speeds[i] + speed) / 2;
                speeds[i] = speed;
                fastest = Math.Max(fastest, speed);
                most = Math.Max(most, ages[i]);
                least = Math.Min(least, ages[i]);
            }

            found[(int)CureMoment.MixedBy] |= Locate(ref moments[(int)CureMoment.MixedBy], x.MixAge, time, mostBefore, most, step, found[(int)CureMoment.MixedBy]);
            found[(int)CureMoment.Firming] |= Locate(ref moments[(int)CureMoment.Firming], x.WorkTime, time, mostBefore, most, step, found[(int)CureMoment.Firming]);
            found[(int)CureMoment.HandsOff] |= Locate(ref moments[(int)CureMoment.HandsOff], x.HandsOffAge, time, mostBefore, most, step, found[(int)CureMoment.HandsOff]);
            Locate(ref moments[(int)CureMoment.OffMould], x.SetTime, time, leastBefore, least, step, known: false);
            time += step;
            states?.Add(new(time, body.InnerSurface(around), body.Mean, body.OuterSurface(around), ages[0], ages[SheetCells / 2], ages[^1]));
        }

        // Long before now the sheet has come to rest between mould and room, so that the speed stays what it is.
        double slowest = speeds.Min();
        moments[(int)CureMoment.LeaveUntil] = new(time + (x.FullAge - least) / slowest, x.FullAge, time, least, slowest);
    }

    private static bool Locate(ref Located moment, double wanted, double time, double before, double after, double step, bool known)
    {
        if (known || before >= wanted || after < wanted)
        {
            return false;
        }

        double speed = (after - before) / step;
        moment = new(time + (wanted - before) / speed, wanted, time, before, speed);
        return true;
    }
}
