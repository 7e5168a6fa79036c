using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Charts;

/// <summary>Draws line charts, alone or several above one another over the same horizontal axis.</summary>
public static class ChartPicture
{
    private const double Margin = 4, Sentence = 2.9, SentenceStep = 5.6, Small = 2.1, LabelStep = 3.9, Left = 15, SampleMm = 9;

    /// <summary>One chart.</summary>
    /// <param name="chart">The chart.</param>
    public static Picture Draw(LineChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        return Stack(chart.Sentence, chart.YTitle + " over " + chart.XTitle, [chart]);
    }

    /// <summary>Several charts above one another, over the same horizontal axis. Events of the first are named above it and run through all.</summary>
    /// <param name="sentence">What the picture says, above it.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="charts">The charts, from the top; at least one with at least one finite place.</param>
    /// <exception cref="ArgumentException">There is nothing to draw, or a series has unlike numbers of places.</exception>
    public static Picture Stack(string sentence, string title, IReadOnlyList<LineChart> charts)
    {
        ArgumentNullException.ThrowIfNull(charts);
        double width = charts.Count == 0 ? 0 : charts[0].WidthMm;
        var finite = charts.SelectMany(c => c.Series).SelectMany(FinitePlaces).ToList();
        if (finite.Count == 0)
        {
            throw new ArgumentException("A chart needs at least one finite place.", nameof(charts));
        }

        (double low, double high) = charts[0].XExtent ?? (finite.Min(p => p.X), finite.Max(p => p.X));
        double right = charts.SelectMany(c => c.Series).Max(s => Lettering.WidthMm(s.Label, Small)) + SampleMm + 8;
        right = Math.Min(right, 0.45 * width);
        Ticks x = Ticks.Enclosing(low, high, Math.Clamp((int)((width - Left - right) / 11), 2, 20));
        double ScaleX(double v) => Margin + Left + (v - x.Low) / (x.High - x.Low) * (width - 2 * Margin - Left - right);

        IReadOnlyList<string> lines = Lettering.Wrap(sentence, width - 2 * Margin, Sentence);
        EventRows events = EventRows.Place(charts[0].Events.Where(e => e.At >= x.Low && e.At <= x.High), ScaleX, Small, Margin, width - Margin);
        double head = Margin + lines.Count * SentenceStep + (events.Rows > 0 ? events.Rows * LabelStep + 1 : 0);
        const double above = 7.5, foot = 11;
        double height = head + charts.Sum(c => c.PlotHeightMm + above) + foot + (charts.Count - 1) * 2;
        var picture = new Picture(width, height, title, Describe(sentence, charts));

        picture.OnLayer("sentence");
        double y = height - Margin - Sentence;
        foreach (string line in lines)
        {
            picture.Text(new(Margin, y), line, Sentence);
            y -= SentenceStep;
        }

        double top = height - head - above, bottom = foot;
        events.Draw(picture.OnLayer("events"), top + above, bottom, LabelStep, Small);
        foreach (LineChart chart in charts)
        {
            bool last = ReferenceEquals(chart, charts[^1]);
            Panel(picture, chart, x, ScaleX, top, last);
            top -= chart.PlotHeightMm + above + 2;
        }

        return picture;
    }

