using System.Globalization;
using Graspwright.Hand;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Separation;
using Graspwright.Signals.Thresholds;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>What hours of wear say about false activations and drift, and what gestures on cue cannot.</summary>
internal static class WearClaims
{
    private const double WantedPerHour = 1, WantedRate = 50, FarHours = 100;

    public static string Add(HandModel hand, string handFile, SignalSet set, FrontEnd front, ThresholdResult?[] found, List<Figure> figures, List<Finding> findings, List<Table> tables, ICollection<InputError> errors)
    {
        if (found.All(f => f is null))
        {
            findings.Add(new("false_activations", "all channels", Verdict.NotKnown, "How often a lock acts by itself is not known: no channel has a level that could act.", "First find levels, from gestures recorded on cue."));
            return "Without a level nothing can be said of false activations.";
        }

        SignalSet? wear = set.Plan.Recordings.Any(r => r.IsWear) ? SignalSet.Read(hand, handFile, wear: true, errors) : null;
        if (wear is null)
        {
            findings.Add(new("false_activations", "all channels", Verdict.NotKnown, "How often a lock acts by itself is not known: gestures on cue say nothing about it, only hours of wear do.",
                "Wear it for hours at work, driving the wrist, sweaty, arm overhead, with the locks unplugged; record it, and give it purpose = \"wear\"."));
            return "Of false activations an hour nothing can be said without hours of wear.";
        }

        wear = wear with { Kind = set.Kind };
        IReadOnlyList<Take> takes = wear.Takes();
        double hours = takes.Sum(t => t.Envelopes[0].Length / t.RateHertz) / 3600;
        List<IReadOnlyList<Cell>> rows = [];
        long all = 0;
        for (int c = 0; c < found.Length; c++)
        {
            if (found[c] is not { } one)
            {
                continue;
            }

            long count = takes.Sum(t => Wear.Count(t.Envelopes[c], t.RateHertz, one.Settings));
            all += count;
            rows.Add([set.Channels[c], hours, count, Wear.Claim(hours, count).AtMostPerHour, .. Drifts(set, takes, c, one, findings)]);
        }

        if (takes.Min(t => t.RateHertz) < WantedRate)
        {
            findings.Add(new("wear_rate", "wear", Verdict.Tight, string.Create(CultureInfo.InvariantCulture, $"The wear was recorded at {takes.Min(t => t.RateHertz):0.#} samples a second: bursts shorter than that were not seen."), "Record wear at 50 samples a second or more."));
        }

        FalseActivations claim = Wear.Claim(hours, all);
        figures.Add(new("false_activations", "false activations an hour, all channels together, upper end of the one-sided 95 % interval", "1/h")
        {
            Value = claim.AtMostPerHour,
            Working = new("count_bound/hours", [new("count_bound", claim.AtMostPerHour * hours, ""), new("hours", hours, "h")], "hanley-1983"),
        });
        findings.Add(SignalWords.Judged("false_activations", "all channels", claim.AtMostPerHour, WantedPerHour, most: true, "1/h",
            $"{all} false {(all == 1 ? "activation" : "activations")} in {SignalWords.Number(hours)} h of wear: fewer than {SignalWords.Number(claim.AtMostPerHour)} an hour may be claimed{(all == 0 ? " (three divided by the hours)" : "")}. Below one an hour is wanted (chosen by us).",
            all == 0 ? $"Wear it longer: {SignalWords.Number(Math.Max(0, 3 - hours), "0.#")} h more without one would do." : "Look in the recording at what was done then; a longer hold or a higher level, or another gesture."));
        tables.Add(new("wear", [new("channel", ""), new("worn", "h"), new("acted", ""), new("fewer than", "1/h"), new("rest rises", "%/h"), new("meets level after", "h")], rows));
        return $"In {SignalWords.Number(hours)} h of wear {all} false {(all == 1 ? "activation" : "activations")}: fewer than {SignalWords.Number(claim.AtMostPerHour)} an hour may be claimed.";
    }

    private static Cell[] Drifts(SignalSet set, IReadOnlyList<Take> takes, int channel, ThresholdResult one, List<Finding> findings)
    {
        Take longest = takes.MaxBy(t => t.Envelopes[0].Length / t.RateHertz)!;
        if (Wear.Over(longest.Envelopes[channel], longest.RateHertz, one.Settings.On) is not { } drift)
        {
            return [default, default];
        }

        if (drift.HoursToThreshold < 10)
        {
            findings.Add(new("drift", set.Channels[channel], Verdict.Tight, $"At rest {set.Channels[channel]} rises by {SignalWords.Percent(drift.RestPerHour)} an hour; at that rate it meets its level in {SignalWords.Number(drift.HoursToThreshold, "0.#")} h.", "Set the levels again at midday, or wear it for a quarter of an hour before setting them."));
        }

        return [100 * drift.RestPerHour, drift.HoursToThreshold < FarHours ? drift.HoursToThreshold : double.NaN];
    }
}
