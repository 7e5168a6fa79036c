namespace Graspwright.Hand;

/// <summary>Binds the fingers.</summary>
internal static class FingerBinding
{
    /// <summary>Name of the table whose values hold for all fingers.</summary>
    public const string Shared = "all";

    private const double FingersAcrossTheHand = 4;

    public static IReadOnlyList<Finger> Bind(Binder fingers, double handBreadth, double railRadians)
    {
        TableNode? shared = fingers.Node(Shared) as TableNode;
        List<NamedPart> parts = [.. fingers.NamedParts(shared).Where(p => p.Name != Shared)];
        if (parts.Count == 0)
        {
            fingers.Fault(fingers.Place, "NAME", "no finger", "at least one finger", "add a section such as [fingers.index]");
            return [];
        }

        double pitch = handBreadth / FingersAcrossTheHand;
        List<Finger> bound = [.. parts.Select((p, i) => One(p.Name, p.Part, ((parts.Count - 1) / 2.0 - i) * pitch, railRadians))];
        if (!parts.TrueForAll(p => p.Part.Has("across")))
        {
            return bound;
        }

        List<Finger> sorted = [];
        foreach (Finger finger in bound)
        {
            int behind = sorted.FindIndex(f => f.Across < finger.Across);
            sorted.Insert(behind < 0 ? sorted.Count : behind, finger);
        }

        return sorted;
    }

    private static Finger One(string name, Binder t, double across, double railRadians)
    {
        bool coupled = t.Word("joints") != "adaptive";
        Triple play = t.Triple("play");
        DrivePin? drivePin = t.OptionalPart("drive_pin") is { } d
            ? new(d.Quantity("radius"), d.Quantity("angle"), d.Quantity("line", Toml.Quantity(railRadians, Dimension.Angle)))
            : null;
        return new()
        {
            Name = name,
            Knuckle = t.Point("knuckle"),
            Across = t.Quantity("across", Toml.Quantity(across, Dimension.Length)),
            SplayRadians = t.Quantity("splay"),
            MeasuredLength = t.OneOf("length", "segments") == "length" ? t.Optional("length") : null,
            Segments = Segments(name, t),
            HalfThickness = t.Triple("half_thickness"),
            OpenRadians = t.Triple("open"),
            RangeRadians = t.Triple("range"),
            PadStiffness = t.Quantity("pad_stiffness"),
            Joints = coupled ? new CoupledJoints(Coupling(t, "pip_four_bar", "pip_ratio"), Coupling(t, "dip_four_bar", "dip_ratio")) : new AdaptiveJoints(),
            DrivePin = drivePin,
            Arms = Arms(t, coupled, drivePin is not null),
            SpringRate = t.Triple("spring_rate"),
            SpringPreload = t.Triple("spring_preload"),
            Drag = t.Triple("drag"),
            PinRadius = t.Triple("pin_radius"),
            Play = play,
            WornPlay = t.Triple("worn_play", List(play, Dimension.Length)),
            Pull = Pull(t.Part("pull")),
        };
    }

    private static Triple Segments(string name, Binder t)
    {
        string? said = t.OneOf("length", "segments");
        if (said == "segments")
        {
            return t.Triple("segments");
        }

        Triple bones = Bones(name);
        double total = bones.First + bones.Second + bones.Third;
        double scale = said == "length" ? t.Quantity("length") / total : 1;
        return t.Default("segments", List(new(Rounded(bones.First * scale), Rounded(bones.Second * scale), Rounded(bones.Third * scale)), Dimension.Length));
    }

    /// <summary>Mean bone lengths, the tip pad counted to the distal one [m].</summary>
    /// <source key="buryanov-2010">Mean lengths and tip pads.</source>
    private static Triple Bones(string name) => name switch
    {
        "index" => new(0.0398, 0.0224, 0.0196),
        "ring" => new(0.0414, 0.0257, 0.0213),
        "little" => new(0.0327, 0.0181, 0.0197),
        _ => new(0.0446, 0.0263, 0.0214),
    };

    private static Coupling Coupling(Binder t, string fourBar, string ratio) => t.OptionalPart(fourBar) is { } bar
        ? new FourBarCoupling(bar.Quantity("before_arm"), bar.Quantity("before_angle"), bar.Quantity("after_arm"), bar.Quantity("after_angle"))
        : new RatioCoupling(t.Quantity(ratio));

    private static Triple Arms(Binder t, bool coupled, bool hasDrivePin)
    {
        string? said = t.OneOf("arm", "arms");
        if (said == "arms")
        {
            return t.Triple("arms");
        }

        if (!coupled)
        {
            t.Fault(t.Place, "arms", "nothing", "take-up arms at MCP, PIP, DIP of an adaptive finger", $"measure them and add arms = [\"8 mm\", \"5 mm\", \"3 mm\"] to [{t.Path}]");
            return default;
        }

        return said == "arm" ? new(t.Quantity("arm"), 0, 0) : hasDrivePin ? default : t.Triple("arms");
    }

    private static FingerPull Pull(Binder t) => new()
    {
        Kind = t.Choice<LinkKind>("kind"),
        Stiffness = t.Quantity("stiffness"),
        Slack = DriveBinding.Slack(t),
        GuideWrapRadians = t.Quantity("guide_wrap"),
    };

    /// <summary>A guess to a hundredth of a millimetre: more digits would only pretend. A value that is not known stays so.</summary>
    private static double Rounded(double metres) => Math.Round(metres, 5);

    /// <summary>Three values as TOML.</summary>
    public static string List(Triple t, Dimension dimension) =>
        Toml.List([Toml.Quantity(t.First, dimension), Toml.Quantity(t.Second, dimension), Toml.Quantity(t.Third, dimension)]);
}
