namespace Graspwright.Hand;

/// <summary>Binds the muscle signals.</summary>
internal static class SignalsBinding
{
    public static MuscleSignals Bind(Binder t) => new()
    {
        Kind = t.Word("kind"),
        MainsHertz = t.Quantity("mains"),
        DelayLimit = t.Quantity("delay_limit"),
        LeastSpacing = t.Quantity("least_spacing"),
        SeparationLimit = t.Quantity("separation_limit"),
        Controller = t.Word("controller"),
        LoopShare = t.Quantity("loop_share"),
        LineSpeed = t.Quantity("line_speed"),
        Map = t.Word("map"),
        Pattern = t.Word("pattern"),
        Channels = [.. t.Part("channels").NamedParts().Select(c => new SignalChannel(c.Name, c.Part.Word("gesture"), c.Part.Word("locks"), c.Part.Word("site")))],
        Recordings = [.. t.Part("recordings").NamedParts().Select(r => new SignalRecording(r.Name, r.Part.Word("file"), r.Part.Word("purpose") == "wear", r.Part.Quantity("donning"), r.Part.Optional("rate"), r.Part.Word("cues")))],
        Sore = [.. t.Part("sore").NamedParts().Select(s => new SoreSkin(s.Name, s.Part.Point("place"), s.Part.Quantity("radius")))],
        Stud = t.OptionalPart("stud") is { } stud ? Stud(stud) : null,
    };

    private static ContactStud Stud(Binder t) => new()
    {
        Metal = t.Word("metal"),
        DomeDiameter = t.Quantity("dome_diameter"),
        DomeHeight = t.Quantity("dome_height"),
        FlangeDiameter = t.Quantity("flange_diameter"),
        HoleDiameter = t.Quantity("hole_diameter"),
        LinerThickness = t.Quantity("liner_thickness"),
        Squeeze = t.Quantity("squeeze"),
        ShoreHardness = t.Quantity("shore_hardness"),
        TearStrength = t.Quantity("tear_strength"),
        StretchAtBreak = t.Quantity("stretch_at_break"),
        PullOut = t.Quantity("pull_out"),
        ShellMovement = t.Quantity("shell_movement"),
        WireDiameter = t.Quantity("wire_diameter"),
        WireLength = t.Quantity("wire_length"),
    };
}
