namespace Graspwright.Hand;

/// <summary>Binds the sections about strength and life, and checks what hangs together in them.</summary>
internal static class StructureBinding
{
    private const double ShareAtThousand = 0.9; // share of the strength through which a line without slope runs at 1000 cycles
    private const double SumTolerance = 1e-6; // shares that were rounded in writing

    public static HandStructure Bind(Binder root, IReadOnlyList<Finger> fingers, IReadOnlyList<HandObject> objects, BindingRun run)
    {
        IReadOnlyList<Material> own = [.. root.Part("materials").NamedParts().Select(p => Material(p.Name, p.Part)).OfType<Material>()];
        MaterialNames names = new(own);
        IReadOnlyList<Hinges> hinges = Hinges(root.Part("hinges"), fingers, names);
        Binder shell = root.Part("shell"), repair = root.Part("repair");
        HandStructure bound = new()
        {
            Materials = own,
            Hinges = hinges,
            Parts = [.. root.Part("parts").NamedParts().Select(p => PartBinding.Part(p.Name, p.Part, names))],
            Springs = [.. root.Part("springs").NamedParts().Select(p => PartBinding.Spring(p.Name, p.Part))],
            Shell = new()
            {
                BearingLength = shell.Quantity("bearing_length"),
                BearingHeight = shell.Quantity("bearing_height"),
                SideStiffness = shell.Quantity("side_stiffness"),
                BreakingMoment = shell.Optional("breaking_moment"),
                SkinLimit = shell.Quantity("skin_limit"),
            },
            Repair = new()
            {
                Pin = repair.Quantity("pin"),
                Finger = repair.Quantity("finger"),
                Base = repair.Quantity("base"),
                Shell = repair.Quantity("shell"),
                Quick = repair.Quantity("quick"),
            },
            Use = UseBinding.Use(root.Part("use"), root.Part("jobs"), fingers, objects),
        };
        return bound with { Guesses = Together(run.Guesses, fingers.Count) };
    }

    private static Material? Material(string name, Binder t)
    {
        string like = t.Has("like") ? t.Word("like") : name;
        if (MaterialTable.Find(like) is not { } grade)
        {
            IEnumerable<string> grades = MaterialTable.All.Select(m => m.Name);
            t.Fault(t.PlaceOf("like"), "like", t.Has("like") ? $"{like}, which is no grade of the table" : "nothing", string.Join(", ", grades),
                Nearest.To(like, grades) is { } near ? $"did you mean {near}?" : "add like = \"petg-along\" or the grade that comes nearest");
            return null;
        }

        Material made = grade with
        {
            Name = name,
            Words = t.Has("words") ? t.Word("words") : grade.Words,
            Like = like,
            Density = t.Optional("density") ?? grade.Density,
            Modulus = t.Optional("modulus") ?? grade.Modulus,
            Poisson = t.Optional("poisson") ?? grade.Poisson,
            Yield = t.Optional("yield") ?? grade.Yield,
            Strength = t.Optional("strength") ?? grade.Strength,
            ShearShare = t.Optional("shear_share") ?? grade.ShearShare,
            FatigueStrength = t.Optional("fatigue_strength") ?? grade.FatigueStrength,
            FatigueCycles = t.Optional("fatigue_cycles") ?? grade.FatigueCycles,
            FatigueSlope = t.Optional("fatigue_slope") ?? grade.FatigueSlope,
            NotchSensitivity = t.Optional("notch_sensitivity") ?? grade.NotchSensitivity,
            Surface = t.Optional("surface") ?? grade.Surface,
            Brittle = t.Has("breaks") ? t.Word("breaks") == "at once" : grade.Brittle,
            OutdoorLoss = t.Optional("outdoor_loss") ?? grade.OutdoorLoss,
            StrengthSpread = t.Optional("strength_spread") ?? grade.StrengthSpread,
            LifeSpread = t.Optional("life_spread") ?? grade.LifeSpread,
            BearingLimit = t.Optional("bearing_limit") ?? grade.BearingLimit,
            Friction = t.Optional("friction") ?? grade.Friction,
            Wear = t.Optional("wear") ?? grade.Wear,
        };
        if (made.FatigueSlope == 0 && made.FatigueStrength * made.Surface >= ShareAtThousand * made.Strength)
        {
            t.Fault(t.PlaceOf(t.Has("fatigue_strength") ? "fatigue_strength" : "strength"), "fatigue_strength", "a fatigue strength as great as what it stands for 1000 cycles",
                "below 0.9 of the strength, or a fatigue_slope", "check both figures: fatigue strength is an amplitude, not a range");
        }

        return made;
    }

