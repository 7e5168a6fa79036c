namespace Graspwright.Hand;

/// <summary>Binds the day's jobs, pads, thumb, closing lock and room.</summary>
internal static class DayBinding
{
    public static IReadOnlyList<Job> Jobs(Binder jobs, IReadOnlyList<HandObject> objects, IReadOnlyList<LockPattern> locks, bool hasLock)
    {
        List<Job> found = [];
        foreach ((string name, Binder part) in jobs.NamedParts())
        {
            Job job = Job(name, part, objects, locks);
            if (job.LockAndRelax && !hasLock)
            {
                part.Fault(part.PlaceOf("grip"), "grip", "lock and relax, without a lock", "a section [closing_lock], or \"hold\"", "add [closing_lock] with the pitch and backlash of its lock");
            }

            found.Add(job);
        }

        return found;
    }

    public static Pads Pads(Binder t)
    {
        string material = t.Word("material");
        return new(material, t.Quantity("friction", material == "metal" ? "0.2" : "0.5"), t.Quantity("wet_factor"), t.Quantity("spread"), t.Quantity("skin_friction"), t.Quantity("patch"));
    }

    public static Thumb Thumb(Binder t)
    {
        double threshold = t.Quantity("pain_threshold");
        return new(t.Quantity("pinch"), t.Quantity("across"), t.Quantity("heel"), t.Quantity("pad_width"), threshold, t.Quantity("limit", Toml.Quantity(0.38 * threshold, Dimension.Pressure)),
            [.. t.Part("postures").NamedParts().Select(p => Posture(p.Name, p.Part))]);
    }

    public static ClosingLock ClosingLock(Binder t) => new(t.Quantity("pitch"), t.Quantity("backlash"), t.Quantity("stiffness"), t.Optional("may_carry"));

    public static HandRoom Room(Binder t, IReadOnlyList<Finger> fingers) => new()
    {
        Liner = t.Quantity("liner"),
        Shell = t.Quantity("shell"),
        Clearance = t.Quantity("clearance"),
        Base = t.Quantity("base"),
        HandThickness = t.Quantity("hand_thickness"),
        HandMiddle = t.Quantity("hand_middle"),
        LinkWidth = t.Quantity("link_width"),
        BarWidth = t.Quantity("bar_width"),
        BarPitch = t.Quantity("bar_pitch"),
        DriveAcross = t.Quantity("drive_across"),
        LeastGap = t.Quantity("least_gap"),
        MostHeight = t.Optional("most_height"),
        Stumps = Places(t.Part("stumps"), fingers),
        SoundKnuckles = Places(t.Part("sound_knuckles"), fingers),
    };

    public static HandBody Body(Binder t, HandModel hand)
    {
        double knuckles = hand.Fingers.Select(f => f.Knuckle.X).DefaultIfEmpty().Average(), height = hand.Fingers.Select(f => f.Knuckle.Y).DefaultIfEmpty().Average();
        return new(t.Quantity("mass"), t.Quantity("hand_share"), t.Quantity("hand_left"), t.Point("hand_centre", Lengths(0.65 * hand.HandBreadth, 0)),
            t.Quantity("device"), t.Point("device_centre", Lengths((knuckles + hand.Rail.Rest.X) / 2, (height + hand.Rail.Rest.Y) / 2)));
    }

    private static ThumbPosture Posture(string name, Binder t)
    {
        SpacePoint pad = Space(t.Triple("pad")), looksAt = Space(t.Triple("looks_at"));
        if (pad == looksAt)
        {
            t.Fault(t.PlaceOf("looks_at"), "looks_at", "the pad itself", "a place off the pad", "hold a straw upright on the pad and measure its far end");
        }

        return new(name, pad, looksAt);
    }

