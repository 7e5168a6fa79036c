namespace Graspwright.Mechanics.Effort;

/// <summary>What the published curves can say about a share of the wrist's maximum.</summary>
public enum EnduranceReach
{
    /// <summary>The share is below every curve: only a least time is known.</summary>
    LongerThan,

    /// <summary>The curves reach the share, but most of their data lie above it.</summary>
    ThinData,

    /// <summary>The share lies among the data.</summary>
    Covered,

    /// <summary>The share is above the maximum: it cannot be held at all.</summary>
    AboveMaximum,
}

/// <summary>How long a constant effort can be held, as a band.</summary>
/// <param name="Reach">What the curves can say.</param>
/// <param name="HandGrip">Time by the hand-and-grip law [s]; <see langword="null"/> where it is not reached.</param>
/// <param name="Rohmert">Time by Rohmert's curve [s]; <see langword="null"/> where it is not reached.</param>
/// <param name="Low">Lower end of the band [s]; 0 above the maximum.</param>
/// <param name="High">Upper end of the band [s]; <see langword="null"/> where no upper end is known.</param>
public readonly record struct HoldingTime(EnduranceReach Reach, double? HandGrip, double? Rohmert, double Low, double? High);

/// <summary>How long a share of the greatest effort can be held without a pause.</summary>
/// <remarks>
/// Population figures of whole arms; a wearer's own time may lie outside. Two curves that disagree are given side by side
/// with the band that holds both: at 15 % of the maximum one says 15 minutes, the other 12, and a later measurement of the
/// hand's grip found 8 (455.9 s, Heinzl 2025, Sci Rep 15:1250, seen quoted).
/// </remarks>
public static class Endurance
{
    /// <summary>Least share of the maximum that the curves reach.</summary>
    public const double LowestShare = 0.15;

    /// <summary>Share from which most of the hand-and-grip data lie.</summary>
    public const double DataFromShare = 0.25;

    /// <summary>Half width of the law's 95 % prediction band, as a part of the time. The paper gives 0.29 to 0.47 by joint; the wider is taken.</summary>
    /// <source key="frey-law-avin-2010">Abstract and Table 2, seen quoted.</source>
    public const double PredictionBand = 0.47;

    /// <summary>Time by the law for hand and grip, 33.55·f^−1.61 s.</summary>
    /// <param name="share">Share of the maximum, <see cref="LowestShare"/> to 1.</param>
    /// <returns>Time [s].</returns>
    /// <exception cref="ArgumentOutOfRangeException">The curve does not reach the share.</exception>
    /// <source key="frey-law-avin-2010">L. A. Frey Law and K. G. Avin, "Endurance time is joint-specific", Ergonomics 2010, Table 2, seen quoted.</source>
    public static double HandGripSeconds(double share) => 33.55 * Math.Pow(Reached(share), -1.61);

    /// <summary>Time by Rohmert's curve, −1.5 + 2.1/f − 0.6/f² + 0.1/f³ min.</summary>
    /// <param name="share">Share of the maximum, <see cref="LowestShare"/> to 1.</param>
    /// <returns>Time [s].</returns>
    /// <exception cref="ArgumentOutOfRangeException">The curve does not reach the share.</exception>
    /// <source key="rohmert-1960">W. Rohmert 1960, in the fit that later papers quote; the original was not seen.</source>
    public static double RohmertSeconds(double share)
    {
        double per = 1 / Reached(share);
        return 60 * (-1.5 + per * (2.1 + per * (-0.6 + per * 0.1)));
    }

    /// <summary>The band of times for a share of the maximum.</summary>
    /// <param name="share">Share of the maximum, 0 or more.</param>
    /// <returns>
    /// The band from the shorter of Rohmert's time and the law's lower bound to the longer of Rohmert's time and the law's
    /// upper bound. Below <see cref="LowestShare"/> only that share's lower end, as a least time. Above 1 nothing.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is negative or not a number.</exception>
    public static HoldingTime Hold(double share)
    {
        if (!(share >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share of the maximum is 0 or more.");
        }

        if (share > 1)
        {
            return new(EnduranceReach.AboveMaximum, null, null, 0, null);
        }

        if (share < LowestShare)
        {
            return new(EnduranceReach.LongerThan, null, null, Hold(LowestShare).Low, null);
        }

        double law = HandGripSeconds(share), curve = RohmertSeconds(share);
        return new(
            share < DataFromShare ? EnduranceReach.ThinData : EnduranceReach.Covered,
            law,
            curve,
            Math.Min(curve, law * (1 - PredictionBand)),
            Math.Max(curve, law * (1 + PredictionBand)));
    }

    private static double Reached(double share) => share is >= LowestShare and <= 1
        ? share
        : throw new ArgumentOutOfRangeException(nameof(share), share, "The curve reaches from 0.15 to 1 of the maximum.");
}
