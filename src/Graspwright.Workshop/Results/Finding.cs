namespace Graspwright.Workshop.Results;

/// <summary>How far a figure is from its limit, in a word.</summary>
public enum Verdict
{
    /// <summary>Margin of a tenth or more.</summary>
    Good,

    /// <summary>Margin below a tenth, or the interval holds the limit.</summary>
    Tight,

    /// <summary>Past the limit.</summary>
    Fails,

    /// <summary>An input is missing, or the path could not be followed.</summary>
    NotKnown,
}

/// <summary>What a run says about the hand, with a change to try.</summary>
/// <param name="Key">Key of the finding.</param>
/// <param name="Subject">Which part or object.</param>
/// <param name="Verdict">Verdict.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Change">What to try.</param>
public sealed record Finding(string Key, string Subject, Verdict Verdict, string Reason, string Change)
{
    /// <summary>The figure judged, where there is one.</summary>
    public double? Figure { get; init; }

    /// <summary>Its limit, where there is one.</summary>
    public double? Limit { get; init; }

    /// <summary>Unit of figure and limit.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Distance to the limit ÷ limit, positive is good.</summary>
    public double? Margin { get; init; }
}

/// <summary>The one rule that turns a margin into a verdict.</summary>
public static class Verdicts
{
    /// <summary>Margin from which a figure is good.</summary>
    public const double GoodMargin = 0.10;

    /// <summary>Verdict of a margin.</summary>
    /// <param name="margin">Distance to the limit ÷ limit, positive is good; <see langword="null"/> or NaN = not known.</param>
    public static Verdict Of(double? margin) => margin switch
    {
        null or double.NaN => Verdict.NotKnown,
        < 0 => Verdict.Fails,
        < GoodMargin => Verdict.Tight,
        _ => Verdict.Good,
    };

    /// <summary>Verdict of a margin whose interval is known.</summary>
    /// <param name="margin">Margin of the value.</param>
    /// <param name="lowMargin">Margin at one end of the interval.</param>
    /// <param name="highMargin">Margin at the other end.</param>
    public static Verdict Of(double margin, double lowMargin, double highMargin)
    {
        bool holdsLimit = Math.Min(lowMargin, highMargin) < 0 && Math.Max(lowMargin, highMargin) >= 0;
        return holdsLimit ? Verdict.Tight : Of(margin);
    }

    /// <summary>The word of a verdict.</summary>
    /// <param name="verdict">Verdict.</param>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.Good => "good",
        Verdict.Tight => "tight",
        Verdict.Fails => "fails",
        _ => "not known",
    };

    /// <summary>The verdict's mark, of a shape of its own so that it reads without colour.</summary>
    /// <param name="verdict">Verdict.</param>
    public static string Mark(this Verdict verdict) => verdict switch
    {
        Verdict.Good => "●",
        Verdict.Tight => "◐",
        Verdict.Fails => "✕",
        _ => "?",
    };
}
