using Graspwright.Hand;
using Graspwright.Moulding.Cure;
using Graspwright.Moulding.Heat;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>The clock with its plan, its answer and what is spoken.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Lines">Lines to be spoken, in order of time.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Spread">Spread of the five moments.</param>
public sealed record ClockResult(Answer Answer, IReadOnlyList<SpokenLine> Lines, ClockView Plan, IReadOnlyList<SpreadOutput> Spread);

/// <summary>What pictures and cards show of the plan.</summary>
/// <param name="Batches">Number of batches.</param>
/// <param name="Steps">Steps of one batch.</param>
/// <param name="Moments">The five moments [s].</param>
/// <param name="States">States on the way.</param>
/// <param name="Label">Work time and set time of the label [s].</param>
/// <param name="Fits">Whether the work fits.</param>
public sealed record ClockView(int Batches, IReadOnlyList<Graspwright.Moulding.Batch.WorkStep> Steps, IReadOnlyList<double> Moments, IReadOnlyList<CureState> States, (double Work, double Set) Label, bool Fits);

/// <summary>When it is mixed, firms and cures; whether the work fits; what would make it fit.</summary>
public static class ClockAnswer
{
    private static readonly string[] Keys = ["mixed_by", "firming", "hands_off", "off_mould", "leave_until"];
    private static readonly string[] Words = ["mixed by", "firming", "hands off", "off the mould at the earliest", "leave it until"];

    /// <summary>Words of the five moments.</summary>
    public static IReadOnlyList<string> MomentWords => Words;

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file, for errors.</param>
    /// <returns>The result, or what is missing for it.</returns>
    public static (ClockResult? Result, IReadOnlyList<InputError> Errors) Of(HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (MouldMapping.Missing(hand, file, liner: true) is { Count: > 0 } missing)
        {
            return (null, missing);
        }

        WorkPlan plan = WorkPlan.Fewest(hand);
        CureResult cure = CureClock.Run(plan.Inputs, record: true);
        IReadOnlyList<ClockRange> ranges = ClockRanges.Of(hand, plan.Inputs);
        IReadOnlyList<SpreadOutput> spread = Ranges.Spread(ClockRanges.Model(ranges, plan.Inputs), [.. ranges.Select(r => r.Range)], [.. cure.Moments.Select(m => m.Seconds)]);
        Answer answer = new()
        {
            Verb = "clock",
            Hand = hand.Name,
            Sentence = Sentence(plan, cure, spread),
            Figures = [.. Figures(plan, cure, spread)],
            Findings = [.. Findings(plan, cure, spread)],
            Tables = [.. Tables(hand, plan, cure, spread, ranges)],
            Cautions = MouldCautions.Clock,
        };
        ClockView view = new(plan.Batches, plan.Steps, [.. cure.Moments.Select(m => m.Seconds)], cure.States, (plan.Inputs.WorkTime, plan.Inputs.SetTime), plan.Fits);
        return (new(answer, SpokenLines.Of(plan, hand.Liner!), view, spread), []);
    }

    private static string Sentence(WorkPlan plan, CureResult cure, IReadOnlyList<SpreadOutput> spread)
    {
        string When(CureMoment m) => Minutes(cure[m].Seconds, spread[(int)m].Low, spread[(int)m].High);
        string chilled = plan.Inputs.Chill > 0 ? $" after {Minutes(plan.Inputs.Chill)} in the freezer as a {plan.Inputs.Shape.ToString().ToLowerInvariant()}" : "";
        string work = plan.Fits
            ? plan.Batches == 1 ? $"The work of {Minutes(plan.End)} fits." : $"The work fits in {plan.Batches} batches of {Minutes(plan.End)} each."
            : $"The work of {Minutes(plan.End)} does not fit, even in {plan.Batches} batches.";
        return $"In a room of {Celsius(plan.Inputs.Room)}{chilled} it firms at {When(CureMoment.Firming)} from the start of mixing, hands come off at {When(CureMoment.HandsOff)}, and it leaves the mould at {When(CureMoment.OffMould)} at the earliest. {work}";
    }

    private static IEnumerable<Figure> Figures(WorkPlan plan, CureResult cure, IReadOnlyList<SpreadOutput> spread)
    {
        for (int i = 0; i < Keys.Length; i++)
        {
            Located m = cure.Moments[i];
            Terms terms = new();
            string formula = $"({terms.Input("time_before", m.TimeBefore, "s")} + ({terms.Input("label_time_wanted", m.AgeWanted, "s")} - {terms.Input("label_time_before", m.AgeBefore, "s")})/{terms.Input("speed_there", m.Speed, "")})/60";
            yield return new(Keys[i], $"{Words[i]}, from the start of mixing", "min")
            {
                Value = m.Seconds / 60,
                Low = spread[i].Low / 60,
                High = spread[i].High / 60,
                Working = terms.Working(formula, MouldingSources.Clock),
            };
        }

        CureInputs x = plan.Inputs;
        if (x is { Chill: > 0, DewPoint: { } dew })
        {
            double length = x.FreezerTransfer > 0 ? cure.FreezerBiot * x.Conductivity / x.FreezerTransfer : 0;
            Terms biot = new();
            string text = $"{biot.Input("freezer_transfer", x.FreezerTransfer, "W/(m²·K)")}·{biot.Input("half_or_radius", length, "m")}/{biot.Input("conductivity", x.Conductivity, "W/(m·K)")}";
            yield return new("freezer_biot", "Biot number in the freezer", "") { Value = cure.FreezerBiot, Working = biot.Working(text, "carslaw-jaeger") };
            yield return new("chilled_mean", "mean temperature out of the freezer", "°C") { Value = cure.ChilledMean - Zero };
            yield return new("chilled_surface", "surface out of the freezer", "°C") { Value = cure.ChilledSurface - Zero };
            Terms terms = new();
            double humidity = Math.Exp((dew - Zero) * Dew.Factor / (Dew.Reach + dew - Zero) - (x.Room - Zero) * Dew.Factor / (Dew.Reach + x.Room - Zero));
            string g = $"(ln({terms.Input("humidity", humidity, "")}) + {terms.Input("a", Dew.Factor, "")}·{terms.Input("room", x.Room - Zero, "°C")}/({terms.Input("b", Dew.Reach, "°C")} + room))";
            yield return new("dew_point", "temperature below which dew settles", "°C") { Value = dew - Zero, Working = terms.Working($"b·{g}/(a - {g})", "magnus-sonntag-1990") };
        }

        yield return new("at_mixing", "temperature at the start of mixing", "°C") { Value = cure.AtMixing - Zero };
        yield return new("mixed_temperature", "temperature at the end of mixing", "°C") { Value = cure.Mixed - Zero };
    }

