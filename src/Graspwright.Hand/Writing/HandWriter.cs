using System.Text;

namespace Graspwright.Hand;

/// <summary>Writes a hand as TOML. Reading the text again gives the same hand, to the bit.</summary>
public static class HandWriter
{
    /// <summary>Writes the whole hand.</summary>
    /// <param name="hand">The hand, valid.</param>
    public static string Write(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Dictionary<string, Guess> guesses = new(StringComparer.Ordinal);
        foreach (Guess guess in hand.Guesses.Concat(hand.Structure.Guesses).Concat(hand.Drawer.Guesses).Concat(hand.Decisions.Guesses))
        {
            guesses[guess.Path] = guess;
        }

        OutTable root = new("", HandKeys.Root, guesses);
        root.Word("name", hand.Name);
        root.Word("description", hand.Description);
        if (hand.Balance is FingerLeaf only && root.Guessed("balance") is null)
        {
            root.Word("balance", only.Finger);
        }

        Wearer(root, hand);
        Drive(root, hand);
        if (hand.Balance is BalanceBar bar && (root.Guessed("balance") is null || bar != BalanceBinding.Pairs(hand.Fingers, "root")))
        {
            Bar(root.Part("balance"), bar);
        }

        OutTable fingers = root.Part("fingers");
        foreach (Finger finger in hand.Fingers)
        {
            Finger(fingers.Part(finger.Name, always: true), finger);
        }

        OutTable friction = root.Part("friction");
        friction.Quantity("pin", hand.Friction.Pin);
        friction.Quantity("rail", hand.Friction.Rail);
        friction.Quantity("slot", hand.Friction.Slot);
        friction.Quantity("guide", hand.Friction.Guide);
        HeldThings(root, hand);
        DayWriting.Write(root, hand);
        MouldWriter.Write(root, hand);

        StringBuilder text = new();
        root.WriteTo(text);
        return text.ToString();
    }

