using Graspwright.Hand;

namespace Graspwright.Workshop.Lives;

/// <summary>Sources that lives and spares rest on.</summary>
public static class LifeSources
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("meeker-escobar-1998", "Statistical Methods for Reliability Data", "Meeker & Escobar", 1998, SourceStanding.SeenQuoted,
            "Laws of life, greatest likelihood with whole parts and spans, profile bounds, bounds without breaks. Data seen as distributed; chapters from memory."),
        new("kaplan-meier-1958", "Share still whole without a law, with Greenwood's error", "Kaplan & Meier", 1958, SourceStanding.FromMemory,
            "Held to the printed figures of three sets."),
        new("mantel-1966", "Log-rank test of whether groups live alike", "Mantel", 1966, SourceStanding.FromMemory, "Held to a printed figure."),
        new("aalen-johansen-1978", "Share broken by each of several causes", "Aalen & Johansen", 1978, SourceStanding.FromMemory, "Held to plain counts."),
        new("cox-renewal-1962", "Renewal Theory", "Cox", 1962, SourceStanding.FromMemory, "Number of breaks with replacement; held to Poisson's law and to trials."),
        new("life-shapes", "Shapes of 1 to 4 where the log cannot tell", "", null, SourceStanding.Chosen,
            "From breaking by chance to wearing out together; with a computed life, the 80 % band of the shape."),
    ];
}
