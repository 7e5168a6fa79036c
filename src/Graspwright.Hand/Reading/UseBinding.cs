namespace Graspwright.Hand;

/// <summary>Binds the day of wear.</summary>
internal static class UseBinding
{
    private const double OuterWeight = 2; // an outer finger is open to one side, an inner one stands between its neighbours

    public static Use Use(Binder t, IReadOnlyList<Finger> fingers, IReadOnlyList<HandObject> objects)
    {
        Use use = new()
        {
            GripsPerDay = t.Quantity("grips"),
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
            Jobs = [.. t.Part("jobs").NamedParts().Select(p => Job(p.Name, p.Part, objects))],
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