    private static Job Job(string name, Binder t, IReadOnlyList<HandObject> objects, IReadOnlyList<LockPattern> locks)
    {
        string held = t.Word("object");
        HandObject? thing = objects.FirstOrDefault(o => string.Equals(o.Name, held, StringComparison.Ordinal));
        if (held.Length > 0 && thing is null or NothingHeld)
        {
            IEnumerable<string> names = objects.Where(o => o is not NothingHeld).Select(o => o.Name);
            t.Fault(t.PlaceOf("object"), "object", thing is null ? $"{held}, which is no object" : $"{held}, which is nothing to hold", string.Join(", ", names),
                Nearest.To(held, names) is { } near ? $"did you mean {near}?" : $"add a section [objects.{held}] or use one of these");
        }

        string? pattern = t.Has("locks") ? t.Word("locks") : null;
        if (pattern is not null && !locks.Any(l => string.Equals(l.Name, pattern, StringComparison.Ordinal)))
        {
            t.Fault(t.PlaceOf("locks"), "locks", $"{pattern}, which is no lock pattern", string.Join(", ", locks.Select(l => l.Name)), "use one of these, or leave it out for all free");
        }

        HeldAs how = As(t.Word("as", thing is PlateObject ? "\"plate\"" : "\"cylinder\""));
        if (thing is PlateObject != (how == HeldAs.Plate) && thing is PlateObject or CylinderObject)
        {
            t.Fault(t.PlaceOf("as"), "as", $"a {(thing is PlateObject ? "plate" : "cylinder")} held as a {Words(how)}", thing is PlateObject ? "\"plate\"" : "\"cylinder\", \"hook bar\" or \"handle\"", "change it, or name another object");
        }

        if (thing is PlateObject && t.Has("centre"))
        {
            t.Fault(t.PlaceOf("centre"), "centre", "centre of a plate", "no centre there", "remove it: a plate lies where its object says");
        }

        Job job = new(name)
        {
            ObjectName = held,
            As = how,
            Centre = t.Has("centre") ? t.Point("centre") : null,
            Load = t.Quantity("load"),
            Hangs = Space(t.Triple("hangs")),
            Pull = t.Quantity("pull"),
            Toward = t.Word("toward"),
            Twist = t.Quantity("twist"),
            Forearm = t.Word("forearm"),
            LockAndRelax = t.Word("grip") == "lock and relax",
            Squeeze = t.Word("effort") == "squeeze",
            Locks = pattern,
            Acceleration = t.Quantity("acceleration"),
            Wet = t.Word("surface") == "wet",
            TimesADay = t.Optional("times_a_day"),
        };
        if (job is { Load: 0, Pull: 0, Twist: 0 })
        {
            t.Fault(t.Place, "load", "nothing", "a load, a pull or a twist above 0", "weigh the thing full and add load = \"0.5 kg\"");
        }

        return job;
    }

    /// <summary>Words of the file for a way of holding.</summary>
    public static string Words(HeldAs how) => how == HeldAs.HookBar ? "hook bar" : how.ToString().ToLowerInvariant();

    private static HeldAs As(string word) => word switch
    {
        "plate" => HeldAs.Plate,
        "hook bar" => HeldAs.HookBar,
        "handle" => HeldAs.Handle,
        _ => HeldAs.Cylinder,
    };

    /// <summary>A place to a hundredth of a millimetre: it is a guess.</summary>
    private static string Lengths(double x, double y) => Toml.List([Toml.Quantity(Math.Round(x, 5), Dimension.Length), Toml.Quantity(Math.Round(y, 5), Dimension.Length)]);

    private static SpacePoint Space(Triple t) => new(t.First, t.Second, t.Third);

    private static List<NamedPlace> Places(Binder t, IReadOnlyList<Finger> fingers)
    {
        List<NamedPlace> places = [];
        foreach (Entry entry in t.Entries)
        {
            if (!fingers.Any(f => string.Equals(f.Name, entry.Key, StringComparison.Ordinal)))
            {
                t.Fault(entry.KeyPlace, entry.Key, $"{entry.Key}, which is no finger", string.Join(", ", fingers.Select(f => f.Name)), "use one of these");
            }

            places.Add(new(entry.Key, t.Point(entry.Key)));
        }

        return places;
    }
}
