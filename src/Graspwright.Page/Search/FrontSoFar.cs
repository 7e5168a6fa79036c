using System.Globalization;
using Graspwright.Deciding.Search;
using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;

namespace Graspwright.Page.Search;

/// <summary>The front while it is still being searched: a dot for each design that no other beats yet.</summary>
public static class FrontSoFar
{
    private const double Width = 180, Height = 90, Left = 20, Right = 8, Foot = 18, Head = 10, Small = 2.2;

    /// <summary>Draws it over the first two aims.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="search">The search.</param>
    /// <param name="state">How far it is.</param>
    /// <returns><see langword="null"/> = no design keeps the limits yet.</returns>
    public static Picture? Draw(HandModel hand, DesignSearch search, SearchState state)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(state);
        if (state.Front.Count == 0)
        {
            return null;
        }

        int up = Math.Min(1, search.Aims.Count - 1);
        (double X, double Y)[] dots = [.. state.Front.Select(d => (Value(search, d, 0), Value(search, d, up)))];
        Ticks x = Span([.. dots.Select(d => d.X)], 8), y = Span([.. dots.Select(d => d.Y)], 5);
        Picture picture = new(Width, Height, "The front so far", string.Create(CultureInfo.InvariantCulture, $"{state.Front.Count} designs so far that no other beats in everything."));
        Place At(double a, double b) => new(Left + (a - x.Low) / (x.High - x.Low) * (Width - Left - Right), Foot + (b - y.Low) / (y.High - y.Low) * (Height - Head - Foot));
        picture.OnLayer("scale");
        foreach (double tick in x.Values)
        {
            picture.Line(At(tick, y.Low), At(tick, y.High), Pen.Pale);
            picture.Text(At(tick, y.Low).Moved(0, -4), x.Label(tick), Small, Across.Middle);
        }

        foreach (double tick in y.Values)
        {
            picture.Line(At(x.Low, tick), At(x.High, tick), Pen.Pale);
            picture.Text(At(x.Low, tick).Moved(-1.5, -0.8), y.Label(tick), Small, Across.Right);
        }

        picture.OnLayer("names").Text(new(4, Height - 5), Axis(hand, search.Aims[up]), Small, strong: true);
        picture.Text(new(Width - Right, 6), Axis(hand, search.Aims[0]), Small, Across.Right, strong: true);
        picture.OnLayer("front");
        foreach ((double a, double b) in dots)
        {
            picture.Circle(At(a, b), 0.8, pen: null, Ink.Accent);
        }

        return picture;
    }

    private static double Value(DesignSearch search, Design design, int aim) => search.Aims[aim].More ? -design.Outcome.Aims[aim] : design.Outcome.Aims[aim];

    private static string Axis(HandModel hand, SearchAim aim)
    {
        AskedMeasure? measure = AskedMeasure.Read(aim.Measure, hand, out _);
        return $"{measure?.Words ?? aim.Measure}{PointWords.Where(aim.Measure)}{(measure?.Unit.Length > 0 ? ", " + measure.Unit : "")} ({(aim.More ? "more" : "less")} is better)";
    }

    private static Ticks Span(double[] values, int most)
    {
        double low = values.Min(), high = values.Max(), spare = high > low ? 0.02 * (high - low) : Math.Max(Math.Abs(high) * 0.1, 0.5);
        return Ticks.Enclosing(low >= 0 ? Math.Max(low - spare, 0) : low - spare, high + spare, most);
    }
}
