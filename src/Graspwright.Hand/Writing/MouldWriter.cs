namespace Graspwright.Hand;

/// <summary>Writes form, liner and copies.</summary>
internal static class MouldWriter
{
    public static void Write(OutTable root, HandModel hand)
    {
        if (hand.Form is { } form)
        {
            Form(root.Part("form", always: true), form);
        }

        if (hand.Liner is { } liner)
        {
            Liner(root.Part("liner", always: true), liner);
        }

        if (hand.Copies is { } copies)
        {
            Copies(root.Part("copies", always: true), copies);
        }
    }

    private static void Form(OutTable t, LimbForm form)
    {
        t.Word("zero", form.Zero);
        Edge("near", form.NearEdge, form.NearLine);
        Edge("far", form.FarEdge, form.FarLine);
        OutTable marks = t.Part("marks");
        foreach (LimbMark mark in form.Marks)
        {
            OutTable one = marks.InlinePart(mark.Name);
            one.Quantity("place", mark.Place);
            one.Quantity("girth", mark.Girth);
            one.Optional("width", mark.Width);
            one.Optional("depth", mark.Depth);
            marks.Close(mark.Name, one);
        }

        if (form.Thumb is { } thumb)
        {
            OutTable part = t.Part("thumb");
            part.Quantity("place", thumb.Place);
            part.Quantity("root", thumb.Root);
            part.Quantity("largest", thumb.Largest);
            part.Quantity("length", thumb.Length);
            part.Quantity("angle", thumb.AngleRadians);
        }

        OutTable patches = t.Part("patches");
        foreach (LimbPatch patch in form.Patches)
        {
            OutTable one = patches.InlinePart(patch.Name);
            one.Word("kind", patch.Kind switch { PatchKind.LikesLoad => "likes load", PatchKind.KeepOut => "keep out", var kind => kind.ToString().ToLowerInvariant() });
            if (patch.Outline.Count > 0)
            {
                one.Outline("outline", patch.Outline);
            }
            else
            {
                one.Quantity("from", patch.From);
                one.Quantity("to", patch.To);
                one.Quantity("angle_from", patch.AngleFromRadians);
                one.Quantity("angle_to", patch.AngleToRadians);
            }

            one.Optional("thickness", patch.Thickness);
            if (patch.Relief != 0)
            {
                one.Quantity("relief", patch.Relief);
            }

            patches.Close(patch.Name, one);
        }

        OutTable wires = t.Part("wires");
        foreach (LimbWire wire in form.Wires)
        {
            OutTable one = wires.InlinePart(wire.Name);
            Spot(one, "from", wire.From);
            Spot(one, "to", wire.To);
            Spot(one, "via", wire.Via);
            one.Quantity("clearance", wire.Clearance);
            one.Quantity("slack", wire.Slack);
            one.Optional("diameter", wire.Diameter);
            one.Quantity("least_bend", wire.LeastBend);
            wires.Close(wire.Name, one);
        }

        if (form.Scan is { } scan)
        {
            OutTable part = t.Part("scan", always: true);
            part.Word("file", scan.File);
            if (scan.Unit is { } unit)
            {
                part.Word("unit", unit);
            }

            part.GuessedWord("along", scan.Along);
            part.GuessedWord("back", scan.Back);
            part.Quantity("zero_at", scan.Zero);
            part.Optional("thin", scan.Thin);
            part.Quantity("small_hole", scan.SmallHole);
        }

        OutTable pattern = t.Part("pattern");
        pattern.Quantity("seam", form.Pattern.SeamRadians);
        pattern.Optional("allowance", form.Pattern.Allowance);
        pattern.GuessedWord("allowance_on", form.Pattern.BothSides ? "both sides" : "one side");
        pattern.Quantity("notches", form.Pattern.Notches);
        pattern.Quantity("stretch", form.Pattern.Stretch);
        pattern.Quantity("hand_pressure", form.Pattern.HandPressure);
        pattern.GuessedWord("thumb", form.Pattern.Thumb);
        pattern.Outline("opening", form.Pattern.Opening);

        void Edge(string side, double plane, IReadOnlyList<LimbCorner> line)
        {
            if (line.Count > 0)
            {
                t.Outline(side + "_line", line);
            }
            else
            {
                t.Quantity(side + "_edge", plane);
            }
        }
    }

    private static void Spot(OutTable t, string key, LimbSpot? spot)
    {
        if (spot?.Patch is { } patch)
        {
            t.Word(key, patch);
        }
        else if (spot is not null)
        {
            t.Quantity($"{key}_place", spot.Place);
            t.Quantity($"{key}_angle", spot.AngleRadians);
        }
    }

