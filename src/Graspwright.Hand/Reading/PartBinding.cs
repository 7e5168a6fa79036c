namespace Graspwright.Hand;

/// <summary>Binds parts of the drive and springs, and checks that each gives the dimensions its kind needs.</summary>
internal static class PartBinding
{
    public static StructuralPart Part(string name, Binder t, MaterialNames names)
    {
        PartKind kind = t.Choice<PartKind>("kind");
        StructuralPart part = new()
        {
            Name = name,
            Kind = kind,
            Carries = t.Word("carries"),
            Material = names.Check(t, "material"),
            Diameter = t.Quantity("diameter"),
            Thickness = t.Optional("thickness"),
            Width = t.Optional("width"),
            Length = t.Optional("length"),
            InnerRadius = t.Optional("inner_radius"),
            Gap = t.Quantity("gap"),
        };
        foreach (string key in Needs(kind).Where(k => t.Has("kind") && !t.Has(k)))
        {
            t.Fault(t.Place, key, "nothing", $"the {key} of a part whose kind is {kind.ToString().ToLowerInvariant()}", $"measure it and add {key} = \"6 mm\" to [{t.Path}]");
        }

        if (kind is PartKind.Eye or PartKind.Arm && part.Width <= part.Diameter)
        {
            t.Fault(t.PlaceOf("width"), "width", "a width that the hole takes up", "a width greater than the diameter of the hole", "measure both again");
        }

        if (kind == PartKind.Eye && part.Length <= part.Diameter / 2)
        {
            t.Fault(t.PlaceOf("length"), "length", "a free edge inside the hole", "more than half the diameter of the hole", "measure from the centre of the hole to the free edge");
        }

        return part;
    }

    public static CoilSpring Spring(string name, Binder t)
    {
        CoilSpring spring = new(name, t.Choice<SpringDuty>("duty"), t.Quantity("wire"), t.Quantity("outside"), t.Quantity("coils"),
            t.Quantity("free_length"), t.Quantity("fitted_length"), t.Quantity("stroke"), t.Word("material"));
        if (spring.Outside <= 2 * spring.Wire)
        {
            t.Fault(t.PlaceOf("outside"), "outside", "an outside diameter that the wire takes up", "more than twice the wire", "measure both again");
        }

        if (spring.FittedLength > spring.FreeLength)
        {
            t.Fault(t.PlaceOf("fitted_length"), "fitted_length", "a spring pulled as fitted", "at most the free length", "a spring that is pressed is no longer fitted than free");
        }

        if (spring.Stroke >= spring.FittedLength)
        {
            t.Fault(t.PlaceOf("stroke"), "stroke", "a stroke as long as the spring", "less than the fitted length", "measure the stroke from the fitted length");
        }

        return spring;
    }

    private static string[] Needs(PartKind kind) => kind switch
    {
        PartKind.Pin => ["thickness", "width"],
        PartKind.Eye or PartKind.Arm => ["thickness", "width", "length"],
        _ => ["length"],
    };
}
