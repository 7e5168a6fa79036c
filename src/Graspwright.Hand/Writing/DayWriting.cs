namespace Graspwright.Hand;

/// <summary>Writes the day's jobs, pads, thumb, closing lock and room.</summary>
internal static class DayWriting
{
    public static void Write(OutTable root, HandModel hand)
    {
        if (hand.WristRange is { } range)
        {
            OutTable part = root.Part("wrist_range", always: true);
            part.Quantity("flexion", range.FlexionRadians);
            part.Quantity("extension", range.ExtensionRadians);
        }

        if (hand.Pads is { } pads)
        {
            Pads(root.Part("pads", always: true), pads);
        }

        if (hand.Thumb is { } thumb)
        {
            Thumb(root.Part("thumb", always: true), thumb);
        }

        if (hand.Body is { } body)
        {
            Body(root.Part("body", always: true), body);
        }

        if (hand.ClosingLock is { } held)
        {
            OutTable part = root.Part("closing_lock", always: true);
            part.Quantity("pitch", held.Pitch);
            part.Quantity("backlash", held.Backlash);
            part.Quantity("stiffness", held.Stiffness);
            part.Optional("may_carry", held.MayCarry);
        }

        if (hand.Room is { } room)
        {
            Room(root.Part("room", always: true), room);
        }

        OutTable jobs = root.Part("jobs");
        foreach (Job job in hand.Jobs)
        {
            Job(jobs.Part(job.Name, always: true), job);
        }
    }

    private static void Body(OutTable t, HandBody body)
    {
        t.Quantity("mass", body.Mass);
        t.Quantity("hand_share", body.HandShare);
        t.Quantity("hand_left", body.HandLeft);
        t.Point("hand_centre", body.HandCentre);
        t.Quantity("device", body.Device);
        t.Point("device_centre", body.DeviceCentre);
    }

    private static void Pads(OutTable t, Pads pads)
    {
        if (t.Guessed("material") is not { } guess || guess.ValueText != pads.Material)
        {
            t.Word("material", pads.Material);
        }

        t.Quantity("friction", pads.Friction);
        t.Quantity("wet_factor", pads.WetFactor);
        t.Quantity("spread", pads.Spread);
        t.Quantity("skin_friction", pads.SkinFriction);
        t.Quantity("patch", pads.Patch);
    }

    private static void Thumb(OutTable t, Thumb thumb)
    {
        t.Quantity("pinch", thumb.Pinch);
        t.Quantity("across", thumb.Across);
        t.Quantity("heel", thumb.HeelRadians);
        t.Quantity("pad_width", thumb.PadWidth);
        t.Quantity("pain_threshold", thumb.PainThreshold);
        t.Quantity("limit", thumb.Limit);
        OutTable postures = t.Part("postures");
        foreach (ThumbPosture posture in thumb.Postures)
        {
            OutTable part = postures.Part(posture.Name, always: true);
            part.Triple("pad", Triple(posture.Pad));
            part.Triple("looks_at", Triple(posture.LooksAt));
        }
    }

    private static void Room(OutTable t, HandRoom room)
    {
        t.Quantity("liner", room.Liner);
        t.Quantity("shell", room.Shell);
        t.Quantity("clearance", room.Clearance);
        t.Quantity("base", room.Base);
        t.Quantity("hand_thickness", room.HandThickness);
        t.Quantity("hand_middle", room.HandMiddle);
        t.Quantity("link_width", room.LinkWidth);
        t.Quantity("bar_width", room.BarWidth);
        t.Quantity("bar_pitch", room.BarPitch);
        t.Quantity("drive_across", room.DriveAcross);
        t.Quantity("least_gap", room.LeastGap);
        t.Optional("most_height", room.MostHeight);
        Places(t.Part("stumps"), room.Stumps);
        Places(t.Part("sound_knuckles"), room.SoundKnuckles);
    }

    private static void Job(OutTable t, Job job)
    {
        t.Word("object", job.ObjectName);
        t.Word("as", DayBinding.Words(job.As));
        if (job.Centre is { } centre)
        {
            t.Point("centre", centre);
        }

        t.Quantity("load", job.Load);
        t.Triple("hangs", Triple(job.Hangs));
        t.Quantity("pull", job.Pull);
        t.Word("toward", job.Toward);
        t.Quantity("twist", job.Twist);
        t.Word("forearm", job.Forearm);
        t.Word("grip", job.LockAndRelax ? "lock and relax" : "hold");
        t.Word("effort", job.Squeeze ? "squeeze" : "all-day");
        if (job.Locks is { } locks)
        {
            t.Word("locks", locks);
        }

        t.Quantity("acceleration", job.Acceleration);
        t.Word("surface", job.Wet ? "wet" : "dry");
        t.Optional("times_a_day", job.TimesADay);
    }

    private static void Places(OutTable t, IReadOnlyList<NamedPlace> places)
    {
        foreach (NamedPlace place in places)
        {
            t.Point(place.Finger, place.Place);
        }
    }

    private static Triple Triple(SpacePoint p) => new(p.X, p.Y, p.Z);
}
