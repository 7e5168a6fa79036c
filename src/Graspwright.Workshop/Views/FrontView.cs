using System.Globalization;
using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Search;

namespace Graspwright.Workshop.Views;

/// <summary>The front of a search in plain words: one aim across, another up, the hand as it is and the point to try first marked.</summary>
/// <remarks>With more than two aims the further ones are told by a panel each, all over the first.</remarks>
public static class FrontView
{
    private const double Width = 180, Margin = 6, Left = 24, Right = 12, Panel = 92, Small = 2.1;

    /// <summary>Draws it.</summary>
    /// <param name="handName">Name of the hand.</param>
    /// <param name="study">The search, with a front.</param>
    public static Picture Draw(string handName, SearchStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        int panels = Math.Max(study.Measures.Aims.Count - 1, 1);
        double height = 16 + panels * Panel + 8;
        string sentence = $"What the {handName} can be, by the search ‘{study.Search.Name}’";
        Picture picture = new(Width, height, "Front of a search", $"{sentence}. Each dot is a design that no other beats in everything.");
        picture.OnLayer("sentence").Text(new(Margin, height - Margin - 3), sentence, 2.9, strong: true);
        for (int k = 0; k < panels; k++)
        {
            One(picture, study, Math.Min(k + 1, study.Measures.Aims.Count - 1), height - 14 - k * Panel);
        }

        picture.OnLayer("caption").Text(new(Margin, Margin), "Dots: designs that no other beats in everything. Ring: the one to try first. Cross: the hand as it is.", Small);
        return picture;
    }

    private static void One(Picture picture, SearchStudy study, int up, double top)
    {
        double foot = top - Panel + 18;
        (double X, double Y)[] dots = [.. study.Front.Select(d => (SearchAnswer.AimValue(study, d, 0), SearchAnswer.AimValue(study, d, up)))];
        (double X, double Y)? plain = study.AsItIs is { } p && p.Outcome.Excess[^1] == 0 ? (SearchAnswer.AimValue(study, p, 0), SearchAnswer.AimValue(study, p, up)) : null;
        (double X, double Y)[] all = plain is { } q ? [.. dots, q] : dots;
        Ticks x = Span(all.Select(d => d.X), 8), y = Span(all.Select(d => d.Y), 6);
        Place At((double X, double Y) d) => new(Left + (d.X - x.Low) / (x.High - x.Low) * (Width - Left - Right), foot + (d.Y - y.Low) / (y.High - y.Low) * (top - 8 - foot));
        picture.OnLayer("scale");
        foreach (double tick in x.Values)
        {
            Place at = At((tick, y.Low));
            picture.Line(at, new(at.X, top - 8), Pen.Pale);
            picture.Text(at.Moved(0, -4), x.Label(tick), Small, Across.Middle);
        }

        foreach (double tick in y.Values)
        {
            Place at = At((x.Low, tick));
            picture.Line(at, new(Width - Right, at.Y), Pen.Pale);
            picture.Text(at.Moved(-1.5, -0.8), y.Label(tick), Small, Across.Right);
        }

        picture.OnLayer("names").Text(new(Margin, top - 5), Axis(study, up), 2.4, strong: true);
        picture.Text(new(Width - Right, foot - 8.5), Axis(study, 0), 2.4, Across.Right, strong: true);
        picture.OnLayer("front");
        foreach ((double X, double Y) dot in dots)
        {
            picture.Circle(At(dot), 0.7, pen: null, Ink.Ink);
        }

        if (study.Chosen >= 0)
        {
            Place at = At(dots[study.Chosen]);
            picture.OnLayer("chosen").Circle(at, 2.2, new Pen(0.5, Ink.Accent));
            bool right = at.X < Width - 60;
            picture.Text(at.Moved(right ? 3.5 : -3.5, -4.5), string.Create(CultureInfo.InvariantCulture, $"number {study.Chosen + 1}: {ChangesAnswer.Short(dots[study.Chosen].X, study.Measures.Aims[0].Measure.Unit)}, {ChangesAnswer.Short(dots[study.Chosen].Y, study.Measures.Aims[up].Measure.Unit)}"), Small, right ? Across.Left : Across.Right, strong: true);
        }

        if (plain is { } as0)
        {
            Place at = At(as0);
            picture.OnLayer("as it is").Line(at.Moved(-1.5, -1.5), at.Moved(1.5, 1.5), Pen.Main);
            picture.Line(at.Moved(-1.5, 1.5), at.Moved(1.5, -1.5), Pen.Main);
            picture.Text(at.Moved(2.5, -2.5), "as it is", Small);
        }
    }

    private static string Axis(SearchStudy study, int k)
    {
        AskedAim aim = study.Measures.Aims[k];
        return $"{aim.Measure.Words}{ChangesAnswer.Where(aim.Measure.Text)}{(aim.Measure.Unit.Length > 0 ? $", {aim.Measure.Unit}" : "")} ({(aim.More ? "more" : "less")} is better)";
    }

    private static Ticks Span(IEnumerable<double> values, int most)
    {
        double[] all = [.. values];
        double low = all.Min(), high = all.Max(), spare = high > low ? 0.02 * (high - low) : Math.Max(Math.Abs(high) * 0.1, 0.5);
        return Ticks.Enclosing(low >= 0 ? Math.Max(low - spare, 0) : low - spare, high + spare, most);
    }
}
