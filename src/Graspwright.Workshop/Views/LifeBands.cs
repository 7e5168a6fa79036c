using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Views;

/// <summary>Lives as bands over days of wear on a logarithmic scale: eight cases in ten, with the middle marked.</summary>
public static class LifeBands
{
    private const double Width = 180, Margin = 6, Left = 44, Row = 6, Small = 2.1, Right = 12;
    private static readonly (double Days, string Word)[] Marks = [(1, "1 day"), (7, "1 week"), (30.44, "1 month"), (365.25, "1 year"), (1826, "5 years"), (7305, "20 years")];

    /// <summary>Draws them.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="bands">The hand as it is, then in each material set beside it.</param>
    public static Picture Draw(HandModel hand, IReadOnlyList<HandBand> bands)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(bands);
        int rows = bands.Sum(b => b.Hinges.Count + 2);
        double height = rows * Row + 44;
        string sentence = $"Days of wear to the first break, hinge by hinge, of the {hand.Name}";
        var picture = new Picture(Width, height, "Lives as bands", sentence + ". A band holds eight cases in ten, the mark is the middle.");
        picture.OnLayer("sentence").Text(new(Margin, height - Margin - 3), sentence, 2.9, strong: true);
        double top = height - 18, foot = 22;
        foreach ((double days, string word) in Marks)
        {
            double x = At(days);
            picture.OnLayer("scale").Line(new(x, foot), new(x, top), Pen.Pale);
            picture.Text(new(x, top + 1.5), word, Small, Across.Middle);
        }

        double y = top - Row;
        foreach (HandBand band in bands)
        {
            picture.OnLayer("names").Text(new(Margin, y), $"Fingers of {band.Material}", 2.6, strong: true);
            y -= Row;
            One(picture, "first of the hand", band.FirstBreak, y, Ink.Accent);
            y -= Row;
            foreach (HingeBand hinge in band.Hinges)
            {
                One(picture, hinge.Position, hinge.Days, y, Ink.Wash);
                y -= Row;
            }
        }

        picture.OnLayer("caption").Text(new(Margin, Margin + 4), "Computed on an assumed day of wear; no published count of grips or knocks a day was found.", Small);
        picture.Text(new(Margin, Margin), "Common practice, no source: printed fingers last about three weeks; metal ones have gone four months whole.", Small);
        return picture;
    }

    private static void One(Picture picture, string name, double[] sorted, double y, Ink ink)
    {
        double low = SampledLives.Quantile(sorted, 0.1), middle = SampledLives.Quantile(sorted, 0.5), high = SampledLives.Quantile(sorted, 0.9);
        picture.OnLayer("names").Text(new(Margin + 3, y), name, Small);
        if (!(low <= LongestDays))
        {
            picture.OnLayer("bands").Text(new(Left, y), double.IsFinite(low) ? "more than 100 years" : "does not break on this day of wear", Small);
            return;
        }

        double from = At(low), to = At(high);
        picture.OnLayer("bands").Outline([new(from, y), new(to, y), new(to, y + 2.4), new(from, y + 2.4)], Pen.Thin, ink);
        if (double.IsFinite(middle))
        {
            picture.Line(new(At(middle), y - 0.6), new(At(middle), y + 3), new Pen(0.6));
            picture.Text(new(to + 1.2, y), middle > LongestDays ? "> 100 years" : string.Create(CultureInfo.InvariantCulture, $"{(middle < 1 ? Math.Round(middle, 1) : Math.Round(middle)):0.#} d"), Small);
        }
    }

    private const double LongestDays = 36_525;

    private static double At(double days)
    {
        const double Least = 0.5, Greatest = 12_000;
        double share = Math.Log(Math.Clamp(double.IsNaN(days) ? Greatest : days, Least, Greatest) / Least) / Math.Log(Greatest / Least);
        return Left + share * (Width - Left - Margin - Right);
    }
}
