namespace Graspwright.Hand;

/// <summary>Binds form, liner and copies, and explains what can't be.</summary>
internal static class MouldBinding
{
    public static LimbForm? Form(Binder root)
    {
        if (root.OptionalPart("form") is not { } t)
        {
            return null;
        }

        List<LimbMark> marks = [];
        Dictionary<LimbMark, Binder> parts = new(ReferenceEqualityComparer.Instance);
        foreach (NamedPart named in t.Part("marks").NamedParts())
        {
            LimbMark mark = Mark(named.Name, named.Part);
            marks.Add(mark);
            parts.Add(mark, named.Part);
        }

        if (marks.Count < 2)
        {
            t.Fault(t.PlaceOf("marks"), "marks", marks.Count == 0 ? "no mark" : "one mark", "two marks or more", "measure the girth at two places and add wrist = { place = \"0 mm\", girth = \"172 mm\" } to [form.marks]");
        }

        marks.Sort((a, b) => a.Place.CompareTo(b.Place));
        for (int i = 1; i < marks.Count; i++)
        {
            (LimbMark a, LimbMark b) = (marks[i - 1], marks[i]);
            if (b.Place - a.Place < 1e-4)
            {
                t.Fault(parts[b].Place, $"marks.{b.Name}", $"{b.Name} at the place of {a.Name}", "marks that lie apart", "check the places, or remove one of the two");
            }
        }

        double first = marks.Count > 0 ? marks[0].Place : double.NaN, last = marks.Count > 0 ? marks[^1].Place : double.NaN;
        (double near, IReadOnlyList<LimbCorner> nearLine) = OutlineBinding.Edge(t, "near", first, last);
        (double far, IReadOnlyList<LimbCorner> farLine) = OutlineBinding.Edge(t, "far", first, last);
        LimbPatch[] patches = [.. t.Part("patches").NamedParts().Select(p => Patch(p.Name, p.Part, first, last))];
        LimbForm form = new()
        {
            Zero = t.Word("zero"),
            Marks = marks,
            NearEdge = near,
            FarEdge = far,
            NearLine = nearLine,
            FarLine = farLine,
            Thumb = t.OptionalPart("thumb") is { } thumb ? new(thumb.Quantity("place"), thumb.Quantity("root"), thumb.Quantity("largest"), thumb.Quantity("length"), thumb.Quantity("angle")) : null,
            Patches = patches,
            Wires = [.. t.Part("wires").NamedParts().Select(w => WireBinding.Wire(w.Name, w.Part, patches))],
            Scan = t.OptionalPart("scan") is { } scan ? Scan(scan) : null,
            Pattern = Pattern(t.Part("pattern"), first, last),
        };
        if (form.NearEdge >= form.FarEdge)
        {
            string key = t.Has("near_edge") || !t.Has("near_line") ? "near_edge" : "near_line";
            t.Fault(t.PlaceOf(key), key, "an edge toward the elbow that lies beyond the one toward the fingertips", "a place before the other edge", "swap the two, or check the signs");
        }
        else if (form.NearEdge < first || form.FarEdge > last)
        {
            string edge = form.NearEdge < first ? "near_edge" : "far_edge";
            t.Fault(t.PlaceOf(edge), edge, "an edge beyond the marks", "an edge between the first and the last mark", "add a mark there: a girth that was not measured is not guessed");
        }
        else
        {
            OutlineBinding.Apart(t, form);
        }

        return form;
    }

    public static Liner? Liner(Binder root)
    {
        if (root.OptionalPart("liner") is not { } t)
        {
            return null;
        }

        Binder work = t.Part("work"), off = t.Part("off");
        Liner liner = new()
        {
            Thickness = t.Quantity("thickness"),
            SheetArea = t.Optional("sheet_area"),
            SheetLength = t.Optional("sheet_length"),
            SheetWidth = t.Optional("sheet_width"),
            Overlap = t.Quantity("overlap"),
            Waste = t.Quantity("waste"),
            Spare = t.Quantity("spare"),
            Putty = Putty(t.Part("putty"), t),
            Bench = Bench(t.Part("bench")),
            Work = new(work.Quantity("mix"), work.Quantity("roll"), work.Quantity("drape"), work.Quantity("seams"), work.Quantity("hollow"), Whole(work, "hollows"), work.Quantity("smooth")),
            Off = new(off.Quantity("stretch_share"), off.Quantity("friction"), off.Quantity("one_hand_pull"), off.Quantity("clearance")),
        };
        CheckSheet(t, liner);
        return liner;
    }

    public static CopyPlan? Copies(Binder root)
    {
        if (root.OptionalPart("copies") is not { } t)
        {
            return null;
        }

        double shell = t.Quantity("shell"), gap = t.Quantity("gap"), film = t.Quantity("film");
        return new(t.Quantity("snug"), gap, film, t.Quantity("negative_wall"), t.Quantity("water_for_powder"), t.Quantity("plaster_growth"), t.Quantity("silicone_shrinkage"),
            t.Quantity("wax", Toml.Quantity(shell + gap + 2 * film, Dimension.Length)), t.Quantity("wax_shrinkage"), shell, t.Quantity("shell_shrinkage"), t.Quantity("water"));
    }

