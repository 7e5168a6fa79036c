using System.Globalization;
using System.Text.Json;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>A reference case of the drive: input read into SI, expected numbers left as JSON in their own units.</summary>
/// <remarks>A key that this reader does not know fails the case: nothing of a case is passed over in silence.</remarks>
internal sealed class DriveCase
{
    private const double Degree = Math.PI / 180;
    private const double Milli = 1e-3;

    private DriveCase(string name, JsonElement root)
    {
        Name = name;
        JsonElement input = root.GetProperty("input");
        Known(input, "hand", "object", "locks", "run");
        JsonElement hand = input.GetProperty("hand");
        Expected = root.GetProperty("expected");
        Drive = ReadDrive(hand);
        Held = ReadObject(input.GetProperty("object"), hand);
        JsonElement run = input.GetProperty("run");
        bool onward = RunsOn(run);
        Options = new RunOptions
        {
            EffortFraction = onward ? null : hand.GetProperty("wrist").GetProperty("sustained_fraction").GetDouble(),
            Opening = Flag(run, "opening"),
            OutputStepRadians = Degree,
            Locks = input.TryGetProperty("locks", out JsonElement locks) ? [.. locks.EnumerateArray().Select(ReadLock)] : [],
        };
    }

    public string Name { get; }

    public DriveModel Drive { get; }

    public HeldObject Held { get; }

    public RunOptions Options { get; }

    public JsonElement Expected { get; }

    public bool HasFriction => Drive.Friction != new FrictionCoefficients();

