using Graspwright.Deciding.Fronts;

namespace Graspwright.Deciding.Search;

/// <summary>Searches for the designs that are best in several aims at once and keep all limits.</summary>
/// <remarks>
/// <para>
/// Designs breed in small batches; each batch is judged side by side, then it is chosen who stays: inside the limits
/// before beyond them, the less beyond the better, unbeaten before beaten, and in the last front those without which
/// least would be lost (<see cref="Thinning"/>). Beside the breeding designs the front so far is kept. Each new design has a
/// stream of chance of its own and batches have a fixed size, so that the number of threads changes nothing; between two
/// batches the whole search is its <see cref="SearchState"/>.
/// </para>
/// <para>A space of no more designs than are to be judged is gone through from end to end instead.</para>
/// </remarks>
/// <source key="deb-2002">Limits before aims.</source>
/// <source key="beume-2007">Choice by the volume that a point alone adds.</source>
public static class EvolutionarySearch
{
    private const double Forgets = 0.9;
    private const int FrontOfTwo = 200, FrontOfMore = 1000;

    /// <summary>A search that has not begun.</summary>
    public static SearchState Empty { get; } = new() { Population = [], Front = [], Credits = [.. Enumerable.Repeat(1.0, Breeding.Ways)] };

    /// <summary>Runs a search to its end, or until it is told to stop.</summary>
    /// <param name="space">What is free.</param>
    /// <param name="judge">What a design is worth.</param>
    /// <param name="options">How it is run.</param>
    /// <param name="from">Where it was stopped; <see langword="null"/> = it begins.</param>
    /// <param name="goOn">Asked after every batch with the state so far; <see langword="false"/> stops; <see langword="null"/> = to the end.</param>
    /// <param name="known">Designs that are judged first, such as the design as it is.</param>
    /// <returns>The state at the end, or where it stopped.</returns>
    public static SearchState Run(DesignSpace space, Judge judge, SearchOptions options, SearchState? from = null, Func<SearchState, bool>? goOn = null, IReadOnlyList<double[]>? known = null)
    {
        ArgumentNullException.ThrowIfNull(space);
        ArgumentNullException.ThrowIfNull(judge);
        ArgumentNullException.ThrowIfNull(options);
        SearchState state = from ?? Empty;
        double count = space.Count;
        bool countable = count <= options.Evaluations;
        long end = countable ? (long)count : options.Evaluations;
        while (state.Judged < end)
        {
            int batch = (int)Math.Min(options.Batch, end - state.Judged);
            int[] ways = new int[batch];
            Design[] fresh = new Design[batch];
            SearchState before = state;
            void One(int k)
            {
                long number = before.Judged + k;
                Chance chance = new(options.Seed, number);
                double[] values = countable ? space.At(number) : Make(space, options, before, known, number, ref chance, out ways[k]);
                fresh[k] = new(number, values, judge(values));
            }

            // Each thread takes the next design when it is done with one, so that none waits with a share of its own left.
            int next = 0;
            void Take(int thread)
            {
                for (int k = Interlocked.Increment(ref next) - 1; k < batch; k = Interlocked.Increment(ref next) - 1)
                {
                    One(k);
                }
            }

            if (options.Threads > 1)
            {
                Parallel.For(0, Math.Min(options.Threads, batch), new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, Take);
            }
            else
            {
                Take(0);
            }

            state = Choose(state, fresh, ways, options);
            if (goOn is not null && !goOn(state))
            {
                break;
            }
        }

        return state;
    }

