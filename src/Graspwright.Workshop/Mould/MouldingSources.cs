using Graspwright.Hand;

namespace Graspwright.Workshop.Mould;

/// <summary>Sources that the figures of moulding rest on; those of a hand's defaults are in <see cref="Source.All"/>.</summary>
public static class MouldingSources
{
    /// <summary>Balls, sheets and shares of weight.</summary>
    public const string Geometry = "school-geometry";

    /// <summary>The cure clock.</summary>
    public const string Clock = "cure-clock";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("school-geometry", "Volumes of balls and sheets, shares of weight", "", null, SourceStanding.Chosen, "School geometry; nothing to be looked up."),
        new("cure-clock", "Label seconds collected at the speed of the temperature of each place, docs/moulding.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Conduction checked against exact series, the speed rules against published factors. The heat of the cure itself is left out."),
        new("carslaw-jaeger", "Conduction of Heat in Solids, 2nd ed.", "Carslaw & Jaeger", 1959, SourceStanding.FromMemory, "Series over the roots of the Biot equation; its tabulated roots are compared."),
        new("magnus-sonntag-1990", "Important new values of the physical constants of 1986, Z Meteorol 70(5):340-344", "Sonntag", 1990, SourceStanding.SeenQuoted, "Magnus formula over water with 17.62 and 243.12 °C, as the World Meteorological Organization recommends."),
        new("arrhenius-1889", "Speed of reaction and temperature", "Arrhenius", 1889, SourceStanding.FromMemory, "exp(−E÷kT); factors compared with a reliability library's documentation."),
        new("gent-1958", "On the relation between indentation hardness and Young's modulus", "Gent", 1958, SourceStanding.SeenQuoted, "Good from Shore A 20 to 80; other relations differ by up to a factor of two."),
        new("rivlin-thomas-1953", "Rupture of rubber I: characteristic energy for tearing, J Polym Sci 10:291-318", "Rivlin & Thomas", 1953, SourceStanding.SeenQuoted, "Tearing takes one energy for each new area, whatever the test piece; trousers T = 2F÷h from memory."),
        new("thomas-1955", "Rupture of rubber: incisions with a round tip", "Thomas", 1955, SourceStanding.SeenQuoted, "T is about the energy to break a volume × the diameter of the tip, quoted in part VIII of the series. Year from memory."),
        new("greensmith-1963", "Rupture of rubber X: a small cut in simple extension, J Appl Polym Sci 7:993", "Greensmith", 1963, SourceStanding.Seen, "2·K·W·c; K falls from about 3 at small extensions to somewhat below 2 at threefold length."),
        new("treloar-rubber", "The Physics of Rubber Elasticity", "Treloar", 1975, SourceStanding.FromMemory, "Energy of a neo-Hookean strip."),
        new("thin-ring", "Hoop force and pressure of a thin ring", "", null, SourceStanding.FromMemory, "Any book on the strength of materials."),
        new("plaster-chemistry", "Setting of hemihydrate to gypsum", "", null, SourceStanding.FromMemory, "19.2 kJ/mol, specific heats and molar weights from memory; density of beta hemihydrate 2.64 g/cm³ seen."),
        new("bbc-plaster-2007", "Amputation after art class burns, 23 March 2007", "BBC News", 2007, SourceStanding.Seen, "Fingers and thumbs lost after hands were held in setting plaster; in bulk it can reach 60 °C or so."),
        new("cast-burns-1982", "Burns under plaster casts, orthobullets.com/evidence/7085719", "", null, SourceStanding.Seen, "Water above 24 °C, more than eight layers or a pillow under the cast can bring a cast to temperatures that burn. Year from memory."),
        new("inhibitor-guides", "Suppliers' guides to cure inhibition of platinum silicones", "", null, SourceStanding.SeenQuoted, "Two guides and an electronics gel guide; lists differ, so test a patch first."),
        new("print-inhibition", "Notes of public workshop programs on fresh photopolymer prints and modelling clay", "", null, SourceStanding.SeenQuoted, "Cure the print fully, coat it clear; seal clay that holds sulphur with shellac."),
        new("cold-amine", "Amine film on epoxy cured in the cold", "marisystems.com", null, SourceStanding.SeenQuoted, "Wash it off; amines stop platinum cure."),
        new("limb-care", "Clinic leaflets on wearing in", "", null, SourceStanding.SeenQuoted, "Patch worn elsewhere for 3 to 4 days; redness gone within 30 minutes, else stop; three times half an hour for the first three days."),
    ];
}
