using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Effort;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measuring;

/// <summary>What is told about a measuring sheet.</summary>
public static class MeasuringAnswer
{
    /// <summary>Cautions of measuring.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Pull steadily, never with a jerk. Stop at pain; tingling, numbness or pain at night means stop and see a clinician.",
        "Numb, grafted or freshly operated skin, or a wound: a clinician decides first whether any of this may be done.",
        "Whoever measures somebody else asks for consent, says what it is for, and stops when told to.",
    ];

    /// <summary>The empty sheet was written.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="files">What was written.</param>
    public static Answer Written(HandModel hand, IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(hand);
        IReadOnlyList<double> angles = Protocol.Angles(hand);
        int pulls = 2 * angles.Count * Protocol.Tries;
        return new()
        {
            Verb = "measure",
            Hand = hand.Name,
            Sentence = Say($"The measuring sheet is in {string.Join(" and ", files)}: {Protocol.Lines(hand).Count} readings, of which {pulls} are pulls at {angles.Count} wrist angles from {angles[0]:0}° to {angles[^1]:0}°. Spread the pulls over two days; then type the values into the CSV and read it back with --read."),
            Cautions = Cautions,
        };
    }

    /// <summary>The units of a sheet must have been mistaken.</summary>
    /// <param name="wearer">What was measured.</param>
    /// <param name="file">The sheet's file.</param>
    public static IReadOnlyList<InputError> Doubts(MeasuredWearer wearer, string file)
    {
        ArgumentNullException.ThrowIfNull(wearer);
        var doubts = new List<InputError>();
        foreach (DirectionPulls pulls in wearer.Pulls)
        {
            double greatest = pulls.Angles.Max(a => a.Mean);
            IReadOnlyList<UnitSlip> slips = Plausibility.Explain(pulls.Direction, greatest);
            if (slips.Count == 0)
            {
                continue;
            }

            Reading first = wearer.Readings.First(r => r.Measurement == pulls.Direction);
            doubts.Add(new(file, first.Line, 0, "value, unit, lever, lever_unit",
                Say($"the greatest moment toward {MeasuringFindings.Way(pulls)} comes to {greatest:0.###} N·m; people measured {Plausibility.Middle(pulls.Direction) * Math.Exp(-2 * Plausibility.LogDeviation):0.#} to {Plausibility.Middle(pulls.Direction) * Math.Exp(2 * Plausibility.LogDeviation):0.#}"),
                "units as the scale and the rule show them",
                $"Was it that {string.Join("; or that ", slips.Take(3).Select(s => $"{s.Words} ({s.Fix})"))}? If every unit is right, read it with --as-written."));
        }

        return doubts;
    }

    /// <summary>A sheet was read.</summary>
    /// <param name="wearer">What was measured.</param>
    /// <param name="replacements">What it would replace.</param>
    /// <param name="applied">The hand as it then is; <see langword="null"/> = nothing was changed.</param>
    /// <param name="after">The hand as it would be.</param>
    public static Answer Read(MeasuredWearer wearer, IReadOnlyList<Replacement> replacements, bool applied, HandModel after)
    {
        ArgumentNullException.ThrowIfNull(wearer);
        ArgumentNullException.ThrowIfNull(replacements);
        ArgumentNullException.ThrowIfNull(after);
        return new()
        {
            Verb = "measure",
            Hand = wearer.Hand.Name,
            Sentence = Sentence(wearer, replacements, applied),
            Figures = MeasuringFigures.Of(wearer),
            Findings = MeasuringFindings.Of(wearer),
            Tables = [.. wearer.Pulls.Select(p => Capacity(wearer.Hand, p)), Holds(wearer), Give(wearer), Girths(wearer), Others(wearer), Replaced(replacements), Grip.RunTables.Guesses(after)],
            Cautions = Cautions,
        };
    }

    private static string Sentence(MeasuredWearer wearer, IReadOnlyList<Replacement> replacements, bool applied)
    {
        var parts = new List<string>();
        foreach (DirectionPulls pulls in wearer.Pulls)
        {
            if (pulls.Peak is { } peak)
            {
                double half = pulls.Statistics.HalfWidth(peak);
                string sure = double.IsFinite(half) ? Say($" (± {half:0.0})") : " (one try, spread not known)";
                parts.Add(Say($"Toward {MeasuringFindings.Way(pulls)} this wrist gives up to {peak.Mean:0.0}{sure} N·m, at {peak.AngleDegrees:0.#}°."));
            }

            string[] apart = [.. pulls.Angles.Where(a => !pulls.Statistics.Agree(a)).Select(a => Say($"{a.AngleDegrees:0.#}°"))];
            if (apart.Length > 0)
            {
                parts.Add($"Tries disagree at {string.Join(", ", apart)}: pull there again.");
            }
        }

        if (parts.Count == 0)
        {
            parts.Add($"{wearer.Readings.Count} readings, and no pull of the wrist among them.");
        }

        string count = replacements.Count == 1 ? "1 value" : $"{replacements.Count} values";
        parts.Add(replacements.Count == 0 ? "Nothing in the hand file is replaced."
            : applied ? $"{count} of the hand file {(replacements.Count == 1 ? "was" : "were")} replaced." : $"{count} of the hand file would be replaced; --apply does it.");
        return string.Join(' ', parts);
    }

    private static Table Capacity(HandModel hand, DirectionPulls pulls)
    {
        MomentTable now = pulls.Direction == Measurement.Flexion ? hand.Wrist.FlexionCapacity : hand.Wrist.ExtensionCapacity;
        Mechanics.Drive.MomentTable table = new(now.AnglesRadians, now.MomentsNewtonMetres);
        int tries = Math.Max(1, pulls.Angles.Max(a => a.Moments.Count));
        Column[] columns =
        [
            new("wrist", "deg"), .. Enumerable.Range(1, tries).Select(t => new Column($"try {t}", "N·m")), new("mean", "N·m"), new("sd", "N·m"), new("low", "N·m"), new("high", "N·m"), new("in file", "N·m"), new("tries", ""),
        ];
        return new($"pulls toward {MeasuringFindings.Way(pulls)}", columns,
        [
            .. pulls.Angles.Select(a =>
            {
                bool agree = pulls.Statistics.Agree(a);
                double half = pulls.Statistics.HalfWidth(a);
                Cell mean = agree ? a.Mean : double.NaN, deviation = agree ? a.Deviation : double.NaN;
                Cell low = agree ? a.Mean - half : double.NaN, high = agree ? a.Mean + half : double.NaN;
                return (IReadOnlyList<Cell>)
                [
                    a.AngleDegrees, .. Enumerable.Range(0, tries).Select(t => (Cell)(t < a.Moments.Count ? a.Moments[t] : double.NaN)), mean, deviation, low, high,
                    table.At(double.DegreesToRadians(a.AngleDegrees)), a.Moments.Count == 1 ? "one only" : agree ? "agree" : "disagree",
                ];
            }),
        ]);
    }

    private static Table Holds(MeasuredWearer wearer) => new("holding against published curves",
        [new("share", ""), new("held", "s"), new("hand and grip law", "s"), new("Rohmert", "s"), new("band low", "s"), new("band high", "s")],
        [
            .. wearer.Groups(Measurement.Hold).Where(g => MeasuringFindings.Share(g.Key.Where, out double s) && s <= 1).Select(g =>
            {
                _ = MeasuringFindings.Share(g.Key.Where, out double share);
                HoldingTime band = Endurance.Hold(share);
                return (IReadOnlyList<Cell>)[g.Key.Where, g.Average(r => r.Value), band.HandGrip, band.Rohmert, band.Low, band.High];
            }),
        ]);

    private static Table Give(MeasuredWearer wearer) => new("give with the fingers blocked", [new("", ""), new("moment", "N·m"), new("angle", "deg")],
        [.. wearer.Readings.Where(r => r.Measurement == Measurement.Give).Select(r => (IReadOnlyList<Cell>)[r.When, r.Moment, double.RadiansToDegrees(r.GiveRadians)])]);

    private static Table Girths(MeasuredWearer wearer) => new("girths", [new("place", ""), new("morning", "mm"), new("evening", "mm"), new("evening more", "%")],
        [
            .. wearer.Readings.Where(r => r.Measurement == Measurement.Girth).GroupBy(r => r.Where).Select(g =>
            {
                double morning = Mean(g, "morning"), evening = Mean(g, "evening");
                return (IReadOnlyList<Cell>)[g.Key, 1000 * morning, 1000 * evening, 100 * (evening / morning - 1)];
            }),
        ]);

    private static double Mean(IEnumerable<Reading> readings, string when) => readings.Where(r => r.When == when).Select(r => r.Value).DefaultIfEmpty(double.NaN).Average();

    private static Table Others(MeasuredWearer wearer) => new("lengths, thumb and range", [new("what", ""), new("where", ""), new("value", ""), new("unit", "")],
        [
            .. wearer.Readings.Where(r => r.Measurement is Measurement.Length or Measurement.StumpX or Measurement.StumpY or Measurement.ThumbPinch or Measurement.Range || Protocol.ThumbReadings.Contains(r.Measurement))
                .GroupBy(r => (r.Measurement, r.Where)).Select(g => (IReadOnlyList<Cell>)
                [
                    g.Key.Measurement.Word(), g.Key.Where,
                    g.Average(r => r.Value) * (g.Key.Measurement == Measurement.ThumbPinch ? 1 : g.Key.Measurement == Measurement.Range ? 180 / Math.PI : 1000),
                    g.Key.Measurement == Measurement.ThumbPinch ? "N" : g.Key.Measurement == Measurement.Range ? "deg" : "mm",
                ]),
        ]);

    private static Table Replaced(IReadOnlyList<Replacement> replacements) => new("replaced by measurement", [new("path", ""), new("now", ""), new("measured", "")],
        [.. replacements.Select(r => (IReadOnlyList<Cell>)[r.Path, r.WasGuess ? $"{r.Before} (guessed)" : r.Before, r.After])]);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
