using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Findings;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Grip;

/// <summary>Runs a hand on its objects, lock patterns and efforts, and says what comes of it.</summary>
public static class Gripping
{
    /// <summary>Answers the question.</summary>
    /// <param name="question">Hand, objects, patterns, efforts.</param>
    public static GripResult Answer(GripQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        Hand.HandModel hand = question.Hand;
        List<InputError> errors = [];
        List<Hand.HandObject> things = Things(question, errors);
        List<Hand.LockPattern?> patterns = Patterns(question, errors);
        if (errors.Count > 0)
        {
            return new(null, [], null, errors);
        }

        DriveModel drive = DriveMapping.ToDrive(hand);
        Hand.HandModel asWorn;
        try
        {
            asWorn = question.WornDays is { } days ? WearCourse.AfterDays(hand, days) : hand;
        }
        catch (DriveException fault)
        {
            return new(null, [], null, [Faults.OfHand(question.File, fault)]);
        }

        DriveModel? worn = DriveMapping.GivesWear(asWorn) ? DriveMapping.ToDrive(asWorn, worn: true) : null;
        List<Asked> asked = Ask(question, things, patterns);
        Outcome[] outcomes = new Outcome[asked.Count];
        Parallel.For(0, asked.Count, i => outcomes[i] = Run(question, asked[i], drive, worn));
        List<GripCase> cases = [];
        List<Situation> situations = [];
        for (int i = 0; i < outcomes.Length; i++)
        {
            if (outcomes[i].Done is { } done)
            {
                cases.Add(done);
                situations.Add(done.Situation);
                continue;
            }

            DriveException fault = outcomes[i].Fault!;
            if (fault.Fault != DriveFault.ObjectOverlaps)
            {
                return new(null, [], null, [Faults.OfHand(question.File, fault)]);
            }

            situations.Add(Blank(asked[i]) with { Findings = [Faults.Overlap(asked[i].Thing, fault)] });
            AddOnce(errors, Faults.OfObject(question.File, asked[i].Thing, fault));
        }

        GripCase? headline = Headline.Choose(cases);
        return headline is null
            ? new(null, cases, null, errors)
            : new(Compose(hand, cases, situations, headline), cases, headline, errors);
    }

    private static Answer Compose(Hand.HandModel hand, List<GripCase> cases, List<Situation> situations, GripCase headline) => new()
    {
        Verb = "grip",
        Hand = hand.Name,
        Sentence = Headline.Sentence(cases, headline),
        Situation = headline.Situation.Label,
        Figures = headline.Situation.Figures,
        Findings = headline.Situation.Findings,
        Situations = situations,
        Tables = [RunTables.Overview(cases), RunTables.Guesses(hand)],
        Cautions = Cautions.Grip,
    };

    private static List<Asked> Ask(GripQuestion question, List<Hand.HandObject> things, List<Hand.LockPattern?> patterns)
    {
        List<Asked> asked = [];
        foreach (Hand.HandObject thing in things)
        {
            HeldObject held = HoldMapping.ToHeld(question.Hand, thing);
            foreach (Hand.LockPattern? pattern in patterns)
            {
                asked.AddRange(question.Efforts.Select(effort => new Asked(thing, held, pattern, effort)));
            }
        }

        return asked;
    }

    private static Outcome Run(GripQuestion question, Asked asked, DriveModel drive, DriveModel? worn)
    {
        Hand.HandModel hand = question.Hand;
        RunOptions options = new() { EffortFraction = asked.Effort.Share(hand.Wrist), Locks = HoldMapping.ToLocks(hand, asked.Pattern) };
        try
        {
            RunReading reading = new()
            {
                Run = question.Solver(drive, asked.Held, options),
                Drive = drive,
                Worn = worn,
                Held = asked.Held,
                Options = options,
                AngularSpeed = hand.Wrist.SpeedRadiansPerSecond,
                LockLimits = HoldMapping.LockLimits(hand, asked.Pattern),
            };
            Situation situation = Blank(asked) with
            {
                Figures = MeasureTable.Figures(reading),
                Findings = RuleTable.Look(reading),
                TablesMade = () => RunTables.Of(reading),
            };
            return new(new(asked.Thing, asked.Pattern, asked.Effort, reading, situation), null);
        }
        catch (DriveException fault)
        {
            return new(null, fault);
        }
    }

    private static Situation Blank(Asked asked) => new(asked.Thing.Name, asked.Pattern?.Name ?? GripQuestion.AllFree, asked.Effort.Word());

    private static List<Hand.HandObject> Things(GripQuestion question, List<InputError> errors)
    {
        if (question.Objects.Count == 0)
        {
            if (question.Hand.Objects.Count == 0)
            {
                errors.Add(new(question.File, 0, 0, "objects", "the hand names no object to close on", "at least one object", "Add one, such as a cylinder with its diameter and its station on the palm line."));
            }

            return [.. question.Hand.Objects];
        }

        List<Hand.HandObject> things = [];
        foreach (string name in question.Objects)
        {
            Hand.HandObject? thing = question.Hand.Objects.FirstOrDefault(o => o.Name == name);
            if (thing is null)
            {
                errors.Add(Faults.Unknown(question.File, "--object", name, question.Hand.Objects.Select(o => o.Name)));
            }
            else if (!things.Contains(thing))
            {
                things.Add(thing);
            }
        }

        return things;
    }

    private static List<Hand.LockPattern?> Patterns(GripQuestion question, List<InputError> errors)
    {
        IEnumerable<Hand.LockPattern> named = question.Hand.Locks.Where(l => l.Name != GripQuestion.AllFree);
        if (question.Locks.Count == 0)
        {
            return [null, .. named];
        }

        List<Hand.LockPattern?> patterns = [];
        foreach (string name in question.Locks)
        {
            Hand.LockPattern? pattern = named.FirstOrDefault(l => l.Name == name);
            if (pattern is null && name != GripQuestion.AllFree)
            {
                errors.Add(Faults.Unknown(question.File, "--locks", name, named.Select(l => l.Name).Prepend(GripQuestion.AllFree)));
            }
            else if (!patterns.Contains(pattern))
            {
                patterns.Add(pattern);
            }
        }

        return patterns;
    }

    private static void AddOnce(List<InputError> errors, InputError error)
    {
        if (!errors.Contains(error))
        {
            errors.Add(error);
        }
    }

    /// <summary>One case to run.</summary>
    private sealed record Asked(Hand.HandObject Thing, HeldObject Held, Hand.LockPattern? Pattern, Effort Effort);

    /// <summary>What running a case gave: the case, or what was wrong.</summary>
    private sealed record Outcome(GripCase? Done, DriveException? Fault);
}