    /// <summary>Writes one section with those below it, for <see cref="HandEditor.ReplacePart"/>; nothing is left out as a guess.</summary>
    /// <param name="hand">The hand, valid.</param>
    /// <param name="path">Path of the section, such as <c>crank</c>.</param>
    /// <returns>The text; empty if the hand has no such section.</returns>
    public static string WritePart(HandModel hand, string path)
    {
        ArgumentNullException.ThrowIfNull(hand);
        string text = Write(hand with { Guesses = [], Structure = hand.Structure with { Guesses = [] }, Drawer = hand.Drawer with { Guesses = [] }, Decisions = hand.Decisions with { Guesses = [] } });
        (HandSource? source, _) = HandSource.Parse(new("", text, HasByteOrderMark: false));
        return source is not null && HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps)
            ? string.Concat(HandEditor.Sections(source, steps).Select(p => text.Substring(p.Offset, p.Length)))
            : "";
    }

    private static void Wearer(OutTable root, HandModel hand)
    {
        OutTable wearer = root.Part("wearer");
        wearer.Word("side", Choice(hand.Side));
        wearer.Quantity("hand_breadth", hand.HandBreadth);
        OutTable wrist = root.Part("wrist");
        wrist.Word("drive", Choice(hand.Wrist.Direction));
        wrist.Quantity("start", hand.Wrist.StartRadians);
        wrist.Quantity("travel", hand.Wrist.TravelRadians);
        wrist.Quantity("squeeze_share", hand.Wrist.SqueezeShare);
        wrist.Quantity("all_day_share", hand.Wrist.AllDayShare);
        wrist.Quantity("speed", hand.Wrist.SpeedRadiansPerSecond);
        OutTable capacity = wrist.Part("capacity");
        capacity.Moments("flexion", hand.Wrist.FlexionCapacity);
        capacity.Moments("extension", hand.Wrist.ExtensionCapacity);
        OutTable give = root.Part("give");
        give.Quantity("cuff", hand.Give.CuffStiffness);
        give.Quantity("shell", hand.Give.ShellStiffness);
        give.Quantity("hysteresis", hand.Give.Hysteresis);
        if (hand.Gimbal is { } gimbal)
        {
            OutTable part = root.Part("gimbal", always: true);
            part.Pin("pin", gimbal.Pin);
            part.Point("offset", gimbal.Offset);
        }

        OutTable palm = root.Part("palm");
        palm.Point("point", hand.Palm.Point);
        palm.Quantity("direction", hand.Palm.DirectionRadians);
    }

    private static void Drive(OutTable root, HandModel hand)
    {
        OutTable pull = root.Part("pull_link");
        pull.Word("kind", Choice(hand.PullLink.Kind));
        pull.Point("anchor", hand.PullLink.Anchor);
        pull.Quantity("stiffness", hand.PullLink.Stiffness);
        pull.Quantity("slack", hand.PullLink.Slack);
        pull.Pin("anchor_pin", hand.PullLink.AnchorPin);
        pull.Pin("crank_pin", hand.PullLink.CrankPin);
        OutTable crank = root.Part("crank");
        crank.Point("fulcrum", hand.Crank.Fulcrum);
        crank.Point("input", hand.Crank.Input);
        crank.Point("output", hand.Crank.Output);
        crank.Quantity("stop", hand.Crank.StopRadians);
        crank.Quantity("drag", hand.Crank.Drag);
        crank.Pin("fulcrum_pin", hand.Crank.FulcrumPin);
        crank.Pin("output_pin", hand.Crank.OutputPin);
        if (hand.Crank.Slot is { } slot)
        {
            OutTable part = crank.Part("slot");
            part.Quantity("direction", slot.DirectionRadians);
            part.Quantity("length", slot.Length);
            part.Quantity("preload", slot.Preload);
            part.Quantity("rate", slot.Rate);
            part.Quantity("turn", slot.TurnRadians);
        }

        OutTable transfer = root.Part("transfer_link");
        transfer.Word("kind", Choice(hand.TransferLink.Kind));
        transfer.Quantity("stiffness", hand.TransferLink.Stiffness);
        transfer.Quantity("slack", hand.TransferLink.Slack);
        transfer.Pin("carriage_pin", hand.TransferLink.CarriagePin);
        OutTable rail = root.Part("rail");
        rail.Point("rest", hand.Rail.Rest);
        rail.Quantity("direction", hand.Rail.DirectionRadians);
        rail.Quantity("travel", hand.Rail.Travel);
        rail.Quantity("drag", hand.Rail.Drag);
        rail.Optional("guide_length", hand.Rail.GuideLength);
        rail.Point("load_offset", hand.Rail.LoadOffset);
    }

    private static void Bar(OutTable t, BalanceBar bar)
    {
        t.Word("name", bar.Name);
        t.Quantity("first_arm", bar.FirstArm);
        t.Quantity("second_arm", bar.SecondArm);
        t.Quantity("tilt_stop", bar.TiltStopRadians);
        t.Pin("pivot_pin", bar.PivotPin);
        t.Quantity("first_pin_radius", bar.FirstPinRadius);
        t.Quantity("second_pin_radius", bar.SecondPinRadius);
        End(t, "first", bar.First);
        End(t, "second", bar.Second);
    }

    private static void End(OutTable t, string key, BalanceNode node)
    {
        if (node is BalanceBar bar)
        {
            Bar(t.Part(key), bar);
        }
        else
        {
            t.Word(key, ((FingerLeaf)node).Finger);
        }
    }

    private static void Finger(OutTable t, Finger f)
    {
        t.Point("knuckle", f.Knuckle);
        t.Quantity("across", f.Across);
        t.Quantity("splay", f.SplayRadians);
        if (t.Guessed("segments") is not null)
        {
            t.Optional("length", f.MeasuredLength);
        }

        t.Triple("segments", f.Segments);
        t.Triple("half_thickness", f.HalfThickness);
        t.Triple("open", f.OpenRadians);
        t.Triple("range", f.RangeRadians);
        t.Quantity("pad_stiffness", f.PadStiffness);
        t.Word("joints", f.Joints is AdaptiveJoints ? "adaptive" : "coupled");
        if (f.Joints is CoupledJoints coupled)
        {
            Coupling(t, "pip_ratio", "pip_four_bar", coupled.PipFromMcp);
            Coupling(t, "dip_ratio", "dip_four_bar", coupled.DipFromPip);
        }

        t.Triple("arms", f.Arms);
        if (f.DrivePin is { } pin)
        {
            OutTable part = t.InlinePart("drive_pin");
            part.Quantity("radius", pin.Radius);
            part.Quantity("angle", pin.RestRadians);
            part.Quantity("line", pin.LineRadians);
            t.Close("drive_pin", part);
        }

        t.Triple("spring_rate", f.SpringRate);
        t.Triple("spring_preload", f.SpringPreload);
        t.Triple("drag", f.Drag);
        t.Triple("pin_radius", f.PinRadius);
        t.Triple("play", f.Play);
        t.Triple("worn_play", f.WornPlay);
        OutTable pull = t.Part("pull");
        pull.Word("kind", Choice(f.Pull.Kind));
        pull.Quantity("stiffness", f.Pull.Stiffness);
        pull.Quantity("slack", f.Pull.Slack);
        pull.Quantity("guide_wrap", f.Pull.GuideWrapRadians);
    }

    private static void Coupling(OutTable t, string ratioKey, string barKey, Coupling coupling)
    {
        if (coupling is RatioCoupling ratio)
        {
            t.Quantity(ratioKey, ratio.Ratio);
            return;
        }

        FourBarCoupling bar = (FourBarCoupling)coupling;
        OutTable part = t.InlinePart(barKey);
        part.Quantity("before_arm", bar.BeforeRadius);
        part.Quantity("before_angle", bar.BeforeRadians);
        part.Quantity("after_arm", bar.AfterRadius);
        part.Quantity("after_angle", bar.AfterRadians);
        t.Close(barKey, part);
    }

    private static void HeldThings(OutTable root, HandModel hand)
    {
        OutTable locks = root.Part("locks");
        foreach (LockPattern pattern in hand.Locks)
        {
            OutTable part = locks.Part(pattern.Name, always: true);
            foreach (FingerLock held in pattern.Locks)
            {
                OutTable one = part.InlinePart(held.Finger);
                one.Quantity("at", held.AtRadians);
                one.Word("pull", held.HoldsPull ? "holds pull" : "lets go");
                one.Optional("may_carry", held.MayCarry);
                SignalsWriting.OfLock(one, held);
                part.Close(held.Finger, one);
            }
        }

        OutTable objects = root.Part("objects");
        foreach (HandObject thing in hand.Objects)
        {
            Object(objects.Part(thing.Name, always: true), thing);
        }

        StructureWriter.Write(root, hand);
        DrawerWriter.Write(root, hand.Drawer);
        DecisionWriter.Write(root, hand.Decisions);
        SignalsWriting.Write(root, hand.Signals);
        OutTable tolerances = root.Part("tolerances");
        foreach (Tolerance tolerance in hand.Tolerances)
        {
            bool known = HandPath.TryDescribe(tolerance.Path, out HandKey? key, out _);
            tolerances.Bare(tolerance.Path, Toml.Quantity(tolerance.PlusMinus, known ? key!.Dimension : throw new ArgumentException($"{tolerance.Path} is no path of a value.", nameof(hand))));
        }

        OutTable files = root.Part("files");
        foreach (NamedFile file in hand.Files)
        {
            files.Word(file.Key, file.RelativePath);
        }
    }

    private static void Object(OutTable t, HandObject thing)
    {
        switch (thing)
        {
            case CylinderObject cylinder:
                t.Word("shape", "cylinder");
                t.Quantity("diameter", cylinder.Diameter);
                if (cylinder.Place is OnPalm palm)
                {
                    t.Quantity("station", palm.Station);
                }
                else
                {
                    t.Point("centre", ((AtCentre)cylinder.Place).Centre);
                }

                break;
            case PlateObject plate:
                t.Word("shape", "plate");
                t.Point("point", plate.Point);
                t.Quantity("normal", plate.NormalRadians);
                t.Quantity("thickness", plate.Thickness);
                break;
            default:
                t.Word("shape", "nothing");
                break;
        }
    }

    private static string Choice<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
