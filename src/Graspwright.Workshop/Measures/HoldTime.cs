using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>How long the effort at the end of closing can be held: a band, never one figure.</summary>
/// <remarks>
/// The value is the hand-and-grip law of Frey Law &amp; Avin 2010, 33.55·f^−1.61 s. The band runs from the lower of that
/// law less its 47 % prediction band and Rohmert's fit −1.5 + 2.1/f − 0.6/f² + 0.1/f³ min to the higher of the two, the
/// law raised by 47 %. Rohmert's fit counts from f = 0.15; most of the law's data lie above 0.25, and below 0.10 no
/// figure is given.
/// </remarks>
public sealed class HoldTime() : Measure("hold_time", "how long this effort can be held without a pause", "s", Better.More)
{
    private const double LowestShare = 0.10;
    private const double RohmertFrom = 0.15;
    private const double PredictionBand = 0.47;

    /// <summary>Hand-and-grip endurance [s].</summary>
    /// <param name="share">Share of the maximum, above 0.</param>
    /// <source key="frey-law-avin-2010">Table 2.</source>
    public static double HandGripSeconds(double share) => 33.55 * Math.Pow(share, -1.61);

    /// <summary>Rohmert's endurance [s].</summary>
    /// <param name="share">Share of the maximum, 0.15 or more.</param>
    /// <source key="rohmert-1960">The fit as later quoted.</source>
    public static double RohmertSeconds(double share) =>
        60 * (-1.5 + 2.1 / share - 0.6 / (share * share) + 0.1 / (share * share * share));

    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        double share = Share(reading);
        return share switch
        {
            double.NaN => Reading.None("the wrist has no capacity there"),
            < LowestShare => Reading.None("the effort is below a tenth of the wrist's capacity, where the published curves have no data"),
            > 1 => Reading.None("the effort is above the wrist's capacity"),
            _ => HandGripSeconds(share),
        };
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string tau = terms.Input("wrist_moment", reading.End[TraceLayout.Tau], "N·m");
        string capacity = terms.Input("wrist_capacity", EffortLimit.Capacity(reading), "N·m");
        return terms.Working($"33.55·({tau}/{capacity})^(-1.61)", "frey-law-avin-2010");
    }

    /// <inheritdoc/>
    protected override Figure Spread(RunReading reading, Figure figure)
    {
        double share = Share(reading), law = HandGripSeconds(share);
        double low = law * (1 - PredictionBand), high = law * (1 + PredictionBand);
        if (share >= RohmertFrom)
        {
            low = Math.Min(low, RohmertSeconds(share));
            high = Math.Max(high, RohmertSeconds(share));
        }

        return figure with { Low = low, High = high };
    }

    private static double Share(RunReading reading)
    {
        double capacity = EffortLimit.Capacity(reading);
        return capacity > 0 ? reading.End[TraceLayout.Tau] / capacity : double.NaN;
    }
}
