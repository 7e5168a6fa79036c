using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Effort;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measuring;

/// <summary>What in a filled sheet is sound, what is doubtful and what is missing.</summary>
internal static class MeasuringFindings
{
    // Share of the greatest moment below which the wrist counts as giving nothing. Common practice, no source.
    private const double Nothing = 0.05;

    /// <summary>Every finding.</summary>
    /// <param name="wearer">What was measured.</param>
    public static IReadOnlyList<Finding> Of(MeasuredWearer wearer)
    {
        var found = new List<Finding>();
        foreach (DirectionPulls pulls in wearer.Pulls)
        {
            found.AddRange(pulls.Angles.Where(a => !pulls.Statistics.Agree(a)).Select(a => Disagree(pulls, a)));
            found.AddRange(OneTry(pulls));
            if (pulls.Statistics.Scatter > TryStatistics.WideScatter)
            {
                found.Add(new("tries_scatter", pulls.Direction.Word(), Verdict.Tight,
                    Say($"Tries toward {Way(pulls)} scatter by {100 * pulls.Statistics.Scatter:0} % of their mean; {100 * TryStatistics.WideScatter:0} % is already much."),
                    "Rest two minutes between pulls, hold the same posture, and read the greatest steady pull over three seconds.")
                { Figure = 100 * pulls.Statistics.Scatter, Limit = 100 * TryStatistics.WideScatter, Unit = "%", Margin = 1 - pulls.Statistics.Scatter / TryStatistics.WideScatter });
            }

            if (pulls.Direction == Measurement.Flexion == (wearer.Hand.Wrist.Direction == DrivingDirection.Flexion))
            {
                found.AddRange(OverTravel(wearer.Hand, pulls));
            }
        }

        found.AddRange(wearer.Groups(Measurement.Range).SelectMany(g => Range(wearer.Hand, g)));
        found.AddRange(wearer.Groups(Measurement.Hold).SelectMany(Held));
        if (wearer.Give is { } give && !double.IsFinite(give.Cuff))
        {
            found.Add(new("cuff_give", "cuff", Verdict.NotKnown,
                Say($"The dial shows less give ({MeasuredWearer.PerDegree(give.Total):0.##} N·m a degree in all) than the hand file gives the shell alone ({MeasuredWearer.PerDegree(give.Shell):0.##})."),
                "Check the dial's foot and its distance from the wrist's axis, or measure the shell by itself."));
        }
        else if (wearer.Give is null && wearer.Readings.Any(r => r.Measurement == Measurement.Give))
        {
            found.Add(new("cuff_give", "cuff", Verdict.NotKnown, "The give of the cuff cannot be fitted: it takes three loading readings whose dial rises with the pull.",
                "Block the fingers, and read the dial at five pulls, rising, then falling."));
        }

        return found;
    }

    /// <summary>Which way a direction bends, in words.</summary>
    /// <param name="pulls">The pulls.</param>
    internal static string Way(DirectionPulls pulls) => pulls.Direction == Measurement.Flexion ? "the palm" : "the back of the hand";

    private static Finding Disagree(DirectionPulls pulls, AngleTries angle)
    {
        double limit = pulls.Statistics.CriticalRange(angle);
        return new("tries_disagree", Say($"{pulls.Direction.Word()} at {angle.AngleDegrees:0.#}°"), Verdict.NotKnown,
            Say($"At {angle.AngleDegrees:0.#}° toward {Way(pulls)} the tries read {string.Join(", ", angle.Moments.Select(m => Say($"{m:0.0}")))} N·m: {angle.Range:0.0} apart, where chance explains {limit:0.0}. They are not averaged, and this angle is left out."),
            "Rest, then pull three times again at this angle; if it hurts there, stop and say so to a clinician.")
        { Figure = angle.Range, Limit = limit, Unit = "N·m", Margin = 1 - angle.Range / limit };
    }

    private static IEnumerable<Finding> OneTry(DirectionPulls pulls)
    {
        string[] single = [.. pulls.Angles.Where(a => a.Moments.Count == 1).Select(a => Say($"{a.AngleDegrees:0.#}°"))];
        if (single.Length > 0)
        {
            yield return new("one_try", pulls.Direction.Word(), Verdict.NotKnown,
                $"Toward {Way(pulls)} there is one try only at {string.Join(", ", single)}: how far a second would lie from it is not known.", "Pull three times at each angle.");
        }
    }

