using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Mould;

/// <summary>What stops platinum-cured silicone from curing, and what may touch it instead.</summary>
public static class Inhibitors
{
    private static readonly IReadOnlyList<(string What, string Why, string Instead, string Source)> Rows =
    [
        ("sulphur: many modelling clays, vulcanised rubber, some plasters with additives", "binds the platinum", "sulphur-free clay; else seal it with shellac and test", "inhibitor-guides"),
        ("natural rubber: latex gloves, tubing, rubber bands, masking tape", "sulphur and amines", "polyethylene gloves or bare, washed hands", "inhibitor-guides"),
        ("nitrile, neoprene, vinyl, polyurethane, EPDM", "on at least one list each", "test your own glove on a patch", "inhibitor-guides"),
        ("tin-cured silicone and anything it has touched", "tin; neither cures on the other", "another bench, other tools, other cups", "inhibitor-guides"),
        ("amines: epoxy cured with amines or amides, its film from a cold cure", "binds the platinum", "wash the film off, cure warm, coat with acrylic lacquer, test", "cold-amine"),
        ("fresh photopolymer prints", "what is left of their starter", "wash, cure fully, coat clear, test", "print-inhibition"),
        ("arsenic, organic metals, some solders' flux", "binds the platinum", "keep away", "inhibitor-guides"),
        ("wet or sweating surfaces", "a film of water keeps it from wetting", "dry plaster through, wipe dew off", "inhibitor-guides"),
    ];

    /// <summary>Sealers and release agents that do not stop it, as far as the lists go; test a patch all the same.</summary>
    public static IReadOnlyList<string> Safe { get; } =
    [
        "plaster: dry it through, then two thin coats of clear acrylic lacquer, each left half an hour to flash off",
        "release: thin petroleum jelly rubbed to a haze, or polyvinyl alcohol film from water; no wax polish with unknown additives",
        "clay: sulphur-free, or shellac and then a patch",
        "cured silicone under fresh: it bonds, so a release film goes between where it must part",
    ];

    /// <summary>The list as a table.</summary>
    public static Table Table => new("keep away from uncured putty", [new("what", ""), new("why", ""), new("instead", ""), new("source", "")],
        [.. Rows.Select(r => (IReadOnlyList<Cell>)[r.What, r.Why, r.Instead, r.Source])]);
}
