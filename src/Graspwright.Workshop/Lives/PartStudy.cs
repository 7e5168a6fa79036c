using Graspwright.Hand;
using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;

namespace Graspwright.Workshop.Lives;

/// <summary>What the log says about the lives of one part, in days by the calendar.</summary>
public sealed class PartStudy
{
    /// <summary>Shapes between which lives of broken parts mostly lie: from breaking by chance to wearing out together.</summary>
    public static (double Low, double High) Shapes => (1, 4);

    /// <summary>Breaks from which a fit is said without a computed life.</summary>
    public const int EnoughBreaks = 5;

    /// <summary>Difference of Akaike's criterion from which one law is taken over another.</summary>
    public const double Telling = 2;

    private const double SecondsADay = 86400;

    private readonly Dictionary<LifeForm, LifeFit> _fits;

    /// <summary>Studies the entries.</summary>
    /// <param name="name">What they have in common.</param>
    /// <param name="entries">Entries of one part.</param>
    /// <param name="computed">The life that was computed for it; <see langword="null"/> = none.</param>
    public PartStudy(string name, IReadOnlyList<LogEntry> entries, ComputedLife? computed)
    {
        ArgumentNullException.ThrowIfNull(entries);
        Name = name;
        Entries = entries;
        Records = [.. entries.Select(e => e.Life)];
        Broke = entries.Count(e => e.Broke);
        _fits = Enum.GetValues<LifeForm>().ToDictionary(f => f, f => LifeFitting.Fit(f, Records));
        if (computed is not null)
        {
            Belief = LifeBelief.From(LifeForm.Weibull, computed.MedianSeconds / SecondsADay, (computed.LowSeconds / SecondsADay, computed.HighSeconds / SecondsADay), Shapes);
            Before = BayesUpdate.Before(Belief);
            After = BayesUpdate.After(Belief, Records);
        }
    }

    /// <summary>What the entries have in common.</summary>
    public string Name { get; }

    /// <summary>The entries.</summary>
    public IReadOnlyList<LogEntry> Entries { get; }

    /// <summary>What is known of each life.</summary>
    public IReadOnlyList<LifeRecord> Records { get; }

    /// <summary>How many broke.</summary>
    public int Broke { get; }

    /// <summary>How many were whole when last seen.</summary>
    public int Whole => Entries.Count - Broke;

    /// <summary>The computed life as a belief.</summary>
    public LifeBelief? Belief { get; }

    /// <summary>The belief before the log.</summary>
    public Believed? Before { get; }

    /// <summary>The belief after it.</summary>
    public Believed? After { get; }

    /// <summary>A fit of a law.</summary>
    /// <param name="form">Form of the law.</param>
    public LifeFit Fit(LifeForm form) => _fits[form];

    /// <summary>The law that is spoken of: Weibull, unless another is better by enough to tell.</summary>
    public LifeFit Best
    {
        get
        {
            LifeFit weibull = _fits[LifeForm.Weibull];
            if (weibull.Standing != FitStanding.Found)
            {
                return _fits[LifeForm.Exponential];
            }

            LifeFit least = _fits.Values.Where(f => f.Standing == FitStanding.Found).MinBy(f => f.Aic)!;
            return weibull.Aic - least.Aic > Telling ? least : weibull;
        }
    }

    /// <summary>Whether both the shape and the scale of a law were found.</summary>
    public bool Fitted => _fits[LifeForm.Weibull].Standing == FitStanding.Found;

    /// <summary>Laws that the log cannot tell from the one spoken of.</summary>
    public IReadOnlyList<LifeForm> AsGood => [.. _fits.Where(f => f.Value.Standing == FitStanding.Found && f.Key != Best.Law.Form && f.Value.Aic - Best.Aic < Telling).Select(f => f.Key)];

    /// <summary>With 95 % confidence at least half of the parts outlive this, over the shapes that lives mostly have [days].</summary>
    public double MedianAtLeast => LowerBound.QuantileAtLeast(Records, Shapes, 0.5, 0.95);

    /// <summary>Groups of the entries.</summary>
    /// <param name="by">What groups them.</param>
    public IReadOnlyList<PartStudy> By(Func<LogEntry, string> by) =>
        [.. Entries.GroupBy(by, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new PartStudy(g.Key.Length > 0 ? g.Key : "not said", [.. g], null))];
}
