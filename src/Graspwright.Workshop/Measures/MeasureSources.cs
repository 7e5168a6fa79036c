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
        new("change-arithmetic", "Gains of changes alone, together and left out, in docs/changes.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Differences of computed values; checked against lists made by hand whose items add, cancel and multiply."),
        new("measured", "The filled measuring sheet", "the wearer and a helper", null, SourceStanding.Chosen, "What was read on the wearer; see docs/measuring.md."),
        new("bystrom-1994", "Intermittent hand grips", "Byström & Fransson-Hall", 1994, SourceStanding.SeenQuoted, "Mean load below 17 % of maximum."),
        new("potvin-2012", "Maximum acceptable efforts for repetitive tasks", "Potvin", 2012, SourceStanding.FromMemory, "1 − (DC − 1/28800)^0.24; error of 7.05 % of maximum seen."),
        new("farrell-weir-2007", "Optimal controller delay, 10.1109/TNSRE.2007.891391", "Farrell & Weir", 2007, SourceStanding.Seen, "Best delay 100 to 125 ms; the longer is taken."),
        new("vice-practice", "Loads and cycles of vice tests", "", null, SourceStanding.Chosen, "1.5 to 2 times the peak, ten cycles, 2 mm of creep: common practice, no source."),
        new("rohmert-1960", "Rohmert's endurance curve as later fitted", "Rohmert", 1960, SourceStanding.SeenQuoted,
            "−1.5 + 2.1/f − 0.6/f² + 0.1/f³ min, f from 0.15; the original was not seen."),
    ];
}