    private static void Liner(OutTable t, Liner liner)
    {
        t.Quantity("thickness", liner.Thickness);
        t.Optional("sheet_area", liner.SheetArea);
        t.Optional("sheet_length", liner.SheetLength);
        t.Optional("sheet_width", liner.SheetWidth);
        t.Quantity("overlap", liner.Overlap);
        t.Quantity("waste", liner.Waste);
        t.Quantity("spare", liner.Spare);
        Putty(t.Part("putty"), liner.Putty);
        Bench(t.Part("bench"), liner.Bench);
        OutTable work = t.Part("work");
        work.Quantity("mix", liner.Work.Mix);
        work.Quantity("roll", liner.Work.Roll);
        work.Quantity("drape", liner.Work.Drape);
        work.Quantity("seams", liner.Work.Seams);
        work.Quantity("hollow", liner.Work.Hollow);
        work.Quantity("hollows", liner.Work.Hollows);
        work.Quantity("smooth", liner.Work.Smooth);
        OutTable off = t.Part("off");
        off.Quantity("stretch_share", liner.Off.StretchShare);
        off.Quantity("friction", liner.Off.Friction);
        off.Quantity("one_hand_pull", liner.Off.OneHandPull);
        off.Quantity("clearance", liner.Off.Clearance);
    }

    private static void Putty(OutTable t, PuttyLabel p)
    {
        t.Word("name", p.Name);
        t.Quantity("ratio_a", p.RatioA);
        t.Quantity("ratio_b", p.RatioB);
        t.Optional("ratio_error", p.RatioError);
        t.Quantity("density_a", p.DensityA);
        t.Quantity("density_b", p.DensityB);
        t.Optional("mix_time", p.MixTime);
        t.Quantity("work_time", p.WorkTime);
        t.Quantity("set_time", p.SetTime);
        t.Optional("full_time", p.FullTime);
        t.Quantity("at", p.At);
        t.Optional("shore_a", p.ShoreA);
        t.Optional("elongation", p.Elongation);
        t.Optional("tear", p.Tear);
        t.Optional("price", p.Price);
        t.Optional("pack", p.Pack);
        t.Word("money", p.Money);
        t.Word("rule", p.Arrhenius ? "arrhenius" : "ten degrees");
        t.Quantity("ten_degree_factor", p.TenDegreeFactor);
        t.Quantity("conductivity", p.Conductivity);
        t.Quantity("specific_heat", p.SpecificHeat);
        t.Quantity("mix_share", p.MixShare);
        t.Quantity("hands_off_share", p.HandsOffShare);
        t.Quantity("cure_at_set", p.CureAtSet);
    }

    private static void Bench(OutTable t, PuttyBench b)
    {
        t.Quantity("scale_step", b.ScaleStep);
        t.Optional("tub", b.Tub);
        t.Quantity("room", b.Room);
        t.Quantity("humidity", b.Humidity);
        t.Quantity("mould", b.Mould);
        t.Quantity("hand", b.Hand);
        t.Quantity("freezer", b.Freezer);
        t.Quantity("chill", b.Chill);
        t.Word("chilled_as", b.ChilledAs.ToString().ToLowerInvariant());
        t.Quantity("flat", b.FlatThickness);
        t.Quantity("carry", b.Carry);
        t.Quantity("helpers", b.Helpers);
        t.Quantity("air_transfer", b.AirTransfer);
        t.Quantity("freezer_transfer", b.FreezerTransfer);
        t.Quantity("hand_transfer", b.HandTransfer);
        t.Quantity("contact_transfer", b.ContactTransfer);
        t.Quantity("hand_share", b.HandShare);
        t.Quantity("working_share", b.WorkingShare);
    }

    private static void Copies(OutTable t, CopyPlan c)
    {
        t.Quantity("snug", c.Snug);
        t.Quantity("gap", c.Gap);
        t.Quantity("film", c.Film);
        t.Quantity("negative_wall", c.NegativeWall);
        t.Quantity("water_for_powder", c.WaterForPowder);
        t.Quantity("plaster_growth", c.PlasterGrowth);
        t.Quantity("silicone_shrinkage", c.SiliconeShrinkage);
        t.Quantity("wax", c.Wax);
        t.Quantity("wax_shrinkage", c.WaxShrinkage);
        t.Quantity("shell", c.Shell);
        t.Quantity("shell_shrinkage", c.ShellShrinkage);
        t.Quantity("water", c.Water);
    }
}
