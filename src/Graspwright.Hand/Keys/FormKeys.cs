using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of a scan and of the paper pattern.</summary>
internal static class FormKeys
{
    public static HandSection Scan { get; } = new("A scan of the limb, or of its plaster. The tape marks stay: they check it.",
    [
        new() { Name = "file", Form = KeyForm.FileName, Words = "STL, OBJ, PLY or GLB file.", Example = "\"limb.stl\"", Required = true },
        Choice("unit", "Unit of its numbers; left out = guessed from the size.", "mm", "cm", "m", "in") with { DerivedDefault = "guessed from the size" },
        Choice("along", "Its axis toward the fingertips.", "x", "-x", "y", "-y", "z", "-z") with { Default = "\"z\"", SourceKey = "workshop-choice" },
        Choice("back", "Its axis out of the back of the hand.", "y", "-y", "x", "-x", "z", "-z") with { Default = "\"y\"", SourceKey = "workshop-choice" },
        Of("zero_at", Dimension.Length, "Where on its axis along the limb the zero of the places lies.", "0 mm", Bounds.Any) with { Default = "\"0 mm\"", SourceKey = "workshop-choice" },
        Of("thin", Dimension.Length, "How far a scan of many triangles may stray when it is thinned; 0 mm = it is not.", "0.05 mm", Bounds.NotNegative) with { DerivedDefault = "0.05 mm beyond 150 000 triangles, else not thinned" },
        Size("small_hole", "Longest rim of a hole that is closed.", "60 mm") with { Default = "\"60 mm\"", SourceKey = "workshop-choice" },
    ]);

    public static HandSection Wires { get; } = new("Wires over the liner, each with a name. They go the shortest way that keeps clear of tender, scarred, bony and numb skin and of what is kept out.", []) { AnyKey = Part("WIRE", () => Wire!) };

    public static HandSection Pattern { get; } = new("The paper pattern of the liner.",
    [
        Angle("seam", "Angle of the long seam, from the back of the hand (0) toward the thumb.", "270 deg", Bounds.Turn) with { Default = "\"270 deg\"", SourceKey = "workshop-choice" },
        Size("allowance", "Allowance beside seams.", "8 mm") with { DerivedDefault = "the liner's overlap, else 8 mm", Bounds = Bounds.NotNegative },
        Choice("allowance_on", "Which sides of a seam get it.", "one side", "both sides") with { Default = "\"one side\"", SourceKey = "workshop-choice" },
        Size("notches", "Distance of notches along seams.", "40 mm") with { Default = "\"40 mm\"", SourceKey = "workshop-choice" },
        Number("stretch", "How far the sheet may be stretched or squeezed.", new(0, true, 0.5, "above 0, up to 50 %")) with { Default = "\"5 %\"", SourceKey = "workshop-choice", Example = "\"5 %\"" },
        Of("hand_pressure", Dimension.Pressure, "Pressure of the hand that presses the sheet on.", "20 kPa", Bounds.Positive) with { Default = "\"20 kPa\"", SourceKey = "workshop-choice" },
        Choice("thumb", "What is made of the thumb: a sleeve of its own, or an opening.", "sleeve", "opening") with { Default = "\"sleeve\"", SourceKey = "workshop-choice" },
        Outline("opening", "Outline of the thumb's opening round its root, where it is not cut along the root itself: corners in turn, each a place and an angle. Without thumb it stands for thumb = \"opening\".", "[[\"15 mm\", \"90 deg\"], [\"35 mm\", \"50 deg\"], [\"55 mm\", \"90 deg\"], [\"35 mm\", \"130 deg\"]]"),
    ]);

    private static HandSection Wire { get; } = new("A wire. Each spot is a patch of [form.patches], its middle, or a place and an angle.",
    [
        Free("from", "Patch where it begins, a contact as a rule.", "\"back contact\""),
        Of("from_place", Dimension.Length, "Else the place where it begins.", "-40 mm", Bounds.Any),
        Angle("from_angle", "And the angle.", "0 deg", Bounds.Turn),
        Free("to", "Patch where it ends.", "\"plug\""),
        Of("to_place", Dimension.Length, "Else the place where it ends.", "-60 mm", Bounds.Any),
        Angle("to_angle", "And the angle.", "90 deg", Bounds.Turn),
        Free("via", "Patch over whose middle it passes.", "\"ridge\""),
        Of("via_place", Dimension.Length, "Else the place that it passes.", "-20 mm", Bounds.Any),
        Angle("via_angle", "And the angle.", "60 deg", Bounds.Turn),
        Size("clearance", "How far it keeps from skin that must not be rubbed.", "4 mm") with { Default = "\"4 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Number("slack", "How much longer than its way it is cut, so that nothing pulls when flesh and sheet give.", new(0, false, 1, "0 to 100 %")) with { Default = "\"10 %\"", SourceKey = "workshop-choice", Example = "\"10 %\"" },
        Size("diameter", "Diameter over its insulation; left out = bends are not judged.", "1.2 mm"),
        Number("least_bend", "Least radius of a bend ÷ diameter, by the wire's data sheet; 10 for what moves is a rule of thumb.", Bounds.Positive) with { Default = "10", SourceKey = "workshop-choice", Example = "10" },
    ]);
}
