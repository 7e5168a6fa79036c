using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Words and figures that the answers about signals share.</summary>
internal static class SignalWords
{
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "On skin only what runs on its own battery, joined by no wire to anything that is plugged in: never while charging, never with a computer on its charger.",
        "Stop when the skin reddens for longer than half an hour, itches or blisters; wash contacts and skin every day. No nickel and no plated brass on skin.",
        "Signals fail. Each lock must be decided: what it does when signal or power is lost; and a release by hand must free it under full load. Try it with the other hand before you trust it.",
        "Do not lock the hand on anything hot, sharp, moving or above people on these figures alone. Local codes and a licensed prosthetist or therapist come first.",
    ];

    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %");

    public static string Number(double value, string format = "0.##") => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>Names in a sentence: a, b and c.</summary>
    public static string List(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "none",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };

    public static string Key(string prefix, string name) =>
        prefix + "_" + string.Concat(name.Select(c => char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : '_'));

    public static Finding Judged(string key, string subject, double figure, double limit, bool most, string unit, string reason, string change)
    {
        double margin = most ? (limit - figure) / limit : (figure - limit) / limit;
        return new(key, subject, Verdicts.Of(margin), reason, change) { Figure = figure, Limit = limit, Unit = unit, Margin = margin };
    }

    /// <summary>What is decided of each lock for the loss of signal or power.</summary>
    public static IEnumerable<Finding> Locks(HandModel hand)
    {
        foreach (LockPattern pattern in hand.Locks)
        {
            foreach (FingerLock held in pattern.Locks)
            {
                string subject = $"{pattern.Name}, {held.Finger}";
                bool release = held.HandRelease.Length > 0;
                yield return held.HoldsUnpowered switch
                {
                    null => new("lock_unpowered", subject, Verdict.NotKnown, $"It is not decided what the lock of {held.Finger} in '{pattern.Name}' does when signal or power is lost.",
                        $"Set unpowered = \"holds\" or \"frees\" at locks.\"{pattern.Name}\".{held.Finger}; a lock that may hold a hot pan must hold."),
                    true when !release => new("lock_unpowered", subject, Verdict.Fails, $"The lock of {held.Finger} in '{pattern.Name}' holds without power, and no release by hand is named: the hand could stay shut on something.",
                        "Build a release that frees it under full load, by the other hand or on a table edge, and name it in hand_release."),
                    true => new("lock_unpowered", subject, Verdict.Good, $"The lock of {held.Finger} in '{pattern.Name}' holds without power; by hand: {held.HandRelease}.", "Try the release under full load."),
                    false when !release => new("lock_unpowered", subject, Verdict.Tight, $"The lock of {held.Finger} in '{pattern.Name}' frees without power: what it holds falls, and no release by hand is named for when it jams.",
                        "Use it only where a dropped load hurts nobody, and build a release by hand."),
                    false => new("lock_unpowered", subject, Verdict.Tight, $"The lock of {held.Finger} in '{pattern.Name}' frees without power: what it holds falls; by hand: {held.HandRelease}.", "Use it only where a dropped load hurts nobody."),
                };
            }
        }
    }
}
