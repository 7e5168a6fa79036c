namespace Graspwright.Hand;

/// <summary>Binds wrist, give, gimbal, links, crank and rail, and checks their geometry.</summary>
internal static class DriveBinding
{
    private const double SamePlace = 1e-6; // a micrometre: below anything a workshop can tell apart

    public static Wrist Wrist(Binder t)
    {
        double squeeze = t.Quantity("squeeze_share"), allDay = t.Quantity("all_day_share");
        if (squeeze < allDay)
        {
            t.Fault(t.PlaceOf("squeeze_share"), "squeeze_share", FormattableString.Invariant($"{100 * squeeze:0.##} %, below the all-day share of {100 * allDay:0.##} %"),
                "at least the all-day share", "swap the two or measure again");
        }

        Binder capacity = t.Part("capacity");
        return new()
        {
            Direction = t.Choice<DrivingDirection>("drive"),
            StartRadians = t.Quantity("start"),
            TravelRadians = t.Quantity("travel"),
            SqueezeShare = squeeze,
            AllDayShare = allDay,
            SpeedRadiansPerSecond = t.Quantity("speed"),
            FlexionCapacity = capacity.Moments("flexion"),
            ExtensionCapacity = capacity.Moments("extension"),
        };
    }

    public static Give Give(Binder t) => new()
    {
        CuffStiffness = t.Quantity("cuff"),
        ShellStiffness = t.Quantity("shell"),
        Hysteresis = t.Quantity("hysteresis"),
    };

    public static PullLink PullLink(Binder t) => new()
    {
        Kind = t.Choice<LinkKind>("kind"),
        Anchor = t.Point("anchor"),
        Stiffness = t.Quantity("stiffness"),
        Slack = Slack(t),
        AnchorPin = t.Pin("anchor_pin"),
        CrankPin = t.Pin("crank_pin"),
    };

    public static Crank Crank(Binder t)
    {
        Point fulcrum = t.Point("fulcrum"), input = Input(t), output = t.Point("output");
        if (Distance(fulcrum, default) < SamePlace)
        {
            t.Fault(t.PlaceOf("fulcrum"), "fulcrum", "the wrist axis", "a fulcrum away from the wrist axis", "measure the fulcrum from the wrist axis");
        }

        Apart(t, "input", input, default, "the fulcrum", "an input arm longer than 0");
        Apart(t, "output", output, default, "the fulcrum", "an output arm longer than 0");
        return new()
        {
            Fulcrum = fulcrum,
            Input = input,
            Output = output,
            StopRadians = t.Quantity("stop"),
            Drag = t.Quantity("drag"),
            FulcrumPin = t.Pin("fulcrum_pin"),
            OutputPin = t.Pin("output_pin"),
            Slot = t.OptionalPart("slot") is { } s ? new(s.Quantity("direction"), s.Quantity("length"), s.Quantity("preload"), s.Quantity("rate"), s.Quantity("turn")) : null,
        };
    }

    public static TransferLink TransferLink(Binder t) => new()
    {
        Kind = t.Choice<LinkKind>("kind"),
        Stiffness = t.Quantity("stiffness"),
        Slack = Slack(t),
        CarriagePin = t.Pin("carriage_pin"),
    };

    public static Rail Rail(Binder t) => new()
    {
        Rest = t.Point("rest"),
        DirectionRadians = t.Quantity("direction"),
        Travel = t.Quantity("travel"),
        Drag = t.Quantity("drag"),
        GuideLength = t.Optional("guide_length"),
        LoadOffset = t.Point("load_offset"),
    };

    /// <summary>Checks lengths and lines between parts at rest.</summary>
    public static void CheckTogether(Binder root, PullLink link, Crank crank, Rail rail)
    {
        Binder pull = root.Part("pull_link"), railPart = root.Part("rail");
        Point pin = Sum(crank.Fulcrum, crank.Input), output = Sum(crank.Fulcrum, crank.Output);
        if (Apart(pull, "anchor", link.Anchor, pin, "the crank's input pin", "a pull link longer than 0"))
        {
            AwayFrom(pull, link.Anchor, pin, default, "the wrist axis");
            AwayFrom(pull, link.Anchor, pin, crank.Fulcrum, "the fulcrum");
        }

        Apart(railPart, "rest", rail.Rest, output, "the crank's output pin", "a transfer link longer than 0");
    }

    public static double Slack(Binder t)
    {
        double slack = t.Quantity("slack");
        if (slack > 0 && t.Choice<LinkKind>("kind") == LinkKind.Rod)
        {
            t.Fault(t.PlaceOf("slack"), "slack", "slack above 0 in a rod", "slack above 0 in a cord only", "write kind = \"cord\", or slack = \"0 mm\"");
        }

        return slack;
    }

    private static Point Input(Binder t)
    {
        bool polar = t.Has("input_arm") || t.Has("input_angle");
        if (t.Has("input") == polar || t.Has("input_arm") != t.Has("input_angle"))
        {
            t.Fault(polar ? t.PlaceOf(t.Has("input_arm") ? "input_arm" : "input_angle") : t.Place, "input", polar ? "only a part, or both ways at once" : "nothing",
                "either input, or input_arm with input_angle", "measure the input pin from the fulcrum and add input = [\"3 mm\", \"18 mm\"] to [crank]");
            return new(double.NaN, double.NaN);
        }

        if (!polar)
        {
            return t.Point("input");
        }

        double arm = t.Quantity("input_arm"), angle = t.Quantity("input_angle");
        return new(arm * Math.Cos(angle), arm * Math.Sin(angle));
    }

    private static bool Apart(Binder t, string key, Point a, Point b, string what, string allowed)
    {
        if (Distance(a, b) < SamePlace)
        {
            t.Fault(t.PlaceOf(key), key, $"the same place as {what}", allowed, "measure both again");
            return false;
        }

        return true;
    }

    private static void AwayFrom(Binder t, Point from, Point to, Point point, string what)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y;
        double distance = Math.Abs(dx * (point.Y - from.Y) - dy * (point.X - from.X)) / Math.Sqrt(dx * dx + dy * dy);
        if (distance < SamePlace)
        {
            t.Fault(t.PlaceOf("anchor"), "anchor", $"a pull link whose line runs through {what} at rest", $"a line that passes {what} at a distance",
                "move the anchor or the input pin: on that line the link has no arm");
        }
    }

    private static double Distance(Point a, Point b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    private static Point Sum(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);
}
