using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Effort;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Dose;

/// <summary>One way to spend a day of grips.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Grips">Its grips.</param>
/// <param name="Day">How much the hand is used.</param>
internal sealed record DoseDay(string Name, IReadOnlyList<GripLoad> Grips, Use Day)
{
    /// <summary>What it asks of the wrist.</summary>
    public DayLoadResult Load { get; } = DayLoad.Of(Grips, Day.WornSeconds);

    /// <summary>How many grips of this kind, all in the same proportions, bring the mean to a share of capacity.</summary>
    /// <param name="mean">The share.</param>
    public double GripsAt(double mean) => Load.MeanShare > 0 ? Grips.Sum(g => g.Times) * mean / Load.MeanShare : double.PositiveInfinity;

    /// <summary>The worst of its verdicts.</summary>
    public Verdict Worst() => Findings().Select(f => f.Verdict).DefaultIfEmpty(Verdict.NotKnown).MaxBy(v => v switch { Verdict.Fails => 3, Verdict.NotKnown => 2, Verdict.Tight => 1, _ => 0 });

    /// <summary>Loads against the published limits: good below the band, tight inside it, failing above.</summary>
    public IReadOnlyList<Finding> Findings()
    {
        if (double.IsNaN(Load.MeanShare))
        {
            return
            [
                new("dose_time", Name, Verdict.Fails, Say($"{Grips.Sum(g => g.Times):0} grips take longer than the {Day.WornSeconds / 3600:0.#} h that the hand is at work."), "Check use.grips, use.hold and use.worn."),
            ];
        }

        return
        [
            Judge("dose_mean", "on average over the day", Load.MeanShare, DayLoad.MeanLow, DayLoad.MeanHigh, "Fewer grips, shorter holds, or a lock that holds while the wrist relaxes."),
            Judge("dose_peak", "in the hardest grip", Load.PeakShare, DayLoad.PeakLow, DayLoad.PeakHigh, "Grip at the all-day effort, or gear the drive so that less wrist makes the same grip."),
            Judge("dose_static", "without ever letting up", Load.StaticShare, DayLoad.StaticLow, DayLoad.StaticHigh, "Let go between grips; lock for long holds."),
            Duty(),
        ];
    }

    /// <summary>Figures of the day.</summary>
    public IReadOnlyList<Figure> Figures()
    {
        if (double.IsNaN(Load.MeanShare))
        {
            return [new("mean_load", "load on average over the day", "%") { Why = "the grips take longer than the day" }];
        }

        Terms mean = new(), duty = new(), limit = new();
        for (int i = 0; i < Grips.Count; i++)
        {
            GripLoad g = Grips[i];
            string times = mean.Input($"times_{i + 1}", g.Times, ""), share = mean.Input($"effort_{i + 1}", 100 * g.Share, "%"), hold = mean.Input($"hold_{i + 1}", g.HoldSeconds, "s"), close = mean.Input($"close_{i + 1}", g.CloseSeconds, "s");
            mean.Add($"{times}·{share}·({hold} + {close}/2)");
            duty.Add($"{duty.Input($"times_{i + 1}", g.Times, "")}·({duty.Input($"hold_{i + 1}", g.HoldSeconds, "s")} + {duty.Input($"close_{i + 1}", g.CloseSeconds, "s")})");
        }

        string allowed = limit.Input("grips", Grips.Sum(g => g.Times), ""), now = limit.Input("mean_load", 100 * Load.MeanShare, "%"), low = limit.Input("limit", 100 * DayLoad.MeanLow, "%");
        Terms acceptable = new();
        string share100 = acceptable.Input("duty_cycle", 100 * Load.DutyShare, "%");
        return
        [
            new("mean_load", "load on average over the day", "%") { Value = 100 * Load.MeanShare, Working = mean.Working($"({mean.Sum})/{mean.Input("at_work", Day.WornSeconds, "s")}", "jonsson-levels") },
            new("duty_cycle", "share of the time under load", "%") { Value = 100 * Load.DutyShare, Working = duty.Working($"100·({duty.Sum})/{duty.Input("at_work", Day.WornSeconds, "s")}", "jonsson-levels") },
            new("peak_load", "effort of the hardest grip", "%") { Value = 100 * Load.PeakShare, Working = Peak() },
            new("acceptable_peak", "greatest effort acceptable at this duty cycle", "%") { Value = 100 * Load.AcceptableShare, Working = acceptable.Working($"100·(1 - max(0, {share100}/100 - 1/28800)^0.24)", "potvin-2012") },
            new("grips_to_limit", "grips a day at which the mean reaches the published limit", "")
            {
                Value = double.IsFinite(GripsAt(DayLoad.MeanLow)) ? GripsAt(DayLoad.MeanLow) : null,
                Low = double.IsFinite(GripsAt(DayLoad.MeanLow)) ? GripsAt(DayLoad.MeanLow) : null,
                High = double.IsFinite(GripsAt(DayLoad.MeanHigh)) ? GripsAt(DayLoad.MeanHigh) : null,
                Working = double.IsFinite(GripsAt(DayLoad.MeanLow)) ? limit.Working($"{allowed}·{low}/{now}", "jonsson-levels") : null,
                Why = double.IsFinite(GripsAt(DayLoad.MeanLow)) ? null : "there is no load",
            },
        ];
    }

    private Working Peak()
    {
        Terms terms = new();
        for (int i = 0; i < Grips.Count; i++)
        {
            terms.Add(terms.Input($"effort_{i + 1}", 100 * Grips[i].Share, "%"));
        }

        return terms.Working(terms.Greatest, "jonsson-levels");
    }

    private Finding Judge(string key, string when, double share, double low, double high, string change)
    {
        Verdict verdict = share > high + 1e-9 ? Verdict.Fails : share > low + 1e-9 ? Verdict.Tight : Verdict.Good;
        return new(key, Name, verdict, Say($"{Name}: {100 * share:0.0} % of the wrist's strength {when}; the published limit is {100 * low:0} to {100 * high:0} %."), change)
        { Figure = 100 * share, Limit = 100 * low, Unit = "%", Margin = 1 - share / low };
    }

    private Finding Duty()
    {
        double margin = Margin(Load.AcceptableShare);
        return new("dose_duty", Name, Verdicts.Of(margin, Margin(Load.AcceptableShare - DayLoad.AcceptableError), Margin(Load.AcceptableShare + DayLoad.AcceptableError)),
            Say($"{Name}: under load {100 * Load.DutyShare:0.0} % of the time, where {100 * Load.AcceptableShare:0} % of strength is acceptable by Potvin's equation (error 7 % of strength); the grips take {100 * Load.PeakShare:0} %."),
            "Fewer grips, shorter holds, or less effort in each.")
        { Figure = 100 * Load.PeakShare, Limit = 100 * Load.AcceptableShare, Unit = "%", Margin = margin };

        double Margin(double acceptable) => acceptable > 0 ? 1 - Load.PeakShare / acceptable : -1;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