    private static void Panel(Picture picture, LineChart chart, Ticks x, Func<double, double> scaleX, double top, bool withNumbers)
    {
        double bottom = top - chart.PlotHeightMm, left = scaleX(x.Low), right = scaleX(x.High);
        var values = chart.Series.SelectMany(FinitePlaces).Select(p => p.Y).Append(0).ToList();
        double low = Math.Min(values.Min(), chart.YAtLeast?.Low ?? 0), high = Math.Max(values.Max(), chart.YAtLeast?.High ?? 0);
        // What dips below 0 by less than a line's width of paper needs no step of its own.
        low = low < 0 && -low < 0.01 * high ? 0 : low;
        Ticks y = Ticks.Enclosing(low, high, Math.Clamp((int)(chart.PlotHeightMm / 6.5), 2, 10));
        double ScaleY(double v) => bottom + (v - y.Low) / (y.High - y.Low) * chart.PlotHeightMm;

        picture.OnLayer("axes");
        picture.Text(new(left - 12, top + 3.2), chart.YTitle, Small + 0.2, strong: true);
        foreach (double v in y.Values)
        {
            picture.Line(new(left, ScaleY(v)), new(right, ScaleY(v)), v == 0 ? Pen.Hair : Pen.Pale with { WidthMm = 0.09 });
            picture.Text(new(left - 1.8, ScaleY(v)), y.Label(v), Small, Across.Right, Level.Middle);
        }

        picture.Line(new(left, bottom), new(left, top), Pen.Hair);
        picture.Line(new(left, bottom), new(right, bottom), Pen.Hair);
        foreach (double v in x.Values)
        {
            picture.Line(new(scaleX(v), bottom), new(scaleX(v), bottom - 1.2), Pen.Hair);
            if (withNumbers)
            {
                picture.Text(new(scaleX(v), bottom - 2.2), x.Label(v), Small, Across.Middle, Level.Top);
            }
        }

        if (withNumbers)
        {
            picture.Text(new(right, bottom - 6.2), chart.XTitle, Small + 0.2, Across.Right, Level.Top, strong: true);
        }

        picture.OnLayer("curves");
        foreach (Series series in chart.Series)
        {
            foreach (IReadOnlyList<Place> run in Runs(series))
            {
                picture.Polyline([.. run.Select(p => new Place(scaleX(p.X), ScaleY(p.Y)))], PenOf(series));
            }
        }

        Labels(picture.OnLayer("labels"), chart, scaleX, ScaleY, right, bottom, top);
    }

    private static void Labels(Picture picture, LineChart chart, Func<double, double> scaleX, Func<double, double> scaleY, double right, double bottom, double top)
    {
        var ends = chart.Series.Where(s => s.Label.Length > 0 && FinitePlaces(s).Any())
            .Select(s => (Series: s, End: FinitePlaces(s).MaxBy(p => p.X)))
            .Select(e => (e.Series, End: new Place(scaleX(e.End.X), scaleY(e.End.Y))))
            .OrderBy(e => Math.Round(e.End.Y, 1)).ThenBy(e => FinitePlaces(e.Series).Average(p => p.Y)).ToList();
        double[] at = Lettering.Spread([.. ends.Select(e => e.End.Y)], LabelStep, bottom - 1, Math.Max(top, bottom - 1 + LabelStep * ends.Count));
        for (int i = 0; i < ends.Count; i++)
        {
            (Series series, Place end) = ends[i];
            double x = right + 4;
            picture.Polyline([end, new(right + 1, end.Y), new(x, at[i])], Pen.Pale);
            picture.Line(new(x, at[i]), new(x + SampleMm, at[i]), PenOf(series));
            picture.Text(new(x + SampleMm + 1.2, at[i]), series.Label, Small, level: Level.Middle);
        }
    }

    private static Pen PenOf(Series series) => new(series.WidthMm, series.Ink, series.Dash);

    private static IEnumerable<Place> FinitePlaces(Series series)
    {
        if (series.X.Count != series.Y.Count)
        {
            throw new ArgumentException($"The curve '{series.Label}' has {series.X.Count} places along and {series.Y.Count} up.", nameof(series));
        }

        return series.X.Zip(series.Y, (x, y) => new Place(x, y)).Where(p => double.IsFinite(p.X) && double.IsFinite(p.Y));
    }

    private static IEnumerable<IReadOnlyList<Place>> Runs(Series series)
    {
        var run = new List<Place>();
        for (int i = 0; i < series.X.Count; i++)
        {
            if (double.IsFinite(series.X[i]) && double.IsFinite(series.Y[i]))
            {
                run.Add(new(series.X[i], series.Y[i]));
            }
            else if (run.Count > 0)
            {
                yield return run;
                run = [];
            }
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }

    private static string Describe(string sentence, IReadOnlyList<LineChart> charts) => string.Join(' ', charts
        .Select(c => $"{c.YTitle} over {c.XTitle}: {string.Join(", ", c.Series.Where(s => s.Label.Length > 0).Select(s => $"{s.Label} ({Word(s.Dash)})"))}.")
        .Prepend(sentence));

    private static string Word(Dash dash) => dash switch { Dash.Dashed => "dashed", Dash.Dotted => "dotted", Dash.DashDot => "dash and dot", Dash.LongDash => "long dashes", _ => "solid" };
}
