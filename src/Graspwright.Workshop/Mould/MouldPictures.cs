using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Moulding.Batch;
using Graspwright.Moulding.Cure;

namespace Graspwright.Workshop.Mould;

/// <summary>Pictures of clock, plan and coming off.</summary>
public static class MouldPictures
{
    /// <summary>Cure and temperature over time, by depth.</summary>
    /// <param name="result">The clock.</param>
    public static Picture Cure(ClockResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        CureState[] states = [.. result.Plan.States.Where(s => s.Seconds > 1e-6)];
        double[] minutes = [.. states.Select(s => s.Seconds / 60)];
        double set = result.Plan.Label.Set;
        LineChart cure = new()
        {
            XTitle = "from the start of mixing, min",
            YTitle = "cure, % of the label's set time",
            Series =
            [
                new("on the mould", minutes, [.. states.Select(s => 100 * s.InnerAge / set)], Dash.Dashed),
                new("middle", minutes, [.. states.Select(s => 100 * s.MiddleAge / set)]),
                new("free side", minutes, [.. states.Select(s => 100 * s.OuterAge / set)], Dash.Dotted),
            ],
            Events = [.. result.Plan.Moments.Take(4).Select((m, i) => new EventLine(m / 60, ClockAnswer.MomentWords[i]))],
        };
        LineChart warmth = new()
        {
            XTitle = cure.XTitle,
            YTitle = "temperature, °C",
            PlotHeightMm = 40,
            Series =
            [
                new("on the mould", minutes, [.. states.Select(s => s.Inner - MouldWords.Zero)], Dash.Dashed),
                new("mean", minutes, [.. states.Select(s => s.Middle - MouldWords.Zero)]),
                new("free side", minutes, [.. states.Select(s => s.Outer - MouldWords.Zero)], Dash.Dotted),
            ],
        };
        return ChartPicture.Stack(result.Answer.Sentence, "cure and temperature over time", [cure, warmth]);
    }

    /// <summary>The steps as bars on a line of time, with the three deadlines.</summary>
    /// <param name="result">The clock.</param>
    public static Picture Plan(ClockResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        const double width = 180, left = 22, right = 8, row = 8, top = 24;
        ClockView plan = result.Plan;
        double height = top + row * plan.Steps.Count + 20, end = Math.Max(plan.Steps[^1].End, plan.Moments[2]) * 1.05;
        double X(double seconds) => left + seconds / end * (width - left - right);
        string words = plan.Batches == 1 ? "One batch from the start of mixing" : $"Each of {plan.Batches} batches from the start of mixing";
        Picture picture = new(width, height, "plan of the work", $"{words}: {string.Join(", ", plan.Steps.Select(s => $"{s.Name} until {MouldWords.Clock(s.End)}"))}.");
        picture.OnLayer("sentence").Text(new(4, height - 7), plan.Fits ? $"{words}: all of it fits." : $"{words}: it does not fit.", 2.9);
        picture.OnLayer("deadlines");
        string[] names = ["one colour", "firming", "hands off"];
        for (int i = 0; i < names.Length; i++)
        {
            double x = X(plan.Moments[i]);
            picture.Line(new(x, 14), new(x, height - top + 2), new Pen(0.35, Ink.Accent, i == 2 ? Dash.Solid : Dash.Dashed));
            picture.Text(new(x, height - top + 3.5), names[i], 2.1, x > 0.85 * width ? Across.Right : Across.Middle);
            picture.Text(new(x, height - top + 7), MouldWords.Clock(plan.Moments[i]), 2.1, x > 0.85 * width ? Across.Right : Across.Middle);
        }

        picture.OnLayer("bars");
        for (int i = 0; i < plan.Steps.Count; i++)
        {
            WorkStep step = plan.Steps[i];
            double y = height - top - row * (i + 1) + 2, deadline = plan.Moments[i == 0 ? 0 : i == plan.Steps.Count - 1 ? 2 : 1];
            Place a = new(X(step.Start), y), c = new(X(step.End), y + row - 4);
            picture.Outline([a, new(c.X, a.Y), c, new(a.X, c.Y)], Pen.Thin, step.End <= deadline ? Ink.Wash : Ink.Pale);
            picture.Text(new(left - 3, y + (row - 4) / 2), step.Name, 2.3, Across.Right, Level.Middle);
            picture.Text(new(c.X + 1.5, y + (row - 4) / 2), MouldWords.Clock(step.Seconds), 2.1, level: Level.Middle);
        }

        picture.OnLayer("axis").Line(new(left, 14), new(width - right, 14), Pen.Hair);
        double tick = end > 1200 ? 300 : end > 360 ? 60 : 30;
        for (double t = 0; t <= end; t += tick)
        {
            picture.Line(new(X(t), 14), new(X(t), 12.8), Pen.Hair);
            picture.Text(new(X(t), 11.4), MouldWords.Short(t / 60), 2.1, Across.Middle, Level.Top);
        }

        picture.Text(new(width - right, 7), "from the start of mixing, min", 2.3, Across.Right, Level.Top, strong: true);
        return picture;
    }

    /// <summary>Girth and stretch against place, with what is allowed and the cut.</summary>
    /// <param name="result">The answer about coming off.</param>
    public static Picture Off(OffResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        double[] places = [.. result.Stretch.Select(s => 1000 * s.Place)];
        List<Series> stretch = [new("stretch", places, [.. result.Stretch.Select(s => 100 * s.Stretch)])];
        if (result.Allowed is { } allowed)
        {
            stretch.Add(new("allowed", [places[0], places[^1]], [100 * allowed, 100 * allowed], Dash.Dashed, Ink.Accent));
        }

        if (result.Cut is { } cut)
        {
            stretch.Add(new("cut open", [1000 * cut.From, 1000 * cut.To], [0, 0], Dash.Solid, Ink.Accent, 1));
        }

        LineChart girths = new()
        {
            XTitle = "place along the limb, mm",
            YTitle = "girth, mm",
            Series = [new("liner", places, [.. result.Stretch.Select(s => 1000 * s.Girth)]), new("largest to pass", places, [.. result.Stretch.Select(s => 1000 * s.Largest)], Dash.Dotted)],
            PlotHeightMm = 45,
        };
        LineChart stretches = new() { XTitle = girths.XTitle, YTitle = "stretch, %", Series = stretch, PlotHeightMm = 45 };
        return ChartPicture.Stack(result.Answer.Sentence, "girth and stretch along the limb", [girths, stretches]);
    }
}
