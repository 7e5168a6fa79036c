using System.Globalization;
using Graspwright.Deciding.Search;
using Graspwright.Workshop.Search;

namespace Graspwright.Page.Search;

/// <summary>Why somebody would take this point of a front and no other, in words.</summary>
public static class PointWords
{
    private const double Near = 0.1, AtEnd = 0.02; // share of a limit that is left, and of a range: chosen by us

    /// <summary>The words, a sentence each.</summary>
    /// <param name="study">The search.</param>
    /// <param name="point">Number of the point, from 0.</param>
    public static IReadOnlyList<string> Why(SearchStudy study, int point)
    {
        ArgumentNullException.ThrowIfNull(study);
        Design here = study.Front[point];
        List<string> words = [];
        if (study.AsItIs is { } plain)
        {
            words.Add($"Against the hand as it is: {Differences(study, plain, here)}.");
        }

        words.Add(point == study.Chosen
            ? study.Front.Count > 1 ? "It is the one to try first because it lies at the bend of the front: from here, more of one aim costs the most of another." : "It is the only one that no other beats."
            : $"Against number {study.Chosen + 1}, the one to try first: {Differences(study, study.Front[study.Chosen], here)}.");
        for (int k = 0; k < study.Measures.Limits.Count; k++)
        {
            if (-here.Outcome.Excess[k] < Near)
            {
                AskedLimit limit = study.Measures.Limits[k];
                words.Add($"It comes near the limit of {(limit.AtLeast ? "at least" : "at most")} {WithUnit(limit.Value, limit.Measure.Unit)} on {limit.Measure.Words}{Where(limit.Measure.Text)}: {WithUnit(limit.From(here.Outcome.Excess[k]), limit.Measure.Unit)}.");
            }
        }

        for (int i = 0; i < here.Values.Length; i++)
        {
            FreeParameter p = study.Variants.Space.Parameters[i];
            double end = AtEnd * (p.High - p.Low);
            if (!p.Unordered && p.Count > 2 && (here.Values[i] <= p.Low + end || here.Values[i] >= p.High - end))
            {
                words.Add($"{study.Variants.Names[i]} stands at the {(here.Values[i] <= p.Low + end ? "lower" : "upper")} end of its range: a wider range may hold a better one.");
            }
        }

        return words;
    }

    /// <summary>Value of an aim in the measure's own unit.</summary>
    /// <param name="study">The search.</param>
    /// <param name="design">The design.</param>
    /// <param name="aim">Number of the aim.</param>
    public static double Aim(SearchStudy study, Design design, int aim)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(design);
        return study.Measures.Aims[aim].More ? -design.Outcome.Aims[aim] : design.Outcome.Aims[aim];
    }

    /// <summary>A value with its unit, three figures.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">Its unit.</param>
    public static string WithUnit(double value, string unit)
    {
        string number = Math.Abs(value) switch { >= 100 => value.ToString("0", CultureInfo.InvariantCulture), >= 10 => value.ToString("0.#", CultureInfo.InvariantCulture), _ => value.ToString("0.##", CultureInfo.InvariantCulture) };
        return $"{number.Replace('-', '\u2212')} {unit}".TrimEnd();
    }

    /// <summary>Where a measure was asked for, in words.</summary>
    /// <param name="text">The measure as the file has it.</param>
    public static string Where(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        int at = text.IndexOf('@', StringComparison.Ordinal);
        return at < 0 ? "" : $" ({text[(at + 1)..].Replace("/all free", "", StringComparison.Ordinal)})";
    }

    private static string Differences(SearchStudy study, Design from, Design to) => string.Join("; ", study.Measures.Aims.Select((a, k) =>
    {
        double was = Aim(study, from, k), now = Aim(study, to, k), gain = (a.More ? 1 : -1) * (now - was);
        string how = gain > 0 ? "better" : gain < 0 ? "worse" : "the same";
        return $"{a.Measure.Words}{Where(a.Measure.Text)} {WithUnit(was, a.Measure.Unit)} → {WithUnit(now, a.Measure.Unit)}, {how}";
    }));
}
