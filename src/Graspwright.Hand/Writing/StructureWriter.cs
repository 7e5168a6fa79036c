namespace Graspwright.Hand;

/// <summary>Writes the sections about strength and life.</summary>
internal static class StructureWriter
{
    public static void Write(OutTable root, HandModel hand)
    {
        HandStructure s = hand.Structure;
        OutTable materials = root.Part("materials");
        foreach (Material material in s.Materials)
        {
            WriteMaterial(materials.Part(material.Name, always: true), material);
        }

        OutTable hinges = root.Part("hinges");
        foreach (Hinges hinge in s.Hinges)
        {
            WriteHinges(hinges.Part(hinge.Finger), hinge);
        }

        OutTable parts = root.Part("parts");
        foreach (StructuralPart part in s.Parts)
        {
            OutTable t = parts.Part(part.Name, always: true);
            t.Word("kind", part.Kind.ToString().ToLowerInvariant());
            t.Word("carries", part.Carries);
            t.Word("material", part.Material);
            t.Quantity("diameter", part.Diameter);
            t.Optional("thickness", part.Thickness);
            t.Optional("width", part.Width);
            t.Optional("length", part.Length);
            t.Optional("inner_radius", part.InnerRadius);
            t.Quantity("gap", part.Gap);
        }

        OutTable springs = root.Part("springs");
        foreach (CoilSpring spring in s.Springs)
        {
            OutTable t = springs.Part(spring.Name, always: true);
            t.Word("duty", spring.Duty.ToString().ToLowerInvariant());
            t.Quantity("wire", spring.Wire);
            t.Quantity("outside", spring.Outside);
            t.Quantity("coils", spring.Coils);
            t.Quantity("free_length", spring.FreeLength);
            t.Quantity("fitted_length", spring.FittedLength);
            t.Quantity("stroke", spring.Stroke);
            t.Word("material", spring.Material);
        }

        OutTable shell = root.Part("shell");
        shell.Quantity("bearing_length", s.Shell.BearingLength);
        shell.Quantity("bearing_height", s.Shell.BearingHeight);
        shell.Quantity("side_stiffness", s.Shell.SideStiffness);
        shell.Optional("breaking_moment", s.Shell.BreakingMoment);
        shell.Quantity("skin_limit", s.Shell.SkinLimit);
        OutTable repair = root.Part("repair");
        repair.Quantity("pin", s.Repair.Pin);
        repair.Quantity("finger", s.Repair.Finger);
        repair.Quantity("base", s.Repair.Base);
        repair.Quantity("shell", s.Repair.Shell);
        repair.Quantity("quick", s.Repair.Quick);
        WriteUse(root.Part("use"), s.Use, hand.Fingers);
    }

    private static void WriteMaterial(OutTable t, Material m)
    {
        t.Word("like", m.Like);
        t.Word("words", m.Words);
        t.Quantity("density", m.Density);
        t.Quantity("modulus", m.Modulus);
        t.Quantity("poisson", m.Poisson);
        t.Quantity("yield", m.Yield);
        t.Quantity("strength", m.Strength);
        t.Quantity("shear_share", m.ShearShare);
        t.Quantity("fatigue_strength", m.FatigueStrength);
        t.Quantity("fatigue_cycles", m.FatigueCycles);
        t.Quantity("fatigue_slope", m.FatigueSlope);
        t.Quantity("notch_sensitivity", m.NotchSensitivity);
        t.Quantity("surface", m.Surface);
        t.Word("breaks", m.Brittle ? "at once" : "bends first");
        t.Quantity("outdoor_loss", m.OutdoorLoss);
        t.Quantity("strength_spread", m.StrengthSpread);
        t.Quantity("life_spread", m.LifeSpread);
        t.Quantity("bearing_limit", m.BearingLimit);
        t.Quantity("friction", m.Friction);
        t.Quantity("wear", m.Wear);
    }

    private static void WriteHinges(OutTable t, Hinges h)
    {
        t.GuessedWord("base_material", h.BaseMaterial);
        t.GuessedWord("finger_material", h.FingerMaterial);
        t.GuessedWord("pin_material", h.PinMaterial);
        t.Word("bushing_material", h.BushingMaterial);
        t.Triple("bushing_wall", h.BushingWall);
        t.Triple("ear_thickness", h.EarThickness);
        t.Triple("ear_height", h.EarHeight);
        t.Triple("ear_length", h.EarLength);
        t.Triple("edge", h.Edge);
        t.Triple("root_radius", h.RootRadius);
        t.Triple("tongue", h.Tongue);
        t.Triple("gap", h.Gap);
        t.Triple("pin_diameter", h.PinDiameter);
        t.Triple("width", h.Width);
        t.Triple("height", h.Height);
        t.Triple("wall", h.Wall);
    }

    private static void WriteUse(OutTable t, Use use, IReadOnlyList<Finger> fingers)
    {
        t.Quantity("grips", use.GripsPerDay);
        t.Quantity("hold", use.HoldSeconds);
        t.Quantity("gentle", use.GentleShare);
        t.Quantity("firm", use.FirmShare);
        t.Quantity("hard", use.HardShare);
        t.Quantity("worn", use.WornSeconds);
        t.Quantity("outdoors", use.OutdoorSeconds);
        t.Quantity("reaching", use.ReachingShare);
        t.Quantity("count_spread", use.CountSpread);
        t.Quantity("energy_spread", use.EnergySpread);
        t.Quantity("load_spread", use.LoadSpread);
        if (t.Guessed("knocks") is null || !use.Knocks.SequenceEqual(Use.DefaultKnocks))
        {
            OutTable knocks = t.Part("knocks", always: true);
            foreach (Knock knock in use.Knocks)
            {
                OutTable one = knocks.InlinePart(knock.Name);
                one.Quantity("energy", knock.Joules);
                one.Quantity("per_day", knock.PerDay);
                knocks.Close(knock.Name, one);
            }
        }

        if (t.Guessed("exposure") is null || !use.Exposure.SequenceEqual(UseBinding.EvenExposure(fingers.Count)))
        {
            OutTable exposure = t.Part("exposure", always: true);
            for (int f = 0; f < fingers.Count; f++)
            {
                exposure.Quantity(fingers[f].Name, use.Exposure[f]);
            }
        }

        OutTable jobs = t.Part("jobs");
        foreach (DayJob job in use.Jobs)
        {
            OutTable one = jobs.InlinePart(job.Name);
            one.Word("object", job.ObjectName);
            one.Word("effort", job.Effort.ToString().ToLowerInvariant());
            one.Quantity("per_day", job.PerDay);
            jobs.Close(job.Name, one);
        }

        if (use.History is { } history)
        {
            OutTable one = t.Part("history", always: true);
            one.Word("file", history.File);
            one.Quantity("days", history.Days);
            one.Word("object", history.ObjectName);
        }
    }
}