    private static LimbMark Mark(string name, Binder t)
    {
        LimbMark mark = new(name, t.Quantity("place"), t.Quantity("girth"), t.Optional("width"), t.Optional("depth"));
        if (mark.Width is null != mark.Depth is null)
        {
            string missing = mark.Width is null ? "width" : "depth";
            t.Fault(t.Place, missing, "nothing", "width and depth together, or neither", $"measure the {missing} too, or remove the other: then it counts as round");
        }
        else if (mark is { Width: { } w, Depth: { } d })
        {
            // A closed convex line of this width and depth is no shorter than the rhombus and no longer than the rectangle.
            double least = 2 * double.Hypot(w, d), most = 2 * (w + d);
            if (mark.Girth < least || mark.Girth > most)
            {
                t.Fault(t.PlaceOf("girth"), "girth", FormattableString.Invariant($"{1000 * mark.Girth:0.#} mm round a width of {1000 * w:0.#} and a depth of {1000 * d:0.#} mm"),
                    FormattableString.Invariant($"{1000 * least:0.#} to {1000 * most:0.#} mm: no rounded shape of that width and depth has another girth"), "measure the three again at the same mark");
            }
        }

        return mark;
    }

    private static LimbScan Scan(Binder t)
    {
        LimbScan scan = new(t.Word("file"), t.Has("unit") ? t.Word("unit") : null, t.Word("along"), t.Word("back"), t.Quantity("zero_at"), t.Quantity("small_hole"), t.Optional("thin"));
        if (scan.Along.TrimStart('-') == scan.Back.TrimStart('-'))
        {
            t.Fault(t.PlaceOf("back"), "back", $"{scan.Back}, the line of {scan.Along} along the limb", "another axis than along", "look at the scan in a viewer: which axis comes out of the back of the hand?");
        }

        return scan;
    }

    private static PatternPlan Pattern(Binder t, double first, double last)
    {
        PatternPlan plan = new(t.Quantity("seam"), t.Optional("allowance"), t.Word("allowance_on") == "both sides", t.Quantity("notches"), t.Quantity("stretch"), t.Quantity("hand_pressure"), t.Has("thumb") || !t.Has("opening") ? t.Word("thumb") : "opening") { Opening = OutlineBinding.Closed(t, "opening", first, last) };
        if (plan.Opening.Count > 0 && plan.Thumb != "opening")
        {
            t.Fault(t.PlaceOf("opening"), "opening", "the outline of an opening beside a sleeve", "an outline with thumb = \"opening\"", "write thumb = \"opening\", or remove the outline");
        }

        return plan;
    }

    private static LimbPatch Patch(string name, Binder t, double first, double last)
    {
        LimbPatch patch = new(name, t.Choice<PatchKind>("kind"), t.Quantity("from"), t.Quantity("to"), t.Quantity("angle_from"), t.Quantity("angle_to"), t.Quantity("relief"), t.Optional("thickness"));
        string[] box = ["from", "to", "angle_from", "angle_to"];
        if (!t.Has("outline"))
        {
            foreach (string key in box.Where(k => !t.Has(k)))
            {
                t.Fault(t.Place, key, "nothing", "from, to, angle_from and angle_to, or an outline", $"measure it and add {key} to [{t.Path}], or draw the patch as outline = [[place, angle], …]");
            }

            if (patch.From >= patch.To)
            {
                t.Fault(t.PlaceOf("from"), "from", "a patch that ends before it begins", "from below to", "swap the two");
            }

            return patch;
        }

        foreach (string key in box.Where(t.Has))
        {
            t.Fault(t.PlaceOf(key), key, $"{key} beside an outline", "one of the two", $"remove {key}: the outline says it");
        }

        IReadOnlyList<LimbCorner> corners = OutlineBinding.Closed(t, "outline", first, last);
        if (corners.Count == 0)
        {
            return patch;
        }

        LimbLine line = new(corners);
        return patch with { From = line.Places.Low, To = line.Places.High, AngleFromRadians = line.Angles.Low, AngleToRadians = line.Angles.High, Outline = corners };
    }

