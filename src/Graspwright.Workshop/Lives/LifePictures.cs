using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Strength.Lives;

namespace Graspwright.Workshop.Lives;

/// <summary>Pictures of one part's lives; those still whole are always drawn with those that broke.</summary>
public static class LifePictures
{
    private const int Places = 120;

    /// <summary>The share still whole against age: steps seen, their bounds, the law.</summary>
    /// <param name="s">The part; the log holds a life longer than nothing.</param>
    public static Picture Whole(PartStudy s)
    {
        ArgumentNullException.ThrowIfNull(s);
        IReadOnlyList<SurvivorStep> steps = Survivors.Steps(s.Records);
        double last = s.Records.Max(r => double.IsFinite(r.High) ? r.High : r.Low);
        List<Series> series = [Stairs("seen", steps, x => x.Whole, last, Dash.Solid, Ink.Ink, 0.5)];
        if (steps.Count > 0)
        {
            series.Add(Stairs("its bounds", steps, x => x.Low, last, Dash.Dotted, Ink.Ink, 0.25));
            series.Add(Stairs("", steps, x => x.High, last, Dash.Dotted, Ink.Ink, 0.25));
        }

        if (s.Records.Any(r => r.Broke && !r.Seen))
        {
            series.Add(Slopes(SpanSurvivors.Of(s.Records)));
        }

        if (s.Best.Standing == FitStanding.Found)
        {
            double[] at = [.. Enumerable.Range(0, Places + 1).Select(i => last * i / Places)];
            series.Add(new($"{s.Best.Law.Form.Word()} law", at, [.. at.Select(t => 100 * s.Best.Law.Whole(t))], Dash.Solid, Ink.Accent, 0.4));
        }

        foreach (double age in s.Records.Where(r => !r.Broke && r.Low > 0).Select(r => r.Low).Distinct())
        {
            double y = 100 * At(steps, age);
            series.Add(new("", [age, age], [y - 2.5, y + 2.5], Dash.Solid, Ink.Ink, 0.35));
        }

        return ChartPicture.Draw(new()
        {
            Sentence = $"{Heading(s)} Each short upright line is one that was still whole at that age.",
            XTitle = "age, days by the calendar",
            YTitle = "still whole, %",
            Series = series,
            YAtLeast = (0, 100),
        });
    }

    /// <summary>Probability paper of the law spoken of, on which that law is a straight line.</summary>
    /// <param name="s">The part, with a law.</param>
    public static Picture Paper(PartStudy s)
    {
        ArgumentNullException.ThrowIfNull(s);
        return LifePaper.Draw(s, $"{Heading(s)} On this paper a {s.Best.Law.Form.Word()} law is straight; dots are breaks, upright lines below are those still whole at that age.");
    }

    private static string Heading(PartStudy s) => $"{char.ToUpperInvariant(s.Name[0])}{s.Name[1..]}: {s.Broke} broke, {s.Whole} still whole when last seen.";

    private static double At(IReadOnlyList<SurvivorStep> steps, double age)
    {
        double whole = 1;
        foreach (SurvivorStep step in steps)
        {
            whole = step.Time <= age ? step.Whole : whole;
        }

        return whole;
    }

    /// <summary>The share from spans as they are: where in a span it falls is not known, so it is drawn falling evenly.</summary>
    private static Series Slopes(SpanSurvivors spans)
    {
        List<double> x = [0], y = [100];
        foreach (SpanStep step in spans.Steps.Where(s => double.IsFinite(s.High)))
        {
            x.AddRange([step.Low, step.High]);
            y.AddRange([y[^1], 100 * step.Whole]);
        }

        return new("spans as they are", x, y, Dash.LongDash, Ink.Ink, 0.25);
    }

    private static Series Stairs(string label, IReadOnlyList<SurvivorStep> steps, Func<SurvivorStep, double> value, double last, Dash dash, Ink ink, double width)
    {
        List<double> x = [0], y = [100];
        foreach (SurvivorStep step in steps)
        {
            x.AddRange([step.Time, step.Time]);
            y.AddRange([y[^1], 100 * value(step)]);
        }

        x.Add(last);
        y.Add(y[^1]);
        return new(label, x, y, dash, ink, width);
    }
}