    private static IEnumerable<Finding> Findings(WorkPlan plan, CureResult cure, IReadOnlyList<SpreadOutput> spread)
    {
        yield return Deadline("mix", "mixing", plan.MixEnd, CureMoment.MixedBy, cure, spread, "must be one colour by", "Mix smaller batches, fold instead of stirring, or chill the parts.");
        yield return Deadline("shape", "rolling to hollows", plan.ShapeEnd, CureMoment.Firming, cure, spread, "firms from", "See the table of what would make it fit.");
        yield return Deadline("smooth", "smoothing", plan.End, CureMoment.HandsOff, cure, spread, "is left alone from", "See the table of what would make it fit.");
        CureInputs x = plan.Inputs;
        if (x is { Chill: > 0, DewPoint: { } dew })
        {
            double surface = cure.ChilledSurface - Zero, point = dew - Zero;
            if (cure.ChilledSurface < dew)
            {
                string dry = cure.DryAfter is { } seconds ? $"it would take {Clock(seconds)} in the room until none settles, and most of the chill is gone by then" : "in air this wet none dries";
                yield return new("dew", "chilled putty", Verdict.Fails, $"The parts come out at {Number(surface)} °C on the surface, below the dew point of {Number(point)} °C: water settles on them, keeps the folds apart and makes bubbles; {dry}.",
                    "Chill them wrapped airtight, wipe them dry before they meet, or chill less: see the table.")
                { Figure = surface, Limit = point, Unit = "°C" };
            }
            else
            {
                yield return new("dew", "chilled putty", Verdict.Good, $"The parts come out at {Number(surface)} °C, above the dew point of {Number(point)} °C: they stay dry.", "") { Figure = surface, Limit = point, Unit = "°C" };
            }

            if (cure.FreezerBiot > 0.1)
            {
                yield return new("uneven", "chilled putty", Verdict.Good, $"Out of the freezer it is {Number(cure.ChilledMiddle - Zero)} °C in the middle and {Number(surface)} °C outside: its Biot number of {Number(cure.FreezerBiot, 2)} is above 0.1, so heat conducted inside counts.", "");
            }
        }
    }

    private static Finding Deadline(string key, string subject, double end, CureMoment moment, CureResult cure, IReadOnlyList<SpreadOutput> spread, string words, string change)
    {
        double limit = cure[moment].Seconds, low = spread[(int)moment].Low, high = spread[(int)moment].High, margin = (limit - end) / limit;
        return new(key, subject, Verdicts.Of(margin, (low - end) / low, (high - end) / high), $"{char.ToUpperInvariant(subject[0])}{subject[1..]} ends at {Clock(end)}; it {words} {Clock(limit)} ({Clock(low)} to {Clock(high)}).", change)
        {
            Figure = end,
            Limit = limit,
            Unit = "s",
            Margin = margin,
        };
    }

    private static IEnumerable<Table> Tables(HandModel hand, WorkPlan plan, CureResult cure, IReadOnlyList<SpreadOutput> spread, IReadOnlyList<ClockRange> ranges)
    {
        yield return new("clock", [new("moment", ""), new("from the start of mixing", "min"), new("from", "min"), new("to", "min"), new("most of the spread", "")],
            [.. Words.Select((w, i) => (IReadOnlyList<Cell>)[w, cure.Moments[i].Seconds / 60, spread[i].Low / 60, spread[i].High / 60, Widest(spread[i], ranges)])]);
        yield return new("plan", [new("step", ""), new("from", ""), new("to", ""), new("deadline", "")],
            [.. plan.Steps.Select(s => (IReadOnlyList<Cell>)[s.Name, Clock(s.Start), Clock(s.End), DeadlineWords(s.Name, cure)])]);
        yield return FitWays.Table(hand, plan);
        foreach (Table table in CommonPractice.Tables(hand, plan))
        {
            yield return table;
        }
    }

    private static string DeadlineWords(string step, CureResult cure) => step switch
    {
        "mix" => $"one colour by {Clock(cure[CureMoment.MixedBy].Seconds)}",
        "hollows" => $"before it firms at {Clock(cure[CureMoment.Firming].Seconds)}",
        "smooth" => $"hands off at {Clock(cure[CureMoment.HandsOff].Seconds)}",
        _ => "",
    };

    private static string Widest(SpreadOutput o, IReadOnlyList<ClockRange> ranges)
    {
        double[] widths = [.. ranges.Select((_, i) => Math.Max(Math.Abs(o.AtLow[i] - o.Value), Math.Abs(o.AtHigh[i] - o.Value)))];
        int[] order = [.. Enumerable.Range(0, widths.Length).OrderByDescending(i => widths[i]).Take(2).Where(i => widths[i] > 0)];
        return Row([.. order.Select(i => ranges[i].Words)]);
    }
}
