using Graspwright.Drawing.Display;
using Graspwright.Workshop.Changes;

namespace Graspwright.Workshop.Views;

/// <summary>The way from the hand as it is to all changes, step by step, one panel for each measure.</summary>
public static class StepView
{
    private const double Width = 180, Margin = 6, Left = 58, Right = 20, Row = 6, Small = 2.1, Head = 13;

    /// <summary>Most measures drawn.</summary>
    private const int MostPanels = 4;

    /// <summary>Draws it.</summary>
    /// <param name="handName">Name of the hand.</param>
    /// <param name="study">The numbers.</param>
    public static Picture Draw(string handName, ChangeStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        int panels = Math.Min(MostPanels, study.Measures.Count);
        double panel = Head + study.Steps.Count * Row + 4, height = 18 + panels * panel + 8;
        string sentence = $"From the {handName} as it is to all its changes";
        Picture picture = new(Width, height, "Steps of the changes", $"{sentence}. Each bar begins where the step before ended; full ink is a gain, a wash is a loss.");
        picture.OnLayer("sentence").Text(new(Margin, height - Margin - 3), sentence, 2.9, strong: true);
        for (int k = 0; k < panels; k++)
        {
            Panel(picture, study, k, height - 14 - k * panel);
        }

        picture.OnLayer("caption").Text(new(Margin, Margin), "The change with the greatest gain per evening comes first. Bars in accent gain, washed bars lose.", Small);
        return picture;
    }

    private static void Panel(Picture picture, ChangeStudy study, int k, double top)
    {
        MeasuredChanges m = study.Measures[k];
        double[] values = [.. study.Steps.Select(s => study.Value(s.Set, k))];
        double low = values.Where(double.IsFinite).DefaultIfEmpty(0).Min(), high = values.Where(double.IsFinite).DefaultIfEmpty(1).Max();
        double least = 0.1 * Math.Max(Math.Max(Math.Abs(high), Math.Abs(low)), 1e-9), more = Math.Max(least - (high - low), 0);
        double spare = 0.08 * Math.Max(high - low, least);
        (low, high) = (low - spare - more / 2, high + spare + more / 2);
        double At(double v) => Left + (v - low) / (high - low) * (Width - Left - Right - Margin);
        string better = m.Sense > 0 ? "more is better" : "less is better";
        picture.OnLayer("names").Text(new(Margin, top - 4), $"{m.Measure.Words}{ChangesAnswer.Where(m.Measure.Text)}, {(m.Measure.Unit.Length > 0 ? m.Measure.Unit + ", " : "")}{better}", 2.5, strong: true);
        double y = top - Head;
        double before = double.NaN;
        for (int i = 0; i < values.Length; i++, y -= Row)
        {
            ChangeStep step = study.Steps[i];
            picture.OnLayer("names").Text(new(Margin + 2, y), step.Item < 0 ? "as it is" : $"+ {study.Items[step.Item].Name}", Small, strong: i == 0 || i == values.Length - 1);
            double value = values[i];
            if (double.IsNaN(value))
            {
                picture.Text(new(Left, y), "no value", Small);
                continue;
            }

            picture.OnLayer("steps");
            if (double.IsNaN(before))
            {
                picture.Line(new(At(value), y - 1), new(At(value), y + 3), new Pen(0.6));
            }
            else if (Math.Abs(value - before) > m.Small)
            {
                double from = At(Math.Min(before, value)), to = At(Math.Max(before, value));
                bool gains = m.Sense * (value - before) > 0;
                picture.Outline([new(from, y - 0.4), new(to, y - 0.4), new(to, y + 2.4), new(from, y + 2.4)], Pen.Thin, gains ? Ink.Accent : Ink.Wash);
            }
            else
            {
                picture.Line(new(At(value), y - 0.4), new(At(value), y + 2.4), Pen.Thin);
            }

            if (i + 1 < values.Length)
            {
                picture.Line(new(At(value), y - 0.4), new(At(value), y - Row + 2.4), Pen.Pale);
            }

            double edge = double.IsNaN(before) ? At(value) : Math.Max(At(before), At(value));
            picture.OnLayer("figures").Text(new(edge + 1.5, y), ChangesAnswer.Short(value, m.Measure.Unit), Small);
            before = value;
        }
    }
}
