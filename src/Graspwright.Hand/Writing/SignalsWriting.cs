namespace Graspwright.Hand;

/// <summary>Writes the muscle signals.</summary>
internal static class SignalsWriting
{
    public static void OfLock(OutTable t, FingerLock held)
    {
        if (held.HoldsUnpowered is { } holds)
        {
            t.Word("unpowered", holds ? "holds" : "frees");
        }

        Given(t, "hand_release", held.HandRelease);
    }

    public static void Write(OutTable root, MuscleSignals? signals)
    {
        if (signals is null)
        {
            return;
        }

        OutTable t = root.Part("signals", always: true);
        Given(t, "kind", signals.Kind);
        t.Quantity("mains", signals.MainsHertz);
        t.Quantity("delay_limit", signals.DelayLimit);
        t.Quantity("least_spacing", signals.LeastSpacing);
        t.Quantity("separation_limit", signals.SeparationLimit);
        t.Word("controller", signals.Controller);
        t.Quantity("loop_share", signals.LoopShare);
        t.Quantity("line_speed", signals.LineSpeed);
        Given(t, "map", signals.Map);
        Given(t, "pattern", signals.Pattern);
        OutTable channels = t.Part("channels"), recordings = t.Part("recordings"), sore = t.Part("sore");
        foreach (SignalChannel channel in signals.Channels)
        {
            OutTable one = channels.Part(channel.Name, always: true);
            one.Word("gesture", channel.Gesture);
            Given(one, "locks", channel.Locks);
            Given(one, "site", channel.Site);
        }

        foreach (SignalRecording recording in signals.Recordings)
        {
            OutTable one = recordings.Part(recording.Name, always: true);
            one.Word("file", recording.File);
            one.Word("purpose", recording.IsWear ? "wear" : "gestures");
            one.Quantity("donning", recording.Donning);
            one.Optional("rate", recording.RateHertz);
            Given(one, "cues", recording.Cues);
        }

        foreach (SoreSkin place in signals.Sore)
        {
            OutTable one = sore.Part(place.Name, always: true);
            one.Point("place", place.Place);
            one.Quantity("radius", place.Radius);
        }

        if (signals.Stud is { } stud)
        {
            Stud(t.Part("stud", always: true), stud);
        }
    }

    private static void Stud(OutTable t, ContactStud stud)
    {
        t.Word("metal", stud.Metal);
        t.Quantity("dome_diameter", stud.DomeDiameter);
        t.Quantity("dome_height", stud.DomeHeight);
        t.Quantity("flange_diameter", stud.FlangeDiameter);
        t.Quantity("hole_diameter", stud.HoleDiameter);
        t.Quantity("liner_thickness", stud.LinerThickness);
        t.Quantity("squeeze", stud.Squeeze);
        t.Quantity("shore_hardness", stud.ShoreHardness);
        t.Quantity("tear_strength", stud.TearStrength);
        t.Quantity("stretch_at_break", stud.StretchAtBreak);
        t.Quantity("pull_out", stud.PullOut);
        t.Quantity("shell_movement", stud.ShellMovement);
        t.Quantity("wire_diameter", stud.WireDiameter);
        t.Quantity("wire_length", stud.WireLength);
    }

    private static void Given(OutTable t, string key, string words)
    {
        if (words.Length > 0)
        {
            t.Word(key, words);
        }
    }
}
