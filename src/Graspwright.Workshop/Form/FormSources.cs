using Graspwright.Hand;

namespace Graspwright.Workshop.Form;

/// <summary>Sources that form and pattern rest on.</summary>
public static class FormSources
{
    /// <summary>Sums over triangles.</summary>
    public const string Surface = "surface-sums";

    /// <summary>Steiner's formula.</summary>
    public const string Steiner = "steiner-1840";

    /// <summary>A plate bent one way.</summary>
    public const string Plate = "plate-strip";

    /// <summary>Flattening by rounds.</summary>
    public const string Rounds = "local-global-2008";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("surface-sums", "Areas, volumes and lengths added up over triangles, docs/form.md", "Graspwright developers", null, SourceStanding.Chosen, "Checked against ball, torus, cone and cylinder, with the order of convergence."),
        new("steiner-1840", "Volume of a parallel body: A·t + t²·∫H + t³÷3·∫K", "Steiner", 1840, SourceStanding.FromMemory, "Exact for convex polyhedra; checked against offsets of ball and torus."),
        new("plate-strip", "Strip of a plate, clamped at both sides, under pressure", "", null, SourceStanding.FromMemory, "Moment in the middle p·l²÷24, stiffness E·h³÷12(1 − ν²); any book on plates."),
        new("local-global-2008", "A local/global approach to mesh parameterization", "Liu, Zhang, Xu, Gotsman & Gortler", 2008, SourceStanding.FromMemory, "As-rigid-as-possible rounds; the start by carried directions is ours, docs/form.md."),
        new("smith-schaefer-2015", "Bijective parameterization with free boundaries", "Smith & Schaefer", 2015, SourceStanding.FromMemory, "Energy that no step carries past a flip, begun inside a circle after Tutte 1963."),
        new("crane-2010", "Trivial connections on discrete surfaces", "Crane, Desbrun & Schröder", 2010, SourceStanding.FromMemory, "Directions carried over the surface, what does not close spread evenly."),
        new("discrete-geodesic-1987", "The discrete geodesic problem", "Mitchell, Mount & Papadimitriou", 1987, SourceStanding.FromMemory, "Windows carried over unfolded triangles; checked against printed values of CGAL."),
        new("geodesics-2005", "Fast exact and approximate geodesics on meshes", "Surazhsky, Surazhsky, Kirsanov, Gortler & Hoppe", 2005, SourceStanding.FromMemory, "Windows taken for one; the bound that each carries is ours, docs/form.md."),
        new("closing-ball", "Closing of a shape by a ball, after Matheron and Serra", "", null, SourceStanding.FromMemory, "Dilation, then erosion; checked against dents and grooves of known depth."),
    ];
}
