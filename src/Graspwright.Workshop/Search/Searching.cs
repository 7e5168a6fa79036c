using Graspwright.Deciding.Fronts;
using Graspwright.Deciding.Gradients;
using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Search;

/// <summary>Searches designs of a hand: the verb <c>search</c>.</summary>
public static class Searching
{
    /// <summary>Searches and answers.</summary>
    /// <param name="question">The hand file and the search.</param>
    public static SearchResult Answer(SearchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        HandModel hand = question.Editor.Reading.Hand!;
        List<InputError> errors = [];
        if (Find(question, hand, errors) is not { } search)
        {
            return new(null, null, errors);
        }

        SearchMeasures measures = Measures(question, search, hand, errors);
        HandVariants? variants = HandVariants.Of(question.Editor, question.File, search, errors);
        if (variants is null || errors.Count > 0)
        {
            return new(null, null, errors);
        }

        SearchOptions options = new()
        {
            Seed = question.Seed ?? search.Seed,
            Evaluations = question.Evaluations ?? search.Evaluations,
            Threads = question.Threads > 0 ? question.Threads : Environment.ProcessorCount,
        };
        SearchState? from = null;
        if (question.ResumeFrom is { } text)
        {
            (from, InputError? refused) = Checkpoint.Read(text, "--resume", question.Editor, search, options);
            if (refused is not null)
            {
                return new(null, null, [refused]);
            }
        }

        SearchStudy study = Run(question, search, variants, measures, options, from);
        return new(SearchAnswer.Of(hand, study), study, []);
    }

    private static SearchStudy Run(SearchQuestion question, DesignSearch search, HandVariants variants, SearchMeasures measures, SearchOptions options, SearchState? from)
    {
        DesignJudge judge = new(variants, measures, question.Solver);
        double[] plain = variants.AsItIs;
        SearchState state = EvolutionarySearch.Run(variants.Space, judge.Judge, options, from, s =>
        {
            question.Watch?.Invoke(s);
            return !question.Stop.IsCancellationRequested;
        }, [plain]);
        IReadOnlyList<Design> front = [.. EvolutionarySearch.Front(state, options).OrderBy(d => d.Outcome.Aims[0]).ThenBy(d => d.Number)];
        Outcome asItIs = judge.Judge(plain);
        int chosen = front.Count == 0 ? -1 : Knee.Of([.. front.Select(d => d.Outcome.Aims)]);
        bool[] free = [.. variants.Space.Parameters.Select((p, i) => !p.Unordered && variants.Units[i].Length > 0)];
        DesignSlopes slopes = new(variants, measures, judge, free);
        return new()
        {
            Search = search,
            Variants = variants,
            Measures = measures,
            Options = options,
            State = state,
            Front = front,
            Chosen = chosen,
            Polished = question.Polish && chosen >= 0 ? Polishing.Polish(variants.Space, slopes.At, judge.Judge, front[chosen], 0, free) : null,
            Differenced = slopes.Differenced,
            AsItIs = asItIs.Failed ? null : new(0, plain, asItIs),
            Ended = state.Judged >= Math.Min(options.Evaluations, variants.Space.Count),
            Checkpoint = Checkpoint.Write(question.Editor, search, options, state),
        };
    }

    private static DesignSearch? Find(SearchQuestion question, HandModel hand, List<InputError> errors)
    {
        IReadOnlyList<DesignSearch> all = hand.Decisions.Searches;
        if (all.Count == 0)
        {
            errors.Add(new(question.File, 0, 0, "search", "the file describes no search", "at least one", "Add [search.\"first\"] with free paths and aims; see docs/search.md."));
            return null;
        }

        DesignSearch? found = question.Name.Length == 0 ? all[0] : all.FirstOrDefault(s => s.Name == question.Name);
        if (found is null)
        {
            errors.Add(Faults.Unknown(question.File, "search", question.Name, all.Select(s => s.Name)));
        }

        return found;
    }

    private static SearchMeasures Measures(SearchQuestion question, DesignSearch search, HandModel hand, List<InputError> errors)
    {
        string Key(string where, string text) => HandPath.Join(HandPath.Join(HandPath.Join("search", search.Name), where), text);
        AskedMeasure? Ask(string text, string where)
        {
            AskedMeasure? measure = AskedMeasure.Read(text, hand, out AskedFault? why);
            if (why is not null)
            {
                errors.Add(Faults.At(question.Editor, question.File, Key(where, text), why.Found, why.Allowed, why.Fix));
            }

            return measure;
        }

        List<AskedAim> aims = [];
        foreach (SearchAim aim in search.Aims)
        {
            if (Ask(aim.Measure, "aims") is { } measure)
            {
                aims.Add(new(measure, aim.More));
            }
        }

        List<AskedLimit> limits = [];
        foreach (SearchLimit limit in search.Limits)
        {
            string where = limit.AtLeast ? "at_least" : "at_most";
            if (Ask(limit.Measure, where) is { } measure)
            {
                if (InUnit(limit.Value, measure.Unit) is { } value)
                {
                    limits.Add(new(measure, limit.AtLeast, value));
                }
                else
                {
                    errors.Add(Faults.At(question.Editor, question.File, Key(where, limit.Measure), $"\"{limit.Value}\"", measure.Unit.Length > 0 ? $"a quantity that can be read in {measure.Unit}" : "a plain number", measure.Unit.Length > 0 ? $"Write it as \"10 {measure.Unit}\"." : "Write it without a unit."));
                }
            }
        }

        return new(aims, limits);
    }

    /// <summary>A quantity in the unit of a measure; <see langword="null"/> where it is none.</summary>
    private static double? InUnit(string text, string unit)
    {
        Unit known = Unit.Find(unit.Length == 0 ? "1" : unit) ?? Unit.Find("1")!;
        return Quantity.TryParse(text, known.Dimension, out Quantity? quantity, out _) && Quantity.TryParse($"1 {unit}".Trim(), known.Dimension, out Quantity? one, out _) && Quantity.TryParse($"0 {unit}".Trim(), known.Dimension, out Quantity? zero, out _)
            ? (quantity.Si - zero.Si) / (one.Si - zero.Si)
            : null;
    }
}
