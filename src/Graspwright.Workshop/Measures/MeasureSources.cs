using Graspwright.Hand;

namespace Graspwright.Workshop.Measures;

/// <summary>Sources that the measures rest on; those of a hand's defaults are in <see cref="Source.All"/>.</summary>
public static class MeasureSources
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("drive-model", "The drive's equilibrium, derived in docs/physics.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Minimum of potential energy with Coulomb friction; checked against published linkages and an independent program."),
        new("frey-law-avin-2010", "Endurance time is joint-specific, 10.1080/00140130903389068", "Frey Law & Avin", 2010, SourceStanding.SeenQuoted,
            "Hand and grip: 33.55·f^−1.61 s; most data above 25 % of maximum; prediction band ±29 to 47 %. Table 2 seen quoted, abstract seen."),
        new("holding-statics", "Balance of a held object inside friction cones, derived in docs/jobs.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Coulomb friction, balance in space; checked against closed forms and an independent solver."),
        new("room-sweep", "Smallest gaps of moving parts, derived in docs/jobs.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Capsules swept with bounds on their speed; checked against dense sampling."),
        new("rohmert-1960", "Rohmert's endurance curve as later fitted", "Rohmert", 1960, SourceStanding.SeenQuoted,
            "−1.5 + 2.1/f − 0.6/f² + 0.1/f³ min, f from 0.15; the original was not seen."),
    ];
}