    private static List<Hinges> Hinges(Binder t, IReadOnlyList<Finger> fingers, MaterialNames names)
    {
        TableNode? shared = t.Node(FingerBinding.Shared) as TableNode;
        Dictionary<string, Binder> said = new(StringComparer.Ordinal);
        foreach ((string name, Binder part) in t.NamedParts(shared).Where(p => p.Name != FingerBinding.Shared))
        {
            HeldThingsBinding.KnownFinger(t, part.Place, name, fingers);
            said[name] = part;
        }

        return [.. fingers.Select(f => Hinge(f, said.GetValueOrDefault(f.Name) ?? t.Unsaid(f.Name, shared), names))];
    }

    private static Hinges Hinge(Finger finger, Binder t, MaterialNames names)
    {
        Triple radius = finger.PinRadius;
        double Pin(double r, double otherwise) => r > 0 ? 2 * r : otherwise;
        Hinges hinge = new()
        {
            Finger = finger.Name,
            BaseMaterial = names.Check(t, "base_material"),
            FingerMaterial = names.Check(t, "finger_material"),
            PinMaterial = names.Check(t, "pin_material"),
            BushingMaterial = names.Check(t, "bushing_material", mayBeNone: true),
            BushingWall = t.Triple("bushing_wall"),
            EarThickness = t.Triple("ear_thickness"),
            EarHeight = t.Triple("ear_height"),
            EarLength = t.Triple("ear_length"),
            Edge = t.Triple("edge"),
            RootRadius = t.Triple("root_radius"),
            Tongue = t.Triple("tongue"),
            Gap = t.Triple("gap"),
            PinDiameter = t.Triple("pin_diameter", FingerBinding.List(new(Pin(radius.First, 0.003), Pin(radius.Second, 0.0025), Pin(radius.Third, 0.0025)), Dimension.Length)),
            Width = t.Triple("width"),
            Height = t.Triple("height"),
            Wall = t.Triple("wall"),
        };
        Fits(t, hinge, "MCP", h => h.First);
        Fits(t, hinge, "PIP", h => h.Second);
        Fits(t, hinge, "DIP", h => h.Third);
        return hinge;
    }

    /// <summary>Checks that hole and bushing leave material.</summary>
    private static void Fits(Binder t, Hinges hinge, string joint, Func<Triple, double> at)
    {
        double hole = at(hinge.PinDiameter) + 2 * at(hinge.BushingWall), least = Math.Min(at(hinge.EarHeight), Math.Min(2 * at(hinge.Edge), 2 * at(hinge.EarLength)));
        if (hole >= least)
        {
            t.Fault(t.PlaceOf(t.Has("pin_diameter") ? "pin_diameter" : "ear_height"), "pin_diameter", FormattableString.Invariant($"a hole of {1000 * hole:0.###} mm at the {joint} in an ear that leaves {1000 * least:0.###} mm round the pin"),
                "a hole smaller than ear_height, than twice edge and than twice ear_length", "measure these again: the bushing counts into the hole");
        }
    }

    private static List<Guess> Together(IReadOnlyList<Guess> guesses, int fingerCount)
    {
        List<Guess> found = [];
        foreach (IGrouping<Guess, Guess> group in guesses.GroupBy(g => g with { Path = SharedPath(g.Path) }))
        {
            found.AddRange(group.Key.Path.Length > 0 && fingerCount > 1 && group.Count() == fingerCount ? [group.Key] : group);
        }

        return found;
    }

    private static string SharedPath(string path) => HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) && steps is [{ Key: "hinges" }, _, _, ..]
        ? steps.Skip(2).Aggregate($"hinges.{FingerBinding.Shared}", (p, s) => HandPath.Join(p, s.Key))
        : "";

    /// <summary>Whether shares sum to one.</summary>
    public static bool SumToOne(double sum) => Math.Abs(sum - 1) <= SumTolerance;
}

/// <summary>The materials a file may name.</summary>
internal sealed class MaterialNames(IReadOnlyList<Material> own)
{
    private readonly string[] _names = [.. MaterialTable.All.Concat(own).Select(m => m.Name).Distinct(StringComparer.Ordinal)];

    public string Check(Binder t, string key, bool mayBeNone = false)
    {
        string name = t.Word(key);
        if (!(mayBeNone && name == Hand.Hinges.NoBushing) && !_names.Contains(name, StringComparer.Ordinal) && (t.Has(key) || name.Length > 0))
        {
            t.Fault(t.PlaceOf(key), key, $"{name}, which is no material", string.Join(", ", _names),
                Nearest.To(name, _names) is { } near ? $"did you mean {near}?" : $"use one of these, or add a section [materials.{name}]");
        }

        return name;
    }
}
