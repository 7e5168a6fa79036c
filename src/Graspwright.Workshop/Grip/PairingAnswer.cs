using System.Globalization;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Grip;

/// <summary>Do the three ways to pair four fingers differ; if so where, and why?</summary>
public static class PairingAnswer
{
    /// <summary>Relative difference of grip below which pairings count as the same.</summary>
    private const double SameGrip = 1e-3;

    /// <summary>Relative difference of grip that is the rounding of the run.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Difference of the wrist angle of all touch below which pairings count as the same [rad].</summary>
    private const double SameAngle = 2e-4;

    /// <summary>Adds the comparison to an answer.</summary>
    /// <param name="question">The question that was answered.</param>
    /// <param name="result">Its result.</param>
    /// <returns>The result with a table, a finding for each pairing and a sentence; unchanged where nothing could be run.</returns>
    public static GripResult Add(GripQuestion question, GripResult result)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(result);
        if (result.Answer is not { } answer)
        {
            return result;
        }

        IReadOnlyList<Pairing> pairings = Pairing.All(question.Hand);
        if (pairings.Count == 0)
        {
            return result with { Answer = answer with { Sentence = $"{answer.Sentence} Pairings are compared for four fingers on bars; this hand has {question.Hand.Fingers.Count}." } };
        }

        List<(Pairing Pairing, IReadOnlyList<GripCase> Cases)> runs = [];
        foreach (Pairing pairing in pairings)
        {
            GripResult one = Gripping.Answer(question with { Hand = question.Hand with { Balance = pairing.Tree } });
            runs.Add((pairing, one.Cases));
        }

        return result with
        {
            Answer = answer with
            {
                Sentence = $"{answer.Sentence} {Verdict(runs)}",
                Findings = [.. answer.Findings, .. runs.Select(r => Built(r.Pairing))],
                Tables = [.. answer.Tables, Compare(runs)],
            },
        };
    }

    private static Finding Built(Pairing pairing) => pairing.Stacked is null
        ? new("pairing", pairing.Words, Results.Verdict.Good, $"The pairs {pairing.Words} can be built with flat bars and equal arms.", "Nothing need change.")
        : new("pairing", pairing.Words, Results.Verdict.Tight, $"The pairs {pairing.Words} need stacked or unequal bars: {pairing.Stacked}. They were run with the arms that the file gives.",
            "Stack the bars in two layers, or take a pairing of neighbours.");

    private static Table Compare(List<(Pairing Pairing, IReadOnlyList<GripCase> Cases)> runs)
    {
        List<IReadOnlyList<Cell>> rows = [];
        foreach ((Pairing pairing, IReadOnlyList<GripCase> cases) in runs)
        {
            foreach (GripCase c in cases)
            {
                Situation s = c.Situation;
                rows.Add([pairing.Words, pairing.Stacked is null ? "follow the fingers" : "from the file", s.ObjectName, s.Locks, s.Effort,
                    s.Find("all_touch")?.Value, s.Find("grip_force")?.Value, RunTables.EndedBy(c.Reading.Run.End), BarsOnStop(s)]);
            }
        }

        return new("pairings",
            [new("pairs", ""), new("arms", ""), new("object", ""), new("locks", ""), new("effort", ""), new("all touch", "deg"), new("grip", "N"), new("ended by", ""), new("bars on stop", "")],
            rows);
    }

    private static string Verdict(List<(Pairing Pairing, IReadOnlyList<GripCase> Cases)> runs)
    {
        List<string> places = [];
        bool stops = false;
        double greatest = 0, apart = 0;
        foreach (GripCase first in runs[0].Cases)
        {
            List<GripCase> same = [.. runs.Select(r => r.Cases.FirstOrDefault(c => c.Situation.Label == first.Situation.Label && c.Effort == first.Effort)).OfType<GripCase>()];
            List<double> grips = [.. same.Select(c => c.Reading.End[TraceLayout.Grip])];
            List<double> touches = [.. same.Select(c => c.Reading.Closing(EventKind.AllTouch)?.ThetaRadians ?? double.PositiveInfinity)];
            double spread = grips.Max() > 0 ? (grips.Max() - grips.Min()) / grips.Max() : 0;
            apart = Math.Max(apart, spread);
            bool touchDiffers = touches.Max() - touches.Min() > SameAngle;
            if (spread > SameGrip || touchDiffers)
            {
                places.Add($"{first.Situation.Label} at {first.Effort.Word()} effort");
                greatest = Math.Max(greatest, spread);
                stops |= same.Any(c => BarsOnStop(c.Situation).Length > 0);
            }
        }

        if (places.Count == 0 && apart > Rounding)
        {
            string within = (100 * apart).ToString("0.###", CultureInfo.InvariantCulture);
            return $"The three pairings come within {within} % of each other's grip, which no hand would show: a free tree shares the pull equally whichever fingers are paired, and what is left is that {Cause(runs, stops)}.";
        }

        if (places.Count == 0)
        {
            return "The three pairings do not differ: a free tree with equal arms shares the pull equally whichever fingers are paired.";
        }

        string where = places.Count <= 3 ? string.Join("; ", places) : $"{string.Join("; ", places.Take(3))} and {places.Count - 3} more";
        string most = (100 * greatest).ToString("0.#", CultureInfo.InvariantCulture);
        return $"The pairings differ by up to {most} % of grip, on {where}: {Cause(runs, stops)}.";
    }

    /// <summary>What makes pairings differ: only tilt stops, unequal arms and friction at the bars can.</summary>
    private static string Cause(List<(Pairing Pairing, IReadOnlyList<GripCase> Cases)> runs, bool stops)
    {
        List<string> causes = [];
        if (stops)
        {
            causes.Add("bars stand on their tilt stops there");
        }

        if (runs.Any(r => Unequal(r.Pairing.Tree)))
        {
            causes.Add("the arms of a bar are unequal");
        }

        if (runs.Any(r => r.Cases.Any(c => c.Reading.Drive.Friction.Pin > 0) && HasPins(r.Pairing.Tree)))
        {
            causes.Add("the bars' pins rub");
        }

        return causes.Count > 0 ? string.Join(", and ", causes) : "neither tilt stops, nor unequal arms, nor rubbing bars explain it, so look at the path for jumps";
    }

    private static bool Unequal(Hand.BalanceNode node) =>
        node is Hand.BalanceBar bar && (Math.Abs(bar.FirstArm - bar.SecondArm) > 1e-9 || Unequal(bar.First) || Unequal(bar.Second));

    private static bool HasPins(Hand.BalanceNode node) =>
        node is Hand.BalanceBar bar
        && (bar.PivotPin.Radius > 0 || bar.FirstPinRadius > 0 || bar.SecondPinRadius > 0 || HasPins(bar.First) || HasPins(bar.Second));

    private static string BarsOnStop(Situation situation) => string.Join(", ", situation.Findings
        .Where(f => f.Key == "bar_on_stop" && f.Verdict == Results.Verdict.Fails)
        .Select(f => f.Subject));
}