    private static IEnumerable<Finding> OverTravel(HandModel hand, DirectionPulls pulls)
    {
        (double low, double high) = Travel(hand);
        if (pulls.Peak is { } peak)
        {
            AngleTries? none = pulls.Agreeing.FirstOrDefault(a => a.AngleDegrees >= low && a.AngleDegrees <= high && a.Mean <= Nothing * peak.Mean);
            if (none is not null)
            {
                yield return new("capacity_gone", Say($"{pulls.Direction.Word()} at {none.AngleDegrees:0.#}°"), Verdict.Fails,
                    Say($"At {none.AngleDegrees:0.#}°, inside the travel of {low:0.#}° to {high:0.#}°, the wrist gives {none.Mean:0.0} N·m, next to nothing: the hand cannot grip there."),
                    "Move the start posture or shorten wrist.travel so that the travel lies where the wrist has strength.")
                { Figure = none.Mean, Limit = Nothing * peak.Mean, Unit = "N·m", Margin = none.Mean / (Nothing * peak.Mean) - 1 };
            }
        }

        double first = pulls.Angles.Min(a => a.AngleDegrees), last = pulls.Angles.Max(a => a.AngleDegrees);
        if (first > low + 1e-6 || last < high - 1e-6)
        {
            yield return new("travel_not_covered", pulls.Direction.Word(), Verdict.NotKnown,
                Say($"Pulls were measured from {first:0.#}° to {last:0.#}°; the travel runs from {low:0.#}° to {high:0.#}°. Outside, the nearest value is taken."), "Measure every 10° over the whole travel.");
        }
    }

    private static IEnumerable<Finding> Range(HandModel hand, IGrouping<(string Where, string When), Reading> group)
    {
        (double low, double high) = Travel(hand);
        double reach = double.RadiansToDegrees(group.Average(r => r.Value));
        double wanted = group.Key.Where switch { "flexion" => high, "extension" => -low, _ => double.NaN };
        if (double.IsNaN(wanted) || wanted <= 0)
        {
            yield break;
        }

        double margin = reach / wanted - 1;
        yield return new("loaded_range", group.Key.Where, Verdicts.Of(margin),
            Say($"Loaded, the wrist reaches {reach:0}° of {group.Key.Where}; the hand's travel asks for {wanted:0}°."), "Shorten wrist.travel, or move wrist.start.")
        { Figure = reach, Limit = wanted, Unit = "deg", Margin = margin };
    }

    private static IEnumerable<Finding> Held(IGrouping<(string Where, string When), Reading> group)
    {
        if (!Share(group.Key.Where, out double share))
        {
            yield return new("hold_share", group.Key.Where, Verdict.NotKnown, $"'{group.Key.Where}' does not tell which share of the greatest pull was held.", "Write the share as the empty sheet does: 25 %.");
            yield break;
        }

        double held = group.Average(r => r.Value);
        HoldingTime band = Endurance.Hold(share);
        if (band.Reach is EnduranceReach.AboveMaximum or EnduranceReach.LongerThan)
        {
            yield return new("hold_share", group.Key.Where, Verdict.NotKnown, Say($"The published curves reach from {100 * Endurance.LowestShare:0} to 100 % of the greatest pull; {group.Key.Where} lies outside."), "Hold 25 % and 50 %.");
            yield break;
        }

        bool below = held < band.Low, above = held > band.High;
        string place = below ? "sooner than" : above ? "longer than" : "as long as";
        yield return new("hold_time", group.Key.Where, below ? Verdict.Tight : Verdict.Good,
            Say($"{group.Key.Where} of the greatest pull was held {held:0} s, {place} the published curves say ({band.Low:0} to {band.High:0} s)."),
            "Lower wrist.all_day_share if the day proves it; the curves are of whole arms.")
        { Figure = held, Limit = band.Low, Unit = "s", Margin = held / band.Low - 1 };
    }

    /// <summary>The share of a hold, as written.</summary>
    /// <param name="text">Text such as <c>25 %</c>.</param>
    /// <param name="share">The share.</param>
    internal static bool Share(string text, out double share)
    {
        bool known = Hand.Quantity.TryParse(text, Dimension.Number, out Hand.Quantity? quantity, out _);
        share = known ? quantity!.Si : double.NaN;
        return known && share > 0;
    }

    /// <summary>The wrist's travel as anatomical angles [deg].</summary>
    /// <param name="hand">The hand.</param>
    internal static (double Low, double High) Travel(HandModel hand)
    {
        double start = double.RadiansToDegrees(hand.Wrist.StartRadians), travel = double.RadiansToDegrees(hand.Wrist.TravelRadians);
        return hand.Wrist.Direction == DrivingDirection.Flexion ? (start, start + travel) : (start - travel, start);
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
