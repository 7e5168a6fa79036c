namespace Graspwright.Deciding.Search;

/// <summary>What a design is worth.</summary>
/// <param name="Aims">Aims, less is better; NaN where there is no value, which something in <paramref name="Excess"/> must count as a breach.</param>
/// <param name="Excess">How far each limit is passed, scaled so that limits compare; 0 or less = kept; NaN where there is no value.</param>
/// <param name="Failed">Whether the design could not be judged at all.</param>
public sealed record Outcome(double[] Aims, double[] Excess, bool Failed = false)
{
    /// <summary>Sum of what is beyond the limits; infinite where the design failed.</summary>
    public double Violation { get; } = Failed ? double.PositiveInfinity : Excess.Sum(e => e > 0 ? e : 0);
}

/// <summary>Judges a design; called from several threads at once, and must give the same for the same design.</summary>
/// <param name="design">Values of the free parameters.</param>
public delegate Outcome Judge(double[] design);

/// <summary>A design that was judged.</summary>
/// <param name="Number">When it was judged, counted from 0.</param>
/// <param name="Values">Values of the free parameters.</param>
/// <param name="Outcome">What it is worth.</param>
public sealed record Design(long Number, double[] Values, Outcome Outcome);

/// <summary>Everything a search remembers; from it, it goes on to the same end.</summary>
public sealed record SearchState
{
    /// <summary>Designs that breed.</summary>
    public required IReadOnlyList<Design> Population { get; init; }

    /// <summary>The front so far: designs inside all limits of which none beats another.</summary>
    public required IReadOnlyList<Design> Front { get; init; }

    /// <summary>The design least beyond the limits; <see langword="null"/> = every design failed so far.</summary>
    public Design? LeastBeyond { get; init; }

    /// <summary>How many designs were judged.</summary>
    public long Judged { get; init; }

    /// <summary>How many of them failed.</summary>
    public long Failed { get; init; }

    /// <summary>How many of them kept every limit.</summary>
    public long Inside { get; init; }

    /// <summary>How much each way of breeding has been worth lately.</summary>
    public required IReadOnlyList<double> Credits { get; init; }
}

/// <summary>How a search is run.</summary>
public sealed record SearchOptions
{
    /// <summary>Seed of all chance.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>How many designs are judged in all.</summary>
    public long Evaluations { get; init; } = 5000;

    /// <summary>How many designs breed.</summary>
    public int Population { get; init; } = 100;

    /// <summary>How many are bred between two choices of who stays; judged side by side.</summary>
    public int Batch { get; init; } = 16;

    /// <summary>Most points of the front; 0 = 200 with up to two aims, 1000 with more.</summary>
    public int FrontSize { get; init; }

    /// <summary>How many threads judge; the result is the same for any.</summary>
    public int Threads { get; init; } = 1;
}