    private static PuttyLabel Putty(Binder t, Binder liner)
    {
        double? work = t.Optional("work_time"), set = t.Optional("set_time"), at = t.Optional("at"), full = t.Optional("full_time"), mix = t.Optional("mix_time");
        if (!liner.Has("putty"))
        {
            liner.Fault(liner.Place, "putty", "no label", "the label of the tub: work time, set time and the temperature they hold for", "copy them from the tub: work_time = \"4 min\", set_time = \"12 min\", at = \"23 °C\" in [liner.putty]");
        }
        else
        {
            Label(t, "work_time", work, "4 min", "the work time on the label");
            Label(t, "set_time", set, "12 min", "the time on the label after which it may leave the mould");
            if (!t.Has("at"))
            {
                t.Fault(t.Place, "at", "minutes without a temperature", "the temperature for which the label's minutes hold", "labels say it in small print, 23 °C as a rule: add at = \"23 °C\"; without it the minutes mean nothing in another room");
            }
        }

        if (work >= set)
        {
            t.Fault(t.PlaceOf("work_time"), "work_time", FormattableString.Invariant($"{work / 60:0.##} min, not before the set time of {set / 60:0.##} min"), "a work time below the set time", "swap the two: it is worked first and leaves the mould later");
        }

        if (mix >= work)
        {
            t.Fault(t.PlaceOf("mix_time"), "mix_time", FormattableString.Invariant($"{mix / 60:0.##} min, not before the work time of {work / 60:0.##} min"), "a mixing time below the work time", "work time counts from the start of mixing: check the label");
        }

        if (full < set)
        {
            t.Fault(t.PlaceOf("full_time"), "full_time", FormattableString.Invariant($"{full / 60:0.##} min, before the set time of {set / 60:0.##} min"), "at least the set time", "check the label");
        }

        if (t.Has("price") != t.Has("pack"))
        {
            string missing = t.Has("price") ? "pack" : "price";
            t.Fault(t.Place, missing, "nothing", "price and pack together, or neither", $"add {missing}, or remove the other");
        }

        return new()
        {
            Name = t.Word("name"),
            RatioA = t.Quantity("ratio_a"),
            RatioB = t.Quantity("ratio_b"),
            RatioError = t.Optional("ratio_error"),
            DensityA = t.Quantity("density_a"),
            DensityB = t.Quantity("density_b"),
            MixTime = mix,
            WorkTime = work ?? double.NaN,
            SetTime = set ?? double.NaN,
            FullTime = full,
            At = at ?? double.NaN,
            ShoreA = t.Optional("shore_a"),
            Elongation = t.Optional("elongation"),
            Tear = t.Optional("tear"),
            Price = t.Optional("price"),
            Pack = t.Optional("pack"),
            Money = t.Word("money"),
            Arrhenius = t.Word("rule") == "arrhenius",
            TenDegreeFactor = t.Quantity("ten_degree_factor"),
            Conductivity = t.Quantity("conductivity"),
            SpecificHeat = t.Quantity("specific_heat"),
            MixShare = t.Quantity("mix_share"),
            HandsOffShare = t.Quantity("hands_off_share"),
            CureAtSet = t.Quantity("cure_at_set"),
        };
    }

    private static void Label(Binder t, string key, double? value, string example, string words)
    {
        if (value is null && !t.Has(key))
        {
            t.Fault(t.Place, key, "nothing", words, $"copy it from the tub: add {key} = \"{example}\" to [{t.Path}]");
        }
    }

    private static PuttyBench Bench(Binder t)
    {
        double room = t.Quantity("room");
        return new()
        {
            ScaleStep = t.Quantity("scale_step"),
            Tub = t.Optional("tub"),
            Room = room,
            Humidity = t.Quantity("humidity"),
            Mould = t.Quantity("mould", Toml.Quantity(room, Dimension.Temperature)),
            Hand = t.Quantity("hand"),
            Freezer = t.Quantity("freezer"),
            Chill = t.Quantity("chill"),
            ChilledAs = t.Choice<ChilledAs>("chilled_as"),
            FlatThickness = t.Quantity("flat"),
            Carry = t.Quantity("carry"),
            Helpers = Whole(t, "helpers"),
            AirTransfer = t.Quantity("air_transfer"),
            FreezerTransfer = t.Quantity("freezer_transfer"),
            HandTransfer = t.Quantity("hand_transfer"),
            ContactTransfer = t.Quantity("contact_transfer"),
            HandShare = t.Quantity("hand_share"),
            WorkingShare = t.Quantity("working_share"),
        };
    }

    private static void CheckSheet(Binder t, Liner liner)
    {
        if (t.Has("sheet_length") != t.Has("sheet_width"))
        {
            string missing = t.Has("sheet_length") ? "sheet_width" : "sheet_length";
            t.Fault(t.Place, missing, "nothing", "length and width together, or neither", $"add {missing}, or remove the other");
        }

        if (t.Has("sheet_area") && t.Has("sheet_length"))
        {
            t.Fault(t.PlaceOf("sheet_area"), "sheet_area", "sheet_area beside sheet_length", "one of the two", "remove sheet_area: length times width says it");
        }

        double smallest = Math.Min(liner.SheetLength ?? double.PositiveInfinity, liner.SheetWidth ?? Math.Sqrt(liner.SheetArea ?? double.PositiveInfinity));
        if (liner.Thickness > smallest / 4)
        {
            t.Fault(t.PlaceOf("thickness"), "thickness", FormattableString.Invariant($"{1000 * liner.Thickness:0.##} mm on a sheet of {1000 * smallest:0.##} mm"),
                "at most a quarter of the sheet", "that is a block, no sheet: check the units, a liner is 2 to 6 mm thick");
        }
    }

    private static int Whole(Binder t, string key)
    {
        double value = t.Quantity(key);
        if (value != Math.Floor(value))
        {
            t.Fault(t.PlaceOf(key), key, FormattableString.Invariant($"{value}"), "a whole number", FormattableString.Invariant($"write {Math.Round(value)}"));
        }

        return double.IsNaN(value) ? 0 : (int)value;
    }
}
