using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using FingerLock = Graspwright.Hand.FingerLock;

namespace Graspwright.Workshop.Cards;

/// <summary>The grip card in words.</summary>
internal static class CardWords
{
    // A finger that stands bent by more than this is no longer straight to its wearer. Common practice, no source.
    private const double Bent = 10;

    /// <summary>What to do, in order.</summary>
    public static IReadOnlyList<string> Steps(HandModel hand, GripChoice choice, GripCase held, double touch, double end)
    {
        double speed = hand.Wrist.SpeedRadiansPerSecond;
        string way = hand.Wrist.Direction == DrivingDirection.Flexion ? "toward the palm" : "toward the back of the hand";
        var steps = new List<string>();
        foreach (IGrouping<double, FingerLock> together in (choice.Pattern?.Locks ?? []).GroupBy(l => l.AtRadians).OrderBy(g => g.Key))
        {
            string fingers = Names(together.Select(l => l.Finger));
            steps.Add(together.Key <= 0
                ? $"Wrist at rest, hand open. Muscle signal: {fingers} lock{(together.Count() == 1 ? "s" : "")}, straight. Wait for the click ({Seconds(GripCard.SignalSeconds)} s)."
                : Say($"Bend the wrist {way} by {double.RadiansToDegrees(together.Key):0}°, hold still. Muscle signal: {fingers} lock{(together.Count() == 1 ? "s" : "")} where {(together.Count() == 1 ? "it stands" : "they stand")}."));
        }

        string first = double.IsNaN(touch) ? "" : Say($" The first finger touches after {double.RadiansToDegrees(touch):0}°, {Seconds(touch / speed)} s;");
        steps.Add(Say($"{(steps.Count > 0 ? "Then bend" : "Bend")} the wrist {way}.{first} the {(held.Reading.Run.End == RunEnd.Effort ? "all-day grip" : "end of the travel")} comes at {double.RadiansToDegrees(end):0}°, {Seconds(end / speed)} s, with {held.Reading.End[TraceLayout.Grip]:0} N ({held.Reading.End[TraceLayout.Grip] / 9.80665:0.0} kgf)."));
        if (hand.ClosingLock is not null)
        {
            steps.Add("To hold on without the wrist: muscle signal while the wrist still holds, wait for the click, then relax the wrist slowly.");
        }

        steps.Add(choice.Pattern is null && hand.ClosingLock is null
            ? "To let go: let the wrist come back to the start posture."
            : "To let go: wrist back to where it gripped, muscle signal to free the lock, then let the wrist come back. Never free a lock under load by jerking.");
        return steps;
    }

    /// <summary>What happens out of order, read from the runs.</summary>
    public static IReadOnlyList<string> OutOfOrder(HandModel hand, GripChoice choice, GripCase held, GripCase? free)
    {
        var happens = new List<string>();
        if (choice.Pattern is { } pattern && free is not null)
        {
            RunReading run = free.Reading;
            string[] bent = [.. pattern.Locks.Select(l => (l.Finger, Degrees: Bend(hand, run, l.Finger))).Where(f => f.Degrees > Bent).Select(f => Say($"{f.Finger} bent by {f.Degrees:0}°"))];
            double with = held.Reading.End[TraceLayout.Grip], without = run.End[TraceLayout.Grip];
            happens.Add(bent.Length > 0
                ? Say($"Wrist first, signal after: all fingers close together and lock so ({Names(bent)}, every joint counted). {Purpose(choice.Kind)} Open, free the lock, begin again.")
                : "Wrist first, signal after: the fingers that should lock have hardly moved, so little is lost.");
            happens.Add(Say($"No signal at all: the plain grip closes with {without:0} N instead of {with:0} N."));
        }
        else
        {
            happens.Add("A stray signal before the touch locks fingers in the air: they stay behind and the others take the load. Open, free the lock, begin again.");
        }

        if (hand.ClosingLock is not null)
        {
            happens.Add(Say($"Wrist relaxed before the lock's click: the fingers open as fast as they closed, and the grip is gone within {Seconds(Opening(hand, held))} s. Keep the wrist bent until you hear it."));
            happens.Add("Signal while the wrist pulls back: the lock is under load and may hold, or let go with a snap. Bend to where it gripped first.");
        }
        else
        {
            happens.Add(Say($"Wrist relaxed too early: the grip is gone within {Seconds(Opening(hand, held))} s."));
        }

        return happens;
    }

    /// <summary>From the full grip back to where the last finger lets go [s].</summary>
    private static double Opening(HandModel hand, GripCase held)
    {
        RunResult run = held.Reading.Run;
        double end = run.AtEnd[TraceLayout.JointTravel];
        double[]? gone = run.Opening.FirstOrDefault(row => row[TraceLayout.Grip] <= 0);
        return (end - (gone?[TraceLayout.JointTravel] ?? 0)) / hand.Wrist.SpeedRadiansPerSecond;
    }

    private static double Bend(HandModel hand, RunReading run, string finger)
    {
        int index = Drive.DriveMapping.IndexOf(hand.Fingers, finger);
        return double.RadiansToDegrees(Enumerable.Range(0, 3).Sum(j => run.End[run.Run.Layout.Joint(index, j)]));
    }

    private static string Purpose(GripKind kind) => kind switch
    {
        GripKind.Point => "The hand does not point.",
        GripKind.Pinch => "They stand in the palm's way, and a flat thing may not come between finger and thumb.",
        _ => "The grip is another than the one meant.",
    };

    private static string Names(IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private static string Seconds(double seconds) => seconds.ToString(seconds < 0.095 ? "0.00" : "0.0", CultureInfo.InvariantCulture);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
