namespace Graspwright.Hand;

/// <summary>Binds lines drawn on the limb, and explains those that cannot be cut along.</summary>
internal static class OutlineBinding
{
    private const double LeastArea = 1e-6; // of a patch, places by angles [m·rad]: a line, or next to one

    /// <summary>An edge of the liner: a plane, or a line once round.</summary>
    /// <param name="t">The form.</param>
    /// <param name="side">near or far.</param>
    /// <param name="first">Place of the first mark [m].</param>
    /// <param name="last">Place of the last mark [m].</param>
    public static (double Place, IReadOnlyList<LimbCorner> Line) Edge(Binder t, string side, double first, double last)
    {
        string line = side + "_line", plane = side + "_edge";
        IReadOnlyList<LimbCorner> corners = t.Outline(line);
        if (t.Has(line) && t.Has(plane))
        {
            t.Fault(t.PlaceOf(plane), plane, $"{plane} beside {line}", "one of the two", $"remove {plane}: {line} says it");
        }

        if (corners.Count == 0)
        {
            return (t.Quantity(plane, Toml.Quantity(side == "near" ? first : last, Dimension.Length)), []);
        }

        LimbLine drawn = new(corners);
        if (Sound(t, line, drawn) && Math.Abs(drawn.Turns) != 1)
        {
            t.Fault(t.PlaceOf(line), line, $"a line that goes {Times(drawn.Turns)} round the limb", "once round: an edge of the liner", "add corners on every side, less than half a turn apart; from each to the next the line takes the shorter way");
        }

        int beyond = corners.Index().FirstOrDefault(c => c.Item.Place < first || c.Item.Place > last, (-1, default)).Index;
        if (beyond >= 0)
        {
            t.Fault(line, beyond, FormattableString.Invariant($"a corner at {1000 * corners[beyond].Place:0.#} mm, beyond the marks"), FormattableString.Invariant($"{1000 * first:0.#} to {1000 * last:0.#} mm, from the first mark to the last"), "add a mark there: a girth that was not measured is not guessed");
        }

        return (Math.Abs(drawn.Turns) == 1 ? drawn.MeanPlace : (drawn.Places.Low + drawn.Places.High) / 2, corners);
    }

    /// <summary>An outline that does not go round: a patch, an opening.</summary>
    /// <param name="t">Its table.</param>
    /// <param name="key">Its key.</param>
    /// <param name="first">Place of the first mark [m].</param>
    /// <param name="last">Place of the last mark [m].</param>
    /// <returns>Its corners; empty = none.</returns>
    public static IReadOnlyList<LimbCorner> Closed(Binder t, string key, double first, double last)
    {
        IReadOnlyList<LimbCorner> corners = t.Outline(key);
        if (corners.Count == 0)
        {
            return corners;
        }

        LimbLine drawn = new(corners);
        if (!Sound(t, key, drawn))
        {
            return corners;
        }

        if (drawn.Turns != 0)
        {
            t.Fault(t.PlaceOf(key), key, $"a line that goes {Times(drawn.Turns)} round the limb", "an outline that comes back to its first corner without going round", "go back along the other side; from each corner to the next the line takes the shorter way round");
        }
        else if (drawn.Area < LeastArea)
        {
            t.Fault(t.PlaceOf(key), key, "corners in one line", "an outline with something inside", "move a corner off the line");
        }
        else if (drawn.Places.High < first || drawn.Places.Low > last)
        {
            t.Fault(t.PlaceOf(key), key, FormattableString.Invariant($"an outline from {1000 * drawn.Places.Low:0.#} to {1000 * drawn.Places.High:0.#} mm, which misses the limb"), FormattableString.Invariant($"{1000 * first:0.#} to {1000 * last:0.#} mm, from the first mark to the last"), "check its places and signs: they count from the zero of the form");
        }

        return corners;
    }

    /// <summary>Whether two edges keep apart.</summary>
    /// <param name="t">The form.</param>
    /// <param name="form">The form, bound.</param>
    public static void Apart(Binder t, LimbForm form)
    {
        if (form.NearLine.Count + form.FarLine.Count == 0 || !double.IsFinite(form.NearEdge + form.FarEdge))
        {
            return;
        }

        LimbLine near = new(Line(form.NearLine, form.NearEdge)), far = new(Line(form.FarLine, form.FarEdge));
        if (Math.Abs(near.Turns) == 1 && Math.Abs(far.Turns) == 1 && near.Crossing(far) is { } at)
        {
            string key = form.FarLine.Count > 0 ? "far_line" : "near_line";
            int corner = form.FarLine.Count > 0 ? at.B : at.A;
            t.Fault(key, corner, "an edge that meets the other edge of the liner between this corner and the next", "edges that keep apart all round", "check the places of that corner and the next, and their signs");
        }
    }

    private static IReadOnlyList<LimbCorner> Line(IReadOnlyList<LimbCorner> line, double plane) =>
        line.Count > 0 ? line : [.. Enumerable.Range(0, 4).Select(i => new LimbCorner(plane, i * Math.PI / 2))];

    private static bool Sound(Binder t, string key, LimbLine line)
    {
        if (line.DoubtfulStep is >= 0 and var step)
        {
            t.Fault(key, step, "half a turn to the next corner, so that its way round is in doubt", "corners less than half a turn apart", "add a corner between the two");
            return false;
        }

        if (line.OwnCrossing() is not { } crossed)
        {
            return true;
        }

        string found = crossed.A == crossed.B ? "a corner that is written twice" : FormattableString.Invariant($"a line that crosses or touches itself: beyond corner {crossed.A + 1} and beyond corner {crossed.B + 1}");
        t.Fault(key, crossed.A, found, "corners in turn, as a pen would draw them, each once", "put them in order round the outline; the last is joined to the first by itself");
        return false;
    }

    private static string Times(int turns) => Math.Abs(turns) switch { 0 => "not at all", 1 => "once", 2 => "twice", var n => FormattableString.Invariant($"{n} times") };
}
