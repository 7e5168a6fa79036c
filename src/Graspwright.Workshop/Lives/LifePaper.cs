using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Strength.Lives;

namespace Graspwright.Workshop.Lives;

/// <summary>Draws probability paper: logarithms of age along, the law's own scale up.</summary>
internal static class LifePaper
{
    private const double Width = 180, Plot = 95, Left = 22, Right = 38, Margin = 4, Letter = 2.2, Sentence = 2.9;
    private const int Places = 60;

    private static readonly double[] Shares = [0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 0.95, 0.99];

    /// <summary>Draws it.</summary>
    /// <param name="s">The part.</param>
    /// <param name="sentence">What it says.</param>
    public static Picture Draw(PartStudy s, string sentence)
    {
        LifeLaw law = s.Best.Law;
        SurvivorStep[] steps = [.. Survivors.Steps(s.Records)];
        double[] whole = [.. s.Records.Where(r => !r.Broke && r.Low > 0).Select(r => r.Low)];
        double least = steps.Select(x => x.Time).Concat(whole).Append(law.Quantile(0.05)).Min(), most = steps.Select(x => x.Time).Concat(whole).Append(law.Quantile(0.9)).Max();
        double[] ages = [.. Marks(least, most)];
        (double x0, double x1) = (Math.Log(ages[0]), Math.Log(ages[^1]));
        (double y0, double y1) = (LifeLaw.Standard(law.Form, Shares[0]), LifeLaw.Standard(law.Form, Shares[^1]));
        IReadOnlyList<string> lines = Lettering.Wrap(sentence, Width - 2 * Margin, Sentence);
        double height = Margin + lines.Count * 5.6 + 8 + Plot + 24, bottom = 24;
        Picture picture = new(Width, height, "share broken over age, on probability paper", sentence);
        double X(double age) => Left + (Math.Log(age) - x0) / (x1 - x0) * (Width - Left - Right);
        double Y(double standard) => bottom + (standard - y0) / (y1 - y0) * Plot;

        picture.OnLayer("sentence");
        for (int i = 0; i < lines.Count; i++)
        {
            picture.Text(new(Margin, height - Margin - Sentence - 5.6 * i), lines[i], Sentence);
        }

        picture.OnLayer("axes");
        picture.Text(new(Margin, bottom + Plot + 3.4), "broken, %", Letter + 0.2, strong: true);
        foreach (double share in Shares)
        {
            double y = Y(LifeLaw.Standard(law.Form, share));
            picture.Line(new(Left, y), new(Width - Right, y), Pen.Pale with { WidthMm = 0.09 });
            picture.Text(new(Left - 1.8, y), (100 * share).ToString("0", CultureInfo.InvariantCulture), Letter, Across.Right, Level.Middle);
        }

        foreach (double age in ages)
        {
            picture.Line(new(X(age), bottom), new(X(age), bottom + Plot), Pen.Pale with { WidthMm = 0.09 });
            picture.Text(new(X(age), bottom - 9.5), age.ToString("0.##", CultureInfo.InvariantCulture), Letter, Across.Middle, Level.Top);
        }

        picture.Outline([new(Left, bottom), new(Width - Right, bottom), new(Width - Right, bottom + Plot), new(Left, bottom + Plot)], Pen.Hair);
        picture.Text(new(Width - Right, bottom - 14.5), "age, days by the calendar", Letter + 0.2, Across.Right, Level.Top, strong: true);

        double[] curve = [.. Enumerable.Range(0, Places + 1).Select(i => Math.Exp(x0 + (x1 - x0) * i / Places))];
        picture.OnLayer("law");
        Curve(picture, curve, t => (Math.Log(t) - law.Location) / law.Spread, X, Y, y0, y1, new(0.5, Ink.Accent));
        Bounded[] bounds = [.. curve.Select(t => ProfileBounds.Whole(s.Best, t))];
        foreach (bool low in (bool[])[true, false])
        {
            int i = 0;
            Curve(picture, curve, _ =>
            {
                Bounded b = bounds[i++];
                return Math.Clamp(1 - (low ? b.Low : b.High), 0, 1) is var broken && broken is > 1e-9 and < 1 - 1e-9 ? LifeLaw.Standard(law.Form, broken) : double.NaN;
            }, X, Y, y0, y1, new(0.25, Ink.Ink, Dash.Dashed));
        }

        // Dots at the middle of each step, as the handbooks have them.
        picture.OnLayer("breaks");
        double before = 1;
        foreach (SurvivorStep step in steps)
        {
            double broken = 1 - 0.5 * (before + step.Whole), standard = LifeLaw.Standard(law.Form, broken);
            before = step.Whole;
            if (standard >= y0 && standard <= y1)
            {
                picture.Circle(new(X(step.Time), Y(standard)), 0.85, Pen.Thin, Ink.Ink);
            }
        }

        picture.OnLayer("still whole");
        picture.Text(new(Left - 1.8, bottom - 4), "whole", Letter, Across.Right, Level.Middle);
        foreach (IGrouping<double, double> same in whole.GroupBy(t => t))
        {
            picture.Line(new(X(same.Key), bottom - 6), new(X(same.Key), bottom - 6 + Math.Min(4.5, 1.5 + same.Count())), new(0.4));
        }

        picture.OnLayer("labels");
        double right = Width - Right + 2;
        picture.Line(new(right, bottom + Plot - 2), new(right + 7, bottom + Plot - 2), new(0.5, Ink.Accent));
        picture.Text(new(right + 8, bottom + Plot - 2), law.Form.Word(), Letter, level: Level.Middle);
        picture.Line(new(right, bottom + Plot - 7), new(right + 7, bottom + Plot - 7), new(0.25, Ink.Ink, Dash.Dashed));
        picture.Text(new(right + 8, bottom + Plot - 7), "95 % bounds", Letter, level: Level.Middle);
        return picture;
    }

    private static void Curve(Picture picture, double[] ages, Func<double, double> standard, Func<double, double> x, Func<double, double> y, double low, double high, Pen pen)
    {
        List<Place> run = [];
        double lastAge = double.NaN, last = double.NaN;
        foreach (double age in ages)
        {
            double z = standard(age);
            if (double.IsFinite(z) && double.IsFinite(last) && Math.Min(z, last) < high && Math.Max(z, last) > low && !z.Equals(last))
            {
                // Cut off what leaves the paper between two places.
                foreach (double cut in (double[])[last, z])
                {
                    double inside = Math.Clamp(cut, low, high), share = (inside - last) / (z - last);
                    Place place = new(x(lastAge * Math.Pow(age / lastAge, share)), y(inside));
                    if (run.Count == 0 || run[^1].DistanceTo(place) > 1e-6)
                    {
                        run.Add(place);
                    }
                }
            }

            (lastAge, last) = (age, z);
        }

        if (run.Count > 1)
        {
            picture.Polyline(run, pen);
        }
    }

    /// <summary>Ages 1, 2, 5 times powers of ten that enclose two ages.</summary>
    private static IEnumerable<double> Marks(double least, double most)
    {
        double[] steps = [1, 2, 5];
        List<double> all = [];
        for (int power = -2; power < 7; power++)
        {
            all.AddRange(steps.Select(m => m * Math.Pow(10, power)));
        }

        int first = all.FindLastIndex(a => a <= least), last = all.FindIndex(a => a >= most);
        return all.Skip(Math.Max(0, first)).Take(Math.Max(1, last - first) + 1);
    }
}