    public static DriveCase Read(string path)
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path));
        return new DriveCase(Path.GetFileNameWithoutExtension(path), document.RootElement.Clone());
    }

    private static void Known(JsonElement element, params string[] keys)
    {
        foreach (JsonProperty p in element.EnumerateObject())
        {
            if (!keys.Contains(p.Name, StringComparer.Ordinal))
            {
                throw new InvalidDataException($"The case has a key this reader does not know: {p.Name} = {p.Value.GetRawText()}");
            }
        }
    }

    /// <summary>Whether the run goes to the end of travel regardless of effort.</summary>
    private static bool RunsOn(JsonElement run)
    {
        bool onward = false;
        foreach (JsonProperty p in run.EnumerateObject())
        {
            bool isFlag = p.Value.ValueKind is JsonValueKind.True or JsonValueKind.False;
            if (p.Name is "step_deg" or "opening" or "energy_residual_per_step_mj")
            {
                continue;
            }

            if (!isFlag || !(p.Name.Contains("effort", StringComparison.Ordinal) || p.Name.Contains("theta_max", StringComparison.Ordinal)))
            {
                throw new InvalidDataException($"The case has a key this reader does not know: run.{p.Name} = {p.Value.GetRawText()}");
            }

            bool stops = p.Name.Contains("limit", StringComparison.Ordinal) || p.Name.StartsWith("stop", StringComparison.Ordinal);
            onward |= p.Value.GetBoolean() != stops;
        }

        return onward;
    }

    /// <summary>The value of the one key that holds all the words.</summary>
    private static JsonElement By(JsonElement e, params string[] words)
    {
        foreach (JsonProperty p in e.EnumerateObject())
        {
            if (words.All(w => p.Name.Contains(w, StringComparison.Ordinal)))
            {
                return p.Value;
            }
        }

        throw new InvalidDataException($"No key with {string.Join(" and ", words)} in {e.GetRawText()}");
    }

    private static bool Flag(JsonElement e, string key) => e.TryGetProperty(key, out JsonElement v) && v.GetBoolean();

    private static double Number(JsonElement e, string key, double missing = 0) => e.TryGetProperty(key, out JsonElement v) ? v.GetDouble() : missing;

    private static double[] Numbers(JsonElement e, string key) => [.. e.GetProperty(key).EnumerateArray().Select(v => v.GetDouble())];

    private static Vector2D Point(JsonElement e, string key)
    {
        double[] p = Numbers(e, key);
        return new(p[0] * Milli, p[1] * Milli);
    }

    private static Triple Three(JsonElement e, string key, double factor)
    {
        if (!e.TryGetProperty(key, out JsonElement v))
        {
            return default;
        }

        double[] t = [.. v.EnumerateArray().Select(x => x.GetDouble() * factor)];
        return new(t[0], t[1], t[2]);
    }

    private static LinkKind Kind(JsonElement e) => e.GetProperty("kind").GetString() switch
    {
        "rod" => LinkKind.Rod,
        "cord" => LinkKind.Cord,
        string other => throw new InvalidDataException($"Link kind {other}"),
        null => throw new InvalidDataException("Link kind missing"),
    };

    private static DriveModel ReadDrive(JsonElement hand)
    {
        Known(hand, "side", "wrist", "palm", "pull_link", "crank", "transfer_link", "carriage", "tree", "fingers", "friction");
        JsonElement wrist = hand.GetProperty("wrist"), capacity = wrist.GetProperty("capacity");
        Known(wrist, "travel_deg", "capacity", "sustained_fraction", "direction", "driving", "drive", "driven_by");
        string direction = wrist.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.String).Select(p => p.Value.GetString()!).FirstOrDefault("flexion");
        double sense = direction == "extension" ? -1 : 1;
        double[] angles = Numbers(capacity, "theta_deg"), moments = Numbers(capacity, "moment_nm");
        IEnumerable<(double Angle, double Moment)> entries = angles.Zip(moments, (a, m) => (sense * a * Degree, m)).OrderBy(p => p.Item1);
        List<Finger> fingers = [.. hand.GetProperty("fingers").EnumerateArray().Select(ReadFinger)];
        JsonElement pull = hand.GetProperty("pull_link"), transfer = hand.GetProperty("transfer_link"), rail = hand.GetProperty("carriage");
        Known(pull, "kind", "anchor_mm", "stiffness_n_per_mm", "slack_mm", "free_length_mm", "pin_radius_anchor_mm", "pin_radius_crank_mm");
        Known(transfer, "kind", "stiffness_n_per_mm", "slack_mm", "free_length_mm", "pin_radius_carriage_mm");
        BellCrank crank = ReadCrank(hand.GetProperty("crank"));
        Vector2D anchor = Point(pull, "anchor_mm"), rest = Point(rail, "rest_mm");
        double pullPins = (crank.Fulcrum + crank.Input - anchor).Length, transferPins = (rest - crank.Fulcrum - crank.Output).Length;
        Known(rail, "rest_mm", "direction_deg", "travel_mm");
        return new DriveModel
        {
            Wrist = new Wrist
            {
                Direction = sense < 0 ? DrivingDirection.Extension : DrivingDirection.Flexion,
                TravelRadians = wrist.GetProperty("travel_deg").GetDouble() * Degree,
                Capacity = new MomentTable([.. entries.Select(p => p.Angle)], [.. entries.Select(p => p.Moment)]),
            },
            PullLink = new PullLink
            {
                Kind = Kind(pull),
                Anchor = anchor,
                Stiffness = pull.GetProperty("stiffness_n_per_mm").GetDouble() / Milli,
                Slack = Number(pull, "slack_mm") * Milli + (pull.TryGetProperty("free_length_mm", out JsonElement free) ? free.GetDouble() * Milli - pullPins : 0),
                AnchorPinRadius = Number(pull, "pin_radius_anchor_mm") * Milli,
                CrankPinRadius = Number(pull, "pin_radius_crank_mm") * Milli,
            },
            Crank = crank,
            TransferLink = new TransferLink
            {
                Kind = Kind(transfer),
                Stiffness = transfer.GetProperty("stiffness_n_per_mm").GetDouble() / Milli,
                Slack = Number(transfer, "slack_mm") * Milli + (transfer.TryGetProperty("free_length_mm", out JsonElement freeTransfer) ? freeTransfer.GetDouble() * Milli - transferPins : 0),
                CarriagePinRadius = Number(transfer, "pin_radius_carriage_mm") * Milli,
            },
            Rail = new Rail
            {
                Rest = rest,
                DirectionRadians = rail.GetProperty("direction_deg").GetDouble() * Degree,
                Travel = rail.GetProperty("travel_mm").GetDouble() * Milli,
            },
            Tree = ReadTree(hand.GetProperty("tree"), fingers),
            Fingers = fingers,
            Friction = hand.TryGetProperty("friction", out JsonElement mu) ? ReadFriction(mu) : new FrictionCoefficients(),
        };
    }

    private static FrictionCoefficients ReadFriction(JsonElement mu)
    {
        Known(mu, "pin", "rail", "slot", "guide");
        return new FrictionCoefficients { Pin = Number(mu, "pin"), Rail = Number(mu, "rail"), Slot = Number(mu, "slot"), Guide = Number(mu, "guide") };
    }

    private static BellCrank ReadCrank(JsonElement crank)
    {
        Known(crank, "fulcrum_mm", "input_arm_mm", "input_angle_deg", "output_pin_mm", "stop_deg", "pin_radius_mm", "output_pin_radius_mm", "slot");
        Slot? slot = null;
        if (crank.TryGetProperty("slot", out JsonElement s))
        {
            Known(s, "direction_deg", "length_mm", "preload_n", "rate_n_per_mm");
            slot = new Slot
            {
                DirectionRadians = s.GetProperty("direction_deg").GetDouble() * Degree,
                Length = s.GetProperty("length_mm").GetDouble() * Milli,
                Preload = Number(s, "preload_n"),
                Rate = Number(s, "rate_n_per_mm") / Milli,
            };
        }

        return new BellCrank
        {
            Fulcrum = Point(crank, "fulcrum_mm"),
            Input = crank.GetProperty("input_arm_mm").GetDouble() * Milli * Vector2D.AtAngle(crank.GetProperty("input_angle_deg").GetDouble() * Degree),
            Output = Point(crank, "output_pin_mm"),
            StopRadians = crank.GetProperty("stop_deg").GetDouble() * Degree,
            FulcrumPinRadius = Number(crank, "pin_radius_mm") * Milli,
            OutputPinRadius = Number(crank, "output_pin_radius_mm") * Milli,
            Slot = slot,
        };
    }

    private static BalanceNode ReadTree(JsonElement node, List<Finger> fingers)
    {
        if (node.TryGetProperty("finger", out JsonElement finger))
        {
            Known(node, "finger");
            return new FingerLeaf(IndexOf(fingers, finger.GetString()!));
        }

        Known(node, "name", "arms_mm", "tilt_max_deg", "pin_radius_mm", "bar");
        double[] arms = Numbers(node, "arms_mm");
        Triple pins = Three(node, "pin_radius_mm", Milli);
        List<JsonElement> children = [.. node.GetProperty("bar").EnumerateArray()];
        return new BalanceBar
        {
            Name = node.GetProperty("name").GetString()!,
            FirstArm = arms[0] * Milli,
            SecondArm = arms[1] * Milli,
            TiltStopRadians = node.GetProperty("tilt_max_deg").GetDouble() * Degree,
            PivotPinRadius = pins.First,
            FirstPinRadius = pins.Second,
            SecondPinRadius = pins.Third,
            First = ReadTree(children[0], fingers),
            Second = ReadTree(children[1], fingers),
        };
    }

    private static int IndexOf(List<Finger> fingers, string name) => fingers.FindIndex(f => f.Name == name);

    private static Finger ReadFinger(JsonElement f)
    {
        Known(f, "name", "mcp_mm", "z_mm", "splay_deg", "segments_mm", "half_thickness_mm", "open_deg", "range_deg", "pad_n_per_mm",
            "pin_radius_mm", "pull", "joints", "drive", "spring_nmm_per_rad", "spring_preload_nmm", "dip_fused", "fused_dip");
        JsonElement pull = f.GetProperty("pull"), drive = f.GetProperty("drive"), range = f.GetProperty("range_deg");
        Known(pull, "kind", "stiffness_n_per_mm", "slack_mm", "guide_wrap_deg");
        Known(drive, "kind", "arm_mm", "radius_mm", "angle_deg", "line_deg");
        double[] high = [.. range.EnumerateArray().Select(r => r[1].GetDouble() * Degree)];
        bool pin = drive.GetProperty("kind").GetString() == "pin";
        Triple arms = default;
        if (drive.TryGetProperty("arm_mm", out JsonElement arm))
        {
            arms = arm.ValueKind == JsonValueKind.Array ? Three(drive, "arm_mm", Milli) : new Triple(arm.GetDouble() * Milli, 0, 0);
        }

        return new Finger
        {
            Name = f.GetProperty("name").GetString()!,
            Mcp = Point(f, "mcp_mm"),
            Across = Number(f, "z_mm") * Milli,
            SplayRadians = Number(f, "splay_deg") * Degree,
            Segments = Three(f, "segments_mm", Milli),
            HalfThickness = Three(f, "half_thickness_mm", Milli),
            OpenRadians = Three(f, "open_deg", Degree),
            RangeRadians = new Triple(high[0], high[1], Fused(f) ? 0 : high[2]),
            PadStiffness = f.GetProperty("pad_n_per_mm").GetDouble() / Milli,
            PinRadius = Three(f, "pin_radius_mm", Milli),
            SpringRate = Three(f, "spring_nmm_per_rad", Milli),
            SpringPreload = Three(f, "spring_preload_nmm", Milli),
            Joints = ReadJoints(f.GetProperty("joints")),
            Arms = arms,
            DrivePin = pin ? new DrivePin(drive.GetProperty("radius_mm").GetDouble() * Milli, drive.GetProperty("angle_deg").GetDouble() * Degree, drive.GetProperty("line_deg").GetDouble() * Degree) : null,
            Pull = new FingerPull
            {
                Kind = Kind(pull),
                Stiffness = pull.GetProperty("stiffness_n_per_mm").GetDouble() / Milli,
                Slack = Number(pull, "slack_mm") * Milli,
                GuideWrapRadians = Number(pull, "guide_wrap_deg") * Degree,
            },
        };
    }

    private static bool Fused(JsonElement f) =>
        Flag(f, "dip_fused") || Flag(f, "fused_dip") || Flag(f.GetProperty("joints"), "dip_fused") || Flag(f.GetProperty("joints"), "fused_dip");

    private static FingerJoints ReadJoints(JsonElement joints)
    {
        Known(joints, "kind", "pip_from_mcp", "dip_from_pip", "dip_fused", "fused_dip");
        return joints.GetProperty("kind").GetString() == "adaptive"
            ? new AdaptiveJoints()
            : new CoupledJoints(ReadCoupling(joints.GetProperty("pip_from_mcp")), joints.TryGetProperty("dip_from_pip", out JsonElement dip) && dip.ValueKind == JsonValueKind.Object ? ReadCoupling(dip) : new RatioCoupling(0));
    }

    private static Coupling ReadCoupling(JsonElement c)
    {
        Known(c, "ratio", "four_bar", "fourbar", "kind");
        if (c.TryGetProperty("ratio", out JsonElement ratio))
        {
            return new RatioCoupling(ratio.GetDouble());
        }

        // An arm on the body before and one on the body after the segment, each with radius and angle.
        JsonElement bar = c.TryGetProperty("four_bar", out JsonElement inner) || c.TryGetProperty("fourbar", out inner) ? inner : c;
        return new FourBarCoupling(
            By(bar, "before", "_mm").GetDouble() * Milli, By(bar, "before", "_deg").GetDouble() * Degree,
            By(bar, "after", "_mm").GetDouble() * Milli, By(bar, "after", "_deg").GetDouble() * Degree);
    }

    private FingerLock ReadLock(JsonElement l)
    {
        Known(l, "finger", "kind", "theta_deg", "at_deg", "at_theta_deg", "closing_deg");
        double at = (Number(l, "theta_deg") + Number(l, "at_deg") + Number(l, "at_theta_deg") + Number(l, "closing_deg")) * Degree;
        string kind = l.GetProperty("kind").GetString()!;
        if (kind is not ("holds pull" or "lets go"))
        {
            throw new InvalidDataException($"Lock kind {kind}");
        }

        return new FingerLock(IndexOf([.. Drive.Fingers], l.GetProperty("finger").GetString()!), at, kind == "holds pull");
    }

    private static HeldObject ReadObject(JsonElement o, JsonElement hand)
    {
        Known(o, "kind", "diameter_mm", "palm_station_mm", "centre_mm", "center_mm", "point_mm", "normal_deg", "normal");
        string kind = o.GetProperty("kind").GetString()!;
        switch (kind)
        {
            case "none":
                return HeldObject.None;
            case "cylinder":
                double radius = o.GetProperty("diameter_mm").GetDouble() * 0.5 * Milli;
                if (o.TryGetProperty("palm_station_mm", out JsonElement station))
                {
                    JsonElement palm = hand.GetProperty("palm");
                    return Cylinder.OnPalm(Point(palm, "point_mm"), palm.GetProperty("direction_deg").GetDouble() * Degree, station.GetDouble() * Milli, radius);
                }

                return new Cylinder(Point(o, o.TryGetProperty("centre_mm", out _) ? "centre_mm" : "center_mm"), radius);
            case "face" or "flat" or "flat face" or "flat_face" or "plate":
                double normal = o.TryGetProperty("normal", out JsonElement n)
                    ? Math.Atan2(n[1].GetDouble(), n[0].GetDouble())
                    : o.GetProperty("normal_deg").GetDouble() * Degree;
                return new Face(Point(o, "point_mm"), normal);
            default:
                throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"Object kind {kind}"));
        }
    }
}