    /// <summary>The front of a search, thinned to its size.</summary>
    /// <param name="state">The search, ended or stopped; its own front may hold an eighth more.</param>
    /// <param name="options">How it is run.</param>
    public static IReadOnlyList<Design> Front(SearchState state, SearchOptions options)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(options);
        return state.Front.Count == 0 ? [] : Thinned(state.Front, Most(options, state.Front[0].Outcome.Aims.Length));
    }

    private static int Most(SearchOptions options, int aims) => options.FrontSize > 0 ? options.FrontSize : aims <= 2 ? FrontOfTwo : FrontOfMore;

    private static List<Design> Thinned(IReadOnlyList<Design> front, int most) =>
        front.Count <= most ? [.. front] : [.. Thinning.Keep([.. front.Select(d => d.Outcome.Aims)], most).Select(i => front[i])];

    private static double[] Make(DesignSpace space, SearchOptions options, SearchState state, IReadOnlyList<double[]>? known, long number, ref Chance chance, out int way)
    {
        way = -1;
        if (number < (known?.Count ?? 0))
        {
            double[] given = [.. known![(int)number]];
            space.Settle(given);
            return given;
        }

        if (number < options.Population)
        {
            return space.Any(ref chance);
        }

        way = Breeding.Choose(state.Credits, ref chance);
        return Breeding.Child(way, space, state.Population, state.Front, ref chance);
    }

    private static SearchState Choose(SearchState state, Design[] fresh, int[] ways, SearchOptions options)
    {
        int aims = fresh[0].Outcome.Aims.Length;
        List<Design> front = [.. state.Front];
        double[] credits = [.. state.Credits];
        Design? least = state.LeastBeyond;
        long failed = state.Failed, inside = state.Inside;
        foreach (Design design in fresh)
        {
            failed += design.Outcome.Failed ? 1 : 0;
            inside += design.Outcome.Violation == 0 ? 1 : 0;
            least = !design.Outcome.Failed && (least is null || design.Outcome.Violation < least.Outcome.Violation) ? design : least;
            if (design.Outcome.Violation == 0)
            {
                Enter(front, design);
            }
        }

        int most = Most(options, aims);
        if (front.Count > most + most / 8)
        {
            front = Thinned(front, most);
        }

        IReadOnlyList<Design> population = Stay([.. state.Population, .. fresh], options.Population);
        HashSet<long> stayed = [.. population.Where(d => d.Number >= fresh[0].Number).Select(d => d.Number)];
        for (int k = 0; k < fresh.Length; k++)
        {
            if (ways[k] >= 0 && fresh[k].Number >= options.Population)
            {
                double worth = stayed.Contains(fresh[k].Number) ? 1 : 0;
                credits[ways[k]] = Math.Pow(Forgets, 0.25) * credits[ways[k]] + (1 - Math.Pow(Forgets, 0.25)) * worth;
            }
        }

        return new()
        {
            Population = population,
            Front = front,
            LeastBeyond = least,
            Judged = state.Judged + fresh.Length,
            Failed = failed,
            Inside = inside,
            Credits = credits,
        };
    }

    private static void Enter(List<Design> front, Design design)
    {
        double[] aims = design.Outcome.Aims;
        foreach (Design there in front)
        {
            if (Domination.Beats(there.Outcome.Aims, aims) || there.Outcome.Aims.AsSpan().SequenceEqual(aims))
            {
                return;
            }
        }

        front.RemoveAll(there => Domination.Beats(aims, there.Outcome.Aims));
        front.Add(design);
    }

    /// <summary>Who breeds on.</summary>
    private static IReadOnlyList<Design> Stay(IReadOnlyList<Design> all, int most)
    {
        if (all.Count <= most)
        {
            return all;
        }

        Design[] inside = [.. all.Where(d => d.Outcome.Violation == 0)];
        if (inside.Length <= most)
        {
            return [.. inside, .. all.Where(d => d.Outcome.Violation > 0).OrderBy(d => d.Outcome.Violation).ThenBy(d => d.Number).Take(most - inside.Length)];
        }

        int[] ranks = Domination.Ranks([.. inside.Select(d => d.Outcome.Aims)]);
        List<Design> stay = new(most);
        for (int rank = 0; stay.Count < most; rank++)
        {
            Design[] next = [.. inside.Where((_, i) => ranks[i] == rank)];
            if (stay.Count + next.Length <= most)
            {
                stay.AddRange(next);
                continue;
            }

            int room = most - stay.Count;
            stay.AddRange(next[0].Outcome.Aims.Length == 1
                ? next.Take(room)
                : Thinning.Keep([.. next.Select(d => d.Outcome.Aims)], room).Select(i => next[i]));
        }

        return stay;
    }
}
