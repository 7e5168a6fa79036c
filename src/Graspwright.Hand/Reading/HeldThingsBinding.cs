namespace Graspwright.Hand;

/// <summary>Binds objects, lock patterns, tolerances and files.</summary>
internal static class HeldThingsBinding
{
    private static readonly string[] CylinderKeys = ["diameter", "station", "centre"];
    private static readonly string[] PlateKeys = ["point", "normal", "thickness"];

    public static IReadOnlyList<HandObject> Objects(Binder objects) => [.. objects.NamedParts().Select(p => Object(p.Name, p.Part))];

    public static IReadOnlyList<LockPattern> Locks(Binder locks, IReadOnlyList<Finger> fingers)
    {
        List<LockPattern> patterns = [];
        foreach ((string name, Binder pattern) in locks.NamedParts())
        {
            List<FingerLock> held = [];
            foreach ((string finger, Binder part) in pattern.NamedParts())
            {
                KnownFinger(pattern, part.Place, finger, fingers);
                held.Add(new(finger, part.Quantity("at"), part.Word("pull") == "holds pull", part.Optional("may_carry"))
                {
                    HoldsUnpowered = part.Word("unpowered") switch { "holds" => true, "frees" => false, _ => null },
                    HandRelease = part.Word("hand_release"),
                });
            }

            patterns.Add(new(name, held));
        }

        return patterns;
    }

    public static IReadOnlyList<Tolerance> Tolerances(Binder tolerances, IReadOnlyList<Finger> fingers, IReadOnlyList<HandObject> objects)
    {
        List<Tolerance> found = [];
        foreach (Entry entry in tolerances.Entries)
        {
            if (!HandPath.TryDescribe(entry.Key, out HandKey? key, out _) || !HandPath.TrySplit(entry.Key, out IReadOnlyList<PathStep>? steps))
            {
                continue;
            }

            if (steps is [{ Key: "fingers" }, { Key: not FingerBinding.Shared } finger, ..])
            {
                KnownFinger(tolerances, entry.KeyPlace, finger.Key, fingers);
            }

            if (steps is [{ Key: "objects" }, var thing, ..] && !objects.Any(o => string.Equals(o.Name, thing.Key, StringComparison.Ordinal)))
            {
                tolerances.Fault(entry.KeyPlace, entry.Key, $"{thing.Key}, which is no object", string.Join(", ", objects.Select(o => o.Name)), $"add a section [objects.{thing.Key}] or use one of these");
            }

            HandKey width = key with { Bounds = Bounds.NotNegative, Unbounded = null };
            found.Add(new(entry.Key, ValueReading.Quantity(width, entry.Value, "", null)));
        }

        return found;
    }

    public static IReadOnlyList<NamedFile> Files(Binder files) =>
        [.. files.Entries.Where(e => e.Value is TextNode).Select(e => new NamedFile(e.Key, ((TextNode)e.Value).Text))];

    private static HandObject Object(string name, Binder t)
    {
        switch (t.Word("shape"))
        {
            case "cylinder":
                Foreign(t, "cylinder", PlateKeys);
                Needed(t, "diameter", "\"60 mm\"");
                if (t.Has("station") == t.Has("centre"))
                {
                    t.Fault(t.Place, "station", t.Has("station") ? "station beside centre" : "neither station nor centre", "one of the two",
                        "add station = \"73 mm\" if it lies on the palm line, else centre = [\"73 mm\", \"-42 mm\"]");
                }

                return new CylinderObject(name, t.Optional("diameter") ?? double.NaN, t.Has("centre") ? new AtCentre(t.Point("centre")) : new OnPalm(t.Optional("station") ?? double.NaN));
            case "plate":
                Foreign(t, "plate", CylinderKeys);
                Needed(t, "point", "[\"120 mm\", \"-60 mm\"]");
                Needed(t, "normal", "\"90 deg\"");
                return new PlateObject(name, t.Has("point") ? t.Point("point") : default, t.Optional("normal") ?? double.NaN, t.Optional("thickness") ?? 0);
            default:
                if (t.Word("shape").Length > 0)
                {
                    Foreign(t, "nothing", [.. CylinderKeys, .. PlateKeys]);
                }

                return new NothingHeld(name);
        }
    }

    private static void Needed(Binder t, string key, string example)
    {
        if (!t.Has(key))
        {
            t.Fault(t.Place, key, "nothing", $"{key} of the object", $"measure it and add {key} = {example} to [{t.Path}]");
        }
    }

    private static void Foreign(Binder t, string shape, IEnumerable<string> keys)
    {
        foreach (string key in keys.Where(t.Has))
        {
            t.Fault(t.PlaceOf(key), key, $"{key} of an object whose shape is {shape}", $"no {key} there", "remove it or change the shape");
        }
    }

    /// <summary>Reports a name that is no finger.</summary>
    public static void KnownFinger(Binder t, Place place, string finger, IReadOnlyList<Finger> fingers)
    {
        if (fingers.Any(f => string.Equals(f.Name, finger, StringComparison.Ordinal)))
        {
            return;
        }

        IEnumerable<string> names = fingers.Select(f => f.Name);
        t.Fault(place, finger, $"{finger}, which is no finger", string.Join(", ", names), Nearest.To(finger, names) is { } near ? $"did you mean {near}?" : "use one of these");
    }
}
