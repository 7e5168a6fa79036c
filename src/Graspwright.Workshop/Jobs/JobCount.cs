using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>Adds to any answer about a hand how many of the day's jobs work.</summary>
public static class JobCount
{
    /// <summary>Adds the count.</summary>
    /// <param name="answer">An answer about the hand.</param>
    /// <param name="question">The hand and its jobs.</param>
    /// <param name="known">Closing runs that were made already, by what tells one from another.</param>
    /// <returns>The answer with a further sentence and figure; where the hand names no job it says so.</returns>
    public static Answer Add(Answer answer, JobsQuestion question, IReadOnlyDictionary<RunKey, RunReading>? known = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(question);
        Hand.HandModel hand = question.Hand;
        if (hand.Jobs.Count == 0)
        {
            return answer with { Sentence = $"{answer.Sentence} The hand names no jobs." };
        }

        try
        {
            IReadOnlyList<JobOutcome> outcomes = JobRuns.Outcomes(hand, hand.Jobs, question.Solver, known: known);
            return answer with { Sentence = $"{answer.Sentence} {JobWords.Sentence(outcomes)}", Figures = [.. answer.Figures, JobMeasures.DoneOf(outcomes)] };
        }
        catch (DriveException fault)
        {
            return answer with { Sentence = $"{answer.Sentence} Of the jobs nothing can be said: {Faults.OfHand(question.File, fault).Found}." };
        }
    }

    /// <summary>The closing runs of a grip answer, to be used again.</summary>
    /// <param name="result">The answer with its runs.</param>
    public static IReadOnlyDictionary<RunKey, RunReading> Known(GripResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Cases.ToDictionary(c => new RunKey(c.Thing.Name, c.Pattern?.Name, c.Effort == Effort.Squeeze, null), c => c.Reading);
    }
}
