namespace Graspwright.Hand;

/// <summary>Binds the day of wear.</summary>
internal static class UseBinding
{
    private const double CountTolerance = 1e-9; // counts are said in tenths at the finest
    private const double OuterWeight = 2; // an outer finger is open to one side, an inner one stands between its neighbours

    /// <summary>Binds [use]; the jobs of [jobs] that say how often they come count among its grips.</summary>
    public static Use Use(Binder t, Binder jobs, IReadOnlyList<Finger> fingers, IReadOnlyList<HandObject> objects)
    {
        DayJob[] beside = [.. t.Part("jobs").NamedParts().Select(p => Job(p.Name, p.Part, objects))];
        Use use = new()
        {
            GripsPerDay = Grips(t, jobs, beside),
            HoldSeconds = t.Quantity("hold"),
            GentleShare = t.Quantity("gentle"),
            FirmShare = t.Quantity("firm"),
            HardShare = t.Quantity("hard"),
            WornSeconds = t.Quantity("worn"),
            OutdoorSeconds = t.Quantity("outdoors"),
            ReachingShare = t.Quantity("reaching"),
            CountSpread = t.Quantity("count_spread"),
            EnergySpread = t.Quantity("energy_spread"),
            LoadSpread = t.Quantity("load_spread"),
            Knocks = Knocks(t),
            Exposure = Exposure(t, fingers),
            Jobs = beside,
            History = t.OptionalPart("history") is { } h ? new(h.Word("file"), h.Quantity("days"), Thing(h, objects)) : null,
        };
        double sum = use.GentleShare + use.FirmShare + use.HardShare;
        if (double.IsFinite(sum) && !StructureBinding.SumToOne(sum))
        {
            string key = t.Has("gentle") ? "gentle" : t.Has("firm") ? "firm" : "hard";
            t.Fault(t.PlaceOf(key), key, FormattableString.Invariant($"gentle, firm and hard that sum to {100 * sum:0.##} %"), "shares that sum to 100 %", "count again, or change the largest of the three");
        }

        if (use.OutdoorSeconds > use.WornSeconds)
        {
            t.Fault(t.PlaceOf("outdoors"), "outdoors", "more hours out of doors than worn", "at most the hours worn", "count the hours that the hand is out while it is worn");
        }

        return use;
    }

    /// <summary>Grips a day: what the file says, or what its jobs add up to; said twice, both must agree.</summary>
    private static double Grips(Binder t, Binder jobs, DayJob[] beside)
    {
        Dictionary<string, double> counted = new(StringComparer.Ordinal);
        foreach ((string name, Binder job) in jobs.NamedParts())
        {
            counted[name] = job.Optional("times_a_day") ?? 0;
        }

        foreach (DayJob grips in beside)
        {
            if (counted.GetValueOrDefault(grips.Name) is > 0 and double times && Math.Abs(times - grips.PerDay) > CountTolerance * times)
            {
                t.Part("jobs").Fault(t.Part("jobs").PlaceOf(grips.Name), grips.Name, FormattableString.Invariant($"{grips.PerDay:0.###} a day, where [jobs] says {times:0.###}"), "one count for one job",
                    $"remove it here: jobs.{grips.Name}.times_a_day counts for the life as well");
            }

            counted[grips.Name] = counted.GetValueOrDefault(grips.Name) is > 0 and double said ? said : grips.PerDay;
        }

        double sum = counted.Values.Sum();
        if (!t.Has("grips"))
        {
            return sum > 0 ? sum : t.Quantity("grips", "600");
        }

        double all = t.Quantity("grips");
        if (sum > all * (1 + CountTolerance))
        {
            t.Fault(t.PlaceOf("grips"), "grips", FormattableString.Invariant($"{all:0.###} a day, where the jobs add up to {sum:0.###}"), "at least what [jobs] and [use.jobs] add up to",
                "leave grips out, and the jobs are the day; or count again");
        }

        return all;
    }

    /// <summary>The share of each finger where the file says nothing.</summary>
    public static double[] EvenExposure(int count)
    {
        double[] weights = [.. Enumerable.Range(0, count).Select(i => i == 0 || i == count - 1 ? OuterWeight : 1.0)];
        double sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private static IReadOnlyList<Knock> Knocks(Binder t)
    {
        if (!t.Has("knocks"))
        {
            t.Guess("knocks", string.Join("; ", Hand.Use.DefaultKnocks.Select(k => FormattableString.Invariant($"{k.Name} {k.Joules:0.##} J, {k.PerDay:0.##} a day"))), "use-assumption");
            return Hand.Use.DefaultKnocks;
        }

        return [.. t.Part("knocks").NamedParts().Select(p => new Knock(p.Name, p.Part.Quantity("energy"), p.Part.Quantity("per_day")))];
    }

    private static double[] Exposure(Binder t, IReadOnlyList<Finger> fingers)
    {
        if (!t.Has("exposure"))
        {
            double[] even = EvenExposure(fingers.Count);
            t.Guess("exposure", string.Join(", ", fingers.Select((f, i) => FormattableString.Invariant($"{f.Name} {100 * even[i]:0} %"))), "use-assumption");
            return even;
        }

        Binder part = t.Part("exposure");
        foreach (Entry entry in part.Entries)
        {
            HeldThingsBinding.KnownFinger(part, entry.KeyPlace, entry.Key, fingers);
        }

        double[] shares = [.. fingers.Select(f => part.Optional(f.Name) ?? 0)];
        double sum = shares.Sum();
        if (double.IsFinite(sum) && !StructureBinding.SumToOne(sum))
        {
            t.Fault(part.Place, "exposure", FormattableString.Invariant($"shares that sum to {100 * sum:0.##} %"), "shares that sum to 100 %", "give each finger its share; a finger left out takes none");
        }

        return shares;
    }

    private static DayJob Job(string name, Binder t, IReadOnlyList<HandObject> objects) => new(name, Thing(t, objects), t.Choice<GripEffort>("effort"), t.Quantity("per_day"));

    private static string Thing(Binder t, IReadOnlyList<HandObject> objects)
    {
        string name = t.Word("object");
        if (t.Has("object") && !objects.Any(o => string.Equals(o.Name, name, StringComparison.Ordinal)))
        {
            IEnumerable<string> names = objects.Select(o => o.Name);
            t.Fault(t.PlaceOf("object"), "object", $"{name}, which is no object", string.Join(", ", names), Nearest.To(name, names) is { } near ? $"did you mean {near}?" : $"add a section [objects.{name}] or use one of these");
        }

        return name;
    }
}
