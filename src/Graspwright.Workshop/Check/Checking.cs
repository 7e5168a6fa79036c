using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Check;

/// <summary>Checks that a hand that reads can also be put together, and lists what is guessed.</summary>
public static class Checking
{
    /// <summary>Answers, or says what is wrong.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file, for messages.</param>
    /// <param name="missing">Files that it names and that are not there; the hand is sound without them, the verbs that read them are not.</param>
    /// <returns>The answer, or <see langword="null"/> with the errors.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Answer(Hand.HandModel hand, string file, IReadOnlyList<InputError>? missing = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        List<InputError> errors = Faulty(hand, file);
        if (errors.Count > 0)
        {
            return (null, errors);
        }

        string guessed = hand.Guesses.Count == 0
            ? "nothing in it is guessed"
            : Count(hand.Guesses.Count, "value") + (hand.Guesses.Count == 1 ? " is guessed: measure it" : " are guessed: measure them");
        IReadOnlyList<InputError> lost = missing ?? [];
        string files = lost.Count == 0 ? "" : $" {Count(lost.Count, "file")} that it names {(lost.Count == 1 ? "is" : "are")} not there.";
        return (new()
        {
            Verb = "check",
            Hand = hand.Name,
            Sentence = $"The file of the {hand.Name} reads, and the hand can be put together: {Count(hand.Fingers.Count, "finger")}, {Count(hand.Objects.Count, "object")}, {Count(hand.Locks.Count, "lock pattern")}; {guessed}.{files}",
            Findings = [.. lost.Select(e => new Finding("file_missing", e.Key, Verdict.NotKnown, $"Line {e.Line}, column {e.Column}: {e.Key} names {e.Found}; what it would say is not known.", Sentence(e.Fix)))],
            Tables = [RunTables.Guesses(hand)],
        }, []);
    }

    private static List<InputError> Faulty(Hand.HandModel hand, string file)
    {
        List<InputError> errors = [];
        Hand.HandObject[] things = [new Hand.NothingHeld("nothing"), .. hand.Objects];
        RunOptions options = new() { EffortFraction = 1e-9, Opening = false };
        foreach (Hand.HandObject thing in things)
        {
            try
            {
                ClosingRun.Solve(DriveMapping.ToDrive(hand), HoldMapping.ToHeld(hand, thing), options);
            }
            catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
            {
                errors.Add(Faults.OfObject(file, thing, fault));
            }
            catch (DriveException fault)
            {
                return [Faults.OfHand(file, fault)];
            }
        }

        return errors;
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    private static string Sentence(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}.";
}
