using Graspwright.Drawing.Points;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Points;

/// <summary>Says which points went out or came in.</summary>
public static class PointsAnswer
{
    /// <summary>Points were written.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">File they were written to.</param>
    /// <param name="points">The points.</param>
    public static Answer Written(Hand.HandModel hand, string file, IReadOnlyList<NamedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(points);
        return new()
        {
            Verb = "points",
            Hand = hand.Name,
            Sentence = $"Wrote the {points.Count} named points of the {hand.Name} to {file}.",
            Tables = [new("points", [new("point", ""), new("x", "mm"), new("y", "mm")], [.. points.Select(p => (IReadOnlyList<Cell>)[p.Name, p.XMm, p.YMm])])],
        };
    }

    /// <summary>Points were read.</summary>
    /// <param name="hand">The hand before.</param>
    /// <param name="file">File they came from.</param>
    /// <param name="moves">Points that moved.</param>
    public static Answer Moved(Hand.HandModel hand, string file, IReadOnlyList<PointMove> moves)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(moves);
        string count = moves.Count switch { 0 => "No point", 1 => "1 point", _ => $"{moves.Count} points" };
        return new()
        {
            Verb = "points",
            Hand = hand.Name,
            Sentence = $"{count} moved to where {file} has {(moves.Count == 1 ? "it" : "them")}.",
            Tables =
            [
                new("moved", [new("point", ""), new("x before", "mm"), new("y before", "mm"), new("x now", "mm"), new("y now", "mm"), new("moved by", "mm")],
                    [.. moves.Select(m => (IReadOnlyList<Cell>)[m.To.Name, m.From.XMm, m.From.YMm, m.To.XMm, m.To.YMm, double.Hypot(m.To.XMm - m.From.XMm, m.To.YMm - m.From.YMm)])]),
            ],
        };
    }
}
