using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measuring;

/// <summary>Figures of a filled sheet, with their workings.</summary>
internal static class MeasuringFigures
{
    /// <summary>Every figure.</summary>
    /// <param name="wearer">What was measured.</param>
    public static IReadOnlyList<Figure> Of(MeasuredWearer wearer)
    {
        var figures = new List<Figure>();
        figures.AddRange(wearer.Pulls.Select(Peak));
        foreach (IGrouping<(string Where, string When), Reading> hold in wearer.Groups(Measurement.Hold).Where(g => MeasuringFindings.Share(g.Key.Where, out _)))
        {
            _ = MeasuringFindings.Share(hold.Key.Where, out double share);
            figures.Add(Mean($"hold_at_{100 * share:0}_percent", $"time {hold.Key.Where} of the greatest pull was held", "s", [.. hold.Select(r => r.Value)], "time"));
        }

        if (wearer.Give is { } give)
        {
            figures.AddRange(Give(give));
        }

        Reading[] bends = [.. wearer.Readings.Where(r => r.Measurement == Measurement.TenBends && r.Value > 0)];
        if (bends.Length > 0)
        {
            Terms terms = new();
            foreach (Reading bend in bends)
            {
                terms.Add($"20·{terms.Input($"angle_{bend.Try}", bend.AngleDegrees, "deg")}/{terms.Input($"time_{bend.Try}", bend.Value, "s")}");
            }

            figures.Add(new("bending_speed", "speed of bending, from ten bends there and back", "deg/s")
            {
                Value = wearer.SpeedDegrees,
                Working = terms.Working($"({terms.Sum})/{terms.Input("tries", bends.Length, "")}", "measured"),
            });
        }

        foreach (IGrouping<(string Where, string When), Reading> pinch in wearer.Groups(Measurement.ThumbPinch))
        {
            figures.Add(Mean("thumb_pinch", "pinch of the wearer's own thumb", "N", [.. pinch.Select(r => r.Value)], "pinch"));
            break;
        }

        return figures;
    }

    private static Figure Peak(DirectionPulls pulls)
    {
        string key = $"{pulls.Direction.Word()}_peak", words = $"greatest moment toward {MeasuringFindings.Way(pulls)}";
        if (pulls.Peak is not { } peak)
        {
            return new(key, words, "N·m") { Why = "the tries disagree at every angle" };
        }

        Terms terms = new();
        for (int i = 0; i < peak.Pulls.Count; i++)
        {
            terms.Add($"{terms.Input($"pull_{i + 1}", peak.Pulls[i], "N")}·{terms.Input($"lever_{i + 1}", 1000 * peak.Levers[i], "mm")}/1000");
        }

        double half = pulls.Statistics.HalfWidth(peak);
        return new(key, words, "N·m")
        {
            Value = peak.Mean,
            Low = double.IsFinite(half) ? peak.Mean - half : null,
            High = double.IsFinite(half) ? peak.Mean + half : null,
            Working = terms.Working($"({terms.Sum})/{terms.Input("tries", peak.Pulls.Count, "")}", "measured"),
        };
    }

    private static IEnumerable<Figure> Give(GiveFit give)
    {
        Terms terms = new();
        double[] angles = [.. give.Points.Select(p => double.RadiansToDegrees(p.Radians))], moments = [.. give.Points.Select(p => p.Moment)];
        string n = terms.Input("readings", angles.Length, ""), sa = terms.Input("sum_of_angles", angles.Sum(), "deg"), sm = terms.Input("sum_of_moments", moments.Sum(), "N·m");
        string sam = terms.Input("sum_of_products", angles.Zip(moments, (a, m) => a * m).Sum(), "deg·N·m"), smm = terms.Input("sum_of_squared_moments", moments.Sum(m => m * m), "N²·m²");
        string compliance = $"({n}·{sam} - {sa}·{sm})/({n}·{smm} - {sm}^2)";
        double total = MeasuredWearer.PerDegree(give.Total), half = MeasuredWearer.PerDegree(give.TotalDeviation) * (give.Points.Count > 2 ? StudentT.Quantile975(give.Points.Count - 2) : double.NaN);
        yield return new("give_stiffness", "moment a degree of give, cuff and shell together", "N·m/deg")
        {
            Value = total,
            Low = double.IsFinite(half) ? Math.Max(0, total - half) : null,
            High = double.IsFinite(half) ? total + half : null,
            Working = terms.Working($"1/({compliance})", "measured"),
        };
        if (!double.IsFinite(give.Cuff))
        {
            yield return new("cuff_stiffness", "moment a degree of give of the cuff alone", "N·m/deg") { Why = "the shell alone would give more than the dial shows" };
            yield break;
        }

        Terms alone = new();
        string all = alone.Input("together", total, "N·m/deg");
        string formula = double.IsInfinity(give.Shell) ? all : $"1/(1/{all} - 1/{alone.Input("shell", MeasuredWearer.PerDegree(give.Shell), "N·m/deg")})";
        yield return new("cuff_stiffness", "moment a degree of give of the cuff alone", "N·m/deg") { Value = MeasuredWearer.PerDegree(give.Cuff), Working = alone.Working(formula, "measured") };
    }

    private static Figure Mean(string key, string words, string unit, double[] values, string name)
    {
        Terms terms = new();
        for (int i = 0; i < values.Length; i++)
        {
            terms.Add(terms.Input($"{name}_{i + 1}", values[i], unit));
        }

        return new(key, words, unit) { Value = values.Average(), Working = terms.Working($"({terms.Sum})/{terms.Input("tries", values.Length, "")}", "measured") };
    }
}
