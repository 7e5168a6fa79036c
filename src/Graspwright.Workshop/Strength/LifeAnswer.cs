using Graspwright.Hand;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>Puts an answer about life together.</summary>
internal static class LifeAnswer
{
    private const double ShortDays = 21, LongDays = 120; // common practice, no source
    private const double DegreesForPlay = 2; // common practice, no source
    private const double YearDays = 365;

    /// <summary>The answer.</summary>
    public static Answer Compose(LifeQuestion question, GripLoads loads, IReadOnlyList<HandBand> bands)
    {
        HandModel hand = question.Hand;
        HandBand own = bands[0];
        string? why = LifeModel.NoUse(hand.Structure.Use, loads);
        HingeLife? weakest = why is null ? LifeModel.Weakest(own) : null;
        List<Table> tables = [];
        if (weakest is not null)
        {
            tables.AddRange(
            [
                LifeTables.Hinges(own), LifeTables.Side(hand, bands), LifeTables.Damage(weakest),
                LifeTables.Dimensions(LifeSensitivity.OfDimensions(hand, loads, question.Seed)), LifeTables.Assumptions(LifeSensitivity.OfAssumptions(hand, loads, question.Seed)),
                LifeTables.Wear(hand, loads),
            ]);
        }

        return new()
        {
            Verb = "lasts",
            Hand = hand.Name,
            Sentence = Sentence(hand, loads, bands, why),
            Figures = [StrengthFigures.FirstFailure(own.FirstBreak, why), StrengthFigures.DailyDamage(own, why), StrengthFigures.MovingMass(hand), StrengthFigures.PartsCount(hand)],
            Findings = [.. Findings(hand, loads, bands, why).DistinctBy(f => f.Reason)],
            Tables = [.. tables, LifeTables.Looking, Breaking.Guesses(hand)],
            Cautions =
            [
                "No published count of grips or knocks a day was found: the counts behind these lives are assumptions. Count your own for a week first.",
                "These lives are computed, not seen. One hand that lasted, or did not, proves nothing either way: keep a log of parts.",
                .. Cautions.All,
            ],
        };
    }

    private static string Sentence(HandModel hand, GripLoads loads, IReadOnlyList<HandBand> bands, string? why)
    {
        if (why is not null)
        {
            return $"No life can be given for the {hand.Name}: {why}. Fill in [use] of the hand file.";
        }

        HandBand own = bands[0];
        HingeBand first = own.Hinges.MaxBy(h => h.First)!;
        string band = Band(own.FirstBreak), counted = loads.HistoryCycles > 0 ? $", with {Say.Number(loads.HistoryCycles)} cycles counted in the history" : "";
        string others = string.Concat(bands.Skip(1).Select(b => $" With fingers and base of {b.Material} it is {Band(b.FirstBreak)}."));
        return $"On the assumed day of wear{counted} the first hinge of this hand breaks after {band} of wear (eight cases in ten), most likely the {Say.Position(first.Position)} ({Say.Number(100 * first.First)} in 100), at its {LifeTables.Part(first.Weakest.Part)}.{others}";
    }

    private static string Band(double[] sorted)
    {
        string low = Say.Days(SampledLives.Quantile(sorted, 0.1)), high = Say.Days(SampledLives.Quantile(sorted, 0.9));
        return low == high ? low : $"{low} to {high}";
    }

    private static IEnumerable<Finding> Findings(HandModel hand, GripLoads loads, IReadOnlyList<HandBand> bands, string? why)
    {
        foreach (string lost in loads.Lost)
        {
            yield return new("grip_not_run", lost, Verdict.NotKnown, $"The grip on the {lost} could not be run, so its wear is missing here.", "See grip for what stops it.");
        }

        if (why is not null)
        {
            yield return new("no_use", "day of wear", Verdict.NotKnown, char.ToUpperInvariant(why[0]) + why[1..] + ".", "Give grips or knocks in [use].");
            yield break;
        }

        foreach (HandBand band in bands)
        {
            HandModel made = band == bands[0] ? hand : Lasting.InMaterial(hand, band.Material);
            yield return Practice(band, made.Structure.Hinges.Any(h => new Materials(made).Of(h.FingerMaterial).SourceKeys.Contains("print-slopes")) ? ShortDays : LongDays);
        }

        double[][] perDay = WearCourse.PerDay(hand, loads);
        if (loads.Reference is { } run && WearCourse.DeadTravelOf(WearCourse.After(hand, perDay, YearDays), run) is var lostDegrees && double.IsFinite(lostDegrees))
        {
            double margin = 1 - lostDegrees / DegreesForPlay;
            yield return new("play_after_a_year", "finger hinges", Verdicts.Of(margin),
                $"After a year of wear the play of all pins costs {Say.Number(lostDegrees)}° of wrist at each reversal, the finger pins worn as computed and the others as the file says; makers accept about {Say.Number(DegreesForPlay)}° (common practice, no source).",
                "Bushings of oiled bronze in the ears, and a drop of oil on Sundays.")
            {
                Figure = lostDegrees,
                Limit = DegreesForPlay,
                Unit = "deg",
                Margin = margin,
            };
        }
    }

    /// <summary>A band beside what makers tell; judged by the middle, and tight where the band holds it.</summary>
    private static Finding Practice(HandBand band, double days)
    {
        double low = SampledLives.Quantile(band.FirstBreak, 0.1), middle = SampledLives.Quantile(band.FirstBreak, 0.5), high = SampledLives.Quantile(band.FirstBreak, 0.9);
        string told = days < LongDays ? "about three weeks of printed fingers worn daily" : "four months of metal ones without a break";
        string where = days < low ? "below" : days > high ? "above" : "inside";
        return new("beside_practice", band.Material, Verdicts.Of(middle / days - 1, low / days - 1, double.IsFinite(high) ? high / days - 1 : double.MaxValue),
            $"Makers tell of {told} ({Say.Number(days)} days; one maker's experience, common practice, no source). Computed for {band.Material}: {Band(band.FirstBreak)}, half of them within {Say.Days(middle)}; the told life lies {where} this band.",
            "Keep a log of every part fitted, broken or still whole, and let it correct this.")
        {
            Figure = middle,
            Limit = days,
            Unit = "days",
            Margin = middle / days - 1,
        };
    }
}
